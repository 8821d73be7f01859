import { describe, expect, it } from 'vitest';
import type { Pattern } from '../../src/engine/1-pattern/pattern.ts';
import { earlierOf } from '../../src/keep/earlier.ts';
import { keepEarlier, VERSION_EVERY_MS } from '../../src/keep/keepEarlier.ts';
import { MOST_EARLIER, thinned } from '../../src/keep/thinned.ts';
import { sizeOfPattern, whatChanged } from '../../src/keep/whatChanged.ts';
import { SMALL, rowLine } from '../engine/1-pattern/smallPattern.ts';
import { memoryStore } from './memoryStore.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const titled = (title: string): Pattern => ({ ...SMALL, title });

describe('earlier versions', () => {
  it('are listed newest first, each with its pattern', async () => {
    const earlier = earlierOf(memoryStore());
    await earlier.keep(titled('one'), 1, null);
    await earlier.keep(titled('two'), 2, 'By name');
    await earlier.keep({ ...titled('else'), id: 'cap' }, 3, null);
    expect((await earlier.list('quay')).map(({ at, name, pattern }) => [at, name, pattern?.title])).toEqual([[2, 'By name', 'two'], [1, null, 'one']]);
    await earlier.remove('quay', 2);
    expect(await earlier.list('quay')).toHaveLength(1);
  });

  it('are told apart from damaged ones', async () => {
    const store = memoryStore();
    const earlier = earlierOf(store);
    await earlier.keep(titled('one'), 1, null);
    const [[key, value]] = [...store.values] as [[string, { file: { text: string; sum: number } }]];
    store.values.set(key, { ...value, file: { ...value.file, text: value.file.text.replace('one', 'two') } });
    expect(await earlier.list('quay')).toEqual([{ at: 1, name: null, pattern: null }]);
  });

  it('are kept of the start of a sitting and then once an hour, and tried again where the device refused', async () => {
    const store = memoryStore();
    const earlier = earlierOf(store);
    const keepVersion = keepEarlier(earlier, { pattern: titled('start'), at: 1_000 });
    const titles = async () => (await earlier.list('quay')).map(({ pattern }) => pattern?.title);
    store.failure = { methods: ['transact'], error: new Error('no') };
    await keepVersion(titled('a'), 5_000);
    store.failure = null;
    expect(await titles()).toEqual([]);
    await keepVersion(titled('b'), 6_000);
    expect(await titles()).toEqual(['start']);
    await keepVersion(titled('c'), 5_000 + VERSION_EVERY_MS);
    await keepVersion(titled('d'), 6_000 + VERSION_EVERY_MS);
    expect(await titles()).toEqual(['c', 'start']);
  });

  it('have none of a pattern that was never kept before', async () => {
    const earlier = earlierOf(memoryStore());
    await keepEarlier(earlier, { pattern: titled('start'), at: null })(titled('a'), 5);
    expect(await earlier.list('quay')).toEqual([]);
  });

  it('thin with age: all of two hours, then one an hour for a day, one a day for a month, one a month for good', () => {
    const now = 400 * DAY - 1;
    const every = (from: number, to: number, step: number) => Array.from({ length: Math.floor((to - from) / step) }, (_, i) => ({ at: now - from - i * step, name: null }));
    const stay = (list: readonly { at: number; name: null }[]) => list.length - new Set(thinned(list, now)).size;
    expect(stay(every(0, 2 * HOUR, HOUR / 6))).toBe(12);
    expect(stay(every(2 * HOUR, 12 * HOUR, HOUR / 6))).toBe(10);
    expect(stay(every(2 * DAY, 12 * DAY, DAY / 8))).toBe(10);
    expect(stay(every(60 * DAY, 360 * DAY, DAY))).toBe(11);
    expect(stay(every(0, 390 * DAY, HOUR / 2))).toBeLessThanOrEqual(MOST_EARLIER);
  });

  it('stay for good under a name', () => {
    expect(thinned(Array.from({ length: 200 }, (_, i) => ({ at: i, name: `v${i}` })), 900 * DAY)).toEqual([]);
  });
});

describe('what changed', () => {
  const leg = SMALL.sections[0]!;
  const withLines = (lines: typeof leg.lines): Pattern => ({ ...SMALL, sections: [{ ...leg, lines }, ...SMALL.sections.slice(1)] });

  it.each<[string, Pattern, readonly string[]]>([
    ['nothing', { ...SMALL }, []],
    ['the title', titled('Other'), ['title changed']],
    ['title and gauge', { ...SMALL, title: 'Other', gauge: { ...SMALL.gauge, rows: 20 } }, ['title, gauge changed']],
    ['rows', withLines([...leg.lines.slice(0, 1), { ...leg.lines[1]!, text: 'other' } as typeof leg.lines[0], ...leg.lines.slice(3), rowLine('new', 'sc')]), ['Leg: 1 row changed, 1 added, 1 taken out']],
    ['a section more', { ...SMALL, sections: [...SMALL.sections, { ...leg, id: 'toe', name: 'TOE', lines: [] }] }, ['Toe added']],
    ['a section less', { ...SMALL, sections: SMALL.sections.slice(0, 1) }, ['Foot taken out']],
    ['how a section is set', { ...SMALL, sections: [{ ...leg, remark: 'in the round' }, ...SMALL.sections.slice(1)] }, ['Leg set otherwise']],
    ['motifs', { ...SMALL, motifs: [{ ...SMALL.motifs[0]!, name: 'Pennant' }, { id: 'new', name: '', cells: ['A'] }], placements: [] }, ['1 motif added', '1 motif changed', '1 motif taken out', '1 placed motif taken out']],
    ['loose cells', { ...SMALL, cells: [] }, ['2 rows coloured by hand']],
    ['what the piece is made to', { ...SMALL, piece: { currency: 'EUR' } }, ['measurements changed']],
  ])('is said in a few words: %s', (_, to, phrases) => {
    expect(whatChanged(SMALL, to)).toEqual(phrases);
  });

  it('counts rows and sections', () => {
    expect(sizeOfPattern(SMALL)).toBe('42 rows in 2 sections');
  });
});
