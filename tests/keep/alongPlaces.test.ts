import { describe, expect, it } from 'vitest';
import { alongPlacesOf } from '../../src/keep/alongPlaces.ts';
import { shelfOf } from '../../src/keep/shelf.ts';
import { memoryStore } from './memoryStore.ts';

describe('the places of makers', () => {
  it('keeps a place for each pattern, size and version', async () => {
    const places = alongPlacesOf(memoryStore());
    const entry = { line: 'heel.row', nth: 2, done: 5, ticks: ['heel.row 0', 'heel.row 1'], keptAt: 7 };
    await places.put('p', 'M', null, entry);
    expect(await places.get('p', 'M', null)).toEqual(entry);
    expect(await places.get('p', 'L', null)).toBeNull();
    expect(await places.get('p', 'M', 'plain')).toBeNull();
    expect(await places.get('q', 'M', null)).toBeNull();
  });

  it('keeps sizes apart whose names hold a stroke', async () => {
    const places = alongPlacesOf(memoryStore());
    const entry = { line: 'a', nth: 0, done: 0, ticks: [], keptAt: 1 };
    await places.put('p', '8/10', 'x', entry);
    expect(await places.get('p', '8', '10/x')).toBeNull();
    expect(await places.get('p', '8/10', 'x')).toEqual(entry);
  });

  it('begins anew where what is kept can’t be read', async () => {
    const store = memoryStore();
    await store.setMany([['along/p/M/', { line: 4 }], ['along-hand', 'both']]);
    expect(await alongPlacesOf(store).get('p', 'M', null)).toBeNull();
    expect(await alongPlacesOf(store).hand()).toBe('right');
  });

  it('remembers the size and version that were made last', async () => {
    const places = alongPlacesOf(memoryStore());
    expect(await places.last('p')).toBeNull();
    await places.setLast('p', 'M', 'plain');
    expect(await places.last('p')).toEqual({ size: 'M', version: 'plain' });
  });

  it('lets the places go with the pattern', async () => {
    const store = memoryStore();
    const places = alongPlacesOf(store);
    await places.put('p', 'M', null, { line: 'a', nth: 0, done: 2, ticks: [], keptAt: 1 });
    await places.setLast('p', 'M', null);
    await places.put('p2', 'M', null, { line: 'a', nth: 0, done: 3, ticks: [], keptAt: 1 });
    await shelfOf(store, 'here').remove('p');
    expect(await places.get('p', 'M', null)).toBeNull();
    expect(await places.last('p')).toBeNull();
    expect(await places.get('p2', 'M', null)).not.toBeNull();
  });

  it('remembers the hand', async () => {
    const places = alongPlacesOf(memoryStore());
    await places.setHand('left');
    expect(await places.hand()).toBe('left');
  });
});
