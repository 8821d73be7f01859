import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { gaugeAtScale } from '../../../src/engine/5-layout/gaugeAtScale.ts';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import { draw } from '../../../src/engine/6-drawing/draw.ts';
import { printSection } from '../../../src/engine/6-drawing/printSection.ts';
import { printLook } from '../../../src/engine/6-drawing/look.ts';
import { num } from '../../../src/engine/6-drawing/svgText.ts';
import { choiceLeftOut, choicesFor, drawnAs, laidAs, printedAs, USUALLY_DRAWN, type DrawnHow } from '../../../src/editor/chart/drawnHow.ts';
import { keepDrawnHow, keptDrawnHow, type TextStore } from '../../../src/editor/chart/keptDrawnHow.ts';
import { HEEL_SAMPLES } from '../../../src/editor/gallery/heelSamples.ts';
import { ROUND_SAMPLES } from '../../../src/editor/gallery/roundSamples.ts';
import { ROW_SAMPLES } from '../../../src/editor/gallery/rowSamples.ts';

const all = [...ROW_SAMPLES, ...ROUND_SAMPLES, ...HEEL_SAMPLES];

function worked(name: string) {
  const sample = all.find((each) => each.name === name);
  const pattern = patternFromText(sample?.text ?? '').pattern;
  if (!sample || !pattern) throw new RangeError(`no sample called ${name} among ${all.length}`);
  return { pattern, fabric: work(construct(pattern, 0)), section: sample.look?.section ?? 0 };
}

function memory(): TextStore & { readonly texts: Map<string, string> } {
  const texts = new Map<string, string>();
  return { texts, getItem: (name) => texts.get(name) ?? null, setItem: (name, text) => void texts.set(name, text) };
}

const LEFT: DrawnHow = { shows: 'symbols', mono: true, symbols: 'jis', hand: 'left', view: 'fan', rounds: 'disc', leanStitches: 0.25, spiral: true, tubeMargin: 8 };

describe('how a chart is drawn', () => {
  it.each([
    ['flat', 'one-sided', ['symbols', 'hand']],
    ['turned short rows', 'heel', ['symbols', 'hand', 'view']],
    ['an hourglass heel', 'hourglass', ['symbols', 'hand']],
    ['a disc', 'disc-sc', ['symbols', 'hand', 'rounds']],
    ['a tube', 'tube', ['symbols', 'hand', 'rounds', 'leanStitches', 'spiral', 'tubeMargin']],
  ])('offers for %s what makes a difference there', (_, name, choices) => {
    const { pattern, fabric, section } = worked(name);
    expect(choicesFor(layOut(fabric, section, pattern.gauge))).toEqual(choices);
  });

  it('says why an hourglass heel has no choice of views, and only there', () => {
    const said = (name: string): string | null => {
      const { pattern, fabric, section } = worked(name);
      return choiceLeftOut(layOut(fabric, section, pattern.gauge));
    };
    expect(said('hourglass')).toMatch(/stay in columns/);
    expect(said('heel')).toBeNull();
    expect(said('tube')).toBeNull();
  });

  it.each([
    ['one-sided', { symbols: 'jis' }], ['one-sided', { hand: 'left' }], ['heel', { view: 'grid' }], ['heel', { view: 'fan' }], ['disc-sc', { rounds: 'tube' }],
    ['tube', { rounds: 'disc' }], ['tube-spiral', { leanStitches: 0.5 }], ['tube-spiral', { spiral: true }], ['tube', { tubeMargin: 0 }],
  ] as const)('%s is another drawing when %o is chosen', (name, change) => {
    const { pattern, fabric, section } = worked(name);
    const drawn = (how: DrawnHow) => JSON.stringify(draw(fabric, layOut(fabric, section, pattern.gauge, laidAs(how)), drawnAs(how)), (_, value) => (ArrayBuffer.isView(value) ? Array.from(value as Float32Array) : value) as unknown);
    expect(drawn({ ...USUALLY_DRAWN, ...change })).not.toBe(drawn(USUALLY_DRAWN));
  });

  it.each([['heel', LEFT], ['tube', LEFT], ['tube', { ...USUALLY_DRAWN, shows: 'colour' }]] as const)('the chart of %s that is taken away has the stitches of the screen in the same places', (name, how) => {
    const { pattern, fabric, section } = worked(name);
    const [file] = printSection(pattern, fabric, fabric.yarn, section, 0, printedAs(how, 4, 'none'));
    const look = printLook(pattern.yarns, { mono: how.mono });
    const drawing = draw(fabric, layOut(fabric, section, gaugeAtScale(pattern.gauge, 4), laidAs(how)), { ...drawnAs(how), textMm: look.textMm });
    const { glyph, glyphX, glyphY } = drawing.stitches;
    const symbols = Array.from(glyph.keys()).filter((item) => glyph[item]! >= 0);
    for (const { id } of drawing.glyphs) expect(file!.text).toContain(`id="${id}"`);
    for (const item of symbols) {
      const [id, x, y] = [drawing.glyphs[glyph[item]!]!.id, num(glyphX[item]!), num(glyphY[item]!)];
      expect(file!.text.includes(`#${id}" x="${x}" y="${y}"`) || file!.text.includes(`#${id}" transform="translate(${x} ${y})`)).toBe(true);
    }
    expect(symbols.length === 0).toBe(how.shows === 'colour');
    const width = Number(/viewBox="\S+ \S+ (\S+)/.exec(file!.text)?.[1]);
    expect(width).toBeGreaterThanOrEqual(drawing.bounds.x1 - drawing.bounds.x0);
  });

  it('is kept for each pattern', () => {
    const store = memory();
    expect(keepDrawnHow(() => store, 'one', LEFT)).toBe(true);
    expect(keptDrawnHow(() => store, 'one')).toEqual(LEFT);
    expect(keptDrawnHow(() => store, 'two')).toEqual(USUALLY_DRAWN);
  });

  it.each([
    ['nothing', null, USUALLY_DRAWN],
    ['no JSON', '{', USUALLY_DRAWN],
    ['a choice that is unknown', '{"hand":"left","view":"dome","tubeMargin":-3}', { ...USUALLY_DRAWN, hand: 'left' }],
    ['another kind of value', '[]', USUALLY_DRAWN],
  ])('reads %s without losing the rest', (_, text, expected) => {
    const store = memory();
    if (text !== null) store.texts.set('turnwork drawn one', text);
    expect(keptDrawnHow(() => store, 'one')).toEqual(expected);
  });

  it('is as usual where the browser keeps nothing', () => {
    const closed = (): TextStore => {
      throw new DOMException('denied', 'SecurityError');
    };
    expect(keptDrawnHow(closed, 'one')).toEqual(USUALLY_DRAWN);
    expect(keepDrawnHow(closed, 'one', LEFT)).toBe(false);
  });
});
