import { applyTransaction } from '../1-pattern/applyTransaction.ts';
import { canonicalRuns } from '../1-pattern/canonicalCells.ts';
import type { Edit } from '../1-pattern/edit.ts';
import type { Line, Pattern } from '../1-pattern/pattern.ts';
import { construct } from '../2-construct/construct.ts';
import { readLine } from '../2-construct/readLine.ts';
import { FLAG, type Fabric } from '../3-fabric/fabric.ts';
import { work } from '../3-fabric/work.ts';
import type { Instruction } from '../notation/instruction.ts';
import { writeRow } from '../notation/writeRow.ts';
import { colour } from './colour.ts';
import { colourGrid } from './colourGrid.ts';
import { changesYarnInside, lastYarn, namesYarnFirst, withoutYarns } from './withoutYarns.ts';

type Row = Extract<Line, { kind: 'row' }>;

/**
 * The edits that lift yarn changes out of the rows: a row whose text changes yarn after its first stitch is written with
 * its most used yarn alone (the first one where two are equal), and the runs in other yarns become loose cells, in every
 * size. Rows after it say their yarn where they took it from the row before. Nothing else changes: the rows are worked
 * anew here, and a line that would come out otherwise in any size is left as it is. Placements keep lying over the runs.
 * `fabrics` by size index, of this pattern. No edits if no row changes yarn inside.
 */
export function liftYarns(pattern: Pattern, fabrics: readonly Fabric[]): readonly Edit[] {
  if (fabrics.length !== pattern.sizes.length) throw new RangeError(`${fabrics.length} fabrics given for ${pattern.sizes.length} sizes`);
  const left = new Set<string>();
  for (;;) {
    const lines = liftedLines(pattern, fabrics, left);
    if (lines.length === 0) return [];
    const lifted = after(pattern, lines);
    const now = lifted && fabrics.map((fabric, size) => work(construct(lifted, size), fabric));
    const odd = lifted && now ? oddLine(pattern, lifted, fabrics, now) : lines[0]!.line.id;
    if (lifted && now && odd === null) return [...lines, ...cellEdits(pattern, lifted, fabrics, now)];
    // The line that came out otherwise, or where it can't be told, the last one that was lifted, stays as it is.
    const culprit = lines.find(({ line }) => line.id === odd) ?? lines.at(-1)!;
    left.add(culprit.line.id);
  }
}

type SetLine = Extract<Edit, { kind: 'setLine' }>;

/** The lines that are written anew, in order; those in `left` stay. */
function liftedLines(pattern: Pattern, fabrics: readonly Fabric[], left: ReadonlySet<string>): readonly SetLine[] {
  const out: SetLine[] = [];
  const stitches = lineStitches(pattern, fabrics);
  // The yarn that the hook has under the new text, and whether that is known.
  let yarn: string | null = pattern.yarns[0]?.letter ?? null;
  for (const section of pattern.sections) {
    for (const line of section.lines) {
      if (line.kind === 'note') continue;
      const { body, stated } = readLine(line, pattern);
      const made = stitches.get(line.id);
      if (line.kind === 'step' || !made) {
        yarn = lastYarn(body) ?? yarn;
        continue;
      }
      const base = changesYarnInside(body) && !left.has(line.id) ? made.most : null;
      if (base !== null) {
        const isSaid = namesYarnFirst(body) || yarn !== base;
        const said: readonly Instruction[] = isSaid ? [{ kind: 'yarn', letter: base, word: 'with', range: [0, 0] }] : [];
        out.push(setText(section.id, line, writeRow([...said, ...withoutYarns(body)], stated, { terms: pattern.terms })));
        yarn = base;
      } else {
        const isTaken = !namesYarnFirst(body) && !body.some((node) => node.kind === 'asRows');
        if (isTaken && yarn !== made.first && !left.has(line.id)) out.push(setText(section.id, line, `with ${made.first}, ${line.text}`));
        yarn = body.some((node) => node.kind === 'asRows') && out.length > 0 ? null : made.last;
      }
    }
  }
  // Without a lifted row, nothing needs saying either.
  return out.some(({ line }) => changesYarnInside(readLine(lineOf(pattern, line.id), pattern).body)) ? out : [];
}

function setText(section: string, line: Row, text: string): SetLine {
  return { kind: 'setLine', section, line: { ...line, text } };
}

function lineOf(pattern: Pattern, id: string): Line {
  return pattern.sections.flatMap((section) => section.lines).find((line) => line.id === id)!;
}

interface LineStitches {
  /** Letter of the line's first stitch, of its last one, and the letter that most of its counted stitches have. */
  readonly first: string;
  readonly last: string;
  readonly most: string;
}

/** For each line with stitches, the yarns that its rows say, over all sizes; first and last in the first size that has it. */
function lineStitches(pattern: Pattern, fabrics: readonly Fabric[]): ReadonlyMap<string, LineStitches> {
  const letter = (index: number) => pattern.yarns[index]?.letter ?? pattern.yarns[0]!.letter;
  const found = new Map<string, { size: number; first: number; last: number; counts: Map<number, number> }>();
  for (const [size, fabric] of fabrics.entries()) {
    for (const row of fabric.rows) {
      if (row.end === row.first || row.word === 'step') continue;
      let entry = found.get(row.key.line);
      if (!entry) found.set(row.key.line, (entry = { size, first: fabric.yarn[row.first]!, last: 0, counts: new Map() }));
      if (entry.size === size) entry.last = fabric.yarn[row.end - 1]!;
      for (let i = row.first; i < row.end; i++) {
        if (fabric.flags[i]! & FLAG.counts) entry.counts.set(fabric.yarn[i]!, (entry.counts.get(fabric.yarn[i]!) ?? 0) + 1);
      }
    }
  }
  // Counts are in the order in which the yarns come, so of equal ones the first stays first.
  return new Map([...found].map(([line, { first, last, counts }]) => [line, { first: letter(first), last: letter(last), most: letter([...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? first) }]));
}

function after(pattern: Pattern, edits: readonly Edit[]): Pattern | null {
  const applied = applyTransaction(pattern, { label: '', at: 0, edits });
  return applied.ok ? applied.pattern : null;
}

/** The first line whose stitches differ from before in any size; null if all are the same. */
function oddLine(before: Pattern, lifted: Pattern, old: readonly Fabric[], now: readonly Fabric[]): string | null {
  for (const [size, fabric] of old.entries()) {
    const other = now[size]!;
    for (const [r, row] of fabric.rows.entries()) {
      const same = other.rows[r];
      const isSame = same && same.first === row.first && same.end === row.end && same.made === row.made && same.stated === row.stated && same.direction === row.direction;
      if (!isSame || !sameStitches(fabric, other, row.first, row.end)) return row.key.line;
    }
    // A finding that was not there before means that a line reads otherwise.
    const places = new Set(fabric.findings.map((found) => `${found.rule} ${found.where.line}`));
    const fresh = other.findings.find((found) => !places.has(`${found.rule} ${found.where.line}`));
    if (fresh) return fresh.where.line ?? before.sections[0]?.lines[0]?.id ?? lifted.id;
  }
  return null;
}

function sameStitches(a: Fabric, b: Fabric, from: number, to: number): boolean {
  for (let i = from; i < to; i++) {
    if (a.kind[i] !== b.kind[i] || a.flags[i] !== b.flags[i] || a.legs[i] !== b.legs[i] || a.baseStart[i] !== b.baseStart[i]) return false;
    for (let j = a.baseStart[i]!; j < a.baseStart[i + 1]!; j++) if (a.bases[j] !== b.bases[j]) return false;
  }
  return true;
}

/** Loose cells wherever the lifted pattern would show another yarn than the pattern did, beside those that are there. */
function cellEdits(pattern: Pattern, lifted: Pattern, fabrics: readonly Fabric[], now: readonly Fabric[]): readonly Edit[] {
  return fabrics.flatMap((fabric, size) => {
    const grid = colourGrid(now[size]!);
    const wanted = colour(pattern, fabric, size).yarn;
    const shown = colour(lifted, now[size]!, size, grid).yarn;
    return fabric.rows.flatMap((row): readonly Edit[] => {
      const fresh: { from: number; letters: string }[] = [];
      for (let i = row.first; i < row.end; i++) {
        const column = grid.columns.columnOf[i]!;
        if (column >= 0 && wanted[i] !== shown[i]) fresh.push({ from: column, letters: pattern.yarns[wanted[i]!]!.letter });
      }
      if (fresh.length === 0) return [];
      const section = fabric.sections[row.section]!.id;
      const there = lifted.cells.filter((run) => run.size === size && run.section === section && run.row.line === row.key.line && run.row.nth === row.key.nth);
      return [{ kind: 'setCells', section, row: row.key, size, runs: canonicalRuns([...there, ...fresh]) }];
    });
  });
}
