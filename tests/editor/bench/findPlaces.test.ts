import { describe, expect, it } from 'vitest';
import { check } from '../../../src/engine/readings/checks/check.ts';
import { describeFinding } from '../../../src/engine/readings/checks/prose.ts';
import { findPlaces } from '../../../src/editor/find/findPlaces.ts';
import { takeClip, keepClip } from '../../../src/keep/clip.ts';
import { benchOf, LEG, stitchesOfRow } from './benchOf.ts';

const state = benchOf(LEG);
const found = (asked: string, pattern = LEG) => {
  const bench = benchOf(pattern);
  return findPlaces(pattern, bench.fabric, 0, 0, check(pattern, bench.fabric, bench.colours), describeFinding, asked);
};

describe('finding a place', () => {
  it.each([
    ['4', 'Leg, row 4'],
    ['row 4', 'Leg, row 4'],
    ['leg 4', 'Leg, row 4'],
    ['foundation', 'Leg, foundation'],
    ['2nd ch', 'Leg, row 1'],
    ['rest hands', 'Leg, note'],
  ])('%s', (asked, name) => {
    expect(found(asked)[0]?.name).toBe(name);
  });

  it('finds a stitch of a row by two numbers, counted as it is worked', () => {
    expect(found('4 3')[0]).toMatchObject({ kind: 'stitch', name: 'Leg, row 4, stitch 3', stitch: stitchesOfRow(state, 4).filter((stitch) => state.grids[0]!.columns.columnOf[stitch]! >= 0)[2] });
    expect(found('4 11')).toEqual([]);
  });

  it('finds what is to be looked at by its words', () => {
    const off = { ...LEG, sections: [{ ...LEG.sections[0]!, lines: LEG.sections[0]!.lines.map((line) => (line.id === 'plain' ? { ...line, text: 'ch 1, turn, sc in each st across. (11 (12) sc)' } : line)) }] };
    expect(found('11', off).some((place) => place.kind === 'finding')).toBe(true);
  });

  it('finds nothing for nothing, and for what is not there', () => {
    expect(found('  ')).toEqual([]);
    expect(found('bobble')).toEqual([]);
  });
});

describe('what was copied', () => {
  it('is found again, and not where it can’t be read', () => {
    const kept = new Map<string, string>();
    const storage = { getItem: (key: string) => kept.get(key) ?? null, setItem: (key: string, value: string) => void kept.set(key, value) };
    expect(takeClip(storage)).toBeNull();
    const clip = { kind: 'block', block: { rows: ['AB', 'BA'] } } as const;
    expect(keepClip(storage, { kind: 'block', block: { rows: [...clip.block.rows] } })).toBe(true);
    expect(takeClip(storage)).toEqual(clip);
    kept.set([...kept.keys()][0]!, '{"kind":"rows","clip":{"rows":[]}}');
    expect(takeClip(storage)).toBeNull();
  });

  it('is told where the device keeps nothing', () => {
    const full = { setItem: () => { throw new DOMException('full', 'QuotaExceededError'); } };
    expect(keepClip(full, { kind: 'block', block: { rows: ['A'] } })).toBe(false);
  });
});
