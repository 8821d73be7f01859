import { saveAsFile } from './files.ts';
import type { KeyStore } from './keyStore.ts';
import { shelfKeys } from './shelfKeys.ts';

/** What saving a pattern as a file came to. `name` is that of the file. */
export type SavedFile =
  /** Written to a file that the maker chose; saving again writes to the same one. */
  | { readonly kind: 'saved'; readonly name: string }
  /** Handed to the browser, which puts it with its downloads. */
  | { readonly kind: 'downloaded'; readonly name: string }
  | { readonly kind: 'calledOff' }
  | { readonly kind: 'failed'; readonly words: string };

/** The part of the File System Access API (WICG) that is used; browsers without it download. */
export interface FilePicker {
  showSaveFilePicker?: (options: { readonly suggestedName: string; readonly types: readonly { readonly description: string; readonly accept: Readonly<Record<string, readonly string[]>> }[] }) => Promise<FileSystemFileHandle>;
}

interface Permitted {
  queryPermission?: (mode: { readonly mode: 'readwrite' }) => Promise<PermissionState>;
  requestPermission?: (mode: { readonly mode: 'readwrite' }) => Promise<PermissionState>;
}

/**
 * Saves the text of a pattern file. Where the browser can write to files, the maker chooses one the first time, and the
 * same one is written again after that, until `isAnew` asks for another. A text that can't be written whole leaves the file as it was.
 */
export async function saveToFile(store: KeyStore, id: string, name: string, text: string, isAnew = false, page: FilePicker = window as FilePicker): Promise<SavedFile> {
  if (!page.showSaveFilePicker) return downloaded(name, text);
  const kept = isAnew ? null : await keptHandle(store, id);
  try {
    const again = kept && (await wrote(kept, text).catch(() => false));
    if (kept && again) return { kind: 'saved', name: kept.name };
    const chosen = await page.showSaveFilePicker({ suggestedName: name, types: [{ description: 'Turnwork pattern', accept: { 'application/json': ['.json'] } }] });
    if (!(await wrote(chosen, text))) return { kind: 'failed', words: `The browser does not let this page write to ${chosen.name}.` };
    // A device that keeps nothing asks again the next time.
    await store.setMany([[shelfKeys.file(id), chosen]]).catch(() => undefined);
    return { kind: 'saved', name: chosen.name };
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return { kind: 'calledOff' };
    if (error instanceof DOMException && error.name === 'SecurityError') return downloaded(name, text);
    return { kind: 'failed', words: `The file could not be written (${error instanceof Error ? error.message : String(error)}). The pattern is as it was; choose another place.` };
  }
}

function downloaded(name: string, text: string): SavedFile {
  saveAsFile(name, text);
  return { kind: 'downloaded', name };
}

async function keptHandle(store: KeyStore, id: string): Promise<FileSystemFileHandle | null> {
  const value = await store.get(shelfKeys.file(id)).catch(() => null);
  return typeof value === 'object' && value !== null && 'createWritable' in value ? (value as FileSystemFileHandle) : null;
}

async function wrote(handle: FileSystemFileHandle & Permitted, text: string): Promise<boolean> {
  const mode = { mode: 'readwrite' } as const;
  if (handle.queryPermission && (await handle.queryPermission(mode)) !== 'granted' && (await handle.requestPermission?.(mode)) !== 'granted') return false;
  // What is written takes the place of the file only when it is closed.
  const file = await handle.createWritable();
  try {
    await file.write(text);
  } catch (error) {
    await file.abort().catch(() => undefined);
    throw error;
  }
  await file.close();
  return true;
}

/** What saving came to, as a sentence; `null` where the maker called it off. `time` is when, in words. */
export function savedWords(saved: SavedFile, time: string): string | null {
  switch (saved.kind) {
    case 'saved':
      return `Saved to ${saved.name} · ${time}`;
    case 'downloaded':
      return `${saved.name} went to this browser’s downloads · ${time}`;
    case 'calledOff':
      return null;
    case 'failed':
      return saved.words;
  }
}
