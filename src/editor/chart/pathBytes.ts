/**
 * Path data in whole units, written as bytes and made into one text at the end: a text put together from its numbers costs several
 * times as much, most of it for the pieces. One buffer serves all; `start` begins anew.
 */
let bytes = new Uint8Array(1 << 14);
let length = 0;
const decoder = new TextDecoder();

/** The longest that one command can be: a letter and two numbers. */
const MOST = 32;
const SPACE = 32, MINUS = 45, ZERO = 48;
const M = 77, H = 104, L = 108, V = 118, Z = 122;

function makeRoom(more: number): void {
  if (length + more <= bytes.length) return;
  const wider = new Uint8Array(bytes.length * 2 + more);
  wider.set(bytes);
  bytes = wider;
}

function whole(n: number): void {
  let rest = n;
  if (rest < 0) {
    bytes[length++] = MINUS;
    rest = -rest;
  }
  let digits = 1;
  for (let power = 10; power <= rest; power *= 10) digits++;
  length += digits;
  for (let at = length - 1; digits > 0; digits--) {
    const tens = Math.floor(rest / 10);
    bytes[at--] = ZERO + (rest - tens * 10);
    rest = tens;
  }
}

/** Writes paths; numbers must be whole. */
export const pathBytes = {
  start(): void {
    length = 0;
  },
  moveTo(x: number, y: number): void {
    makeRoom(MOST);
    bytes[length++] = M;
    whole(x);
    bytes[length++] = SPACE;
    whole(y);
  },
  lineBy(dx: number, dy: number): void {
    makeRoom(MOST);
    if (dy === 0) {
      bytes[length++] = H;
      whole(dx);
    } else if (dx === 0) {
      bytes[length++] = V;
      whole(dy);
    } else {
      bytes[length++] = L;
      whole(dx);
      if (dy > 0) bytes[length++] = SPACE;
      whole(dy);
    }
  },
  close(): void {
    makeRoom(MOST);
    bytes[length++] = Z;
  },
  /** Puts path data in as it is; plain ASCII. */
  append(text: string): void {
    makeRoom(text.length);
    for (let n = 0; n < text.length; n++) bytes[length++] = text.charCodeAt(n);
  },
  text(): string {
    return decoder.decode(bytes.subarray(0, length));
  },
};
