import * as v from 'valibot';
import { FEATURES, WEARERS } from '../craft/cautions.ts';
import { LIMITS } from './limits.ts';
import { MEASURE_NAMES, SWATCH_TECHNIQUES, type PieceFacts } from './pieceFacts.ts';

const id = v.pipe(v.string(), v.minLength(1), v.maxLength(LIMITS.idLength));
const above = v.pipe(v.number(), v.finite(), v.gtValue(0), v.maxValue(10_000));
const known = v.nullable(above);
const free = v.pipe(v.number(), v.finite(), v.minValue(-1_000_000), v.maxValue(1_000_000));
const letter = v.pipe(v.string(), v.regex(/^[A-Z]$/, 'Expected one letter A to Z'));
const weight = v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(7)));
const perSize = <T extends v.GenericSchema>(one: T) => v.pipe(v.array(v.nullable(one)), v.minLength(1), v.maxLength(LIMITS.sizes));

const swatch = v.strictObject({
  id, stitch: v.picklist(['sc', 'hdc', 'dc']), technique: v.picklist(SWATCH_TECHNIQUES), washed: v.boolean(),
  stitches: above, widthCm: above, rows: above, heightCm: above,
  hookMm: known, weight, stretchedCm: known, yarn: v.nullable(letter), grams: known, metres: known,
});

const measure = v.strictObject({ name: v.picklist(MEASURE_NAMES), cm: perSize(above), easePercent: v.pipe(v.number(), v.finite(), v.gtValue(-100), v.maxValue(1_000)), easeCm: free });

const supply = v.strictObject({ letter, weight, ballGrams: known, ballMetres: known, price: v.nullable(v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1_000_000))) });

/** What a piece is made to and of. */
export const pieceSchema = v.strictObject({
  swatches: v.exactOptional(v.pipe(v.array(swatch), v.maxLength(LIMITS.swatches), v.check((all) => areApart(all.map((one) => one.id)), 'Expected an id of its own for each swatch'))),
  measures: v.exactOptional(v.pipe(v.array(measure), v.maxLength(MEASURE_NAMES.length), v.check((all) => areApart(all.map((one) => one.name)), 'Expected each measurement once'))),
  pins: v.exactOptional(v.pipe(v.record(id, perSize(free)), v.maxEntries(LIMITS.settings))),
  supplies: v.exactOptional(v.pipe(v.array(supply), v.maxLength(LIMITS.yarns), v.check((all) => areApart(all.map((one) => one.letter)), 'Expected each yarn once'))),
  currency: v.exactOptional(v.pipe(v.string(), v.maxLength(LIMITS.idLength))),
  marginPercent: v.exactOptional(v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1_000))),
  tailCm: v.exactOptional(v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1_000))),
  wearer: v.exactOptional(v.picklist(WEARERS)),
  features: v.exactOptional(v.pipe(v.array(v.picklist(FEATURES)), v.maxLength(FEATURES.length))),
});

function areApart(keys: readonly string[]): boolean {
  return new Set(keys).size === keys.length;
}

type Plain<T> = T extends string | number | boolean | null ? T : { -readonly [K in keyof T]: Plain<T[K]> };
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;

// The compiler says here when the contract and the schema part ways.
true satisfies Same<Plain<v.InferOutput<typeof pieceSchema>>, Plain<PieceFacts>>;
