/** Takes no room and no part in words: stands where a line broke a word, so that every character keeps its place. */
export const JOINER = '\u2060';

/** Parts of words that print ties on with a hyphen of their own. */
const HYPHENATED = /(?:^|[^\p{L}])(?:\d+|v|t|half|set|sl|fp|bp|front|back|post|next|ch|sc|dc|tr|hdc|dtr|htr|puff|foundation|turning|two|three|four|five|six)$/iu;

/**
 * A text as word processors and print files give it, made plain, with every character in its place: spaces of all kinds
 * become plain ones, soft hyphens and marks of no width joiners, and a word that a hyphen breaks over two lines is whole
 * again. `1⁄2`-like signs, quotes and dashes are left: reading takes them as they are. Linear in the text.
 */
export function cleanText(text: string): string {
  return text
    .replace(/[\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000\t\v]/g, ' ')
    .replace(/\f/g, '\n')
    .replace(/[\u2028\u2029\u0085]/g, '\n')
    .replace(/\u00ad[ ]*(?:\r\n|\r|\n)[ ]*(?=\p{L})/gu, (broken) => JOINER.repeat(broken.length))
    .replace(/[\u00ad\u200b-\u200d\ufeff]/g, JOINER)
    .replace(/(\p{L}|\d)([-‐])[ ]*(\r\n|\r|\n)[ ]*(?=(\p{Ll}|\d))/gu, (broken: string, before: string, hyphen: string, _: string, after: string, at: number) => {
      const lead = text.slice(Math.max(0, at - 14), at) + before;
      const kept = HYPHENATED.test(lead) || !/\p{Ll}/u.test(after) || !/\p{Ll}/u.test(before) ? hyphen : JOINER;
      return before + kept + JOINER.repeat(broken.length - before.length - 1);
    });
}

/** Text without its joiners, as it is kept in the document. */
export function withoutJoiners(text: string): string {
  return text.includes(JOINER) ? text.replaceAll(JOINER, '') : text;
}

/** Reads with joiners left out something that says how many characters it took, and gives that in characters of the text with them. */
export function lengthWithJoiners(text: string, length: number): number {
  let at = 0;
  for (let left = length; at < text.length && (left > 0 || text[at] === JOINER); at++) if (text[at] !== JOINER) left--;
  return at;
}

/** Whether a line is only the number of a page: `Page 3 of 9`, `- 3 -`, or a small number that stands apart. */
export function isPageNumber(line: string, apart: boolean): boolean {
  if (line.length > 24) return false;
  return /^(?:page|p\.)[ ]*\d{1,4}(?:[ ]*(?:of|\/)[ ]*\d{1,4})?$/i.test(line) || /^[-–—][ ]*\d{1,4}[ ]*[-–—]$/.test(line) || /^\d{1,3}[ ]*(?:of|\/)[ ]*\d{1,3}$/.test(line) || (apart && /^\d{1,3}$/.test(line));
}
