/** Signs of Windows-1252 in the places 0x80 to 0x9f, where it differs from Latin-1. */
const UPPER = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';
const BYTE = new Map([...UPPER].map((sign, index) => [sign, 0x80 + index]));

/**
 * A text in which UTF-8 was read as Windows-1252 (`â€“` for `–`), set right. Only where every sign of it that is not plain
 * ASCII is part of one in UTF-8: in a text that was read rightly, hardly ever are all of them.
 */
export function mendedSigns(text: string): string {
  if (!/[\u00c2-\u00f4]/.test(text)) return text;
  const bytes = new Uint8Array(text.length);
  for (let at = 0; at < text.length; at++) {
    const code = BYTE.get(text[at]!) ?? text.charCodeAt(at);
    if (code > 0xff) return text;
    bytes[at] = code;
  }
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return text;
  }
}
