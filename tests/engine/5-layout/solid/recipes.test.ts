import { describe, expect, it } from 'vitest';
import type { Gauge, Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { DISC, SOCK, TUBE } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import { makePiece } from '../../../../src/engine/2-construct/recipes/makePiece.ts';
import type { HeelSettings, PieceRequest, PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { gaugeCell } from '../../../../src/engine/5-layout/gaugeCell.ts';
import { shapeSolid } from '../../../../src/engine/5-layout/solid/shapeSolid.ts';
import { STANDS } from '../../../../src/engine/5-layout/solid/standing.ts';
import { webOf } from '../../../../src/engine/5-layout/solid/webOf.ts';
import { bendDeg, distance, edgesOf, folds, lengthOfLoop, middleOf, minus, dotted, openLoops, pointOf, sectionsOf, strains, volumeMl } from './measureSolid.ts';
import type { Point } from './measureSolid.ts';
import { GAUGE } from './solidOf.ts';
import type { Shaped } from './solidOf.ts';

type Cm = Partial<Record<PieceRequest['measures'][number]['name'], number>>;

/** A piece as a recipe makes it, in one size and yarn. */
function made(settings: PieceSettings, cm: Cm, gauge: Gauge = GAUGE): Shaped {
  const measures = Object.entries(cm).map(([name, value]) => ({ name: name as PieceRequest['measures'][number]['name'], cm: [value], easePercent: 0, easeCm: 0 }));
  const { sections } = makePiece({ settings, gauge, swatches: [], sizes: [''], measures, pins: {} });
  const pattern: Pattern = {
    id: 'p', title: 'Piece', designer: '', terms: 'us', gauge, hookMm: null, yarns: [{ letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' }],
    sizes: [''], hdcTurningChainCounts: true, notes: [], sections, motifs: [], placements: [], cells: [],
  };
  const fabric = work(construct(pattern, 0));
  return { fabric, web: webOf(fabric, gaugeCell(gauge)), solid: shapeSolid(fabric, gauge) };
}

const FOOT: Cm = { footGirth: 24, legLength: 22, footLength: 24 };

describe('socks as the recipes make them', () => {
  it.each([
    ['both sides left at once', {}],
    ['in steps of one', { turn: 'stepped' }],
    ['in steps of two', { turn: 'stepped', step: 2 }],
    ['with corners tied', { corners: true }],
    ['as a flap with a gusset', { kind: 'flap' }],
  ] as const)('a heel %s bends the foot by about a right angle, right side out and without slits that show', (_, heel: Partial<HeelSettings>) => {
    const { fabric, web, solid } = made({ ...SOCK, heel: { ...SOCK.heel, ...heel } }, FOOT);
    expect(bendDeg(fabric, web, solid, 'LEG', 'FOOT')).toBeGreaterThan(70);
    expect(bendDeg(fabric, web, solid, 'LEG', 'FOOT')).toBeLessThan(110);
    expect(volumeMl(solid)).toBeGreaterThan(1700);
    expect(folds(solid)).toBeLessThanOrEqual(12);
    // The cuff and the drawn toe; what else is open is no longer than two stitches.
    expect(openLoops(solid).filter((loop) => loop.length > 8)).toHaveLength(2);
    // Cuff on top.
    expect(middleOf(solid, web.rows[0]!)[1]).toBeGreaterThan(0.8 * solid.halfMm[1]);
  });

  it('a toe that is laid flat and sewn closes along a line, with no opening but the cuff', () => {
    const { web, solid } = made({ ...SOCK, toe: { ...SOCK.toe, close: 'seam' } }, FOOT);
    expect(openLoops(solid).map((loop) => loop.length)).toEqual([web.rows[0]!.end]);
    expect(folds(solid)).toBeLessThanOrEqual(12);
    expect(volumeMl(solid)).toBeGreaterThan(1700);
    expect(web.rows.some((row) => row.drawnShut)).toBe(false);
    // Each pair of tops lies together; the line is as wide as half of the last round but for its folds.
    const last = web.rows.at(-1)!;
    expect(web.sewn).toHaveLength(last.end - last.first);
    const heads = Array.from({ length: last.end - last.first }, (_, k) => pointOf(solid.heads, last.first + k));
    for (let k = 0; k < web.sewn.length; k += 2) expect(distance(pointOf(solid.heads, web.sewn[k]!), pointOf(solid.heads, web.sewn[k + 1]!))).toBeLessThan(0.4 * web.cellWidthMm);
    const wide = Math.max(...heads.flatMap((a) => heads.map((b) => distance(a, b))));
    expect(wide).toBeGreaterThan(0.8 * (heads.length / 2 - 1) * web.cellWidthMm);
    expect(wide).toBeLessThan(1.1 * (heads.length / 2) * web.cellWidthMm);
  });
});

describe('a heel as a flap', () => {
  it.each([
    ['every', 'flat'], ['second', 'flat'], ['second', 'rounds'],
  ] as const)('has its sides sewn to a gusset that decreases in %s round, under a leg worked %s', (gusset, way) => {
    const { fabric, web, solid } = made({ ...SOCK, leg: { ...SOCK.leg, way }, heel: { ...SOCK.heel, kind: 'flap', gusset } }, FOOT);
    expectWholeSock({ fabric, web, solid }, 1);
    // Each row of the flap is picked up at both of its ends, and one cell of the gusset lies along the side of each.
    const flap = web.rows.filter((row) => fabric.sections[fabric.rows[row.row]!.section]!.name === 'HEEL FLAP').slice(0, -2);
    const picked = [...web.stands.keys()].filter((i) => web.stands[i] !== STANDS.top);
    expect(picked.filter((i) => web.stands[i] === STANDS.leftEnd).map((i) => web.bases[web.baseStart[i]!]!).sort((a, b) => a - b)).toEqual(flap.map((row) => row.first));
    expect(picked.filter((i) => web.stands[i] === STANDS.rightEnd).map((i) => web.bases[web.baseStart[i]!]!).sort((a, b) => a - b)).toEqual(flap.map((row) => row.end - 1));
    const cellOf = new Map([...solid.cells].map((stitch, cell) => [stitch, cell]));
    const edges = edgesOf(solid);
    const meet = (a: number, b: number): boolean => [...edges].some(([edge, cells]) => cells.includes(cellOf.get(web.stitch[a]!)!) && (edges.get(edge.split(' ').reverse().join(' ')) ?? []).includes(cellOf.get(web.stitch[b]!)!));
    for (const i of picked) expect(meet(i, web.bases[web.baseStart[i]!]!)).toBe(true);
  });
});

describe('a heel set in afterwards', () => {
  const settings = { ...SOCK, leg: { ...SOCK.leg, way: 'rounds' as const }, heel: { ...SOCK.heel, kind: 'afterthought' as const } };
  const sock = made(settings, FOOT);

  it.each([
    ['in a leg worked in rounds', sock],
    ['in a leg worked flat', made({ ...settings, leg: SOCK.leg }, FOOT)],
    ['over more than half of the round', made({ ...settings, heel: { ...settings.heel, share: 0.6 } }, FOOT)],
    ['in a child’s sock', made(settings, { footGirth: 18, legLength: 14, footLength: 16 })],
    ['in a long sock', made(settings, { footGirth: 30, legLength: 30, footLength: 29 })],
    ['at a gauge of 24 to 22', made(settings, FOOT, { ...GAUGE, stitches: 24, rows: 22 })],
    ['at a gauge of 16 to 20', made(settings, FOOT, { ...GAUGE, stitches: 16 })],
  ])('is worked into its opening, bends the foot and stands outwards as a cup: %s', (_, { fabric, web, solid }) => {
    expect(solid.leftOut).toEqual([]);
    expectWholeSock({ fabric, web, solid }, 2);
    const section = (row: { readonly row: number }): string => fabric.sections[fabric.rows[row.row]!.section]!.name;
    const heelRows = web.rows.filter((row) => section(row) === 'HEEL');
    expect(heelRows.every((row) => web.rows[row.setInto] && section(web.rows[row.setInto]!) === 'FOOT')).toBe(true);

    // The heel by itself is a cup: right side out, as full as half a ball of its opening or more than half as much, on the outside of it.
    const heel = sectionsOf(fabric, solid, ['HEEL']);
    const [opening] = openLoops(heel).sort((a, b) => b.length - a.length);
    const girth = (heelRows[0]!.end - heelRows[0]!.first) * web.cellWidthMm;
    const halfBallMl = (2 / 3) * Math.PI * (girth / (2 * Math.PI)) ** 3 / 1000;
    expect(volumeMl(heel)).toBeGreaterThan(0.5 * halfBallMl);
    expect(volumeMl(heel)).toBeLessThan(1.2 * halfBallMl);
    expect(volumeMl(sectionsOf(fabric, solid, ['CUFF', 'LEG', 'FOOT', 'TOE']))).toBeGreaterThan(0);
    const mouth = meanOf(opening!.map((corner) => pointOf(solid.corners, corner)));
    const end = middleOf(solid, heelRows.at(-1)!);
    const ankle = meanOf(['LEG', 'FOOT'].map((name) => middleOf(solid, web.rows.filter((row) => section(row) === name).at(name === 'LEG' ? -1 : 0)!)));
    const out = minus(end, mouth);
    expect(dotted(out, minus(mouth, ankle))).toBeGreaterThan(0);
    expect(Math.hypot(...out)).toBeGreaterThan(0.5 * heelRows.length * web.cellWidthMm * web.height[heelRows[0]!.first]!);
    // Its right side faces away from its mouth.
    const facing = [...new Set(heel.outline)].filter((corner) => dotted(pointOf(solid.normals, corner), minus(pointOf(solid.corners, corner), mouth)) > 0);
    expect(facing.length).toBeGreaterThan(0.97 * new Set(heel.outline).size);
    // Behind the leg and under it.
    const leg = meanOf(web.rows.filter((row) => section(row) === 'LEG').map((row) => middleOf(solid, row)));
    expect(end[0]).toBeGreaterThan(leg[0]);
    expect(end[1]).toBeLessThan(middleOf(solid, web.rows.filter((row) => section(row) === 'LEG').at(-1)!)[1]);
  });

  it('gives the same numbers to the last bit', () => {
    const again = shapeSolid(sock.fabric, GAUGE);
    for (const key of ['heads', 'corners', 'normals', 'outline', 'cells'] as const) expect(again[key]).toEqual(sock.solid[key]);
  });

  it('takes under a second of work for 5,000 stitches', () => {
    const gauge = { ...GAUGE, stitches: 24, rows: 22 };
    const { fabric } = made(settings, FOOT, gauge);
    expect(fabric.count).toBeGreaterThan(5000);
    const took = Array.from({ length: 3 }, () => {
      const before = process.cpuUsage();
      shapeSolid(fabric, gauge);
      return process.cpuUsage(before).user / 1000;
    });
    expect(Math.min(...took)).toBeLessThan(1000);
  });
});

/** A sock with its stitches near the gauge, right side out, few folds, and closed but for its cuff and the ends that are drawn to a point. */
function expectWholeSock({ fabric, web, solid }: Shaped, drawn: number): void {
  expect(bendDeg(fabric, web, solid, 'LEG', 'FOOT')).toBeGreaterThan(70);
  expect(bendDeg(fabric, web, solid, 'LEG', 'FOOT')).toBeLessThan(115);
  const girthMm = (web.rows[20]!.end - web.rows[20]!.first) * web.cellWidthMm;
  const lengthMm = web.rows.filter((row) => row.wraps && row.setInto < 0).length * web.cellWidthMm * web.height[web.rows[20]!.first]!;
  const tubeMl = ((girthMm * girthMm) / (4 * Math.PI)) * lengthMm / 1000;
  expect(volumeMl(solid)).toBeGreaterThan(0.8 * tubeMl);
  expect(volumeMl(solid)).toBeLessThan(1.2 * tubeMl);
  // Measured: 3 to 8 pairs of cells.
  expect(folds(solid)).toBeLessThanOrEqual(12);
  const { width, height } = strains(fabric, web, solid);
  // Measured: width rms 1.4 to 1.9 %, height rms 1.6 to 2.6 %.
  expect(width.rms).toBeLessThan(0.025);
  expect(width.p95).toBeLessThan(0.04);
  expect(height.rms).toBeLessThan(0.035);
  expect(height.p95).toBeLessThan(0.06);
  const loops = openLoops(solid).map((loop) => lengthOfLoop(solid, loop)).sort((a, b) => b - a);
  expect(loops).toHaveLength(1 + drawn);
  expect(loops[0]).toBeGreaterThan(0.95 * (web.rows[0]!.end - web.rows[0]!.first) * web.cellWidthMm);
  for (const loop of loops.slice(1)) expect(loop).toBeLessThan(2 * web.cellWidthMm);
  const edges = edgesOf(solid);
  expect([...edges.values()].every((cells) => cells.length === 1)).toBe(true);
  expect([...edges.keys()].filter((edge) => !edges.has(edge.split(' ').reverse().join(' ')))).toHaveLength(openLoops(solid).flat().length);
}

function meanOf(points: readonly Point[]): Point {
  return [0, 1, 2].map((c) => points.reduce((sum, point) => sum + point[c]! / points.length, 0)) as unknown as Point;
}

describe('other pieces as the recipes make them', () => {
  it('an oval worked round a chain lies flat', () => {
    const { solid } = made({ kind: 'oval', yarn: 'A' }, { width: 12, length: 20 });
    expect(solid.halfMm[2]).toBeLessThan(1e-6);
    expect(folds(solid)).toBe(0);
    expect(openLoops(solid)).toHaveLength(1);
  });

  it('a ball is round', () => {
    const { solid } = made({ kind: 'ball', yarn: 'A' }, { across: 12 });
    const [x, y, z] = solid.halfMm;
    expect(Math.max(x, y, z) / Math.min(x, y, z)).toBeLessThan(1.25);
    expect(volumeMl(solid)).toBeGreaterThan(600);
  });

  it.each(['hdc', 'dc'] as const)('a disc of %s lies flat', (stitch) => {
    const { solid } = made({ ...DISC, stitch, more: 'byGauge' }, { across: 20, height: 1 });
    expect(solid.halfMm[2]).toBeLessThan(1e-6);
    expect(solid.halfMm[0]).toBeGreaterThan(90);
  });

  it('a tube with ribbed ends is one tube', () => {
    const { solid } = made({ ...TUBE, start: { edge: 'backLoops', heightCm: 3, yarn: 'A' }, end: { edge: 'posts', heightCm: 3, yarn: 'A' } }, { girth: 26, height: 20 });
    expect(openLoops(solid)).toHaveLength(2);
    expect(folds(solid)).toBe(0);
  });
});
