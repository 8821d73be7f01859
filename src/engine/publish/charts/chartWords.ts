import type { Terms } from '../../craft/terms.ts';
import type { WordStyle } from '../../notation/writeWork.ts';
import { writeRowWords } from '../../readings/words/writeRowWords.ts';
import type { WorkedPattern, WorkedSize } from '../workedSizes.ts';
import { printable } from '../type/printable.ts';

/** A chart row by row in words, first row first, with what its letters stand for: what a chart says to those who can't see it. */
export function chartWords({ pattern }: WorkedPattern, size: WorkedSize, section: number, terms: Terms, style: WordStyle = {}): readonly string[] {
  const { fabric, dressed, program, colours } = size;
  const owner = fabric.sections[section]!;
  const used = new Set<number>();
  const lines = fabric.rows.slice(owner.firstRow, owner.endRow).flatMap((row, i) => {
    if (row.end === row.first) return [];
    for (let stitch = row.first; stitch < row.end; stitch++) used.add(colours.yarn[stitch]!);
    const words = printable(writeRowWords({ program, fabric: dressed, colours }, owner.firstRow + i, terms, style));
    const name = row.word === 'foundation' ? 'Foundation' : row.word === 'step' ? '' : `${row.word === 'round' ? 'Rnd' : 'Row'} ${row.number ?? ''}`.trim();
    const side = row.round || name === '' || row.word === 'foundation' ? '' : ` (${row.side}, ${row.direction < 0 ? 'right to left' : 'left to right'})`;
    return [name === '' ? words : `${name}${side}: ${words}`];
  });
  const yarns = pattern.yarns.flatMap(({ letter, name }, i) => (used.has(i) ? [`${letter} ${printable(name)}`.trim()] : []));
  return [`Yarns: ${yarns.join(', ')}.`, ...lines];
}
