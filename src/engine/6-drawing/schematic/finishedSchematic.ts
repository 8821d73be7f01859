import type { Fabric } from '../../3-fabric/fabric.ts';
import { sockParts, type SockParts } from './sockParts.ts';
import { flatSchematic, type Room } from './flatSchematic.ts';
import type { RowMeasure } from './rowMeasures.ts';
import type { Dimension, Schematic, SchematicShape } from './schematic.ts';
import { heightOf, type SectionMeasure } from './sectionMeasures.ts';
import { straightened } from './straightened.ts';

/**
 * The finished thing laid flat. A sock lies on its side, folded, toe to the left: leg, heel, foot and toe to scale from their
 * rows, the heel's curve drawn in. Other pieces lie as they were worked. Pieces made apart and sewn on are not drawn.
 */
export function finishedSchematic(fabric: Fabric, sections: readonly SectionMeasure[], doubled: ReadonlySet<number>, room: Room): Schematic {
  const own = sections.filter((section) => section.piece === 0);
  const parts = sockParts(fabric, sections, doubled);
  return parts ? sockOnItsSide(parts) : flatSchematic(fabric, own, room);
}

type Point = readonly [x: number, y: number];

function sockOnItsSide({ leg, heelMm, foot, girth }: SockParts): Schematic {
  const folded = ({ widthMm }: RowMeasure) => widthMm / 2;
  const legMm = leg.reduce((sum, { row, share }) => sum + row.heightMm * share, 0);
  const deep = folded(girth);
  const ankle = folded(leg.at(-1)!.row);
  const back = ankle / 2;
  const footMm = heelMm + heightOf(foot);
  const sole = legMm + deep;
  const front = legEdge(leg, folded, -1);
  const rear = legEdge(leg, folded, 1);
  const curve = Math.min(heelMm, deep) * 0.9;
  const heel = arc(back, sole, curve);
  const upper = upperEdge(foot, back - heelMm, -ankle / 2, legMm, deep, folded);
  const lower = [...upper].reverse().map(([x, y]): Point => [x, 2 * legMm + deep - y]);
  const outline = [...front, ...upper, ...lower, ...heel, ...[...rear].reverse()].flat();
  const tip = back - footMm;
  const shape: SchematicShape = { id: 'finished', label: '', labelX: 0, labelY: legMm / 2, outlines: [outline], inner: [[-ankle / 2, legMm, back, legMm]] };
  const top = folded(leg[0]!.row);
  const dimensions: Dimension[] = [
    { fromX: -top / 2, toX: top / 2, fromY: 0, toY: 0, side: 'above', tier: 0, cm: (2 * top) / 10, word: 'round' },
    { fromX: Math.max(back, top / 2), toX: Math.max(back, top / 2), fromY: 0, toY: legMm, side: 'right', tier: 0, cm: legMm / 10, word: '' },
    { fromX: tip, toX: back, fromY: sole, toY: sole, side: 'below', tier: 0, cm: footMm / 10, word: '' },
    { fromX: tip, toX: tip, fromY: legMm, toY: sole, side: 'left', tier: 0, cm: (2 * deep) / 10, word: 'round' },
  ];
  return { shapes: [shape], dimensions };
}

/** One edge of the leg from the top down. */
function legEdge(leg: SockParts['leg'], folded: (row: RowMeasure) => number, side: 1 | -1): readonly Point[] {
  const points: Point[] = [[(side * folded(leg[0]!.row)) / 2, 0]];
  let y = 0;
  for (const { row, share } of leg) {
    y += row.heightMm * share;
    points.push([(side * folded(row)) / 2, y]);
  }
  return straightened(points, stitchMm(leg[0]!.row));
}

function stitchMm({ widthMm, stitches }: RowMeasure): number {
  return widthMm / stitches;
}

/**
 * From the instep's corner along the upper edge to the tip. The foot begins at `startX`, below the leg, and shows from the corner
 * on. Rounds narrower than the foot lie in its middle, wider ones (a gusset) are drawn as the foot.
 */
function upperEdge(foot: readonly RowMeasure[], startX: number, cornerX: number, topY: number, deep: number, folded: (row: RowMeasure) => number): readonly Point[] {
  const points: Point[] = [[cornerX, topY]];
  let x = startX;
  for (const row of foot) {
    x -= row.heightMm;
    if (x < cornerX) points.push([x, topY + (deep - Math.min(deep, folded(row))) / 2]);
  }
  return straightened(points, stitchMm(foot[0]!));
}

const CORNER_STEPS = 12;

/** The rounded corner of the heel, from the sole up to the back. */
function arc(back: number, sole: number, radius: number): readonly Point[] {
  return Array.from({ length: CORNER_STEPS + 1 }, (_, i): Point => {
    const turn = (Math.PI / 2) * (i / CORNER_STEPS);
    return [back - radius + radius * Math.sin(turn), sole - radius + radius * Math.cos(turn)];
  });
}
