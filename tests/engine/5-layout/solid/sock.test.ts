import { describe, expect, it } from 'vitest';
import { GAUGE, PUFFIN_QUAY, shaped } from './solidOf.ts';
import type { Shaped } from './solidOf.ts';
import { bendDeg, distance, edgesOf, folds, middleOf, openLoops, pointOf, strains, volumeMl } from './measureSolid.ts';
import type { Point } from './measureSolid.ts';
import { shapeSolid } from '../../../../src/engine/5-layout/solid/shapeSolid.ts';

const SIZES = ['S', 'M', 'L'].map((name, size) => ({ name, ...shaped(PUFFIN_QUAY, size) }));

/** Middle of each section of the piece. */
function sectionMiddle({ fabric, web, solid }: Shaped, name: string): Point {
  const rows = web.rows.filter((row) => fabric.sections[fabric.rows[row.row]!.section]!.name === name);
  const middles = rows.map((row) => middleOf(solid, row));
  return [0, 1, 2].map((c) => middles.reduce((sum, middle) => sum + middle[c]!, 0) / middles.length) as unknown as Point;
}

describe.each(SIZES)('the sock in size $name', (sock) => {
  const { fabric, web, solid } = sock;

  it('is right side out: its volume is positive, and near that of a tube of its girth', () => {
    const girthMm = (web.rows[20]!.end - web.rows[20]!.first) * web.cellWidthMm;
    const lengthMm = web.rows.filter((row) => row.wraps).length * 5;
    const tubeMl = ((girthMm * girthMm) / (4 * Math.PI)) * lengthMm / 1000;
    expect(volumeMl(solid)).toBeGreaterThan(0.8 * tubeMl);
    expect(volumeMl(solid)).toBeLessThan(1.1 * tubeMl);
  });

  it('keeps the stitches near their width and height', () => {
    const { width, height } = strains(fabric, web, solid);
    // Measured: width rms 1.5, 1.5, 1.7 %, height rms 2.0, 2.1, 2.4 %.
    expect(width.rms).toBeLessThan(0.025);
    expect(width.p95).toBeLessThan(0.04);
    expect(height.rms).toBeLessThan(0.035);
    expect(height.p95).toBeLessThan(0.06);
  });

  it('has few folds', () => {
    // Measured: 4, 6, 3 pairs of cells of over 4,000.
    expect(folds(solid)).toBeLessThanOrEqual(12);
  });

  it('bends by about a right angle between leg and foot', () => {
    // Measured: 91, 89, 88 degrees.
    expect(bendDeg(fabric, web, solid, 'LEG', 'FOOT')).toBeGreaterThan(70);
    expect(bendDeg(fabric, web, solid, 'LEG', 'FOOT')).toBeLessThan(110);
  });

  it('stands up: cuff on top, heel behind and below, toe in front at the left', () => {
    const [cuff, leg, heel, foot, toe] = ['CUFF', 'LEG', 'HEEL', 'FOOT', 'TOE'].map((name) => sectionMiddle(sock, name)) as [Point, Point, Point, Point, Point];
    expect(cuff[1]).toBeGreaterThan(leg[1]);
    expect(leg[1]).toBeGreaterThan(heel[1]);
    expect(leg[1]).toBeGreaterThan(foot[1]);
    expect(toe[0]).toBeLessThan(foot[0]);
    expect(foot[0]).toBeLessThan(heel[0]);
    expect(Math.abs(heel[2] - toe[2])).toBeLessThan(15);
    expect(Math.max(...[0, 1, 2].map((c) => Math.abs(solid.halfMm[c]!)))).toBeLessThan(220);
  });

  it('has a heel that cups: its middle lies behind the back of the leg’s axis and round in two directions', () => {
    const heelRow = web.rows.find((row) => row.partial)!;
    const last = web.rows.filter((row) => row.partial).at(-1)!;
    const middle = (row: typeof last): Point => pointOf(solid.heads, Math.floor((row.first + row.end) / 2));
    const legX = sectionMiddle(sock, 'LEG')[0];
    expect(middle(heelRow)[0]).toBeGreaterThan(legX);
    expect(middle(last)[1]).toBeLessThan(middle(heelRow)[1]);
    // From the first to the last row the middle goes down and forward by less than its length: it is a bow.
    const depth = distance(middle(heelRow), middle(last));
    expect(depth).toBeLessThan(0.97 * (web.rows.filter((row) => row.partial).length - 1) * 5);
    expect(depth).toBeGreaterThan(30);
  });

  it('has one opening, the cuff; the toe is drawn to a point', () => {
    const loops = openLoops(solid).map((loop) => loop.reduce((sum, corner, k) => sum + distance(pointOf(solid.corners, corner), pointOf(solid.corners, loop[(k + 1) % loop.length]!)), 0));
    expect(loops).toHaveLength(2);
    const girthMm = (web.rows[1]!.end - web.rows[1]!.first) * web.cellWidthMm;
    expect(Math.max(...loops)).toBeGreaterThan(0.95 * girthMm);
    expect(Math.min(...loops)).toBeLessThan(2 * web.cellWidthMm);
  });

  it('is without gaps elsewhere: every edge has one cell on each side', () => {
    const edges = edgesOf(solid);
    expect([...edges.values()].every((cells) => cells.length === 1)).toBe(true);
    expect([...edges.keys()].filter((edge) => !edges.has(edge.split(' ').reverse().join(' ')))).toHaveLength(openLoops(solid).flat().length);
  });

  it('has a cell for every stitch that stands on another, and leaves the loop out', () => {
    expect(solid.cells.length).toBe(web.rows.reduce((sum, row, r) => sum + (r > 0 ? row.end - row.first : 0), 0));
    expect(new Set(solid.cells).size).toBe(solid.cells.length);
    expect(solid.leftOut.map((section) => fabric.sections[section]!.name)).toEqual(['LOOP']);
  });
});

describe('shaping', () => {
  it('gives the same numbers to the last bit', () => {
    const again = shapeSolid(SIZES[0]!.fabric, GAUGE);
    for (const key of ['heads', 'corners', 'normals', 'outline', 'cells'] as const) expect(again[key]).toEqual(SIZES[0]!.solid[key]);
  });

  it('tells its progress upwards to the whole', () => {
    const shares: number[] = [];
    shapeSolid(SIZES[0]!.fabric, GAUGE, (share) => shares.push(share));
    expect(shares.length).toBeGreaterThan(100);
    expect(shares.every((share, k) => share > 0 && (k === 0 || share >= shares[k - 1]!))).toBe(true);
    expect(shares.at(-1)).toBe(1);
  });

  it('takes under a second of work for 5,000 stitches', () => {
    const large = SIZES[1]!.fabric;
    expect(large.count).toBeGreaterThan(5000);
    const took = Array.from({ length: 3 }, () => {
      const before = process.cpuUsage();
      shapeSolid(large, GAUGE);
      const { user } = process.cpuUsage(before);
      return user / 1000;
    });
    expect(Math.min(...took)).toBeLessThan(1000);
  });

  it.each([
    // Not tuned for: other proportions of a stitch.
    [20, 20], [18, 22], [24, 22], [16, 20],
  ])('makes a sock of a gauge of %i stitches to %i rows too', (stitches, rows) => {
    const gauge = { ...GAUGE, stitches, rows };
    const { fabric, web, solid } = shaped(PUFFIN_QUAY, 0, gauge);
    expect(volumeMl(solid)).toBeGreaterThan(0);
    expect(folds(solid)).toBeLessThanOrEqual(20);
    expect(bendDeg(fabric, web, solid, 'LEG', 'FOOT')).toBeGreaterThan(65);
    expect(bendDeg(fabric, web, solid, 'LEG', 'FOOT')).toBeLessThan(115);
  });
});
