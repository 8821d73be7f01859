import { stitchCode } from '../../../src/engine/craft/stitches.ts';
import type { Pattern, Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { FLAG, type Fabric, type WorkedRow } from '../../../src/engine/3-fabric/fabric.ts';

/** A row of a hand-made fabric: stitches that count, with a turning chain before them and, in a round, a join after them. */
export interface HandRow {
  readonly stitches: number;
  readonly line: string;
  readonly nth: number;
  readonly section?: string;
  readonly word?: WorkedRow['word'];
  readonly direction?: -1 | 1;
  readonly yarn?: number;
  /** Yarn of each counted stitch in working order, where it is not the same all along. */
  readonly yarns?: readonly number[];
  readonly round?: boolean;
}

/** A fabric of given rows: enough of one for colour, which looks at rows, counts, yarns and seams and at nothing else. */
export function handFabric(rows: readonly HandRow[], seamAfterRow: number | null = null): Fabric {
  const flags: number[] = [];
  const yarn: number[] = [];
  const kind: number[] = [];
  const rowOf: number[] = [];
  const worked: WorkedRow[] = [];
  const sections = [...new Set(rows.map((row) => row.section ?? 's'))];
  const add = (r: number, stitch: 'sc' | 'ch' | 'slst', flag: number, letter: number) => {
    kind.push(stitchCode(stitch));
    flags.push(flag);
    yarn.push(letter);
    rowOf.push(r);
  };
  for (const [r, row] of rows.entries()) {
    const first = flags.length;
    const base = row.yarns?.[0] ?? row.yarn ?? 0;
    if (row.word === 'foundation') for (let i = 0; i < row.stitches; i++) add(r, 'ch', FLAG.foundation, base);
    else if (row.word !== 'step') {
      add(r, 'ch', FLAG.turning, base);
      for (let i = 0; i < row.stitches; i++) add(r, 'sc', FLAG.counts, row.yarns?.[i] ?? base);
      if (row.round) add(r, 'slst', FLAG.join, row.yarns?.at(-1) ?? base);
    }
    const direction = row.direction ?? (r % 2 === 0 ? -1 : 1);
    worked.push({
      key: { line: row.line, nth: row.nth },
      section: sections.indexOf(row.section ?? 's'),
      word: row.word ?? 'row',
      number: r,
      side: direction === -1 ? 'RS' : 'WS',
      direction,
      first,
      end: flags.length,
      made: row.word === undefined || row.word === 'row' || row.word === 'round' ? row.stitches : 0,
      used: row.stitches,
      placed: row.stitches,
      left: { ahead: 0, behind: 0 },
      stated: null,
      open: row.stitches,
      ring: row.round ?? false,
      round: row.round ?? false,
      below: r - 1,
    });
  }
  const count = flags.length;
  const top = seamAfterRow === null ? null : worked[seamAfterRow]!;
  return {
    count,
    kind: Uint8Array.from(kind),
    yarn: Uint8Array.from(yarn),
    flags: Uint16Array.from(flags),
    legs: new Uint8Array(count),
    legKind: new Uint8Array(count),
    row: Int32Array.from(rowOf),
    previous: Int32Array.from({ length: count }, (_, i) => i - 1),
    baseStart: new Int32Array(count + 1),
    bases: new Int32Array(0),
    instruction: new Uint16Array(count),
    rows: worked,
    sections: sections.map((id, i) => ({ id, name: id, firstRow: worked.findIndex((row) => row.section === i), endRow: worked.findLastIndex((row) => row.section === i) + 1 })),
    seams: top ? [{ row: seamAfterRow!, before: top.end - 1, after: top.first + 1 }] : [],
    closings: [],
    openAtEnd: new Int32Array(0),
    findings: [],
  };
}

/** Rows of one line, worked flat: `counts[i]` stitches in row i, the first from right to left. */
export function flatRows(counts: readonly number[], line = 'r', section = 's'): readonly HandRow[] {
  return counts.map((stitches, nth) => ({ stitches, line, nth, section, direction: nth % 2 === 0 ? -1 : 1 }) as const);
}

const YARNS: Pattern['yarns'] = [
  { letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' },
  { letter: 'B', name: 'chalk', colour: '#f2efe6', mark: 'dot' },
  { letter: 'C', name: 'lamp orange', colour: '#d8702a', mark: 'cross' },
];

/** A pattern of three yarns for hand-made fabrics; rows of line `r` in section `s`. */
export function handPattern(more: Partial<Pattern>): Pattern {
  return {
    id: 'p',
    title: '',
    designer: '',
    terms: 'us',
    gauge: { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' },
    hookMm: null,
    yarns: YARNS,
    sizes: [''],
    hdcTurningChainCounts: false,
    notes: [],
    sections: [{ id: 's', name: 'LEG', remark: '', recipe: null, lines: [{ kind: 'row', id: 'r', text: 'sc in each st across', label: { word: 'row', rows: 20, start: null, side: null } }] }],
    motifs: [],
    placements: [],
    cells: [],
    ...more,
  };
}

/** A placement of motif `m` from the first row of line `r`, left, once, unless said otherwise. */
export function handPlacement(more: Partial<Placement>): Placement {
  return { id: 'one', section: 's', motif: 'm', row: { line: 'r', nth: 0 }, align: 'left', offset: 0, across: 1, up: 1, gap: 0, mirror: false, ...more };
}
