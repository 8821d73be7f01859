import type { WordsDocument } from './wordsDocument.ts';

/** A part of what stands above the rows. */
export interface DocumentPart {
  readonly name: string;
  readonly entries: readonly { readonly word: string; readonly value: string }[];
}

const PARTS: readonly (readonly [name: string, words: RegExp])[] = [
  ['Materials', /^(yarn|hook|needle|notion|material|marker|button)/i],
  ['Gauge', /^(gauge|tension)/i],
  ['Sizes', /^(sizes?$|finished|measure)/i],
  ['Special stitches', /^special/i],
];

/** What stands above the rows in the order in which a printed pattern has it; parts without entries are left out. */
export function documentParts({ header, abbreviations, special }: WordsDocument): readonly DocumentPart[] {
  const left = [...header];
  const parts = PARTS.map(([name, words]): DocumentPart => {
    const entries = left.filter(({ word }) => words.test(word));
    for (const entry of entries) left.splice(left.indexOf(entry), 1);
    return { name, entries: name === 'Special stitches' ? [...entries, ...special.map(({ name: word, meaning }) => ({ word, value: meaning }))] : entries };
  });
  const explained: DocumentPart = { name: 'Abbreviations', entries: abbreviations.map(({ short, meaning }) => ({ word: short, value: meaning })) };
  const [materials, gauge, sizes, own] = parts as [DocumentPart, DocumentPart, DocumentPart, DocumentPart];
  return [materials, gauge, sizes, explained, own, { name: 'Notes', entries: left }].filter(({ entries }) => entries.length > 0);
}
