import type { Line, Pattern } from '../../../src/engine/1-pattern/pattern.ts';

/** A row line that stands for `rows` rows. */
export function rowLine(id: string, text: string, rows: number | readonly number[] = 1, more: Partial<Extract<Line, { kind: 'row' }>['label']> = {}): Line {
  return { kind: 'row', id, text, label: { word: 'row', rows, start: null, side: null, ...more } };
}

/** Two sections, two sizes, two yarns, one motif laid once, loose cells on two rows. */
export const SMALL: Pattern = {
  id: 'quay',
  title: 'Puffin Quay',
  designer: 'the Turnwork demo',
  terms: 'us',
  gauge: { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' },
  hookMm: 4.5,
  yarns: [
    { letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' },
    { letter: 'B', name: 'chalk', colour: '#f2efe6', mark: 'dot' },
    { letter: 'C', name: 'lamp orange', colour: '#d8702a', mark: 'cross' },
  ],
  sizes: ['S', 'M'],
  hdcTurningChainCounts: false,
  notes: [{ word: 'Care', value: 'Wash by hand.' }],
  sections: [
    {
      id: 'leg',
      name: 'LEG',
      remark: 'worked flat, then seamed',
      recipe: { name: 'legPanel', settings: { stitches: [40, 44], rows: 20, seamed: true, edge: 'plain' } },
      lines: [
        rowLine('leg-0', 'with A, ch 41 (45).', 1, { word: 'foundation' }),
        rowLine('leg-1', 'sc in 2nd ch from hook and in each ch across. (40 (44) sc)', 1, { side: 'RS' }),
        rowLine('leg-2', 'ch 1, turn, sc in each st across. (40 (44) sc)', [10, 12], { start: 2 }),
        { kind: 'step', id: 'leg-3', text: 'Seam the side edges.' },
      ],
    },
    { id: 'foot', name: 'FOOT', remark: '', recipe: null, lines: [rowLine('foot-1', 'sc in each st around.', 30, { word: 'round' }), { kind: 'note', id: 'foot-2', text: 'Try it on.' }] },
  ],
  motifs: [
    { id: 'flag', name: 'Flag', cells: ['BBC', 'B..'] },
    { id: 'spot', name: 'Spot', cells: ['B'] },
  ],
  placements: [{ id: 'flags', section: 'leg', motif: 'flag', row: { line: 'leg-2', nth: 3 }, align: 'centre', offset: 0, across: 'fill', up: 1, gap: 1, mirror: false }],
  cells: [
    { section: 'leg', row: { line: 'leg-2', nth: 2 }, size: 0, from: 4, letters: 'BB' },
    { section: 'leg', row: { line: 'leg-2', nth: 8 }, size: 1, from: 0, letters: 'B' },
    { section: 'leg', row: { line: 'leg-2', nth: 8 }, size: 1, from: 9, letters: 'BA' },
  ],
};
