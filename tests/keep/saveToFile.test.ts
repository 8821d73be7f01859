import { describe, expect, it } from 'vitest';
import { savedWords, saveToFile } from '../../src/keep/saveToFile.ts';
import { memoryStore } from './memoryStore.ts';

/** A file as the File System Access API gives it; `fails` refuses to write, `permission` is what the browser says when it is asked. */
function file(name: string, options: { fails?: Error; permission?: PermissionState } = {}) {
  const state = { content: 'as it was', asked: 0, aborted: 0 };
  const handle = {
    name,
    queryPermission: async () => (options.permission ? 'prompt' : 'granted'),
    requestPermission: async () => {
      state.asked++;
      return options.permission ?? 'granted';
    },
    createWritable: async () => {
      let written = '';
      return {
        write: async (text: string) => {
          if (options.fails) throw options.fails;
          written += text;
        },
        close: async () => void (state.content = written),
        abort: async () => void state.aborted++,
      };
    },
  };
  return { handle: handle as unknown as FileSystemFileHandle, state };
}

/** A store that holds handles as the browser's does: as they are. */
function handleStore() {
  const store = memoryStore();
  return { ...store, get: async (key: string) => store.values.get(key), setMany: async (entries: readonly (readonly [string, unknown])[]) => entries.forEach(([key, value]) => store.values.set(key, value)) };
}

describe('saving as a file', () => {
  it('asks for a file once and writes to the same one after that, until another is asked for', async () => {
    const store = handleStore();
    const [one, two] = [file('one.json'), file('two.json')];
    let next = one;
    const page = { showSaveFilePicker: async () => next.handle };
    expect(await saveToFile(store, 'quay', 'quay.json', 'first', false, page)).toEqual({ kind: 'saved', name: 'one.json' });
    next = two;
    expect(await saveToFile(store, 'quay', 'quay.json', 'second', false, page)).toEqual({ kind: 'saved', name: 'one.json' });
    expect([one.state.content, two.state.content]).toEqual(['second', 'as it was']);
    expect(await saveToFile(store, 'quay', 'quay.json', 'third', true, page)).toEqual({ kind: 'saved', name: 'two.json' });
    expect(await saveToFile(store, 'quay', 'quay.json', 'fourth', false, page)).toEqual({ kind: 'saved', name: 'two.json' });
    expect([one.state.content, two.state.content]).toEqual(['second', 'fourth']);
  });

  it('asks for another where the kept one can’t be written any more', async () => {
    const store = handleStore();
    store.values.set('file/quay', file('gone.json', { fails: new DOMException('x', 'NotFoundError') }).handle);
    const other = file('other.json');
    expect(await saveToFile(store, 'quay', 'quay.json', 'text', false, { showSaveFilePicker: async () => other.handle })).toEqual({ kind: 'saved', name: 'other.json' });
    expect(other.state.content).toBe('text');
  });

  it('leaves a file as it was when it can’t be written whole, and says so', async () => {
    const full = file('full.json', { fails: new DOMException('no room', 'QuotaExceededError') });
    const saved = await saveToFile(handleStore(), 'quay', 'quay.json', 'text', false, { showSaveFilePicker: async () => full.handle });
    expect(saved).toEqual({ kind: 'failed', words: 'The file could not be written (no room). The pattern is as it was; choose another place.' });
    expect(full.state).toMatchObject({ content: 'as it was', aborted: 1 });
  });

  it('says when the maker called it off, and when the browser does not allow it', async () => {
    const off = { showSaveFilePicker: () => Promise.reject(new DOMException('x', 'AbortError')) };
    expect(await saveToFile(handleStore(), 'quay', 'quay.json', 'text', false, off)).toEqual({ kind: 'calledOff' });
    const denied = file('denied.json', { permission: 'denied' });
    expect(await saveToFile(handleStore(), 'quay', 'quay.json', 'text', false, { showSaveFilePicker: async () => denied.handle })).toEqual({ kind: 'failed', words: 'The browser does not let this page write to denied.json.' });
    expect(denied.state).toMatchObject({ content: 'as it was', asked: 1 });
  });

  it('saves all the same where the device keeps no handles', async () => {
    const store = { ...handleStore(), get: () => Promise.reject(new Error('blocked')), setMany: () => Promise.reject(new Error('blocked')) };
    const one = file('one.json');
    expect(await saveToFile(store, 'quay', 'quay.json', 'text', false, { showSaveFilePicker: async () => one.handle })).toEqual({ kind: 'saved', name: 'one.json' });
  });

  it.each([
    [{ kind: 'saved', name: 'a.json' } as const, 'Saved to a.json · 9:00'],
    [{ kind: 'downloaded', name: 'a.json' } as const, 'a.json went to this browser’s downloads · 9:00'],
    [{ kind: 'calledOff' } as const, null],
    [{ kind: 'failed', words: 'No.' } as const, 'No.'],
  ])('is said: %j', (saved, words) => {
    expect(savedWords(saved, '9:00')).toBe(words);
  });
});
