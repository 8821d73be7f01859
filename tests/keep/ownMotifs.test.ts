import { describe, expect, it } from 'vitest';
import { OwnShelf } from '../../src/editor/motif/ownShelf.svelte.ts';
import { ownMotifsOf } from '../../src/keep/ownMotifs.ts';
import { LEG, TICK } from '../editor/bench/benchOf.ts';
import { memoryStore } from './memoryStore.ts';

describe('own motifs', () => {
  it('are kept with the colours of their letters, last kept first, and forgotten', async () => {
    const own = ownMotifsOf(memoryStore());
    await own.put(TICK, LEG.yarns, 1);
    await own.put({ ...TICK, id: 'other' }, LEG.yarns, 2);
    expect((await own.list()).map((each) => each.motif.id)).toEqual(['other', 'tick']);
    expect((await own.list())[1]).toEqual({ motif: TICK, colours: { B: '#f2efe6' }, keptAt: 1 });
    await own.remove('other');
    expect(await own.list()).toHaveLength(1);
  });

  it('replace the one of the same id', async () => {
    const own = ownMotifsOf(memoryStore());
    await own.put(TICK, LEG.yarns, 1);
    await own.put({ ...TICK, name: 'Tock' }, LEG.yarns, 2);
    expect((await own.list()).map((each) => each.motif.name)).toEqual(['Tock']);
  });

  it('pass entries over that can’t be read, and patterns', async () => {
    const store = memoryStore(new Map<string, unknown>([['motif/x', { motif: { id: 'x' } }], ['pattern/y', {}]]));
    expect(await ownMotifsOf(store).list()).toEqual([]);
    expect(store.values.size).toBe(2);
  });

  it('say on the page what the device says where it keeps nothing', async () => {
    const store = memoryStore();
    const shelf = new OwnShelf(ownMotifsOf(store));
    await shelf.keep(TICK, LEG.yarns, 1);
    expect(shelf.list).toHaveLength(1);
    store.failure = { methods: ['setMany'], error: new DOMException('full', 'QuotaExceededError') };
    await shelf.keep({ ...TICK, id: 'other' }, LEG.yarns, 2);
    expect(shelf.trouble).toMatch(/\w/);
    expect(shelf.list).toHaveLength(1);
  });
});
