import { describe, expect, it } from 'vitest';
import { STITCHES } from '../../../src/engine/craft/stitches.ts';
import type { StitchKind } from '../../../src/engine/craft/stitches.ts';
import type { Stroke } from '../../../src/engine/6-drawing/drawing.ts';
import { addGlyph, newGlyphTable } from '../../../src/engine/6-drawing/glyph.ts';
import { drawSymbol } from '../../../src/engine/6-drawing/symbols/drawSymbol.ts';
import type { SymbolFrame } from '../../../src/engine/6-drawing/symbols/frame.ts';
import { slashes } from '../../../src/engine/6-drawing/symbols/symbolCall.ts';
import type { SymbolCall } from '../../../src/engine/6-drawing/symbols/symbolCall.ts';
import { SYMBOL_SETS } from '../../../src/engine/6-drawing/symbols/symbolSet.ts';
import { symbolFullName, symbolName } from '../../../src/engine/6-drawing/symbols/symbolName.ts';
import { gaugeAtScale } from '../../../src/engine/5-layout/gaugeAtScale.ts';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import { chartOf } from './chartOf.ts';

const [W, H] = [4, 3.6];

function call(kind: StitchKind, more: Partial<SymbolCall> = {}): SymbolCall {
  return { kind, together: 1, legs: STITCHES.find((row) => row.kind === kind)!.legs, loop: 'both', post: 'none', spike: false, turning: false, ...more };
}

function strokes(kind: StitchKind, more: Partial<SymbolCall> = {}, frame: Partial<SymbolFrame> = {}): Stroke[] {
  const length = STITCHES.find((row) => row.kind === kind)!.height * H;
  const asked = call(kind, more);
  const feet = Array.from({ length: asked.together }, (_, k) => [(k - (asked.together - 1) / 2) * W, length] as const);
  return drawSymbol(asked, { w: W, h: H, length, feet, legs: asked.legs, slashes: slashes(kind), shared: false, inSpace: false, standing: asked.turning, across: W, set: 'us', ...frame });
}

const lines = (drawn: readonly Stroke[]): Stroke[] => drawn.filter(({ kind }) => kind === 'line');
const ovals = (drawn: readonly Stroke[]): Extract<Stroke, { kind: 'oval' }>[] => drawn.flatMap((stroke) => (stroke.kind === 'oval' ? [stroke] : []));
const curves = (drawn: readonly Stroke[]): Stroke[] => drawn.filter(({ kind }) => kind === 'curve');

describe('every stitch of the catalogue', () => {
  it.each(STITCHES.flatMap(({ kind }) => SYMBOL_SETS.map((set) => [kind, set] as const)))('%s has a symbol in the %s set that stays within reach of its cell', (kind, set) => {
    const drawn = strokes(kind, {}, { set });
    expect(drawn.length).toBeGreaterThan(0);
    const height = STITCHES.find((row) => row.kind === kind)!.height * H;
    drawn.forEach((stroke) => {
      const points = stroke.kind === 'oval' ? [stroke.x, stroke.y] : stroke.points;
      points.forEach((value, i) => {
        expect(Number.isFinite(value)).toBe(true);
        if (i % 2 === 0) expect(Math.abs(value)).toBeLessThanOrEqual(kind === 'shell' || kind === 'vst' ? 2 * W : 0.8 * W);
        else expect(value).toBeGreaterThanOrEqual(-0.1 * H);
        if (i % 2 === 1) expect(value).toBeLessThanOrEqual(height + 0.1 * H);
      });
    });
  });
});

describe('a bobble of another stitch than usual', () => {
  it.each([['3-tr cluster', 2, '3-tr cluster'], ['4-dc cluster', 1, '4-dc cluster'], ['5-tr bobble', 2, '5-tr bobble']] as const)('%s has %i slashes a leg, its own name, and the height of its legs', (words, count, name) => {
    const { drawing, fabric } = chartOf(`PIECE\nFoundation: ch 9.\nRow 1: sc in 2nd ch from hook and in each ch across. (8 sc)\nRow 2: ch 1, turn, sc in next 3 sts, ${words} in next st, sc in next 4 sts.`);
    const glyph = drawing.glyphs.find((each) => each.name === name)!;
    const legs = Number(words[0]);
    expect(glyph.strokes.filter(({ kind }) => kind === 'curve')).toHaveLength(legs);
    // A cluster has its cap besides.
    expect(glyph.strokes.filter(({ kind }) => kind === 'line')).toHaveLength(legs * count + (words.endsWith('cluster') ? 1 : 0));
    const { headY, footY, first, cellHeightMm } = layOut(fabric, 0, gaugeAtScale({ stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, 4));
    const i = fabric.legs.findIndex((each) => each > 0) - first;
    expect((footY[i]! - headY[i]!) / cellHeightMm).toBeGreaterThan(count * 0.8);
  });
});

describe('stitches made from a single crochet', () => {
  it('reverse: the cross with a curved line over it (published chart guides)', () => {
    expect(lines(strokes('rsc'))).toEqual(lines(strokes('sc')));
    expect(curves(strokes('rsc'))).toHaveLength(2);
  });

  it('twisted: the cross with a small circle on top of it (published chart guides)', () => {
    const [circle, ...more] = ovals(strokes('tsc'));
    expect(more).toEqual([]);
    const top = Math.min(...lines(strokes('sc')).flatMap((stroke) => (stroke.kind === 'line' ? [stroke.points[1]!, stroke.points[3]!] : [])));
    expect(circle).toMatchObject({ x: 0, filled: false });
    expect(circle!.y + circle!.ry).toBeCloseTo(top, 6);
  });

  it('extended: the symbol of the stitch above the open oval of its chain, a foot each when drawn together (own drawing)', () => {
    for (const kind of ['esc', 'ehdc', 'edc', 'etr'] as const) {
      const [chain, ...more] = ovals(strokes(kind));
      expect(more).toEqual([]);
      expect(chain!.filled).toBe(false);
      const lowest = Math.max(...lines(strokes(kind)).flatMap((stroke) => (stroke.kind === 'line' ? [stroke.points[1]!, stroke.points[3]!] : [])));
      expect(lowest).toBeLessThanOrEqual(chain!.y - chain!.ry + 1e-9);
    }
    expect(ovals(strokes('edc', { together: 2 }))).toHaveLength(2);
  });
});

describe('post stitches', () => {
  it.each<[StitchKind, number, string]>([
    ['hdc', 0, 'T without a slash (published chart guides)'],
    ['dc', 1, 'T and one slash (published chart guides)'],
    ['tr', 2, 'T and two slashes (published chart guides)'],
    ['dtr', 3, 'as many slashes as yarn overs before the hook goes in, derived'],
    ['trtr', 4, 'as many slashes as yarn overs before the hook goes in, derived'],
    ['edc', 1, 'as its plain stitch, above the oval of its chain: own drawing'],
    ['etr', 2, 'as its plain stitch, above the oval of its chain: own drawing'],
    ['ehdc', 0, 'as its plain stitch, above the oval of its chain: own drawing'],
  ])('%s is a T with %i slashes: %s', (kind, count) => {
    expect(lines(strokes(kind))).toHaveLength(2 + count);
  });

  it('drawn together have one slashed leg a base under one cap (common practice)', () => {
    expect(lines(strokes('dc', { together: 3 }))).toHaveLength(1 + 3 * 2);
  });

  it.each(['us', 'jis'] as const)('hook to opposite sides round the front and round the back in the %s set (JIS L 0201: the side of the hook tells)', (set) => {
    const [front, back] = [curves(strokes('dc', { post: 'front' }, { set }))[0]!, curves(strokes('dc', { post: 'back' }, { set }))[0]!];
    const end = (stroke: Stroke): number => (stroke.kind === 'curve' ? stroke.points[4] : 0);
    expect(end(front)).toBeGreaterThan(0);
    expect(end(back)).toBe(-end(front));
  });
});

describe('low stitches', () => {
  it('chain is an open oval, slip stitch a filled one (published chart guides)', () => {
    expect(ovals(strokes('ch'))).toMatchObject([{ filled: false }]);
    expect(ovals(strokes('slst'))).toMatchObject([{ filled: true }]);
  });

  it('a chain lies along the row and stands in a turning chain', () => {
    const [lying, standing] = [ovals(strokes('ch'))[0]!, ovals(strokes('ch', { turning: true }))[0]!];
    expect(lying.rx).toBeGreaterThan(lying.ry);
    expect(standing.ry).toBeGreaterThan(standing.rx);
  });

  it.each([['us', 'upright'], ['jis', 'slanted']] as const)('single crochet is a cross, in the %s set an %s one; where the foot is shared a stem and a dot show it', (set, _) => {
    const cross = lines(strokes('sc', {}, { set }));
    expect(cross).toHaveLength(2);
    expect(cross.some((stroke) => stroke.kind === 'line' && stroke.points[1] === stroke.points[3])).toBe(set === 'us');
    expect(ovals(strokes('sc', {}, { set }))).toHaveLength(0);
    const shared = strokes('sc', {}, { shared: true, set });
    expect(lines(shared)).toHaveLength(3);
    expect(ovals(shared)).toMatchObject([{ filled: true }]);
  });

  it.each([['us', 'a cross on each leg'], ['jis', 'a bar at the top']] as const)('single crochet together has legs that meet at the top, in the %s set with %s (common practice)', (set, _) => {
    const drawn = lines(strokes('sc', { together: 2 }, { set })).flatMap((stroke) => (stroke.kind === 'line' ? [stroke.points] : []));
    const legs = drawn.filter(([x]) => x === 0);
    expect(legs).toHaveLength(2);
    expect(legs[0]!.slice(0, 2)).toEqual(legs[1]!.slice(0, 2));
    expect(legs[0]![2]).toBeCloseTo(-legs[1]![2]!, 9);
    expect(drawn).toHaveLength(set === 'us' ? 4 : 3);
  });

  it('slip stitch is a dot in one set, a flat oval in the other (published chart guides: filled oval or dot)', () => {
    const [us, jis] = (['us', 'jis'] as const).map((set) => ovals(strokes('slst', {}, { set }))[0]!);
    expect(us!.rx / us!.ry).toBeLessThan(jis!.rx / jis!.ry);
  });

  it('the back loop is a ridge bar in the JIS set', () => {
    const extra = (set: 'us' | 'jis'): Stroke => strokes('sc', { loop: 'back' }, { set }).at(-1)!;
    expect(extra('us').kind).toBe('curve');
    expect(extra('jis')).toMatchObject({ kind: 'line' });
  });

  it('the magic ring is a circle, or wa as written by hand', () => {
    expect(ovals(strokes('ring'))).toHaveLength(1);
    const wa = strokes('ring', {}, { set: 'jis' });
    expect(ovals(wa)).toHaveLength(0);
    expect(curves(wa)).toHaveLength(2);
  });

  it('loops are arcs under the symbol: the front loop opens up, the back loop down (common practice)', () => {
    const arc = (loop: 'front' | 'back'): number => {
      const stroke = curves(strokes('sc', { loop }))[0]!;
      return stroke.kind === 'curve' ? stroke.points[3] - stroke.points[1] : 0;
    };
    expect(arc('front')).toBeGreaterThan(0);
    expect(arc('back')).toBeLessThan(0);
  });
});

describe('bunches', () => {
  it('have as many legs as are made', () => {
    expect(curves(strokes('bobble', { legs: 5 }, { legs: 5 }))).toHaveLength(5);
    expect(curves(strokes('puff', { legs: 4 }, { legs: 4 }))).toHaveLength(4);
    expect(curves(strokes('cluster'))).toHaveLength(3);
  });

  it('a popcorn has an oval on top, legs joined at the foot or free in a space (published chart guide)', () => {
    expect(ovals(strokes('popcorn'))).toHaveLength(1);
    const feet = (inSpace: boolean): number => new Set(curves(strokes('popcorn', {}, { inSpace })).map((stroke) => (stroke.kind === 'curve' ? stroke.points[4].toFixed(3) : ''))).size;
    expect(feet(false)).toBe(1);
    expect(feet(true)).toBe(5);
  });

  it('a picot is a ring of its chains closed by a dot', () => {
    expect(ovals(strokes('picot')).map(({ filled }) => filled)).toEqual([true, false, false, false]);
  });
});

describe('names', () => {
  it.each([
    [call('sc', { together: 2 }), 'us', 'sc2tog', 'single crochet 2 together'],
    [call('sc', { together: 2 }), 'uk', 'dc2tog', 'double crochet 2 together'],
    [call('dc', { post: 'front' }), 'us', 'FPdc', 'front post double crochet'],
    [call('dc', { post: 'front' }), 'uk', 'FPtr', 'front post treble crochet'],
    [call('sc', { loop: 'back' }), 'us', 'BLO sc', 'single crochet in back loop only'],
    [call('bobble'), 'us', '5-dc bobble', 'bobble of 5 double crochet'],
    [call('bobble'), 'uk', '5-tr bobble', 'bobble of 5 treble crochet'],
    [call('picot'), 'us', '3-ch picot', 'picot of 3 chains'],
    [call('ch', { turning: true }), 'us', 'ch', 'turning chain'],
  ] as const)('of %o in %s terms: %s, %s', (asked, terms, short, full) => {
    expect(symbolName(asked, terms)).toBe(short);
    expect(symbolFullName(asked, terms)).toBe(full);
  });
});

describe('what the right side shows', () => {
  const { fabric, drawing } = chartOf(`Foundation: ch 5.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (4 sc)
Row 2: ch 1, turn, FLO sc in each st across. (4 sc)
Row 3: ch 1, turn, FLO sc in each st across. (4 sc)`);
  const namesOf = (row: number): Set<string> => {
    const { stitches, glyphs } = drawing;
    return new Set([...stitches.glyph].flatMap((glyph, i) => (stitches.row[i] === row && glyph >= 0 ? [glyphs[glyph]!.name] : [])));
  };

  it('turns front and back loops round on wrong-side rows (published guide to stitch charts)', () => {
    expect(fabric.rows[2]!.side).toBe('WS');
    expect(namesOf(2)).toContain('BLO sc');
    expect(namesOf(3)).toContain('FLO sc');
  });
});

describe('the glyph table', () => {
  it('keeps each geometry once and gives it the same id in every drawing', () => {
    const [one, other] = [newGlyphTable('us'), newGlyphTable('us')];
    const first = addGlyph(one, 'sc', strokes('sc'));
    expect(addGlyph(one, 'sc', strokes('sc'))).toBe(first);
    addGlyph(other, 'dc', strokes('dc'));
    const again = addGlyph(other, 'sc', strokes('sc'));
    expect(other.glyphs[again]!.id).toBe(one.glyphs[first]!.id);
    expect(other.glyphs[again]!.id).toMatch(/^[A-Za-z][\w-]*$/);
  });

  it('needs one glyph for all single crochet of a straight chart', () => {
    const { drawing } = chartOf('Foundation: ch 31.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRows 2-20: ch 1, turn, sc in each st across.');
    expect(drawing.glyphs.map(({ name }) => name).sort()).toEqual(['ch', 'ch', 'sc']);
  });
});
