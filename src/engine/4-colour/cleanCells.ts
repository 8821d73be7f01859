/**
 * Cells of a motif with every lone cell (none of its eight neighbours has its letter) in the letter that most of its
 * neighbours have; of equally many the one that comes first in `order`, then by the alphabet. One pass does it: nobody had
 * a lone cell as a neighbour of its own letter. Linear in cells.
 */
export function cleanCells(cells: readonly string[], order = ''): readonly string[] {
  const rows = cells.map((row) => [...row]);
  const rank = (letter: string) => (order.indexOf(letter) + order.length + 1) % (order.length + 1);
  for (const [y, row] of rows.entries()) {
    for (const [x, letter] of row.entries()) {
      const counts = new Map<string, number>();
      for (const [dy, dx] of AROUND) {
        const beside = rows[y + dy]?.[x + dx];
        if (beside !== undefined) counts.set(beside, (counts.get(beside) ?? 0) + 1);
      }
      if (counts.size === 0 || counts.has(letter)) continue;
      row[x] = [...counts].sort(([a, m], [b, n]) => n - m || rank(a) - rank(b) || (a < b ? -1 : 1))[0]![0];
    }
  }
  return rows.map((row) => row.join(''));
}

const AROUND = [[-1, -1], [-1, 0], [-1, 1], [0, -1], [0, 1], [1, -1], [1, 0], [1, 1]] as const;
