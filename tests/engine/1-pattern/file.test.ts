import { existsSync, readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeOpened } from '../../../src/engine/1-pattern/describeOpened.ts';
import { openPatternFile, writePatternFile, type Opened } from '../../../src/engine/1-pattern/file.ts';
import { LIMITS } from '../../../src/engine/1-pattern/limits.ts';
import { FILE_VERSION, migrateUp, MIGRATIONS } from '../../../src/engine/1-pattern/migrations/migrateUp.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { SMALL } from './smallPattern.ts';

const files = new URL('../../files/', import.meta.url);
const TEXT = writePatternFile(SMALL);

/** The file of the small pattern with one thing changed in its JSON. */
function changed(change: (file: Record<string, unknown>, pattern: Record<string, unknown>) => void): Opened {
  const file = JSON.parse(TEXT) as Record<string, unknown>;
  change(file, file['pattern'] as Record<string, unknown>);
  return openPatternFile(JSON.stringify(file));
}

describe('pattern files', () => {
  it('are the same text for the same pattern, whatever the order its fields were made in', () => {
    const reversed = (value: unknown): unknown =>
      Array.isArray(value) ? value.map(reversed) : typeof value === 'object' && value !== null ? Object.fromEntries(Object.entries(value).reverse().map(([key, inner]) => [key, reversed(inner)])) : value;
    expect(writePatternFile(reversed(SMALL) as Pattern)).toBe(TEXT);
    expect(TEXT.slice(0, 102)).toBe('{\n "format": "turnwork-pattern",\n "version": 3,\n "pattern": {\n  "id": "quay",\n  "title": "Puffin Quay"');
  });

  it('open as the pattern that was written, frozen through and through', () => {
    const opened = openPatternFile(TEXT);
    expect(opened).toStrictEqual({ kind: 'ok', pattern: SMALL, from: FILE_VERSION });
    if (opened.kind !== 'ok') return;
    const isFrozen = (value: unknown): boolean => typeof value !== 'object' || value === null || (Object.isFrozen(value) && Object.values(value).every(isFrozen));
    expect(isFrozen(opened.pattern)).toBe(true);
  });

  it('open after an editor put a byte order mark before them', () => {
    expect(openPatternFile(`\uFEFF${TEXT}`).kind).toBe('ok');
  });

  it('put loose cells in order', () => {
    const opened = changed((_, pattern) => (pattern['cells'] as unknown[]).reverse());
    expect(opened).toMatchObject({ kind: 'ok', pattern: SMALL });
  });

  it.each<[string, Opened, Opened]>([
    ['an empty text', openPatternFile(''), { kind: 'notJson', reason: expect.stringMatching(/./) as string }],
    ['half a file', openPatternFile(TEXT.slice(0, 900)), { kind: 'notJson', reason: expect.stringMatching(/./) as string }],
    ['a list', openPatternFile('[1,2]'), { kind: 'notAPattern', found: 'a list of 2' }],
    ['a number', openPatternFile('4'), { kind: 'notAPattern', found: '4' }],
    ['nothing', openPatternFile('null'), { kind: 'notAPattern', found: 'null' }],
    ['something else', openPatternFile('{"format":"picture"}'), { kind: 'notAPattern', found: 'format "picture"' }],
    ['a newer version', changed((file) => (file['version'] = 7)), { kind: 'newer', version: 7, known: FILE_VERSION }],
    ['no version', changed((file) => delete file['version']), { kind: 'damaged', path: 'version', found: 'nothing', expected: 'a whole number from 1 on' }],
    ['version nought', changed((file) => (file['version'] = 0)), { kind: 'damaged', path: 'version', found: '0', expected: 'a whole number from 1 on' }],
    ['no pattern', changed((file) => delete file['pattern']), { kind: 'damaged', path: 'pattern', found: 'nothing', expected: 'an object' }],
    ['a field too few', changed((_, pattern) => delete pattern['gauge']), { kind: 'damaged', path: 'pattern.gauge', found: 'no such field', expected: 'a field "gauge"' }],
    ['a field too many', changed((_, pattern) => (pattern['colourway'] = 1)), { kind: 'damaged', path: 'pattern.colourway', found: 'a field of that name', expected: 'no such field' }],
    ['a gauge of nought', changed((_, pattern) => (pattern['gauge'] = { ...SMALL.gauge, rows: 0 })), { kind: 'damaged', path: 'pattern.gauge.rows', found: '0', expected: 'a number above 0' }],
    ['terms of a third kind', changed((_, pattern) => (pattern['terms'] = 'fr')), { kind: 'damaged', path: 'pattern.terms', found: '"fr"', expected: '"us" or "uk"' }],
    ['a section twice', changed((_, pattern) => (pattern['sections'] = [SMALL.sections[0], SMALL.sections[0]])), { kind: 'damaged', path: 'pattern.sections.1.id', found: '"leg" once more', expected: 'an id of its own' }],
    ['a line twice', changed((_, pattern) => (pattern['sections'] = [SMALL.sections[0], { ...SMALL.sections[0], id: 'x' }])), { kind: 'damaged', path: 'pattern.sections.1.lines.0.id', found: '"leg-0" once more', expected: 'an id of its own in the whole pattern' }],
    ['a motif in a yarn that is not there', changed((_, pattern) => (pattern['motifs'] = [{ id: 'flag', name: '', cells: ['Q'] }])), { kind: 'damaged', path: 'pattern.motifs.0.cells', found: 'yarn Q', expected: "one of the pattern's yarns (A, B, C)" }],
    ['cells in a yarn that is not there', changed((_, pattern) => (pattern['cells'] = [{ ...SMALL.cells[0], letters: 'Q' }])), { kind: 'damaged', path: 'pattern.cells.0.letters', found: 'yarn Q', expected: "one of the pattern's yarns (A, B, C)" }],
    ['cells in a size that is not there', changed((_, pattern) => (pattern['cells'] = [{ ...SMALL.cells[0], size: 2 }])), { kind: 'damaged', path: 'pattern.cells.0.size', found: '2', expected: 'a size from 0 to 1' }],
    ['cells on a row of another section', changed((_, pattern) => (pattern['cells'] = [{ ...SMALL.cells[0], section: 'foot' }])), { kind: 'damaged', path: 'pattern.cells.0.row.line', found: '"leg-2"', expected: 'the id of a row of its section' }],
    ['a placement of no motif', changed((_, pattern) => (pattern['motifs'] = [])), { kind: 'damaged', path: 'pattern.placements.0.motif', found: '"flag"', expected: 'the id of a motif' }],
    ['a vector too short', changed((_, pattern) => (pattern['sizes'] = ['S', 'M', 'L'])), { kind: 'damaged', path: 'pattern.sections.0.recipe.settings.stitches', found: '2 numbers', expected: 'one number for each of the 3 sizes' }],
    ['a huge count', changed((_, pattern) => (pattern['placements'] = [{ ...SMALL.placements[0], up: 1e9 }])), { kind: 'damaged', path: 'pattern.placements.0.up', found: '1000000000', expected: `a number of at most ${LIMITS.count}` }],
    ['a huge name', changed((_, pattern) => (pattern['title'] = 'x'.repeat(2_000_001))), { kind: 'damaged', path: 'pattern.title', found: 'a length of 2000001', expected: `a length of at most ${LIMITS.textLength}` }],
    ['a way into the prototype', openPatternFile(TEXT.replace('"settings": {', '"settings": {"__proto__": {"rows": 1},')), { kind: 'damaged', path: 'pattern.sections.0.recipe.settings.__proto__', found: 'a field of that name', expected: 'no such field' }],
    ['a way to the constructor', openPatternFile(TEXT.replace('"settings": {', '"settings": {"constructor": 1,')), { kind: 'damaged', path: 'pattern.sections.0.recipe.settings.constructor', found: 'a field of that name', expected: 'no such field' }],
  ])('are refused with the place of the fault: %s', (_, opened, expected) => {
    expect(opened).toEqual(expected);
    expect(describeOpened(opened)).toMatch(/^This .*\.$/);
  });

  it('are refused when they nest without end or are too long, before they are parsed', () => {
    expect(openPatternFile('['.repeat(2_000_000))).toMatchObject({ kind: 'damaged', path: '', expected: `nesting of at most ${LIMITS.fileDepth}` });
    expect(openPatternFile(`{"format":"turnwork-pattern","version":1,"pattern":${'{"a":'.repeat(30)}1${'}'.repeat(31)}`).kind).toBe('damaged');
    expect(openPatternFile(' '.repeat(LIMITS.fileLength + 1))).toMatchObject({ kind: 'damaged', expected: `at most ${LIMITS.fileLength} characters` });
    expect(openPatternFile(`{"format":"turnwork-pattern","note":"${'[{'.repeat(500)}\\"[["}`)).toMatchObject({ kind: 'damaged', path: 'version' });
  });

  it('never throw when five thousand of them are broken at random, and open only as sound patterns', () => {
    const mutation = fc.record({ at: fc.nat(TEXT.length - 1), cut: fc.nat(12), put: fc.oneof(fc.string({ maxLength: 6 }), fc.constantFrom('{', '}', '[', ']', '"', ',', ':', '-', '0', '1e999', 'null', '"__proto__":', '\u0000', '\\u', 'true')) });
    const tally = { ok: 0, refused: 0 };
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (mutations) => {
        const text = mutations.reduce((now, { at, cut, put }) => now.slice(0, at) + put + now.slice(at + cut), TEXT);
        const opened = openPatternFile(text);
        describeOpened(opened);
        if (opened.kind === 'ok') {
          tally.ok++;
          expect(openPatternFile(writePatternFile(opened.pattern))).toMatchObject({ kind: 'ok', pattern: opened.pattern });
        } else tally.refused++;
      }),
      { numRuns: 5_000, seed: 612_004 },
    );
    expect(tally.ok).toBeGreaterThan(20);
    expect(tally.refused).toBeGreaterThan(2_000);
  });

  it('never throw when values of their JSON are changed for others, so that they parse but mean something else', () => {
    const odd = fc.constantFrom<unknown>(null, -1, 1.5, 1e300, '', 'A', 'zz', [], {}, [[]], true, [1, 2, 3], { line: 'leg-2', nth: 0 });
    const spots: (readonly [object, string])[] = [];
    const collect = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      for (const key of Object.keys(value)) {
        spots.push([value, key]);
        collect((value as Record<string, unknown>)[key]);
      }
    };
    const file = JSON.parse(TEXT) as object;
    collect(file);
    fc.assert(
      fc.property(fc.nat(spots.length - 1), odd, (at, value) => {
        const [object, key] = spots[at]!;
        const fields = object as Record<string, unknown>;
        const before = fields[key];
        fields[key] = value;
        const opened = openPatternFile(JSON.stringify(file));
        fields[key] = before;
        if (opened.kind === 'ok') expect(openPatternFile(writePatternFile(opened.pattern))).toMatchObject({ kind: 'ok', pattern: opened.pattern });
        else expect(describeOpened(opened)).not.toBe('');
      }),
      { numRuns: 3_000, seed: 8_123 },
    );
  });
});

describe('file versions', () => {
  const folder = (version: number) => new URL(`v${String(version).padStart(3, '0')}/`, files);

  it.each(Array.from({ length: FILE_VERSION }, (_, i) => i + 1))('version %i has archived files, and all of them open', (version) => {
    expect(existsSync(folder(version))).toBe(true);
    const names = readdirSync(folder(version));
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) {
      const text = readFileSync(new URL(name, folder(version)), 'utf8');
      const opened = openPatternFile(text);
      expect(describeOpened(opened)).toBe('');
      expect(opened).toMatchObject({ kind: 'ok', from: version });
      if (version === FILE_VERSION && opened.kind === 'ok') expect(writePatternFile(opened.pattern)).toBe(text);
    }
  });

  it('have a migration from each to the next, without a gap', () => {
    expect(MIGRATIONS.map((migration) => migration.from)).toEqual(Array.from({ length: FILE_VERSION - 1 }, (_, i) => i + 1));
  });

  it('are brought up one step after another from where a file stands', () => {
    const steps = [1, 2, 3].map((from) => ({ from, change: `to ${from + 1}`, up: (pattern: unknown) => [...(pattern as number[]), from + 1] }));
    expect(migrateUp([], 1, steps)).toEqual([2, 3, 4]);
    expect(migrateUp([], 3, steps)).toEqual([4]);
    expect(migrateUp([], 4, steps)).toEqual([]);
    expect(() => migrateUp([], 5, steps)).toThrow('version 5 is outside 1 to 4');
  });
});
