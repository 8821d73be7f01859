import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import type { Construction, StartSettings } from '../../engine/2-construct/recipes/startPattern.ts';

/** A construction as the shelf offers it, with the measurements it asks for and sound first values in cm. */
export interface ConstructionOffer {
  readonly construction: Construction;
  readonly name: string;
  readonly says: string;
  readonly girth: { readonly label: string; readonly cm: number } | null;
  readonly height: { readonly label: string; readonly cm: number } | null;
  readonly foot: { readonly label: string; readonly cm: number } | null;
}

export const CONSTRUCTIONS: readonly ConstructionOffer[] = [
  {
    construction: 'bootSock',
    name: 'Boot sock from the cuff',
    says: 'Leg flat and seamed, heel in short rows, foot in rounds, toe in paired decreases.',
    girth: { label: 'Round the leg', cm: 25 },
    height: { label: 'Cuff to heel', cm: 30 },
    foot: { label: 'Heel to toe', cm: 24 },
  },
  {
    construction: 'legWarmer',
    name: 'Leg warmer tube',
    says: 'One tube in a spiral, no seam.',
    girth: { label: 'Round the leg', cm: 30 },
    height: { label: 'Height', cm: 35 },
    foot: null,
  },
  {
    construction: 'flatPanel',
    name: 'Flat panel',
    says: 'Rows back and forth.',
    girth: { label: 'Width', cm: 25 },
    height: { label: 'Height', cm: 20 },
    foot: null,
  },
  {
    construction: 'disc',
    name: 'Disc or cap',
    says: 'From the middle out, six increases a round; even sides if it is higher than half its width.',
    girth: { label: 'Across', cm: 18 },
    height: { label: 'Crown to edge', cm: 9 },
    foot: null,
  },
  { construction: 'empty', name: 'Empty', says: 'One foundation and one row, to write on from.', girth: null, height: null, foot: null },
];

/** Yarns that a new pattern begins with: three that stay apart in print. */
export const FIRST_YARNS: Pattern['yarns'] = [
  { letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' },
  { letter: 'B', name: 'chalk', colour: '#f2efe6', mark: 'dot' },
  { letter: 'C', name: 'lamp orange', colour: '#d9772b', mark: 'slash' },
];

/** What the form holds, as typed. */
export interface StartForm {
  readonly title: string;
  readonly stitches: number;
  readonly rows: number;
  readonly hookMm: number;
  readonly girthCm: number;
  readonly heightCm: number;
  readonly footCm: number;
}

/** What is wrong with the form, in a sentence; null if it can be worked. */
export function startFault(form: StartForm): string | null {
  const fields: readonly (readonly [string, number, number, number])[] = [
    ['Stitches over 10 cm', form.stitches, 1, 80],
    ['Rows over 10 cm', form.rows, 1, 80],
    ['Hook', form.hookMm, 0.5, 30],
    ['The width', form.girthCm, 2, 300],
    ['The height', form.heightCm, 2, 300],
    ['The foot', form.footCm, 2, 100],
  ];
  const wrong = fields.find(([, value, least, most]) => !(value >= least && value <= most));
  return wrong ? `${wrong[0]} is ${Number.isFinite(wrong[1]) ? wrong[1] : 'empty'}; it has to be between ${wrong[2]} and ${wrong[3]}.` : null;
}

/** The settings that a sound form gives. */
export function startSettings(form: StartForm, fallbackTitle: string): StartSettings {
  return {
    title: form.title.trim() || fallbackTitle,
    gauge: { stitches: form.stitches, rows: form.rows, overCm: 10, stitch: 'sc' },
    hookMm: form.hookMm,
    sizes: [{ name: '', girthCm: form.girthCm, heightCm: form.heightCm, footCm: form.footCm }],
    yarns: FIRST_YARNS,
  };
}
