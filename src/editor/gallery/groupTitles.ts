import type { SampleGroup } from './sample.ts';

/** The groups of sample charts in the order of the page. */
export const GROUP_TITLES: readonly { readonly group: SampleGroup; readonly title: string; readonly lead: string }[] = [
  { group: 'rows', title: 'Rows', lead: 'Numbers stand where a row starts; the arrow says which way it goes. Bands and inks tell right side from wrong side.' },
  { group: 'texture', title: 'Texture and lace', lead: 'Stitches made of several, and stitches worked elsewhere than in the top of the row below.' },
  { group: 'rounds', title: 'Rounds', lead: 'From the middle out, round a chain, unrolled, or seen from the tip.' },
  { group: 'shortRows', title: 'Short rows', lead: 'What a row leaves open lies in a band; a stem with a dot shows where a row takes it up again.' },
  { group: 'pieces', title: 'Pieces', lead: 'What was made before is grey, with its name.' },
  { group: 'colour', title: 'Colour', lead: 'Columns stay columns. In black and white every yarn has a mark of its own.' },
];
