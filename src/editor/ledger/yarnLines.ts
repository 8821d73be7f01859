import type { Yarn } from '../../engine/1-pattern/pattern.ts';
import type { RowCarry, SectionCarry } from '../../engine/4-colour/carry.ts';
import { carryWords, cmOf, travelWords } from '../yarns/carryWords.ts';

/** What the ledger tells of the yarns of a row. */
export interface YarnLine {
  /** Changes of yarn, the one at its start included. */
  readonly changes: number;
  /** The longest carry or float, short (`B 7 · 3.9 cm`) and in words; null where nothing is carried. */
  readonly longest: { readonly short: string; readonly says: string; readonly isOver: boolean } | null;
  /** Yarns that have to travel back (`B back 4`) or are joined anew because they hang too far off (`A anew`); null for none. */
  readonly fetched: { readonly short: string; readonly says: string } | null;
  /** Lengths of yarn in use; only told where bobbins are wound. */
  readonly bobbins: number | null;
  readonly ends: number;
}

/** What the yarns of a section do, by row index in the fabric. `widthMm` of a stitch. */
export function yarnLines(section: SectionCarry, yarns: readonly Yarn[], widthMm: number): ReadonlyMap<number, YarnLine> {
  const most = section.limits.longestCarry;
  return new Map(
    section.rows.map((row): [number, YarnLine] => [
      row.row,
      {
        changes: row.changes + (row.changesAtStart ? 1 : 0),
        longest: row.longest && {
          short: `${letterOf(yarns, row.longest.yarn)} ${row.longest.stitches} · ${cmOf(row.longest.stitches, widthMm)} cm`,
          says: carryWords(row.longest, yarns, widthMm),
          isOver: most !== null && row.longest.stitches > most,
        },
        fetched: fetchedOf(row, yarns),
        bobbins: section.technique === 'intarsia' ? row.supplies : null,
        ends: row.ends,
      },
    ]),
  );
}

/** Each yarn once, with the longest way and how often. */
function fetchedOf({ travels }: RowCarry, yarns: readonly Yarn[]): YarnLine['fetched'] {
  const told = travels.filter((one) => one.isAgainst || one.isCut);
  if (told.length === 0) return null;
  const short = [false, true].flatMap((isCut) =>
    [...new Set(told.filter((one) => one.isCut === isCut).map(({ yarn }) => yarn))].map((yarn) => {
      const own = told.filter((one) => one.yarn === yarn && one.isCut === isCut);
      const way = isCut ? 'anew' : `back ${Math.max(...own.map(({ stitches }) => stitches))}`;
      return `${letterOf(yarns, yarn)} ${way}${own.length > 1 ? ` ×${own.length}` : ''}`;
    }),
  );
  return { short: short.join(', '), says: travelWords({ travels: told }, yarns) };
}

function letterOf(yarns: readonly Yarn[], yarn: number): string {
  return yarns[yarn]?.letter ?? '?';
}
