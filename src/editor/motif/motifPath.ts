/** The cells of a motif that are of one yarn, as path data in cells; neighbours along a row are one piece. */
export function motifPath(cells: readonly string[], letter: string): string {
  let d = '';
  cells.forEach((row, y) => {
    for (let x = row.indexOf(letter); x >= 0; ) {
      let end = x + 1;
      while (row[end] === letter) end++;
      d += `M${x} ${y}h${end - x}v1h${x - end}z`;
      x = row.indexOf(letter, end);
    }
  });
  return d;
}
