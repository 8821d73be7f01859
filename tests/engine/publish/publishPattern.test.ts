import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../../src/engine/index.ts';
import { writeWords } from '../../../src/engine/readings/words/writeWords.ts';
import { bookletBlocks } from '../../../src/engine/publish/booklet/bookletBlocks.ts';
import { plannedCharts } from '../../../src/engine/publish/charts/plannedCharts.ts';
import { drained } from '../../../src/engine/publish/drained.ts';
import { pageFormat } from '../../../src/engine/publish/page/format.ts';
import { paginate } from '../../../src/engine/publish/page/paginate.ts';
import { choiceProblems, defaultChoices, PUBLISH_PARTS, type PublishChoices } from '../../../src/engine/publish/publishChoices.ts';
import { publishPattern, publishSteps } from '../../../src/engine/publish/publishPattern.ts';
import { measureText } from '../../../src/engine/publish/type/measureText.ts';
import { workedSizes } from '../../../src/engine/publish/workedSizes.ts';
import { BAND, DEMO, patternOf } from './demoPattern.ts';

const choices = (pattern: Pattern, more: Partial<PublishChoices> = {}): PublishChoices => ({ ...defaultChoices(pattern), ...more });

/** The pages of a booklet before they are written. */
function pagesOf(pattern: Pattern, chosen: PublishChoices) {
  const worked = workedSizes(pattern, chosen);
  const format = pageFormat(chosen.paper, chosen.largePrint, measureText);
  const document = writeWords({ pattern: worked.pattern, sizes: worked.sizes.map(({ size, dressed, colours }) => ({ size, fabric: dressed, colours })), terms: chosen.terms });
  const { blocks } = drained(bookletBlocks(worked, document, plannedCharts(worked, chosen), chosen, format));
  return { blocks, format, pages: paginate(blocks, format.heightMm) };
}

describe('the choices', () => {
  it('have defaults that can be published, for any pattern', () => {
    for (const pattern of [DEMO, BAND]) expect(choiceProblems(pattern, defaultChoices(pattern))).toEqual([]);
  });

  it.each<[Partial<Record<keyof PublishChoices, unknown>>, string]>([
    [{ parts: [] }, 'Parts: one or more of booklet, words, charts, legend, schematic, steps, errata was expected, [] was found.'],
    [{ parts: ['cover'] }, 'Parts'], [{ charts: ['wool'] }, 'Charts'], [{ sizes: 3 }, 'Sizes: all or a number from 0 to 2 was expected, 3 was found.'], [{ version: 'easy' }, 'Version'],
    [{ terms: 'fr' }, 'Terms: us, uk was expected, “fr” was found.'], [{ paper: 'a5' }, 'Paper'], [{ mmPerStitch: 0 }, 'Width of a stitch: fit, or 1 to 30 mm was expected, 0 was found.'], [{ mmPerStitch: Number.NaN }, 'Width'],
    [{ hand: 'both' }, 'Hand'], [{ symbols: 'all' }, 'Symbols'], [{ view: 'flat' }, 'View'], [{ largePrint: 1 }, 'Large print'], [{ stepRows: [{ line: 'nowhere', nth: 0 }] }, 'Rows shown step by step'], [{ lengths: 'ell' }, 'Lengths'], [{ style: { runs: 'middling' } }, 'Style of runs'],
  ])('say what is wrong with %j', (more, problem) => {
    const problems = choiceProblems(DEMO, { ...defaultChoices(DEMO), ...more } as PublishChoices);
    expect(problems).toHaveLength(1);
    expect(problems[0]!.startsWith(problem)).toBe(true);
    expect(() => publishPattern(DEMO, { ...defaultChoices(DEMO), ...more } as PublishChoices)).toThrow(RangeError);
  });
});

describe('a publication', () => {
  const whole = publishPattern(DEMO, choices(DEMO, { paper: 'a4' }));

  it('gives the same bytes twice', () => {
    // Another object, so that nothing that was worked before is taken again.
    expect(JSON.stringify(publishPattern(structuredClone(DEMO), choices(DEMO, { paper: 'a4' })))).toBe(JSON.stringify(whole));
  });

  it('is made part by part, each of a share of the whole, and gives the same sheets without files', () => {
    const steps = publishSteps(DEMO, choices(DEMO, { paper: 'a4' }), { files: false });
    const shares: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) shares.push(step.value);
    expect(shares.length).toBeGreaterThan(12);
    expect(shares[0]).toBe(0);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
    expect(step.value.files).toEqual([]);
    expect(step.value.sheets.map(({ svg }) => svg)).toEqual(whole.sheets.map(({ svg }) => svg));
  });

  it('has names that are unique, and sheets of the paper that was chosen', () => {
    expect(new Set(whole.sheets.map(({ name }) => name)).size).toBe(whole.sheets.length);
    expect(new Set(whole.files.map(({ name }) => name)).size).toBe(whole.files.length);
    for (const { svg, widthMm, heightMm } of whole.sheets) {
      expect([widthMm, heightMm].sort((a, b) => a - b)).toEqual([210, 297]);
      expect(svg).toContain(`width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}"`);
    }
  });

  it('has every part as an entry of its outline, on the sheet that says it', () => {
    const titles = whole.outline.map(({ title }) => title);
    for (const title of ['Puffin Quay', 'Before you begin', 'Sizes', 'Materials', 'Gauge', 'Abbreviations', 'Take care', 'Cuff', 'Leg', 'Heel', 'Foot', 'Toe', 'Loop', 'Step by step', 'Schematic', 'About this pattern', 'Thanks', 'Licence', 'Changes']) expect(titles).toContain(title);
    for (const { title, sheet, yMm } of whole.outline) {
      expect(whole.sheets[sheet]!.svg).toContain(title.split(' ')[0]!);
      expect(yMm).toBeLessThan(whole.sheets[sheet]!.heightMm);
    }
  });

  it('says what the designer says: about, licence, thanks and changes', () => {
    const all = whole.sheets.map(({ svg }) => svg).join('');
    for (const words of ['Boots for cold floors.', 'For your own use.', 'Tested by three friends of the quay.', 'Since First edition, 2023-11-02:', 'Heel, row 2, size M: 20 sts, was 19.', 'second edition, 2024-05-01']) expect(all).toContain(words);
    expect(whole.files.find(({ name }) => name === 'puffin-quay-errata.txt')!.text).toContain('Heel, row 2, size M: 20 sts, was 19.');
  });

  it('refers in every document to ids that are there, once each', () => {
    for (const { svg, name } of [...whole.sheets, ...whole.files.flatMap((file) => (file.name.endsWith('.svg') ? [{ svg: file.text, name: file.name }] : []))]) {
      const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map((match) => match[1]!);
      expect(new Set(ids).size, name).toBe(ids.length);
      const known = new Set(ids);
      for (const [, id] of svg.matchAll(/(?:href="#|url\(#)([^")]*)/g)) expect(known.has(id!), `${name} ${id!}`).toBe(true);
    }
  });

  it('carries every chart in words, inside its file and beside it', () => {
    const charts = whole.files.filter(({ name }) => /-chart-.*\.svg$/.test(name));
    expect(charts.length).toBeGreaterThan(5);
    for (const { name, text } of charts) {
      const words = whole.files.find((file) => file.name === name.replace('.svg', '.txt'))!.text;
      const row = words.split('\n').find((line) => /^(Row|Rnd) 1\b/.test(line))!;
      expect(text).toContain(row.replaceAll('&', '&amp;').replaceAll("'", '&#39;'));
    }
    expect(whole.files.find(({ name }) => name === 'puffin-quay-chart-heel-s.txt')!.text).toContain('Row 2 (WS, left to right): ch 1, turn, sc in next 17 sts. Leave 7 sts unworked. (17 sc)');
  });

  it('says a caution once that the designer says already, with its source', () => {
    const words = whole.sheets.map(({ svg }) => [...svg.matchAll(/>([^<>]+)</g)].map((match) => match[1]).join(' ')).join(' ');
    expect(words.match(/Socks slip on smooth floors/g)).toHaveLength(1);
    expect(words.match(/Rest (the|your) hands/g)).toHaveLength(1);
    expect(words).toContain('BMC Geriatrics');
    expect(words).toContain('flammability rules');
  });

  it('is in UK terms, in inches, in one size, for the left hand, if that is wanted', () => {
    const uk = publishPattern(DEMO, choices(DEMO, { terms: 'uk', sizes: 1, lengths: 'in', hand: 'left', parts: ['booklet', 'words', 'legend', 'charts'] }));
    const all = uk.sheets.map(({ svg }) => svg).join('');
    expect(all).toContain('dc2tog');
    expect(all).not.toMatch(/>[^<]*\bsc2tog\b/);
    expect(all).toContain('Tension');
    expect(all).toContain('12¼ in');
    expect(all).not.toMatch(/>\d+(\.\d)? cm</);
    expect(all).not.toContain('(20, 23)');
    expect(all).toContain('drawn for the left hand');
  });

  it.each(PUBLISH_PARTS.filter((part) => part !== 'booklet'))('can be of %s alone', (part) => {
    const alone = publishPattern(DEMO, choices(DEMO, { parts: [part], charts: ['colour'], sizes: 0 }));
    expect(alone.sheets.map(({ svg }) => svg).join('')).not.toContain('Before you begin');
    expect(alone.sheets.length + alone.files.length > 0 || part === 'legend').toBe(true);
  });
});

describe('pages', () => {
  it.each<[string, Pattern, Partial<PublishChoices>]>([
    ['A4', DEMO, { paper: 'a4' }],
    ['Letter', DEMO, { paper: 'letter', mono: true, view: 'fan', sizes: 1 }],
    ['large print', DEMO, { paper: 'a4', largePrint: true, parts: ['booklet', 'words', 'steps', 'charts', 'legend', 'schematic', 'errata'], sizes: 0 }],
    ['a band in two sizes, JIS symbols', BAND, { charts: ['both'], symbols: 'jis' }],
  ])('keep to the margins, end in no heading, part no row and hold the least sizes: %s', (_, pattern, more) => {
    const chosen = choices(pattern, more);
    const { blocks, format, pages } = pagesOf(pattern, chosen);
    expect(pages.length).toBeGreaterThan(1);
    const least = chosen.largePrint ? 12 : 6;
    for (const { strips } of pages) {
      const last = strips.at(-1)!;
      expect(blocks[last.block]!.heading !== null && blocks[last.block]!.withNext).toBe(false);
      for (const { strip, yMm } of strips) {
        expect(yMm + strip.heightMm).toBeLessThanOrEqual(format.heightMm + 1e-6);
        for (const text of strip.texts) {
          const from = text.anchor === 'end' ? text.xMm - text.widthMm : text.xMm;
          expect(from).toBeGreaterThanOrEqual(-1e-6);
          expect(from + text.widthMm, text.text).toBeLessThanOrEqual(format.widthMm + 1e-6);
          expect(text.sizePt).toBeGreaterThanOrEqual(least);
        }
        for (const picture of strip.pictures) {
          expect(picture.xMm).toBeGreaterThanOrEqual(-1e-6);
          expect(picture.xMm + picture.widthMm, picture.says).toBeLessThanOrEqual(format.widthMm + 1e-6);
          expect(picture.yMm + picture.heightMm).toBeLessThanOrEqual(strip.heightMm + 1e-6);
        }
      }
    }
    blocks.forEach((one, index) => {
      const on = new Set(pages.flatMap((page, p) => page.strips.filter((placed) => placed.block === index).map(() => p)));
      const high = one.strips.reduce((sum, strip) => sum + strip.heightMm, 0);
      if (one.whole && high <= format.heightMm) expect(on.size).toBeLessThanOrEqual(1);
    });
  });

  it('bind on the inner side: 20 mm there, 15 mm outside, mirrored', () => {
    const { sheets } = publishPattern(BAND, choices(BAND, { paper: 'a4' }));
    const leftmost = (svg: string): number => Math.min(...[...svg.matchAll(/<text x="([\d.]+)"(?![^>]*text-anchor)/g)].map((match) => Number(match[1])));
    expect(leftmost(sheets[0]!.svg)).toBeCloseTo(20, 1);
    expect(leftmost(sheets[1]!.svg)).toBeCloseTo(15, 1);
  });

  it('set large print in 18 pt, and nothing that is set under 12 pt', () => {
    const { sheets } = publishPattern(BAND, choices(BAND, { largePrint: true, paper: 'a4' }));
    const sizes = sheets.flatMap(({ svg }) => [...svg.matchAll(/font-size="([\d.]+)"/g)].map((match) => Number(match[1]) / (25.4 / 72)));
    expect(sizes.some((size) => Math.abs(size - 18) < 0.01)).toBe(true);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(11.99);
  });
});

describe('names that mean harm', () => {
  const HOSTILE = ['<script>alert(1)</script>', '"quoted" \'twice\' & <b>', 'שלום \u202e\u2066 right to left', '🧶🐧👩‍👩‍👧‍👦 emoji', 'x'.repeat(10_000), 'a\u0000b\u0007c\u001fd\ud800e\ufffe', ']]>--><!--', 'Ωmega Ж 編み物'];

  it.each(HOSTILE.map((name) => [name.slice(0, 30), name] as const))('print as text inside the page: %j', (_, name) => {
    const pattern: Pattern = {
      ...BAND, title: name, designer: name, sizes: [name, `${name} 2`], yarns: BAND.yarns.map((yarn) => ({ ...yarn, name })), notes: [{ word: name.slice(0, 400), value: name }],
      sections: BAND.sections.map((section) => ({ ...section, name, remark: name, lines: [...section.lines, { kind: 'note' as const, id: 'n1', text: name }] })),
      imprint: { about: name, licence: name, credits: name, edition: name, date: name, editions: [{ name, date: name, errata: name }] },
    };
    const chosen = choices(pattern, { charts: ['both'] });
    const { sheets, files, name: word } = publishPattern(pattern, chosen);
    expect(word).toMatch(/^[\p{L}\p{N}-]{1,40}$/u);
    for (const { svg } of sheets) {
      expect(svg).not.toMatch(/<script|<b>|<!--|\]\]>/);
      // XML 1.0, production 2: characters that no document may hold.
      expect(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/.test(svg)).toBe(false);
      expect(svg).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
    }
    for (const { name: file } of files) expect(file).toMatch(/^[\p{L}\p{N}.-]+$/u);
    const { format, pages } = pagesOf(pattern, chosen);
    for (const { strips } of pages) {
      for (const { strip } of strips) {
        for (const text of strip.texts) expect(text.xMm + (text.anchor === 'end' ? 0 : text.widthMm)).toBeLessThanOrEqual(format.widthMm + 1e-6);
        for (const picture of strip.pictures) expect(picture.xMm + picture.widthMm, picture.says).toBeLessThanOrEqual(format.widthMm + 1e-6);
      }
    }
  });

  it('are refused by no page: a pattern without rows, title or designer is published too', () => {
    const empty: Pattern = { ...BAND, title: '', designer: '', sections: [], notes: [] };
    const { sheets } = publishPattern(empty, choices(empty));
    expect(sheets[0]!.svg).toContain('Untitled');
  });

  it('are no matter for a pattern that states what it does not make', () => {
    const wrong = patternOf('Wrong\nTerms: US\n\nBAND\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across. (12 sc)\nRow 2: ch 1, turn, sc in next 40 sts, flumble. (3 sc)\n');
    expect(publishPattern(wrong, choices(wrong)).sheets.length).toBeGreaterThan(1);
  });
});
