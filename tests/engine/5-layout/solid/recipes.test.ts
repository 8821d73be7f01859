import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { DISC, SOCK, TUBE } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import { makePiece } from '../../../../src/engine/2-construct/recipes/makePiece.ts';
import type { HeelSettings, PieceRequest, PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { gaugeCell } from '../../../../src/engine/5-layout/gaugeCell.ts';
import { shapeSolid } from '../../../../src/engine/5-layout/solid/shapeSolid.ts';
import { webOf } from '../../../../src/engine/5-layout/solid/webOf.ts';
import { bendDeg, folds, middleOf, openLoops, volumeMl } from './measureSolid.ts';
import { GAUGE } from './solidOf.ts';
import type { Shaped } from './solidOf.ts';

type Cm = Partial<Record<PieceRequest['measures'][number]['name'], number>>;

/** A piece as a recipe makes it, in one size and yarn. */
function made(settings: PieceSettings, cm: Cm): Shaped {
  const measures = Object.entries(cm).map(([name, value]) => ({ name: name as PieceRequest['measures'][number]['name'], cm: [value], easePercent: 0, easeCm: 0 }));
  const { sections } = makePiece({ settings, gauge: GAUGE, swatches: [], sizes: [''], measures, pins: {} });
  const pattern: Pattern = {
    id: 'p', title: 'Piece', designer: '', terms: 'us', gauge: GAUGE, hookMm: null, yarns: [{ letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' }],
    sizes: [''], hdcTurningChainCounts: true, notes: [], sections, motifs: [], placements: [], cells: [],
  };
  const fabric = work(construct(pattern, 0));
  return { fabric, web: webOf(fabric, gaugeCell(GAUGE)), solid: shapeSolid(fabric, GAUGE) };
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

  it('leaves an afterthought heel out, since it is a piece of its own, and shows its opening', () => {
    const { fabric, solid } = made({ ...SOCK, leg: { ...SOCK.leg, way: 'rounds' }, heel: { ...SOCK.heel, kind: 'afterthought' } }, FOOT);
    expect(solid.leftOut.map((section) => fabric.sections[section]!.name)).toEqual(['HEEL']);
    expect(openLoops(solid).filter((loop) => loop.length > 30)).toHaveLength(2);
  });
});

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
