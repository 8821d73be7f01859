import * as v from 'valibot';
import { TECHNIQUES } from '../craft/colourTechniques.ts';
import { STITCH_OVERRIDES } from '../craft/stitchOverrides.ts';
import { LIMITS } from './limits.ts';
import { pieceSchema } from './pieceSchema.ts';
import type { CellRun, ColourLimits, Imprint, Line, Motif, Pattern, Placement, RowKey, Section, SectionColour, Version, Wording } from './pattern.ts';

/*
 * The shape of the document, for files and for edits alike. Objects are strict: a field that is not known is a fault and
 * not dropped, so nothing of a maker's file is lost without a word. Whether ids and letters meet is checked apart, see
 * `referenceFault`.
 */

const whole = (least: number) => v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(LIMITS.count));
const amount = v.union([whole(0), v.pipe(v.array(whole(0)), v.minLength(1), v.maxLength(LIMITS.sizes))]);
const freeNumber = v.pipe(v.number(), v.finite());
const text = v.pipe(v.string(), v.maxLength(LIMITS.textLength));
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(LIMITS.idLength));
const measure = v.pipe(v.number(), v.finite(), v.gtValue(0), v.maxValue(10_000));

const label = v.strictObject({
  word: v.picklist(['row', 'round', 'foundation', 'setup', 'next']),
  rows: amount,
  start: v.nullable(amount),
  side: v.nullable(v.picklist(['RS', 'WS'])),
});

/** One line of a section. */
export const lineSchema = v.variant('kind', [
  v.strictObject({ kind: v.literal('row'), id, label, text }),
  v.strictObject({ kind: v.literal('step'), id, text }),
  v.strictObject({ kind: v.literal('note'), id, text }),
]);

/** The recipe of a section with its settings, or null. */
export const recipeSchema = v.nullable(
  v.strictObject({
    name: text,
    settings: v.pipe(
      v.record(id, v.union([freeNumber, v.pipe(v.array(freeNumber), v.minLength(1), v.maxLength(LIMITS.sizes)), text, v.boolean()])),
      v.maxEntries(LIMITS.settings),
    ),
  }),
);

const letter = v.pipe(v.string(), v.regex(/^[A-Z]$/, 'Expected one letter A to Z'));

/** What lies under the layers of a section. */
const groundSchema = v.variant('kind', [
  v.strictObject({ kind: v.literal('rows') }),
  v.strictObject({
    kind: v.literal('replace'),
    yarns: v.pipe(
      v.array(v.strictObject({ from: letter, to: letter })),
      v.minLength(1),
      v.maxLength(LIMITS.yarns),
      v.check((yarns) => new Set(yarns.map(({ from }) => from)).size === yarns.length, 'Expected each yarn to be replaced once'),
    ),
  }),
  v.strictObject({ kind: v.literal('stripes'), stripes: v.pipe(v.array(v.strictObject({ letter, rows: whole(1) })), v.minLength(1), v.maxLength(LIMITS.stripes)) }),
]);

const technique = v.picklist(TECHNIQUES);

/** How the colours of a section are worked. */
export const sectionColourSchema = v.strictObject({ technique: v.exactOptional(technique), ground: v.exactOptional(groundSchema) });

export const sectionSchema = v.strictObject({
  id,
  name: text,
  remark: text,
  lines: v.pipe(v.array(lineSchema), v.maxLength(LIMITS.lines)),
  recipe: recipeSchema,
  colour: v.exactOptional(sectionColourSchema),
});

const motifRow = v.pipe(v.string(), v.regex(/^[A-Z.]+$/, 'Expected yarn letters A to Z and "."'), v.maxLength(LIMITS.motifSide));

const OVERRIDES = STITCH_OVERRIDES.map((row) => row.letter).join('');
const stitchRow = v.pipe(v.string(), v.regex(new RegExp(`^[${OVERRIDES}.]+$`), `Expected letters of stitches (${OVERRIDES}) and "."`), v.maxLength(LIMITS.motifSide));

export const motifSchema = v.pipe(
  v.strictObject({
    id,
    name: text,
    cells: v.pipe(
      v.array(motifRow),
      v.minLength(1),
      v.maxLength(LIMITS.motifSide),
      v.check((rows) => rows.every((row) => row.length === rows[0]!.length), 'Expected rows of one length'),
    ),
    stitches: v.exactOptional(v.pipe(v.array(stitchRow), v.maxLength(LIMITS.motifSide))),
  }),
  v.check(({ cells, stitches }) => !stitches || (stitches.length === cells.length && stitches.every((row) => row.length === cells[0]!.length)), 'Expected as many stitches as cells'),
);

export const rowKeySchema = v.strictObject({ line: id, nth: whole(0) });

const placementOfSize = v.strictObject({
  leftOut: v.exactOptional(v.boolean()),
  rowsUp: v.exactOptional(whole(-LIMITS.count)),
  offset: v.exactOptional(whole(-LIMITS.count)),
  across: v.exactOptional(v.union([v.literal('fill'), whole(1)])),
  up: v.exactOptional(whole(1)),
  gap: v.exactOptional(whole(0)),
  gapUp: v.exactOptional(whole(0)),
});

export const placementSchema = v.strictObject({
  id,
  section: id,
  motif: id,
  row: rowKeySchema,
  align: v.picklist(['left', 'centre', 'right']),
  offset: whole(-LIMITS.count),
  across: v.union([v.literal('fill'), whole(1)]),
  up: whole(1),
  gap: whole(0),
  mirror: v.boolean(),
  gapUp: v.exactOptional(whole(0)),
  fill: v.exactOptional(v.picklist(['whole', 'spread', 'edges'])),
  anchor: v.exactOptional(v.picklist(['row', 'seam', 'front'])),
  follow: v.exactOptional(v.picklist(['left', 'centre', 'right'])),
  stagger: v.exactOptional(v.strictObject({ kind: v.picklist(['halfDrop', 'brick']), by: v.union([v.literal('half'), whole(0)]), closed: v.boolean() })),
  flip: v.exactOptional(v.boolean()),
  bySize: v.exactOptional(v.pipe(v.array(v.nullable(placementOfSize)), v.maxLength(LIMITS.sizes))),
  hidden: v.exactOptional(v.boolean()),
  locked: v.exactOptional(v.boolean()),
});

const letters = v.pipe(v.string(), v.regex(/^[A-Z.]+$/, 'Expected yarn letters A to Z and "."'), v.maxLength(LIMITS.count));

/** A run of loose cells as an edit gives it, without its row. */
export const runSchema = v.strictObject({ from: whole(0), letters });

export const cellRunSchema = v.strictObject({ section: id, row: rowKeySchema, size: whole(0), from: whole(0), letters });

const yarn = v.strictObject({
  letter,
  name: text,
  colour: v.pipe(v.string(), v.regex(/^#[0-9a-f]{6}$/i, 'Expected a colour as #rrggbb')),
  mark: v.picklist(['none', 'dot', 'slash', 'cross', 'bars', 'ring', 'solid', 'wedge']),
});

export const versionSchema = v.strictObject({
  id,
  name: text,
  sections: v.pipe(
    v.array(
      v.strictObject({
        section: id,
        placements: v.exactOptional(v.pipe(v.array(id), v.maxLength(LIMITS.placements))),
        cells: v.exactOptional(v.boolean()),
        technique: v.exactOptional(technique),
        ground: v.exactOptional(groundSchema),
      }),
    ),
    v.maxLength(LIMITS.sections),
    v.check((sections) => new Set(sections.map(({ section }) => section)).size === sections.length, 'Expected each section once'),
  ),
});

/** From where on the checks of colour ask. */
export const colourLimitsSchema = v.strictObject({
  longestCarry: v.exactOptional(v.nullable(whole(0))),
  mostYarns: v.exactOptional(v.nullable(whole(1))),
  rowsUp: v.exactOptional(whole(0)),
  leastDifference: v.exactOptional(v.pipe(v.number(), v.minValue(0), v.maxValue(200))),
  leastContrast: v.exactOptional(v.pipe(v.number(), v.minValue(1), v.maxValue(21))),
});

/** How the pattern is worded when it is written out. */
export const wordingSchema = v.strictObject({
  runs: v.exactOptional(v.picklist(['long', 'short'])),
  repeats: v.exactOptional(v.picklist(['star', 'bracket'])),
  count: v.exactOptional(v.picklist(['paren', 'dash'])),
  terms: v.exactOptional(v.picklist(['us', 'uk'])),
});

/** What is said about the pattern where it is published. */
export const imprintSchema = v.strictObject({
  about: v.exactOptional(text),
  licence: v.exactOptional(text),
  credits: v.exactOptional(text),
  edition: v.exactOptional(text),
  date: v.exactOptional(text),
  editions: v.exactOptional(v.pipe(v.array(v.strictObject({ name: text, date: text, errata: text })), v.maxLength(LIMITS.editions))),
});

/** The fields that are replaced whole, each with its schema. */
export const fieldSchemas = {
  title: text,
  designer: text,
  terms: v.picklist(['us', 'uk']),
  gauge: v.strictObject({ stitches: measure, rows: measure, overCm: measure, stitch: v.picklist(['sc', 'hdc', 'dc']) }),
  hookMm: v.nullable(measure),
  yarns: v.pipe(
    v.array(yarn),
    v.minLength(1),
    v.maxLength(LIMITS.yarns),
    v.check((yarns) => new Set(yarns.map((one) => one.letter)).size === yarns.length, 'Expected a letter of its own for each yarn'),
  ),
  sizes: v.pipe(v.array(text), v.minLength(1), v.maxLength(LIMITS.sizes)),
  hdcTurningChainCounts: v.boolean(),
  notes: v.pipe(v.array(v.strictObject({ word: text, value: text })), v.maxLength(LIMITS.notes)),
} as const;

/** The whole document, in the order in which files keep it. */
export const patternSchema = v.strictObject({
  id,
  ...fieldSchemas,
  sections: v.pipe(v.array(sectionSchema), v.maxLength(LIMITS.sections)),
  motifs: v.pipe(v.array(motifSchema), v.maxLength(LIMITS.motifs)),
  placements: v.pipe(v.array(placementSchema), v.maxLength(LIMITS.placements)),
  cells: v.pipe(v.array(cellRunSchema), v.maxLength(LIMITS.cellRuns)),
  versions: v.exactOptional(v.pipe(v.array(versionSchema), v.maxLength(LIMITS.versions))),
  colourLimits: v.exactOptional(colourLimitsSchema),
  piece: v.exactOptional(pieceSchema),
  wording: v.exactOptional(wordingSchema),
  imprint: v.exactOptional(imprintSchema),
});

type Plain<T> = T extends string | number | boolean | null ? T : { -readonly [K in keyof T]: Plain<T[K]> };
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;
type Of<S extends v.GenericSchema> = Plain<v.InferOutput<S>>;

// The compiler says here when the contract and the schema part ways.
true satisfies Same<Of<typeof patternSchema>, Plain<Pattern>>;
true satisfies Same<Of<typeof lineSchema>, Plain<Line>>;
true satisfies Same<Of<typeof sectionSchema>, Plain<Section>>;
true satisfies Same<Of<typeof motifSchema>, Plain<Motif>>;
true satisfies Same<Of<typeof placementSchema>, Plain<Placement>>;
true satisfies Same<Of<typeof cellRunSchema>, Plain<CellRun>>;
true satisfies Same<Of<typeof rowKeySchema>, Plain<RowKey>>;
true satisfies Same<Of<typeof sectionColourSchema>, Plain<SectionColour>>;
true satisfies Same<Of<typeof versionSchema>, Plain<Version>>;
true satisfies Same<Of<typeof colourLimitsSchema>, Plain<ColourLimits>>;
true satisfies Same<Of<typeof wordingSchema>, Plain<Wording>>;
true satisfies Same<Of<typeof imprintSchema>, Plain<Imprint>>;
