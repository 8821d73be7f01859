/** Columns and rows of the measured pieces: 2,000, 20,000 and 60,000 stitches. */
export const ENGINE_SIZES = [[50, 40], [100, 200], [200, 300]] as const;

export type EngineShape = 'panel' | 'tube';

/** A written piece of `columns` by `rows` single crochets, every row on a line of its own and with other colour changes than the rows beside it. */
export function enginePattern(shape: EngineShape, columns: number, rows: number): string {
  const lines = ['Bench', '', 'Yarn A: slate #4b5a6b', 'Yarn B: chalk #f2efe6', 'Yarn C: lamp orange #d9772b', '', 'PIECE'];
  lines.push(shape === 'panel' ? `Foundation: with A, ch ${columns + 1}.` : `Foundation: with A, ch ${columns}, join to form a ring.`);
  for (let row = 1; row <= rows; row++) {
    const turn = shape === 'panel' && row > 1 ? 'ch 1, turn, ' : '';
    lines.push(`${shape === 'panel' ? 'Row' : 'Rnd'} ${row}: ${turn}${row === 1 ? firstRow(shape) : cells(columns, row)}. (${columns} sc)`);
  }
  return lines.join('\n');
}

/** What a measured row is made of: all of one stitch, or single crochets with one into the back loop, an increase or a decrease among them. */
export type RowOf = 'sc' | 'hdc' | 'backLoop' | 'more' | 'fewer';

/** Words of a row with another colour pattern than any that `enginePattern` writes: what the measured edit puts in. */
export function editedRow(shape: EngineShape, columns: number, turn: number, of: RowOf): string {
  const words = cells(columns, 3 + turn, 'CB', of === 'hdc' ? 'hdc' : 'sc');
  return `${shape === 'panel' ? 'ch 1, turn, ' : ''}${withOne(words, of)}.`;
}

/** The words with one stitch made otherwise at their start, over as many stitches of the row below. */
function withOne(words: string, of: RowOf): string {
  const begin = (other: (count: number) => string): string => words.replace(/sc (\d+)/, (_, count: string) => other(Number(count)));
  const lessAtEnd = (text: string, by: number): string => text.replace(/sc (\d+)$/, (_, count: string) => `sc ${Number(count) - by}`);
  switch (of) {
    case 'backLoop': return begin((count) => `sc in back loop only of next st, sc ${count - 1}`);
    case 'more': return lessAtEnd(begin((count) => `sc ${count}, inc`), 1);
    case 'fewer': return lessAtEnd(begin((count) => `sc2tog, sc ${count}`), 2);
    case 'sc': case 'hdc': return words;
  }
}

function firstRow(shape: EngineShape): string {
  return shape === 'panel' ? 'sc in 2nd ch from hook and in each ch across' : 'sc in each ch around';
}

/** Runs of two yarns whose lengths go with the row's number. */
function cells(columns: number, row: number, letters: 'AB' | 'CB' = 'AB', stitch = 'sc'): string {
  const runs: string[] = [];
  for (let at = 0, n = 0; at < columns; n++) {
    const length = Math.min(columns - at, 1 + ((row * 7 + n * 3) % 9));
    runs.push(`${letters[n % 2]} ${stitch} ${length}`);
    at += length;
  }
  return runs.join(', ');
}
