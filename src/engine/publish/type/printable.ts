/**
 * A pattern's text as print can set it: line ends and tabs as spaces, no control characters, no marks that turn the direction of
 * the text around them (they would reach into our words), runs of spaces as one.
 */
export function printable(text: string): string {
  return text.replace(/\s/gu, ' ').replace(/[\p{Cc}\p{Cs}\u200e\u200f\u202a-\u202e\u2066-\u2069\ufffe\uffff]/gu, '').replace(/ +/g, ' ').trim();
}
