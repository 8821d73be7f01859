import { describe, expect, it } from 'vitest';
import { keepOnLeave } from '../../src/keep/keepOnLeave.ts';
import type { DeskState } from '../../src/keep/desk.ts';
import { askForRoom, lookAtRoom, roomWords } from '../../src/keep/room.ts';
import { otherWindows, type WindowNews } from '../../src/keep/windows.ts';

/** A page of plain event targets, and a desk that counts what it is told. */
function page(state: Partial<DeskState>) {
  const document = Object.assign(new EventTarget(), { visibilityState: 'visible' as DocumentVisibilityState });
  const window = Object.assign(new EventTarget(), { document }) as unknown as Window;
  const told: string[] = [];
  const desk = {
    flush: async () => void told.push('flush'),
    settle: async () => void told.push('settle'),
    state: (): DeskState => ({ status: 'kept', keptAt: null, revision: 1, unkept: null, fault: null, wasCleared: false, pen: 'mine', ...state }),
  };
  return { told, document, window, stop: keepOnLeave(desk, window) };
}

describe('a page that is left', () => {
  it('writes what waits when it is hidden or goes, not when it comes back', () => {
    const { told, document, window, stop } = page({});
    document.visibilityState = 'hidden';
    document.dispatchEvent(new Event('visibilitychange'));
    expect(told).toEqual(['settle']);
    document.visibilityState = 'visible';
    document.dispatchEvent(new Event('visibilitychange'));
    expect(told).toEqual(['settle']);
    window.dispatchEvent(new Event('pagehide'));
    expect(told).toEqual(['settle', 'flush']);
    stop();
    window.dispatchEvent(new Event('pagehide'));
    expect(told).toEqual(['settle', 'flush']);
  });

  it.each<[Partial<DeskState>, boolean]>([
    [{ status: 'kept' }, false],
    [{ status: 'waiting', unkept: { since: 1 } }, false],
    [{ status: 'failed', unkept: { since: 1 } }, true],
    [{ status: 'overtaken', unkept: { since: 1 } }, true],
    [{ status: 'overtaken', unkept: null }, false],
  ])('with %j asks before it closes: %s', (state, asks) => {
    const { window, told } = page(state);
    const event = new Event('beforeunload', { cancelable: true });
    window.dispatchEvent(event);
    expect(event.defaultPrevented).toBe(asks);
    expect(told).toEqual(['flush']);
  });
});

describe('room on the device', () => {
  it('is what the browser says', async () => {
    expect(await askForRoom({ persisted: async () => false, persist: async () => true, estimate: async () => ({ usage: 5, quota: 12 }) })).toEqual({ isLasting: true, usedBytes: 5, freeBytes: 7 });
    expect(await askForRoom({ persisted: async () => true, persist: () => Promise.reject(new Error('must not be asked')), estimate: async () => ({}) })).toEqual({ isLasting: true, usedBytes: null, freeBytes: null });
  });

  it('is not known where the browser says nothing or refuses', async () => {
    expect(await askForRoom({})).toEqual({ isLasting: false, usedBytes: null, freeBytes: null });
    expect(await askForRoom({ persist: () => Promise.reject(new Error('no')), estimate: () => Promise.reject(new Error('no')) })).toEqual({ isLasting: false, usedBytes: null, freeBytes: null });
  });
});

describe('what is said of the room', () => {
  it.each([
    [{ isLasting: true, usedBytes: null, freeBytes: null }, 'The browser keeps this shelf until you clear it yourself.'],
    [{ isLasting: true, usedBytes: 1_400_000, freeBytes: 12_300_000_000 }, 'The browser keeps this shelf until you clear it yourself. It takes 1.4 MB; there is room for 12 GB more.'],
    [{ isLasting: false, usedBytes: 2_000, freeBytes: null }, 'The browser may clear this shelf by itself when the device runs short of room, so keep a backup. It takes 2 kB.'],
  ])('%j', (room, words) => {
    expect(roomWords(room)).toBe(words);
  });

  it('is looked at without asking the browser for anything', async () => {
    expect(await lookAtRoom({ persisted: async () => false, persist: () => Promise.reject(new Error('must not be asked')), estimate: async () => ({}) })).toMatchObject({ isLasting: false });
  });
});

describe('windows', () => {
  it('hear one another, pass over what is no news, and stop when told', async () => {
    const name = 'turnwork-test';
    const [one, two] = [otherWindows(name), otherWindows(name)];
    const heard: WindowNews[] = [];
    const enough = new Promise<void>((resolve) => {
      two.listen((news) => {
        heard.push(news);
        if (news.kind === 'removed') resolve();
      });
    });
    const stopped: WindowNews[] = [];
    two.listen((news) => stopped.push(news))();
    const raw = new BroadcastChannel(name);
    for (const data of [null, 5, { kind: 'kept' }, { kind: 'kept', id: 'a' }, { kind: 'other', id: 'a' }, { kind: 'wanted', id: 'a' }]) raw.postMessage(data);
    one.tell({ kind: 'kept', id: 'a', revision: 2 });
    one.tell({ kind: 'wanted', id: 'a', by: 'me' });
    one.tell({ kind: 'removed', id: 'a' });
    await enough;
    expect(heard).toEqual([{ kind: 'kept', id: 'a', revision: 2 }, { kind: 'wanted', id: 'a', by: 'me' }, { kind: 'removed', id: 'a' }]);
    expect(stopped).toEqual([]);
    raw.close();
    one.close();
    two.close();
  });
});
