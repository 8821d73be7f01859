import { invalidateAll } from '$app/navigation';
import { NO_HISTORY } from '../../engine/1-pattern/history.ts';
import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { writeBackup, type BackupPattern } from '../../keep/backup.ts';
import { saveAsFile } from '../../keep/files.ts';
import { keepFault } from '../../keep/keepFault.ts';
import { deviceStore } from '../../keep/keyStore.ts';
import { earlierOf } from '../../keep/earlier.ts';
import { ownMotifsOf } from '../../keep/ownMotifs.ts';
import { restoreBackup } from '../../keep/restoreBackup.ts';
import type { Shelf, ShelfCard } from '../../keep/shelf.ts';
import { pieceSvg } from '../piece/pieceSvg.ts';
import { addToShelf } from './shelfOfDevice.ts';
import { takeFiles } from './takeFiles.ts';

/** What can be done on the page of the shelf, and what it says of it. */
export class ShelfDesk {
  readonly #shelf: Shelf;
  readonly #own = ownMotifsOf(deviceStore());
  readonly #earlier = earlierOf(deviceStore());
  readonly #goTo: (id: string) => Promise<void>;
  /** What went wrong, in sentences. */
  trouble = $state.raw<readonly string[]>([]);
  /** What was done. */
  said = $state.raw<string | null>(null);
  /** The pattern that was put away last: it can be brought back with a word. */
  putAway = $state.raw<ShelfCard | null>(null);

  constructor(shelf: Shelf, goTo: (id: string) => Promise<void>) {
    this.#shelf = shelf;
    this.#goTo = goTo;
  }

  /** Puts a pattern on the shelf and goes to it. Where the device keeps nothing the bench says so. */
  async open(pattern: Pattern): Promise<void> {
    const added = await addToShelf(this.#shelf, pattern);
    if (added.kind === 'added') await this.#goTo(added.id);
    else this.trouble = [added.words];
  }

  /** Takes files in: one pattern is opened, more are put on the shelf, a backup is brought back. Gives the text of a written pattern. */
  async takeIn(files: readonly File[]): Promise<string | null> {
    if (files.length === 0) return null;
    this.said = null;
    return this.#attempt(async () => {
      const { patterns, written, restored, refused } = await takeFiles(files, (backup) => restoreBackup(backup, { shelf: this.#shelf, earlier: this.#earlier, own: this.#own, newId: () => crypto.randomUUID(), picture: pieceSvg }));
      this.trouble = refused;
      if (patterns.length === 1 && refused.length === 0 && restored.length === 0) await this.open(patterns[0]!);
      else {
        for (const pattern of patterns) {
          const added = await addToShelf(this.#shelf, pattern);
          if (added.kind === 'refused') this.trouble = [...this.trouble, added.words];
        }
        const said = [...restored, ...(patterns.length > 0 ? [`${patterns.length} ${patterns.length === 1 ? 'pattern' : 'patterns'} put on the shelf.`] : [])];
        this.said = said.join(' ') || null;
        await invalidateAll();
      }
      return written;
    }, null);
  }

  async put(card: ShelfCard): Promise<void> {
    await this.#attempt(() => this.#shelf.putAway(card.id, Date.now()), undefined);
    this.putAway = card;
    await invalidateAll();
  }

  async bringBack(id: string): Promise<void> {
    await this.#attempt(() => this.#shelf.bringBack(id), undefined);
    this.putAway = null;
    await invalidateAll();
  }

  async clear(ids: readonly string[]): Promise<void> {
    await this.#attempt(async () => {
      for (const id of ids) await this.#shelf.remove(id);
    }, undefined);
    if (this.putAway && ids.includes(this.putAway.id)) this.putAway = null;
    await invalidateAll();
  }

  /** Saves the whole shelf as one file; says what came of it. */
  async backUp(withSteps: boolean, withEarlier: boolean): Promise<string> {
    return this.#attempt(async () => {
      const { cards, putAway } = await this.#shelf.list();
      const patterns: BackupPattern[] = [];
      const left: string[] = [];
      for (const { id, title, createdAt, keptAt, putAwayAt } of [...cards, ...putAway]) {
        const taken = await this.#shelf.take(id);
        if (taken.kind === 'ok') patterns.push({ pattern: taken.pattern, history: withSteps ? taken.history : NO_HISTORY, createdAt, keptAt, putAwayAt, earlier: withEarlier ? await this.#earlier.texts(id) : [] });
        else left.push(title || 'Untitled');
      }
      const { bytes, leftOut } = writeBackup({ patterns, motifs: await this.#own.list() }, Date.now());
      saveAsFile(`turnwork-shelf-${new Date().toISOString().slice(0, 10)}.zip`, new Blob([bytes], { type: 'application/zip' }));
      const versions = patterns.reduce((sum, { earlier }) => sum + earlier.length, 0) - leftOut;
      return [
        `${patterns.length} ${patterns.length === 1 ? 'pattern' : 'patterns'}${versions > 0 ? ` and ${versions} earlier ${versions === 1 ? 'version' : 'versions'}` : ''} saved in one file.`,
        leftOut > 0 ? `It had no room for ${leftOut} older ${leftOut === 1 ? 'version' : 'versions'}.` : '',
        left.length > 0 ? `Not in it, because they can’t be read: ${left.join(', ')}.` : '',
      ].filter((sentence) => sentence !== '').join(' ');
    }, 'Nothing was saved.');
  }

  async #attempt<T>(act: () => Promise<T>, otherwise: T): Promise<T> {
    try {
      return await act();
    } catch (error) {
      this.trouble = [keepFault(error).words];
      return otherwise;
    }
  }
}
