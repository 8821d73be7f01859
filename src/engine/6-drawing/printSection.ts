import type { Pattern } from '../1-pattern/pattern.ts';
import type { Fabric } from '../3-fabric/fabric.ts';
import { colourGrid } from '../4-colour/colourGrid.ts';
import { fabricWithStitches, setStitches } from '../4-colour/setStitches.ts';
import { fileWord } from '../notation/fileWord.ts';
import { gaugeAtScale } from '../5-layout/gaugeAtScale.ts';
import { layOut } from '../5-layout/layOutSection.ts';
import type { TurnedView } from '../5-layout/layout.ts';
import { draw } from './draw.ts';
import { legend } from './legend.ts';
import { printLook } from './look.ts';
import type { SymbolSet } from './symbols/symbolSet.ts';
import { PAPERS } from './paper.ts';
import { writeSheets } from './writeSheets.ts';
import { writeSvg } from './writeSvg.ts';

/** How a section's chart is to be printed. */
export interface SectionPrint {
  /** Width of a stitch on paper, mm. */
  readonly mmPerStitch: number;
  readonly mono: boolean;
  /** The family of symbols, or none; `'all'`: as `'us'`. */
  readonly symbols: SymbolSet | 'all' | 'none';
  readonly hand: 'right' | 'left';
  /** Turned short rows: see `LayOutOptions`. */
  readonly view?: TurnedView;
  /** Closed rounds: see `LayOutOptions`. */
  readonly rounds?: 'auto' | 'tube' | 'disc';
  /** Travel of unturned rounds, their spiral, and the stitches repeated beside a tube: see `LayOutOptions`. */
  readonly leanStitches?: number;
  readonly spiral?: boolean;
  readonly tubeMargin?: number;
  /** Cells in their yarns (default), or rows tinted by side. */
  readonly fills?: 'yarn' | 'none';
  /** 12 pt text and heavier lines. */
  readonly large?: boolean;
  /** Cut to sheets of this paper, or one file as large as the chart. */
  readonly paper: 'a4' | 'letter' | 'none';
}

/** A file to keep: its name without folder, and its text. */
export interface PrintFile {
  readonly name: string;
  readonly text: string;
}

/**
 * The chart of one section as SVG files at a true scale, with its legend and the stitches that motifs set: the very bytes that
 * app and command line both give.
 * Refuses a section that isn't there.
 */
export function printSection(pattern: Pattern, fabric: Fabric, yarnOf: Uint8Array, section: number, size: number, print: SectionPrint): PrintFile[] {
  const owner = fabric.sections[section];
  if (!owner) throw new RangeError(`section ${section} asked of ${fabric.sections.length}`);
  const look = printLook(pattern.yarns, { mono: print.mono, large: print.large ?? false, mmPerStitch: print.mmPerStitch, fills: print.fills ?? 'yarn' });
  const layout = layOut(fabric, section, gaugeAtScale(pattern.gauge, print.mmPerStitch), print);
  const dressed = fabricWithStitches(fabric, setStitches(pattern, colourGrid(fabric), size));
  const drawing = draw(dressed, layout, { symbols: print.symbols, numbers: true, grid: true, textMm: look.textMm });
  const sizeName = pattern.sizes[size] ?? '';
  const options = {
    look, yarnOf, rows: fabric.rows,
    title: `${pattern.title}: ${owner.name}${sizeName ? `, size ${sizeName}` : ''}`,
    desc: describe(pattern, fabric, section, print.mmPerStitch),
    ...(pattern.designer ? { creator: pattern.designer } : {}),
    legend: legend(dressed, drawing, { terms: pattern.terms, yarns: pattern.yarns, yarnOf }),
  };
  const name = [pattern.title, owner.name, sizeName].map((word) => fileWord(word)).filter((word) => word !== '').join('-') || 'chart';
  if (print.paper === 'none') return [{ name: `${name}.svg`, text: writeSvg(drawing, options) }];
  return writeSheets(drawing, PAPERS[print.paper], options).map((text, i) => ({ name: `${name}-${print.paper}-${i + 1}.svg`, text }));
}

/** The chart in words: section, rows with their counts, yarns, scale. */
function describe(pattern: Pattern, fabric: Fabric, section: number, mmPerStitch: number): string {
  const owner = fabric.sections[section]!;
  const rows = fabric.rows.slice(owner.firstRow, owner.endRow).filter((row) => row.word !== 'step' && row.end > row.first);
  const counts: string[] = [];
  for (let i = 0; i < rows.length; ) {
    let end = i;
    while (end + 1 < rows.length && rows[end + 1]!.made === rows[i]!.made && rows[end + 1]!.word === rows[i]!.word) end++;
    const word = rows[i]!.word === 'foundation' ? 'foundation' : rows[i]!.word === 'round' ? 'round' : 'row';
    const numbers = rows[i]!.number === null ? word : `${word} ${rows[i]!.number}${end > i ? `–${rows[end]!.number}` : ''}`;
    counts.push(`${numbers}: ${rows[i]!.made}`);
    i = end + 1;
  }
  return `${owner.name}, stitches in each row from the bottom up. ${counts.join('; ')}. Yarns: ${pattern.yarns.map((yarn) => `${yarn.letter} ${yarn.name}`.trim()).join(', ')}. ${mmPerStitch} mm a stitch.`;
}
