import { describe, expect, it } from 'vitest';
import { cutBlocks } from '../../../src/editor/chart/blocks.ts';
import { blockFills, blockSymbols, GHOST_FILL } from '../../../src/editor/chart/blockPaths.ts';
import { detailFor } from '../../../src/editor/chart/detail.ts';
import { glyphPen } from '../../../src/editor/chart/glyphPen.ts';
import { inksOnYarns } from '../../../src/editor/chart/inks.ts';
import { marksPath } from '../../../src/editor/chart/marksPath.ts';
import { sampleChart } from '../../../src/editor/gallery/sampleChart.ts';
import { SAMPLES } from '../../../src/editor/gallery/samples.ts';
import type { Drawing, MarkRole } from '../../../src/engine/6-drawing/drawing.ts';
import { writeSvg } from '../../../src/engine/6-drawing/writeSvg.ts';
import { pathAreas } from '../chart/pathArea.ts';

const close = { ...detailFor(40, false), grow: 0 };

/** Where symbols stand, in hundredths of a millimetre, sorted. */
function placesOnScreen(drawing: Drawing, yarnOf: Uint8Array, inks: ReturnType<typeof inksOnYarns> | null): string[] {
  const blocks = cutBlocks(drawing, 16);
  const pen = glyphPen(drawing, close);
  const places: string[] = [];
  for (let block = 0; block < blocks.count; block++) {
    for (const { d } of blockSymbols(drawing, blocks, block, yarnOf, pen, inks)) places.push(...[...d.matchAll(/M(-?\d+) (-?\d+)m/g)].map(([, x, y]) => `${x} ${y}`));
  }
  return places.sort();
}

function placesInPrint(svg: string): string[] {
  const chart = svg.slice(svg.indexOf('<g id="chart">'), svg.includes('<g id="legend"') ? svg.indexOf('<g id="legend"') : undefined);
  return [...chart.matchAll(/<use xlink:href="#[\w-]+?(-halo)?" (?:x="([-\d.]+)" y="([-\d.]+)"|transform="translate\(([-\d.]+) ([-\d.]+)\))/g)]
    .filter(([, halo]) => halo === undefined)
    .map(([, , x, y, tx, ty]) => `${Math.round(Number(x ?? tx) * 100)} ${Math.round(Number(y ?? ty) * 100)}`)
    .sort();
}

/** Places of the one list that the other has not within a hundredth: numbers on the edge between two may be rounded either way. */
function unmatched(places: readonly string[], others: readonly string[]): string[] {
  const free = new Map<string, number>();
  for (const other of others) free.set(other, (free.get(other) ?? 0) + 1);
  const take = (place: string): boolean => {
    const left = free.get(place) ?? 0;
    if (left > 0) free.set(place, left - 1);
    return left > 0;
  };
  const exact = places.filter((place) => !take(place));
  return exact.filter((place) => {
    const [x, y] = place.split(' ').map(Number) as [number, number];
    return ![-1, 0, 1].some((dx) => [-1, 0, 1].some((dy) => take(`${x + dx} ${y + dy}`)));
  });
}

/** Area of each yarn's cells, mm², ghosts apart. */
function areasOnScreen(drawing: Drawing, yarnOf: Uint8Array): Map<number, number> {
  const blocks = cutBlocks(drawing, 16);
  const areas = new Map<number, number>();
  for (let block = 0; block < blocks.count; block++) {
    for (const { key, d } of blockFills(drawing, blocks, block, yarnOf, close)) {
      if (key === GHOST_FILL) continue;
      areas.set(key, (areas.get(key) ?? 0) + pathAreas(d).reduce((sum, part) => sum + Math.abs(part), 0) / 10_000);
    }
  }
  return areas;
}

function areaInPrint(svg: string, letter: string): number {
  const chart = svg.slice(svg.indexOf('<g id="cells">'));
  let whole = 0;
  for (const [, d] of chart.matchAll(new RegExp(`class="yarn-${letter}"[^>]* d="([^"]*)"`, 'g'))) {
    for (const part of d!.split('Z')) {
      const points = [...part.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
      whole += Math.abs(points.reduce((sum, [x, y], i) => sum + x * points[(i + 1) % points.length]![1] - points[(i + 1) % points.length]![0] * y, 0)) / 2;
    }
  }
  return whole;
}

describe.each(SAMPLES.map((sample) => [sample.name, sample] as const))('the screen and the printed file of %s', (_, sample) => {
  const { drawing, svg } = sampleChart(sample);
  const written = writeSvg(drawing, svg);

  it('have the same symbols in the same places, each once', () => {
    const [screen, print] = [placesOnScreen(drawing, svg.yarnOf, svg.look.fills === 'yarn' ? inksOnYarns(svg.look) : null), placesInPrint(written)];
    expect(print).toHaveLength(screen.length);
    expect(unmatched(screen, print)).toEqual([]);
  });

  it('have the same area of every yarn', () => {
    if (svg.look.fills === 'none') return expect(written).not.toContain('<g id="cells">');
    const screen = areasOnScreen(drawing, svg.yarnOf);
    expect(screen.size).toBeGreaterThan(0);
    screen.forEach((area, yarn) => expect(Math.abs(areaInPrint(written, svg.look.yarns[yarn]!.letter) / area - 1)).toBeLessThan(0.01));
  });

  it('have the same lines, areas and words of every role', () => {
    for (const role of new Set(drawing.marks.map((mark) => mark.role))) {
      const group = /<g id="marks-[\w-]+">/g;
      const own = drawing.marks.filter((mark) => mark.role === role);
      const drawn = marksPath(drawing.marks, [role as MarkRole]);
      expect(drawn.reduce((sum, { d }) => sum + (d.match(/M/g) ?? []).length, 0)).toBe(own.filter(({ kind }) => kind !== 'text').length);
      if (svg.look.fills === 'yarn' && (role === 'bandRS' || role === 'bandWS')) continue;
      expect(written).toMatch(group);
      for (const mark of own) if (mark.kind === 'text') expect(written).toContain(`>${mark.text}</text>`);
    }
  });
});
