import type { WordStyle } from '../engine/index.ts';

const STYLES: Readonly<Record<string, WordStyle>> = {
  long: { runs: 'long' }, short: { runs: 'short' }, star: { repeats: 'star' }, bracket: { repeats: 'bracket' }, paren: { count: 'paren' }, dash: { count: 'dash' },
};

/** The styles of a list put together; the word that is none. */
export function styleOf(list: string): WordStyle | string {
  let style: WordStyle = {};
  for (const word of list.split(',').map((one) => one.trim())) {
    const one = STYLES[word];
    if (word !== '' && !one) return word;
    style = { ...style, ...one };
  }
  return style;
}
