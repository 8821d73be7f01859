import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Lengths } from './lengthWords.ts';
import type { RowMeasure } from './rowMeasures.ts';
import type { Dimension, Schematic, SchematicShape } from './schematic.ts';
import { heightOf, type SectionMeasure } from './sectionMeasures.ts';
import { wholeRows } from './sockParts.ts';
import { BESIDE, dimensionWords, standsLevel, wordsWidth } from './textRoom.ts';
import { straightened } from './straightened.ts';

/** Room between shapes for their dimensions, mm of the piece: paper times scale. */
export interface Room {
  readonly gapMm: number;
  /** Size of the text. */
  readonly textMm: number;
  /** Widest line of shapes before the next begins; 0: one shape a line. */
  readonly lineMm: number;
  /** What lengths are said in; both without. */
  readonly lengths?: Lengths;
}

/**
 * Every worked section laid flat, from its rows: tubes folded in half, rows back and forth opened out, a heel in short rows as
 * wide as each of its rows, rounds from a ring as a circle (a ball as it looks from the side), rounds along a chain as an oval. Sections stand beside one another in worked order, their first row
 * at the bottom.
 */
export function flatSchematic(fabric: Fabric, sections: readonly SectionMeasure[], room: Room): Schematic {
  const shapes: SchematicShape[] = [];
  const dimensions: Dimension[] = [];
  let x = 0;
  let y = 0;
  let lineHeight = 0;
  for (const section of sections) {
    if (section.rows.length === 0) continue;
    const flat = section.begins === 'ring' ? circle(section) : section.begins === 'bothSides' ? stadium(section) : stacked({ ...section, rows: wholeRows(fabric, section.rows) });
    const slot = slotOf(flat, fabric.sections[section.section]!.name, room);
    const width = slot.left + slot.right;
    if (x > 0 && x + width > room.lineMm) {
      x = 0;
      y += lineHeight + room.gapMm * 2;
      lineHeight = 0;
    }
    const [dx, dy] = [x + slot.left, y];
    const moved = (points: readonly number[]) => points.map((value, i) => value + (i % 2 === 0 ? dx : dy));
    shapes.push({
      id: `section-${section.section + 1}`, label: fabric.sections[section.section]!.name, labelX: dx, labelY: dy + flat.height / 2,
      outlines: [moved(flat.outline)], inner: [],
    });
    dimensions.push(...flat.dimensions.map((one) => ({ ...one, fromX: one.fromX + dx, toX: one.toX + dx, fromY: one.fromY + dy, toY: one.toY + dy })));
    x += width + room.gapMm;
    lineHeight = Math.max(lineHeight, flat.height);
  }
  return { shapes, dimensions };
}

/** How far a shape with its name and the words of its dimensions reaches to either side of its middle. */
function slotOf({ width, dimensions }: Flat, name: string, { textMm, lengths = 'both' }: Room): { readonly left: number; readonly right: number } {
  let left = Math.max(width, wordsWidth(name, textMm)) / 2;
  let right = left;
  for (const one of dimensions) {
    const words = dimensionWords(one, lengths);
    if (one.side === 'right') {
      const line = Math.abs(one.toY - one.fromY);
      right = Math.max(right, width / 2 + textMm * (BESIDE.line + BESIDE.text) + (standsLevel(line, words, textMm) ? wordsWidth(words, textMm) : 0));
    } else {
      left = Math.max(left, wordsWidth(words, textMm) / 2);
      right = Math.max(right, wordsWidth(words, textMm) / 2);
    }
  }
  return { left, right };
}

interface Flat {
  /** Middle above at 0, 0. */
  readonly outline: readonly number[];
  readonly width: number;
  readonly height: number;
  readonly dimensions: readonly Dimension[];
}

/** Rows above each other, centred. */
function stacked({ rows, kind }: SectionMeasure): Flat {
  const fold = kind === 'round' ? 2 : 1;
  const height = heightOf(rows);
  const widths = rows.map((row) => row.widthMm / fold);
  const width = Math.max(...widths);
  const word = kind === 'round' ? 'round' : '';
  const at = (cm: number, halfWidth: number, y: number, side: Dimension['side']): Dimension => ({ fromX: -halfWidth, toX: halfWidth, fromY: y, toY: y, side, tier: 0, cm, word });
  const first = widths[0]!;
  const last = widths.at(-1)!;
  return {
    outline: outlineOf(rows, widths, height), width, height,
    dimensions: [
      at((first * fold) / 10, first / 2, height, 'below'),
      ...(Math.abs(last - first) > 0.5 ? [at((last * fold) / 10, last / 2, 0, 'above')] : []),
      { fromX: width / 2, toX: width / 2, fromY: 0, toY: height, side: 'right', tier: 0, cm: height / 10, word: '' },
    ],
  };
}

/** Each row's width at its upper edge; steps of single stitches drawn as slanting edges. */
function outlineOf(rows: readonly RowMeasure[], widths: readonly number[], height: number): readonly number[] {
  const right: (readonly [number, number])[] = [[widths[0]! / 2, height]];
  let y = height;
  rows.forEach((row, i) => {
    y -= row.heightMm;
    right.push([widths[i]! / 2, Math.max(0, y)]);
  });
  const edge = straightened(right, rows[0]!.widthMm / rows[0]!.stitches);
  return [...edge.flat(), ...[...edge].reverse().flatMap(([px, py]) => [-px, py])];
}

const ARC_STEPS = 72;

/** Rounds that grow from a ring: a circle of their height; drawn shut again, a ball of half of the girth. */
function circle({ rows, drawnTo }: SectionMeasure): Flat {
  const growing = rows.filter((row, i) => i === 0 || row.stitches > rows[i - 1]!.stitches);
  const radius = drawnTo === 0 ? heightOf(rows) / Math.PI : heightOf(growing);
  return { outline: rounded(0, radius), width: 2 * radius, height: 2 * radius, dimensions: [acrossAt(radius, 2 * radius, 'below', 'across')] };
}

/** Rounds along both sides of a chain: straight between two half discs. */
function stadium({ rows, chains }: SectionMeasure): Flat {
  const radius = heightOf(rows);
  const straight = ((chains - 1) * rows[0]!.widthMm) / rows[0]!.stitches;
  const width = straight + 2 * radius;
  return {
    outline: rounded(straight / 2, radius), width, height: 2 * radius,
    dimensions: [acrossAt(width / 2, 2 * radius, 'below', ''), { fromX: width / 2, toX: width / 2, fromY: 0, toY: 2 * radius, side: 'right', tier: 0, cm: radius / 5, word: '' }],
  };
}

function acrossAt(half: number, y: number, side: Dimension['side'], word: Dimension['word']): Dimension {
  return { fromX: -half, toX: half, fromY: y, toY: y, side, tier: 0, cm: half / 5, word };
}

/** Two half circles `half` apart from the middle on either side, from the top clockwise. */
function rounded(half: number, radius: number): readonly number[] {
  return Array.from({ length: ARC_STEPS + 1 }, (_, i) => {
    const turn = (2 * Math.PI * i) / ARC_STEPS;
    const shift = i * 2 <= ARC_STEPS ? half : -half;
    return [shift + radius * Math.sin(turn), radius - radius * Math.cos(turn)];
  }).flat();
}
