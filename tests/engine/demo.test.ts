import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { check, colour, construct, openPatternFile, patternFromText, work } from '../../src/engine/index.ts';
import { makeDemo } from '../setup/demo.ts';

const root = resolve(import.meta.dirname, '../..');
const file = (path: string) => readFileSync(join(root, path), 'utf8');
const demo = makeDemo(file('tests/samples/puffin-quay/structure.txt'));

function worked(pattern: typeof demo.pattern, size: number) {
  const fabric = work(construct(pattern, size));
  return { fabric, colours: colour(pattern, fabric, size) };
}

describe('Puffin Quay', () => {
  it('is shipped as it is made', () => {
    expect(file('static/puffin-quay.json')).toBe(demo.file);
    expect(file('static/puffin-quay.txt')).toBe(demo.text);
  });

  it.each([[0, 'S'], [1, 'M'], [2, 'L']])('checks clean in size %i (%s)', (size) => {
    const { fabric, colours } = worked(demo.pattern, size);
    expect(check(demo.pattern, fabric, colours)).toEqual([]);
  });

  it.each([0, 1, 2])('the written pattern gives the same fabric in the same yarns, size %i', (size) => {
    const opened = openPatternFile(file('static/puffin-quay.json'));
    const read = patternFromText(file('static/puffin-quay.txt'));
    if (opened.kind !== 'ok' || !read.pattern) throw new Error('the demo does not open');
    expect(read.findings).toEqual([]);
    const [one, other] = [worked(opened.pattern, size), worked(read.pattern, size)];
    expect(other.fabric.kind).toEqual(one.fabric.kind);
    expect(other.fabric.bases).toEqual(one.fabric.bases);
    expect(other.fabric.flags).toEqual(one.fabric.flags);
    expect(other.colours.yarn).toEqual(one.colours.yarn);
  });

  // Counted by hand from the structure: 24, 28, 32 heel stitches, sides 7, 8, 9.
  it.each([[0, 24, 17, 12], [1, 28, 19, 16], [2, 32, 21, 16]])('size %i: a heel of %i closed in row %i, a toe drawn shut over %i', (size, stitches, rows, toe) => {
    const { fabric } = worked(demo.pattern, size);
    const section = (name: string) => fabric.rows.filter((row) => fabric.sections[row.section]!.name.toLowerCase() === name && row.word !== 'step');
    const heel = section('heel');
    expect([heel.at(-1)!.made, heel.at(-1)!.number, heel.at(-1)!.left]).toEqual([stitches, rows, { ahead: 0, behind: 0 }]);
    expect(section('toe').at(-1)!.made).toBe(toe);
  });
});
