import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { DISC, PANEL, SOCK, TUBE } from '../../../../src/engine/2-construct/recipes/defaults.ts';
import type { PieceSettings } from '../../../../src/engine/2-construct/recipes/settings.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { finishedSchematic } from '../../../../src/engine/6-drawing/schematic/finishedSchematic.ts';
import { flatSchematic } from '../../../../src/engine/6-drawing/schematic/flatSchematic.ts';
import { lengthWords } from '../../../../src/engine/6-drawing/schematic/lengthWords.ts';
import { printSchematic } from '../../../../src/engine/6-drawing/schematic/printSchematic.ts';
import { rowMeasures } from '../../../../src/engine/6-drawing/schematic/rowMeasures.ts';
import { sectionMeasures } from '../../../../src/engine/6-drawing/schematic/sectionMeasures.ts';
import { straightened } from '../../../../src/engine/6-drawing/schematic/straightened.ts';
import { measure, pieceOf, requestOf } from '../../2-construct/recipes/pieceOf.ts';
import { xmlFault } from '../wellFormed.ts';

const { pattern: read } = patternFromText(readFileSync(new URL('../../../samples/puffin-quay/structure.txt', import.meta.url), 'utf8'));
const QUAY: Pattern = read!;
const ROOM = { gapMm: 20, textMm: 2.8, lineMm: 600 };

function sectionsOf(pattern: Pattern, size = 0) {
  const fabric = work(construct(pattern, size));
  return { fabric, sections: sectionMeasures(fabric, rowMeasures(fabric, { gauge: pattern.gauge, swatches: [], yarn: null })) };
}

function print(pattern: Pattern, size = 0) {
  return printSchematic(pattern, work(construct(pattern, size)), null, size);
}

function box(points: readonly number[]) {
  const xs = points.filter((_, i) => i % 2 === 0);
  const ys = points.filter((_, i) => i % 2 === 1);
  return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
}

const make = (settings: PieceSettings, ...measures: ReturnType<typeof measure>[]) => pieceOf(requestOf(settings, measures)).pattern;

describe('sections laid flat', () => {
  it('of Puffin Quay are as wide and high as their rows, tubes folded', () => {
    const { fabric, sections } = sectionsOf(QUAY);
    const { shapes } = flatSchematic(fabric, sections, ROOM);
    const size = (name: string) => box(shapes.find((shape) => shape.label === name)!.outlines[0]!);
    // 48 stitches of 10/18 cm, 40 rows of 5 mm; the foot's 48 folded in two, 27 rounds.
    expect(size('LEG').width).toBeCloseTo(480 / 1.8, 6);
    expect(size('LEG').height).toBeCloseTo(200, 6);
    expect(size('FOOT').width).toBeCloseTo(240 / 1.8, 6);
    expect(size('FOOT').height).toBeCloseTo(135, 6);
    // The heel's widest row has 24.
    expect(size('HEEL').width).toBeCloseTo(240 / 1.8, 6);
  });

  it('have the length on each line that it is drawn long, but for girths, which lie folded', () => {
    for (const pattern of [QUAY, make(PANEL, measure('width', 40), measure('topWidth', 24), measure('height', 30)), make(TUBE, measure('girth', 24), measure('endGirth', 30), measure('height', 30))]) {
      const { fabric, sections } = sectionsOf(pattern);
      for (const one of flatSchematic(fabric, sections, ROOM).dimensions) {
        const drawn = Math.hypot(one.toX - one.fromX, one.toY - one.fromY) / 10;
        expect(drawn * (one.word === 'round' ? 2 : 1)).toBeCloseTo(one.cm, 6);
      }
    }
  });

  it('show a disc as a circle, a ball from the side, an oval as it lies', () => {
    const shape = (pattern: Pattern) => {
      const { fabric, sections } = sectionsOf(pattern);
      return box(flatSchematic(fabric, sections, ROOM).shapes[0]!.outlines[0]!);
    };
    const disc = shape(make(DISC, measure('across', 12)));
    expect([disc.width, disc.height].map((mm) => Math.round(mm))).toEqual([120, 120]);
    const ball = shape(make({ kind: 'ball', yarn: 'A' }, measure('across', 6)));
    expect(ball.width / 10).toBeCloseTo(6, 0);
    const oval = shape(make({ kind: 'oval', yarn: 'A' }, measure('width', 8), measure('length', 14)));
    expect([oval.width, oval.height].map((mm) => Math.round(mm / 10))).toEqual([14, 8]);
  });

  it('never overlap', () => {
    const { fabric, sections } = sectionsOf(QUAY, 2);
    const boxes = flatSchematic(fabric, sections, { gapMm: 20, textMm: 2.8, lineMm: 500 }).shapes.map(({ outlines: [points] }) => {
      const xs = points!.filter((_, i) => i % 2 === 0);
      const ys = points!.filter((_, i) => i % 2 === 1);
      return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] as const;
    });
    boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => expect(a[2] <= b[0] + 1e-6 || b[2] <= a[0] + 1e-6 || a[3] <= b[1] + 1e-6 || b[3] <= a[1] + 1e-6).toBe(true)));
  });
});

describe('the finished thing', () => {
  it.each(['shortRows', 'flap', 'afterthought'] as const)('a sock with a heel of the kind %s is drawn as long and high as it measures', (kind) => {
    const worked = pieceOf(requestOf({ ...SOCK, heel: { ...SOCK.heel, kind } }, [measure('footGirth', 22), measure('footLength', 25), measure('legLength', 20)]));
    const { fabric, sections } = sectionsOf(worked.pattern);
    const { shapes, dimensions } = finishedSchematic(fabric, sections, new Set(), ROOM);
    const cm = (name: string) => worked.reports[0]!.finished.find((one) => one.name === name)!.cm;
    const drawn = box(shapes[0]!.outlines[0]!);
    expect(drawn.width / 10).toBeCloseTo(cm('footLength'), 6);
    expect(drawn.height / 10).toBeCloseTo(cm('legLength') + cm('footGirth') / 2, 6);
    expect(dimensions.map((one) => one.cm)).toEqual([cm('calf'), cm('legLength'), cm('footLength'), cm('footGirth')].map((value) => expect.closeTo(value, 6) as number));
  });
});

describe('schematic files', () => {
  const files = print(QUAY, 1);

  it('are two, self-contained, in millimetres, with title and words', () => {
    expect(files.map(({ name }) => name)).toEqual(['puffin-quay-schematic-flat-m.svg', 'puffin-quay-schematic-m.svg']);
    for (const { text } of files) {
      expect(xmlFault(text)).toBeNull();
      expect(text).toMatch(/width="[\d.]+mm" height="[\d.]+mm" viewBox=/);
      expect(text).toMatch(/<title id="title">Puffin Quay: .*size M<\/title>/);
      expect(text).toMatch(/<desc id="desc">Schematic of .*foot 25\.8 cm \(10¼ in\).*Scale 1 to/);
      expect(text).not.toMatch(/<script|<foreignObject|href="http|style="|var\(/);
      expect(text).toContain('<g id="dimensions"');
    }
  });

  it('are the same bytes for the same piece, with numbers of three decimals at most', () => {
    expect(print(QUAY, 1)).toEqual(files);
    for (const { text } of files) expect(text.replace(/<metadata>.*<\/metadata>/, '')).not.toMatch(/\d\.\d{4}/);
  });

  it('fit their paper at a scale that a ruler knows, with lines and text that print', () => {
    for (const { text } of files) {
      const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(text)!;
      expect(Number(width)).toBeLessThanOrEqual(190);
      expect(Number(height)).toBeLessThanOrEqual(277);
      expect(text).toMatch(/Scale 1 : (1|1\.5|2|2\.5|3|4|5|6|8|10|12|15|20|25|30|40|50)</);
      for (const [, stroke] of text.matchAll(/stroke-width="([\d.]+)"/g)) expect(Number(stroke)).toBeGreaterThanOrEqual(0.2);
      // 6 pt are 2.117 mm.
      for (const [, size] of text.matchAll(/font-size="([\d.]+)"/g)) expect(Number(size)).toBeGreaterThanOrEqual(2.117);
    }
  });

  it('keep to the text that is asked for in large print, each section by itself, all at one scale', () => {
    const large = printSchematic(QUAY, work(construct(QUAY, 1)), null, 1, { textMm: 4.233, large: true });
    expect(large.map(({ shows, section }) => `${shows} ${section}`)).toEqual(['flat Cuff', 'flat Leg', 'flat Heel', 'flat Foot', 'flat Toe', 'flat Loop', 'finished ']);
    for (const { text } of large) {
      for (const [, size] of text.matchAll(/font-size="([\d.]+)"/g)) expect(Number(size)).toBeGreaterThanOrEqual(4.233);
      expect(Number(/width="([\d.]+)mm"/.exec(text)![1])).toBeLessThanOrEqual(190);
    }
    const scaleOf = (text: string) => Number(/Scale 1 : ([\d.]+)</.exec(text)![1]);
    const flat = large.filter(({ shows }) => shows === 'flat').map(({ text }) => scaleOf(text));
    expect(new Set(flat).size).toBe(1);
    // Larger than the drawing that shows all of them.
    expect(flat[0]!).toBeLessThan(scaleOf(files[0]!.text));
  });

  it.each([['cm', / in\b/, /\d cm</], ['in', / cm\b/, /\d[¼½¾]? in</]] as const)('say lengths in %s alone where that is wanted', (lengths, never, always) => {
    for (const { text } of printSchematic(QUAY, work(construct(QUAY, 1)), null, 1, { lengths })) {
      const words = [...text.matchAll(/<text[^>]*>[^<]*</g)].map(([one]) => one).join('\n');
      expect(words).not.toMatch(never);
      expect(words).toMatch(always);
    }
  });

  it('are one where the finished piece is its one section laid flat', () => {
    const panel = print(make(PANEL, measure('width', 20), measure('height', 15)));
    expect(panel.map(({ shows }) => shows)).toEqual(['finished']);
    expect(panel[0]!.name).not.toContain('flat');
  });

  it('print names as they are', () => {
    const named: Pattern = { ...QUAY, title: 'A <b> & "C"', sections: QUAY.sections.map((section) => ({ ...section, name: '<script>' })) };
    for (const { text } of print(named)) {
      expect(xmlFault(text)).toBeNull();
      expect(text).not.toContain('<script>');
    }
  });

  it('are written for every piece, whatever its size', () => {
    fc.assert(
      fc.property(fc.constantFrom<PieceSettings>(SOCK, PANEL, TUBE, DISC, { kind: 'oval', yarn: 'A' }, { kind: 'ball', yarn: 'A' }), fc.double({ min: 3, max: 120, noNaN: true }), (settings, cm) => {
        const measures = (['footGirth', 'footLength', 'legLength', 'width', 'height', 'girth', 'across'] as const).map((name) => measure(name, Math.max(name.startsWith('foot') ? 12 : 3, cm)));
        for (const { text } of print(make(settings, ...measures, measure('length', cm + 5)))) {
          expect(xmlFault(text)).toBeNull();
          expect(text).not.toMatch(/NaN|Infinity/);
        }
      }),
      { numRuns: 25, seed: 12 },
    );
  });
});

describe('lengths in print', () => {
  it.each([[24.13, '24.1 cm (9½ in)'], [2.54, '2.5 cm (1 in)'], [1.9, '1.9 cm (¾ in)'], [0.2, '0.2 cm'], [25.7, '25.7 cm (10 in)'], [30.48, '30.5 cm (12 in)']])('%f cm are %s', (cm, words) => {
    expect(lengthWords(cm)).toBe(words);
  });

  it('are in one unit where one is wanted', () => {
    expect([lengthWords(24.13, 'cm'), lengthWords(24.13, 'in'), lengthWords(0.2, 'in')]).toEqual(['24.1 cm', '9½ in', '0.1 in']);
  });
});

describe('edges drawn straight', () => {
  it('stray no further than allowed, and keep their ends', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: 0, max: 9, noNaN: true })), { minLength: 2, maxLength: 40 }), fc.double({ min: 0.5, max: 20, noNaN: true }), (steps, tolerance) => {
        let y = 0;
        const points = steps.map(([x, dy]) => [x, (y += dy + 0.1)] as const);
        const line = straightened(points, tolerance);
        expect([line[0], line.at(-1)]).toEqual([points[0], points.at(-1)]);
        for (const [px, py] of points) {
          const at = line.findIndex(([, ly], i) => i > 0 && ly >= py - 1e-9);
          const [[ax, ay], [bx, by]] = [line[at - 1]!, line[at]!];
          const off = Math.abs((bx - ax) * (ay - py) - (by - ay) * (ax - px)) / Math.hypot(bx - ax, by - ay);
          expect(off).toBeLessThanOrEqual(tolerance + 1e-6);
        }
      }),
      { numRuns: 200, seed: 5 },
    );
  });
});
