const NUMBERS = [
  'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten',
  'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen', 'twenty',
];
const ORDINALS = [
  'first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth',
  'eleventh', 'twelfth', 'thirteenth', 'fourteenth', 'fifteenth', 'sixteenth', 'seventeenth', 'eighteenth', 'nineteenth', 'twentieth',
];
const NUMBER_OF = new Map(NUMBERS.map((word, index) => [word, index + 1]));
const ORDINAL_OF = new Map(ORDINALS.map((word, index) => [word, index + 1]));

/** The value of a number written as a lower-case word, one to twenty; null for any other word. */
export function numberOfWord(word: string): number | null {
  return NUMBER_OF.get(word) ?? null;
}

/** The value of an ordinal written as a lower-case word, first to twentieth; null for any other word. */
export function ordinalOfWord(word: string): number | null {
  return ORDINAL_OF.get(word) ?? null;
}

/** An ordinal in digits: 1st, 2nd, 3rd, 11th. */
export function ordinalWord(value: number): string {
  const teen = value % 100 >= 11 && value % 100 <= 13;
  const ending = teen ? 'th' : (['th', 'st', 'nd', 'rd'][value % 10] ?? 'th');
  return `${value}${ending}`;
}
