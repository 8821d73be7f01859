import type { Ground, IndexedRow } from './ground.ts';
import type { Guide } from './layout.ts';
import type { RowSlots } from './rowSlots.ts';

/** Distance of a band's words from the fabric, in row heights. */
const WORDS_CLEAR = 0.3;

/** A band along a run of slots of one row (left to right) that were left open, its words above it; `count` 0 for a band without words. */
export function bandOver(ground: Ground, slots: readonly number[], row: number, count = slots.length): Guide {
  const { first, corners: c } = ground;
  const points: number[] = [];
  for (const slot of slots) points.push(c[(slot - first) * 8]!, c[(slot - first) * 8 + 1]!, c[(slot - first) * 8 + 2]!, c[(slot - first) * 8 + 3]!);
  for (const slot of slots.toReversed()) points.push(c[(slot - first) * 8 + 4]!, c[(slot - first) * 8 + 5]!, c[(slot - first) * 8 + 6]!, c[(slot - first) * 8 + 7]!);
  const xs = points.filter((_, i) => i % 2 === 0);
  const top = Math.min(...points.filter((_, i) => i % 2 === 1));
  return { kind: 'open', points: plain(points), count, row, lastRow: row, textX: (Math.min(...xs) + Math.max(...xs)) / 2, textY: top - WORDS_CLEAR * ground.h, turnRad: 0 };
}

/** Without points that repeat or lie on a level line between two others. */
function plain(points: readonly number[]): number[] {
  const kept: number[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const n = kept.length;
    const [x, y] = [points[i]!, points[i + 1]!];
    if (n >= 2 && kept[n - 2] === x && kept[n - 1] === y) continue;
    if (n >= 4 && kept[n - 1] === y && kept[n - 3] === y) kept[n - 2] = x;
    else kept.push(x, y);
  }
  return kept;
}

/**
 * Bands on the stitches that flat rows left open at their end: those of the row below beyond the last one worked into, as far as
 * the row's report says that they are still open. `groundAt`: a ground with the stitches of row `r` in it. Linear cost.
 */
export function openBands(ground: Ground, rows: readonly IndexedRow[], slots: readonly RowSlots[], groundAt: (r: number) => Ground): Guide[] {
  if (!rows.some(({ left }) => left.ahead > 0)) return [];
  const { fabric } = ground;
  const used = new Uint8Array(ground.end - ground.first);
  for (const row of rows) {
    for (let b = fabric.baseStart[row.first]!; b < fabric.baseStart[row.end]!; b++) {
      const base = fabric.bases[b]! - ground.first;
      if (base >= 0 && base < used.length) used[base] = 1;
    }
  }
  const place = new Map(rows.map(({ index }, r) => [index, r]));
  return rows.flatMap((row): Guide[] => {
    const below = place.get(row.below);
    if (row.left.ahead === 0 || below === undefined || rows[below]!.word === 'foundation') return [];
    const under = slots[below]!.slots;
    const run: number[] = [];
    // A row that runs to the left leaves stitches open at the left.
    for (let k = 0; k < Math.min(under.length, row.left.ahead); k++) {
      const slot = row.direction < 0 ? under[k]! : under[under.length - 1 - k]!;
      if (used[slot - ground.first]) break;
      run.push(slot);
    }
    return run.length === 0 ? [] : [bandOver(groundAt(below), row.direction < 0 ? run : run.reverse(), row.index)];
  });
}
