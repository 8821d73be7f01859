import * as v from 'valibot';
import type { Edit, Transaction } from './edit.ts';
import { LIMITS } from './limits.ts';
import { pieceSchema } from './pieceSchema.ts';
import { cellRunSchema, colourLimitsSchema, fieldSchemas, imprintSchema, lineSchema, motifSchema, patternSchema, placementSchema, recipeSchema, rowKeySchema, runSchema, sectionColourSchema, sectionSchema, versionSchema, wordingSchema } from './schema.ts';

const id = v.pipe(v.string(), v.maxLength(LIMITS.idLength));
const place = v.pipe(v.number(), v.integer(), v.minValue(0));
const words = v.pipe(v.string(), v.maxLength(LIMITS.textLength));
const set = v.literal('set');

/** One edit as plain JSON. Whether it can be made on a pattern is for `applyEdit` to say. */
export const editSchema = v.union([
  v.variant('field', [
    v.strictObject({ kind: set, field: v.literal('title'), value: fieldSchemas.title }),
    v.strictObject({ kind: set, field: v.literal('designer'), value: fieldSchemas.designer }),
    v.strictObject({ kind: set, field: v.literal('terms'), value: fieldSchemas.terms }),
    v.strictObject({ kind: set, field: v.literal('gauge'), value: fieldSchemas.gauge }),
    v.strictObject({ kind: set, field: v.literal('hookMm'), value: fieldSchemas.hookMm }),
    v.strictObject({ kind: set, field: v.literal('yarns'), value: fieldSchemas.yarns }),
    v.strictObject({ kind: set, field: v.literal('sizes'), value: fieldSchemas.sizes }),
    v.strictObject({ kind: set, field: v.literal('hdcTurningChainCounts'), value: fieldSchemas.hdcTurningChainCounts }),
    v.strictObject({ kind: set, field: v.literal('notes'), value: fieldSchemas.notes }),
  ]),
  v.variant('kind', [
    v.strictObject({ kind: v.literal('insertSection'), at: place, section: sectionSchema }),
    v.strictObject({ kind: v.literal('removeSection'), section: id }),
    v.strictObject({ kind: v.literal('setSection'), section: id, name: words, remark: words, recipe: recipeSchema }),
    v.strictObject({ kind: v.literal('setSectionColour'), section: id, colour: v.nullable(sectionColourSchema) }),
    v.strictObject({ kind: v.literal('setLine'), section: id, line: lineSchema }),
    v.strictObject({ kind: v.literal('insertLines'), section: id, at: place, lines: v.array(lineSchema) }),
    v.strictObject({ kind: v.literal('removeLines'), section: id, lines: v.array(id) }),
    v.strictObject({ kind: v.literal('splitLine'), section: id, line: id, at: place, newId: id }),
    v.strictObject({ kind: v.literal('joinLines'), section: id, line: id }),
    v.strictObject({ kind: v.literal('insertMotif'), at: place, motif: motifSchema }),
    v.strictObject({ kind: v.literal('setMotif'), motif: motifSchema }),
    v.strictObject({ kind: v.literal('removeMotif'), motif: id }),
    v.strictObject({ kind: v.literal('insertPlacement'), at: place, placement: placementSchema }),
    v.strictObject({ kind: v.literal('setPlacement'), placement: placementSchema }),
    v.strictObject({ kind: v.literal('removePlacement'), placement: id }),
    v.strictObject({ kind: v.literal('movePlacement'), placement: id, to: place }),
    v.strictObject({ kind: v.literal('insertVersion'), at: place, version: versionSchema }),
    v.strictObject({ kind: v.literal('setVersion'), version: versionSchema }),
    v.strictObject({ kind: v.literal('removeVersion'), version: id }),
    v.strictObject({ kind: v.literal('setColourLimits'), limits: v.nullable(colourLimitsSchema) }),
    v.strictObject({ kind: v.literal('setPiece'), piece: v.nullable(pieceSchema) }),
    v.strictObject({ kind: v.literal('setWording'), wording: v.nullable(wordingSchema) }),
    v.strictObject({ kind: v.literal('setImprint'), imprint: v.nullable(imprintSchema) }),
    v.strictObject({ kind: v.literal('setPattern'), pattern: patternSchema }),
    v.strictObject({ kind: v.literal('setCells'), section: id, row: rowKeySchema, size: cellRunSchema.entries.size, runs: v.array(runSchema) }),
  ]),
]);

/** A transaction as plain JSON. */
export const transactionSchema = v.strictObject({ label: v.string(), at: v.pipe(v.number(), v.finite()), edits: v.array(editSchema) });

type Plain<T> = T extends string | number | boolean | null ? T : { -readonly [K in keyof T]: Plain<T[K]> };
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;

// The compiler says here when the contract and the schema part ways.
true satisfies Same<Plain<v.InferOutput<typeof editSchema>>, Plain<Edit>>;
true satisfies Same<Plain<v.InferOutput<typeof transactionSchema>>, Plain<Transaction>>;
