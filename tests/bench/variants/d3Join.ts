import { select } from 'd3-selection';
import { coloursOf, inkOf, LINE_MM, stitchNodes, type StitchNode } from '../cells.ts';
import type { Variant } from '../variant.ts';

/** A keyed data join, run again for every change. */
export const d3Join: Variant = (root, data) => {
  const inks = coloursOf(data);
  const nodes = stitchNodes(data, inks);
  const world = select(root).append('svg').attr('width', '100%').attr('height', '100%').append('g').attr('stroke-width', LINE_MM);
  const move = ({ x, y, k }: { x: number; y: number; k: number }): void => {
    world.attr('transform', `translate(${x} ${y}) scale(${k})`);
  };
  const join = (): void => {
    world
      .selectAll<SVGGElement, StitchNode>('g')
      .data(nodes, (node) => node.stitch)
      .join((enter) => {
        const group = enter.append('g');
        group.append('path').attr('stroke', 'none').attr('d', (node) => node.cell);
        group.append('path').attr('fill', 'none').attr('transform', (node) => node.turn).attr('d', (node) => node.symbol);
        return group;
      })
      .attr('fill', (node) => node.fill)
      .attr('stroke', (node) => node.ink);
  };
  const lay = (stitch: number, yarn: number): void => {
    nodes[stitch] = { ...nodes[stitch]!, fill: inks.cells[yarn]!, ink: inkOf(inks, yarn, data.drawing.stitches.ink[stitch]!) };
    join();
  };
  move(data.whole);
  join();
  return {
    edit: lay,
    brush: (stitches, yarn) => lay(stitches.at(-1)!, yarn),
    endBrush: (stitches, yarn) => lay(stitches.at(-1)!, yarn),
    recolour(stitches, yarn) {
      for (const stitch of stitches) nodes[stitch] = { ...nodes[stitch]!, fill: inks.cells[yarn]!, ink: inkOf(inks, yarn, data.drawing.stitches.ink[stitch]!) };
      join();
    },
    isSettled: () => true,
    view: move,
    rest: () => undefined,
  };
};
