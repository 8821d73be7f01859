import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { startPattern, type Construction } from '../../../src/engine/2-construct/recipes/startPattern.ts';
import { pieceOf } from '../../../src/editor/piece/pieceOf.ts';
import { pieceSvg } from '../../../src/editor/piece/pieceSvg.ts';
import { sectionTitle } from '../../../src/editor/piece/sectionTitle.ts';

const yarns = [{ letter: 'A', name: 'slate', colour: '#4b5a6b', mark: 'none' as const }];
const start = (construction: Construction) =>
  startPattern(construction, {
    title: 'Piece', gauge: { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, hookMm: 4.5, yarns,
    sizes: [{ name: '', girthCm: 25, heightCm: 30, footCm: 24 }],
  });

describe('the silhouette of a piece', () => {
  // Widths follow from the gauge: 16 stitches to 10 cm are 6.25 mm a stitch.
  it('of a flat panel is as wide and high as its rows', () => {
    const { x0, x1, y0, y1, bands } = pieceOf(start('flatPanel'));
    expect(bands).toHaveLength(1);
    expect(x1 - x0).toBeCloseTo(40 * 6.25, 0);
    expect((y1 - y0) / (10 / 18 * 10)).toBeCloseTo(54, 0);
  });

  it('of a tube lies folded: half as wide as it is round', () => {
    const { x0, x1 } = pieceOf(start('legWarmer'));
    expect(x1 - x0).toBeCloseTo(20 * 6.25, 0);
  });

  it('of a sock bends at the heel: the toe lies to the front of the leg', () => {
    const { bands, x0 } = pieceOf(start('bootSock'));
    const [cuff, leg, heel, foot, toe] = bands.map((band) => band.middle);
    expect(bands).toHaveLength(5);
    expect(leg![1]).toBeGreaterThan(cuff![1]);
    expect(heel![1]).toBeGreaterThan(leg![1]);
    expect(foot![0]).toBeLessThan(leg![0]);
    expect(toe![0]).toBeLessThan(foot![0]);
    expect(x0).toBeLessThan(foot![0]);
  });

  it('of a disc lies round, and as a cap folded over its sides', () => {
    const { x0, x1, y0, y1, bands } = pieceOf(start('disc'));
    expect(bands.length).toBeGreaterThan(1);
    expect(x1 - x0).toBeGreaterThan(0);
    const flat = pieceOf(startPattern('disc', { title: 'Disc', gauge: { stitches: 16, rows: 18, overCm: 10, stitch: 'sc' }, hookMm: 4.5, yarns, sizes: [{ name: '', girthCm: 18, heightCm: 9, footCm: 24 }] }));
    expect(flat.bands).toHaveLength(1);
    expect(flat.x1 - flat.x0).toBeCloseTo(flat.y1 - flat.y0, 0);
    // 16 rounds of 10 cm / 18 rows.
    expect(flat.x1 - flat.x0).toBeCloseTo(2 * 16 * (100 / 18), 0);
    expect(y1 - y0).toBeGreaterThan(flat.y1 - flat.y0);
  });

  it('of a piece with a loop of its own lays the loop beside it', () => {
    const text = 'Two\nYarn A: slate #4b5a6b\n\nPANEL\nFoundation: with A, ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (10 sc)\nFasten off.\n\nLOOP\nFoundation: with A, ch 6.\nRow 1: sc in 2nd ch from hook and in each ch across. (5 sc)';
    const [panel, loop] = pieceOf(patternFromText(text).pattern!).bands;
    expect(loop!.middle[0]).toBeGreaterThan(panel!.middle[0] + 5 * 6.25);
  });

  it('is a picture that names no more than shapes and yarns', () => {
    const svg = pieceSvg(start('bootSock'));
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" viewBox="[-\d. ]+">(<path [^<>]*\/>)+<\/svg>$/);
    expect(svg).not.toContain('NaN');
  });
});

describe('a section title', () => {
  it.each([['LEG', 'Leg'], ['Leg', 'Leg'], ['FIRST SIDE', 'First side'], ['', '']])('%s is set as %s', (name, title) => {
    expect(sectionTitle(name)).toBe(title);
  });
});
