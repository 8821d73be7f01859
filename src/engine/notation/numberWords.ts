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

const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
TENS.forEach((word, index) => {
  NUMBER_OF.set(word, (index + 2) * 10);
  ORDINAL_OF.set(word.replace(/y$/, 'ieth'), (index + 2) * 10);
});
NUMBER_OF.set('hundred', 100);
ORDINAL_OF.set('hundredth', 100);

/** The value of a number written as one lower-case word: one to twenty, the tens to ninety, hundred; null for any other word. */
export function numberOfWord(word: string): number | null {
  return NUMBER_OF.get(word) ?? null;
}

/** The value of an ordinal written as one lower-case word: first to twentieth, the tens to ninetieth, hundredth; null for any other word. */
export function ordinalOfWord(word: string): number | null {
  return ORDINAL_OF.get(word) ?? null;
}

/** The value of a number below 1000 written as lower-case words: `eight`, `twenty-four`, `one hundred and six`; null for other words. */
export function numberOfWords(words: string): number | null {
  let sum = 0;
  for (const word of words.split(/[\s-]+/)) {
    const value = word === 'and' || word === 'a' ? 0 : numberOfWord(word);
    if (value === null) return null;
    sum = value === 100 ? Math.max(1, sum) * 100 : sum + value;
  }
  return sum > 0 && sum < 1000 ? sum : null;
}

/** An ordinal in digits: 1st, 2nd, 3rd, 11th. */
export function ordinalWord(value: number): string {
  const teen = value % 100 >= 11 && value % 100 <= 13;
  const ending = teen ? 'th' : (['th', 'st', 'nd', 'rd'][value % 10] ?? 'th');
  return `${value}${ending}`;
}
