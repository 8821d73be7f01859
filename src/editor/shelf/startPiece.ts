import type { Measure, MeasureName } from '../../engine/1-pattern/pieceFacts.ts';
import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { makePiece } from '../../engine/2-construct/recipes/makePiece.ts';
import { startPattern } from '../../engine/2-construct/recipes/startPattern.ts';
import type { ConstructionOffer } from './constructions.ts';

/** Yarns that a new pattern begins with: three that stay apart in print. */
export const FIRST_YARNS: Pattern['yarns'] = [
  { letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' },
  { letter: 'B', name: 'chalk', colour: '#f2efe6', mark: 'dot' },
  { letter: 'C', name: 'lamp orange', colour: '#d9772b', mark: 'slash' },
];

/** A size as the form has it: measurements in cm by name. */
export interface StartSize {
  readonly name: string;
  readonly cm: Readonly<Partial<Record<MeasureName, number>>>;
}

/** What the form holds, as typed. */
export interface StartForm {
  readonly title: string;
  readonly stitches: number;
  readonly rows: number;
  readonly hookMm: number;
  readonly sizes: readonly StartSize[];
}

/** What is wrong with the form, in a sentence; null if it can be worked. */
export function startFault(offer: ConstructionOffer, form: StartForm): string | null {
  const fields: readonly (readonly [string, number, number, number])[] = [
    ['Stitches over 10 cm', form.stitches, 1, 80],
    ['Rows over 10 cm', form.rows, 1, 80],
    ['Hook', form.hookMm, 0.5, 30],
    ...form.sizes.flatMap((size, i) => offer.measures.map(({ name, label }) => [`${label}${form.sizes.length > 1 ? `, size ${size.name || i + 1},` : ''}`, size.cm[name] ?? Number.NaN, 2, 300] as const)),
  ];
  const wrong = fields.find(([, value, least, most]) => !(value >= least && value <= most));
  return wrong ? `${wrong[0]} is ${Number.isFinite(wrong[1]) ? wrong[1] : 'empty'}; it has to be between ${wrong[2]} and ${wrong[3]}.` : null;
}

/** A workable pattern of a sound form, in the first yarn; it keeps the measurements that it was made to. The id is the caller's to set. */
export function startPiece({ settings, measures, name }: ConstructionOffer, form: StartForm): Pattern {
  const gauge = { stitches: form.stitches, rows: form.rows, overCm: 10, stitch: 'sc' } as const;
  const sizes = form.sizes.length === 1 ? [form.sizes[0]!.name.trim()] : form.sizes.map((size, i) => size.name.trim() || `${i + 1}`);
  const asked = measures.map(({ name: measure }): Measure => ({ name: measure, cm: form.sizes.map((size) => size.cm[measure] ?? null), easePercent: 0, easeCm: 0 }));
  const empty = startPattern('empty', {
    title: form.title.trim() || name, gauge, hookMm: form.hookMm, yarns: FIRST_YARNS, sizes: sizes.map((size) => ({ name: size, girthCm: 0, heightCm: 0, footCm: 0 })),
  });
  if (!settings) return empty;
  return { ...empty, sections: makePiece({ settings, gauge, swatches: [], sizes, measures: asked, pins: {} }).sections, piece: { measures: asked } };
}
