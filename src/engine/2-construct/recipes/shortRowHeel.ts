import { ordinalsText, sizesText } from './sizesText.ts';

/** A heel turned in short rows, one entry a size. */
export interface HeelSettings {
  /** Stitches of the heel. */
  readonly stitches: readonly number[];
  /** Stitches left open after row 2 and after row 3. The sides close evenly when they are equal or the first has one more. */
  readonly leftFirst: readonly number[];
  readonly leftSecond: readonly number[];
  /** Yarn letter, or null to go on with the yarn in hand. */
  readonly yarn: string | null;
}

/**
 * How many stitches to leave on each side of a heel of `stitches`: about half of them stay live in the middle, since rows of
 * single crochet are nearly as tall as a stitch is wide (a published crochet tutorial turns 20 to 10; another 15 to 7).
 */
export function heelSides(stitches: number): { readonly first: number; readonly second: number } {
  const left = Math.max(2, stitches - Math.round(stitches / 2 / 2) * 2);
  return { first: Math.ceil(left / 2), second: Math.floor(left / 2) };
}

/**
 * The written section of a heel turned in short rows on the edge of the leg, centred on the seam: narrowed in rows 2 and 3,
 * then each row works its own stitches and one open stitch more, a + b rows on all are used (common practice). Refuses sides
 * that leave no stitch in the middle.
 */
export function shortRowHeel(name: string, settings: HeelSettings): string {
  const { stitches, leftFirst, leftSecond, yarn } = settings;
  const row2 = stitches.map((count, i) => count - leftFirst[i]!);
  const row3 = row2.map((count, i) => count - leftSecond[i]!);
  row3.forEach((count, i) => {
    if (count < 1) throw new RangeError(`${leftFirst[i]} and ${leftSecond[i]} stitches left open of a heel of ${stitches[i]}`);
  });
  const before = stitches.map((count) => Math.ceil(count / 2));
  const last = leftFirst.map((count, i) => 3 + count + leftSecond[i]!);
  return [
    `${name.toUpperCase()} (turned in short rows)`,
    `Join${yarn ? ` ${yarn}` : ''} with a sl st in the ${ordinalsText(before)} st before the seam.`,
    `Row 1 (RS): ch 1, sc in same st, sc in next ${sizesText(before.map((count) => count - 1))} sts, skip the seam, sc in next ${sizesText(stitches.map((count, i) => count - before[i]!))} sts. Leave the rest unworked. (${sizesText(stitches)} sc)`,
    `Row 2: ch 1, turn, sc in next ${sizesText(row2)} sts. Leave ${sizesText(leftFirst)} unworked. (${sizesText(row2)} sc)`,
    `Row 3: ch 1, turn, sc in next ${sizesText(row3)} sts. Leave ${sizesText(leftSecond)} unworked. (${sizesText(row3)} sc)`,
    `Rows 4-${sizesText(last)}: ch 1, turn, sc in each st across, sc in next unworked st. (1 st more in each row, ending with ${sizesText(stitches)} sc)`,
  ].join('\n');
}
