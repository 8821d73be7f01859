import * as v from 'valibot';

const runSchema = v.object({ from: v.pipe(v.number(), v.integer(), v.minValue(0)), letters: v.pipe(v.string(), v.maxLength(2000)) });
const clipSchema = v.variant('kind', [
  v.object({
    kind: v.literal('rows'),
    clip: v.object({
      terms: v.picklist(['us', 'uk']),
      sizes: v.pipe(v.array(v.string()), v.maxLength(50)),
      rows: v.pipe(v.array(v.object({ word: v.picklist(['row', 'round']), text: v.pipe(v.string(), v.maxLength(20_000)), plain: v.pipe(v.string(), v.maxLength(20_000)), runs: v.pipe(v.array(runSchema), v.maxLength(2000)) })), v.minLength(1), v.maxLength(500)),
    }),
  }),
  v.object({ kind: v.literal('block'), block: v.object({ rows: v.pipe(v.array(v.pipe(v.string(), v.maxLength(2000))), v.minLength(1), v.maxLength(2000)) }) }),
]);

/** What was copied on the bench: rows, or the yarns of a block of stitches. Plain JSON. */
export type Clip = v.InferOutput<typeof clipSchema>;

const KEY = 'turnwork-copied';

/** Keeps what was copied, for every pattern and window of this device. False where the device keeps nothing. */
export function keepClip(storage: Pick<Storage, 'setItem'>, clip: Clip): boolean {
  try {
    storage.setItem(KEY, JSON.stringify(clip));
    return true;
  } catch {
    return false;
  }
}

/** What was copied last, or null: nothing, or nothing that can be read. */
export function takeClip(storage: Pick<Storage, 'getItem'>): Clip | null {
  try {
    const clip = v.safeParse(clipSchema, JSON.parse(storage.getItem(KEY) ?? 'null'));
    return clip.success ? clip.output : null;
  } catch {
    return null;
  }
}
