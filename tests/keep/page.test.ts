import { describe, expect, it } from 'vitest';
import { keepOnLeave } from '../../src/keep/keepOnLeave.ts';
import type { Keeper, KeepState } from '../../src/keep/keeper.ts';
import { askForRoom } from '../../src/keep/room.ts';
import { otherWindows, type WindowNews } from '../../src/keep/windows.ts';

/** A page of plain event targets, and a keeper that counts its flushes. */
function page(state: Partial<KeepState>) {
  const document = Object.assign(new EventTarget(), { visibilityState: 'visible' as DocumentVisibilityState });
  const window = Object.assign(new EventTarget(), { document }) as unknown as Window;
  const desk = { flushes: 0 };
  const keeper: Keeper = {
    keep: () => undefined,
    flush: async () => {
      desk.flushes++;
    },
    state: () => ({ status: 'kept', keptAt: null, revision: 1, hasUnkept: false, fault: null, newer: null, ...state }),
    subscribe: () => () => undefined,
    close: () => undefined,
  };
  return { desk, document, window, stop: keepOnLeave(keeper, window) };
}

describe('a page that is left', () => {
  it('writes what waits when it is hidden or goes, not when it comes back', () => {
    const { desk, document, window, stop } = page({});
    document.visibilityState = 'hidden';
    document.dispatchEvent(new Event('visibilitychange'));
    expect(desk.flushes).toBe(1);
    document.visibilityState = 'visible';
    document.dispatchEvent(new Event('visibilitychange'));
    expect(desk.flushes).toBe(1);
    window.dispatchEvent(new Event('pagehide'));
    expect(desk.flushes).toBe(2);
    stop();
    window.dispatchEvent(new Event('pagehide'));
    expect(desk.flushes).toBe(2);
  });

  it.each<[Partial<KeepState>, boolean]>([
    [{ status: 'kept' }, false],
    [{ status: 'waiting', hasUnkept: true }, false],
    [{ status: 'failed', hasUnkept: true }, true],
    [{ status: 'overtaken', hasUnkept: true }, true],
    [{ status: 'overtaken', hasUnkept: false }, false],
  ])('with %j asks before it closes: %s', (state, asks) => {
    const { window, desk } = page(state);
    const event = new Event('beforeunload', { cancelable: true });
    window.dispatchEvent(event);
    expect(event.defaultPrevented).toBe(asks);
    expect(desk.flushes).toBe(1);
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
    for (const data of [null, 5, { kind: 'kept' }, { kind: 'kept', id: 'a' }, { kind: 'other', id: 'a' }]) raw.postMessage(data);
    one.tell({ kind: 'kept', id: 'a', revision: 2 });
    one.tell({ kind: 'removed', id: 'a' });
    await enough;
    expect(heard).toEqual([{ kind: 'kept', id: 'a', revision: 2 }, { kind: 'removed', id: 'a' }]);
    expect(stopped).toEqual([]);
    raw.close();
    one.close();
    two.close();
  });
});
