import type { ProgramRow } from '../../2-construct/program.ts';
import { FLAG, type Fabric } from '../../3-fabric/fabric.ts';
import type { Instruction } from '../../notation/instruction.ts';

/** One step of a row: what a maker does between two looks at the picture. */
export interface Step {
  /** Row index in the fabric. */
  readonly row: number;
  /** From 1 in its row. */
  readonly nth: number;
  /** Stitches [from, to) that the step makes; none where it only turns. */
  readonly from: number;
  readonly to: number;
  /** The clauses that say it; empty where the row is at its end. */
  readonly clauses: readonly Instruction[];
  /** Stitch that the hook goes into first, -1 where it goes into none. */
  readonly place: number;
  /** Last stitch made before, -1 at the start of a piece. */
  readonly inHand: number;
  /** Open places that the row can still reach in its own direction, and those that it has left behind it, before the step. */
  readonly open: { readonly ahead: number; readonly behind: number };
  /** The row is done: nothing is made any more. */
  readonly end: boolean;
}

/**
 * The steps of a row: one for each of its clauses that makes stitches, with the clauses between (turn, skip, leave) told with the
 * one that they belong to, and one for the row when it is done. Chains at its start go with the clause that follows only where they
 * are its turning chain. Open places ahead are those that the row takes, less those taken already, and what it leaves. Linear in the row.
 */
export function rowSteps(fabric: Fabric, row: number, program: Pick<ProgramRow, 'body'>): readonly Step[] {
  const worked = fabric.rows[row];
  if (!worked) throw new RangeError(`row ${row} asked of ${fabric.rows.length}`);
  const steps: Step[] = [];
  const taken = new Set<number>();
  let from = worked.first;
  let told = 0;
  const step = (to: number, upTo: number, end: boolean): void => {
    const bases = firstBases(fabric, from, to);
    steps.push({
      row, nth: steps.length + 1, from, to, clauses: program.body.slice(told, upTo), place: bases[0] ?? -1, inHand: from - 1,
      open: { ahead: end ? worked.left.ahead : worked.left.ahead + Math.max(0, worked.used - taken.size), behind: worked.left.behind }, end,
    });
    for (const base of allBases(fabric, from, to)) taken.add(base);
    from = to;
    told = upTo;
  };
  while (from < worked.end) {
    const clause = fabric.instruction[from]!;
    // "ch 1, turn" is one movement with its turn; what is left or skipped is said where the hook stands before it.
    let upTo = clause + 1;
    const turning = (fabric.flags[from]! & FLAG.turning) !== 0;
    while (upTo < program.body.length && (turning ? program.body[upTo]!.kind === 'turn' : false)) upTo++;
    upTo = Math.max(told, upTo);
    // Stitches of clauses that are told already, such as the chain left out at a foundation's end, are no step of their own.
    let to = from + 1;
    while (to < worked.end && (fabric.instruction[to] === clause || fabric.instruction[to]! < upTo)) to++;
    step(to, upTo, false);
  }
  step(worked.end, program.body.length, true);
  return steps;
}

/** Bases of the first stitch of a stretch that has any. */
function firstBases(fabric: Fabric, from: number, to: number): readonly number[] {
  for (let stitch = from; stitch < to; stitch++) {
    const bases = basesOf(fabric, stitch);
    if (bases.length > 0) return bases;
  }
  return [];
}

function allBases(fabric: Fabric, from: number, to: number): readonly number[] {
  return Array.from({ length: to - from }, (_, i) => basesOf(fabric, from + i)).flat();
}

function basesOf(fabric: Fabric, stitch: number): readonly number[] {
  return [...fabric.bases.subarray(fabric.baseStart[stitch], fabric.baseStart[stitch + 1])];
}

/**
 * Rows worth showing step by step: of every section with turned short rows, the first two rows and the last of each written line, as
 * row indices in working order; rows that follow the same words are not all shown.
 */
export function heelRows(fabric: Fabric): readonly number[] {
  return fabric.sections.flatMap(({ firstRow, endRow }) => {
    const rows = Array.from({ length: endRow - firstRow }, (_, i) => firstRow + i).filter((row) => isWorked(fabric, row));
    const turned = rows.some((row) => {
      const { first, end, round } = fabric.rows[row]!;
      return !round && fabric.flags.subarray(first, end).some((flags) => (flags & FLAG.attaching) !== 0);
    });
    if (!turned) return [];
    const byLine = new Map<string, number[]>();
    for (const row of rows) byLine.set(fabric.rows[row]!.key.line, [...(byLine.get(fabric.rows[row]!.key.line) ?? []), row]);
    return [...byLine.values()].flatMap((own) => [...new Set([...own.slice(0, 2), own.at(-1)!])]);
  });
}

function isWorked(fabric: Fabric, row: number): boolean {
  const { word, first, end } = fabric.rows[row]!;
  return end > first && word !== 'step' && word !== 'foundation';
}
