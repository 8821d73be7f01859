import type { Terms } from '../../engine/craft/terms.ts';
import type { Mend } from '../../engine/notation/finding.ts';
import { mendText } from './mendText.ts';
import { reading, type Reading } from './reading.ts';

/** Texts longer than this, some 150 rows, are read on a thread of their own. */
const LONG = 15_000;
/** How long such a text is to be left alone before it is read, ms. */
const PAUSE_MS = 250;

/** A text that is being read: what stands in it, how it was understood, and the mends made in it. */
export class Reader {
  text = $state.raw('');
  /** Terms set by hand; null: as the text says, or as guessed. */
  terms = $state.raw<Terms | null>(null);
  reading = $state.raw<Reading | null>(null);
  /** A long text is being read; what is shown is of the text before. */
  busy = $state.raw(false);
  /** Why reading broke off, in words. */
  fault = $state.raw<string | null>(null);
  /** Texts before each mend, for taking it back. */
  before = $state.raw<readonly string[]>([]);
  #thread: Worker | null = null;
  #wait: ReturnType<typeof setTimeout> | undefined;

  constructor(text: string) {
    this.write(text);
  }

  /** Another text, written or put in by the maker. */
  write(text: string): void {
    this.before = [];
    this.#take(text);
  }

  readIn(terms: Terms | null): void {
    this.terms = terms;
    this.#take(this.text);
  }

  /** Puts mends into the text, as one step. */
  mend(mends: readonly Mend[]): void {
    if (!this.reading) return;
    const mended = mendText(this.text, this.reading.read, mends);
    if (mended === this.text) return;
    this.before = [...this.before, this.text];
    this.#take(mended);
  }

  undoMend(): void {
    const text = this.before.at(-1);
    if (text === undefined) return;
    this.before = this.before.slice(0, -1);
    this.#take(text);
  }

  close(): void {
    clearTimeout(this.#wait);
    this.#thread?.terminate();
    this.#thread = null;
  }

  #take(text: string): void {
    this.close();
    this.text = text;
    this.fault = null;
    this.busy = text.length > LONG;
    if (this.busy) this.#wait = setTimeout(() => this.#readApart(), PAUSE_MS);
    else this.reading = text.trim() === '' ? null : reading({ text, terms: this.terms });
  }

  #readApart(): void {
    const thread = new Worker(new URL('./readingWorker.ts', import.meta.url), { type: 'module' });
    this.#thread = thread;
    thread.onmessage = ({ data }: MessageEvent<Reading>) => {
      this.reading = data;
      this.busy = false;
      this.close();
    };
    thread.onerror = (event) => {
      this.busy = false;
      this.fault = `The text could not be read${event.message ? ` (${event.message})` : ''}. It stands here as it was.`;
      this.close();
    };
    thread.postMessage({ text: this.text, terms: this.terms });
  }
}
