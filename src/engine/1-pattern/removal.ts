import { compareRows } from './canonicalCells.ts';
import type { Edit } from './edit.ts';
import type { CellRun, Line, Pattern, RowKey } from './pattern.ts';

/** Something to take out of a pattern with all that hangs on it. */
export type Removable =
  /** Lines of one section that stand one after another. */
  | { readonly kind: 'lines'; readonly section: string; readonly lines: readonly string[] }
  | { readonly kind: 'section'; readonly section: string }
  /** The motif and every place where it is laid. */
  | { readonly kind: 'motif'; readonly motif: string }
  /** A yarn; motifs and loose cells take the yarn `to` in its stead. Rows that name it are left for their findings to say. */
  | { readonly kind: 'yarn'; readonly letter: string; readonly to: string };

/**
 * The edits that take something out and first clear what would stop it: loose cells go with their rows, a placement whose
 * bottom row goes moves to the next row that stays (the last one before if there is none after), and goes if no row stays.
 */
export function removal(pattern: Pattern, what: Removable): readonly Edit[] {
  switch (what.kind) {
    case 'lines':
      return [...clearedRows(pattern, what.section, new Set(what.lines)), { kind: 'removeLines', section: what.section, lines: what.lines }];
    case 'section': {
      const lines = pattern.sections.find((section) => section.id === what.section)?.lines ?? [];
      return [...clearedRows(pattern, what.section, new Set(lines.map((line) => line.id))), { kind: 'removeSection', section: what.section }];
    }
    case 'motif': {
      const placed = pattern.placements.filter((placement) => placement.motif === what.motif);
      return [...placed.map(({ id }): Edit => ({ kind: 'removePlacement', placement: id })), { kind: 'removeMotif', motif: what.motif }];
    }
    case 'yarn': {
      const replaced = (letters: string) => letters.replaceAll(what.letter, what.to);
      const motifs = pattern.motifs.filter((motif) => motif.cells.some((row) => row.includes(what.letter)));
      return [
        ...motifs.map((motif): Edit => ({ kind: 'setMotif', motif: { ...motif, cells: motif.cells.map(replaced) } })),
        ...cellRows(pattern.cells, (run) => run.letters.includes(what.letter)).map(
          (runs): Edit => ({ kind: 'setCells', ...placeOf(runs[0]!), runs: runs.map(({ from, letters }) => ({ from, letters: replaced(letters) })) }),
        ),
        { kind: 'set', field: 'yarns', value: pattern.yarns.filter((yarn) => yarn.letter !== what.letter) },
      ];
    }
  }
}

function clearedRows(pattern: Pattern, section: string, lines: ReadonlySet<string>): readonly Edit[] {
  const isGoing = (one: { readonly section: string; readonly row: RowKey }) => one.section === section && lines.has(one.row.line);
  const next = rowThatStays(pattern.sections.find((one) => one.id === section)?.lines ?? [], lines);
  return [
    ...cellRows(pattern.cells, isGoing).map((runs): Edit => ({ kind: 'setCells', ...placeOf(runs[0]!), runs: [] })),
    ...pattern.placements.filter(isGoing).map((placement): Edit => (next ? { kind: 'setPlacement', placement: { ...placement, row: next } } : { kind: 'removePlacement', placement: placement.id })),
  ];
}

function rowThatStays(lines: readonly Line[], going: ReadonlySet<string>): RowKey | null {
  const last = lines.findLastIndex((line) => going.has(line.id));
  const carries = (line: Line): line is Extract<Line, { kind: 'row' }> => line.kind === 'row' && line.label.word !== 'foundation' && !going.has(line.id);
  const after = lines.slice(last + 1).find(carries);
  if (after) return { line: after.id, nth: 0 };
  const before = lines.slice(0, last).findLast(carries);
  if (!before) return null;
  const { rows } = before.label;
  return { line: before.id, nth: Math.max((typeof rows === 'number' ? rows : Math.max(...rows)) - 1, 0) };
}

/** The runs of every row and size that has one of the wanted, row by row. */
function cellRows(cells: readonly CellRun[], isWanted: (run: CellRun) => boolean): readonly (readonly CellRun[])[] {
  const rows: CellRun[][] = [];
  for (const run of [...cells].sort(compareRows)) {
    if (rows.length > 0 && compareRows(rows.at(-1)![0]!, run) === 0) rows.at(-1)!.push(run);
    else rows.push([run]);
  }
  return rows.filter((row) => row.some(isWanted));
}

function placeOf({ section, row, size }: CellRun): { readonly section: string; readonly row: RowKey; readonly size: number } {
  return { section, row, size };
}
