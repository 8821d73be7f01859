/**
 * Path data in whole units, written as bytes and made into one text at the end: a text put together from its numbers costs
 * several times as much, most of it for the pieces.
 */
export interface PathBytes {
  /** Begins anew. */
  start(): void;
  moveTo(x: number, y: number): void;
  lineBy(dx: number, dy: number): void;
  close(): void;
  /** Puts path data in as it is; plain ASCII. */
  append(text: string): void;
  text(): string;
}

/** The longest that one command can be: a letter and two numbers. */
const MOST = 32;
const SPACE = 32, MINUS = 45, ZERO = 48;
const M = 77, H = 104, L = 108, V = 118, Z = 122;
const decoder = new TextDecoder();

/** Makes a writer of paths; numbers must be whole. Its buffer grows and is used again. */
export function pathBytes(): PathBytes {
  let bytes = new Uint8Array(1 << 12);
  let length = 0;

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

  return {
    start() {
      length = 0;
    },
    moveTo(x, y) {
      makeRoom(MOST);
      bytes[length++] = M;
      whole(x);
      bytes[length++] = SPACE;
      whole(y);
    },
    lineBy(dx, dy) {
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
    close() {
      makeRoom(MOST);
      bytes[length++] = Z;
    },
    append(text) {
      makeRoom(text.length);
      for (let n = 0; n < text.length; n++) bytes[length++] = text.charCodeAt(n);
    },
    text: () => decoder.decode(bytes.subarray(0, length)),
  };
}
