import { CHART_KINDS, choiceProblems, defaultChoices, type ChartKind, type PublishChoices, type PublishPart } from '$engine/publish/publishChoices.ts';
import type { KeyStore } from '$keep/keyStore.ts';
import { saveAsFile } from '$keep/files.ts';
import { shelfKeys } from '$keep/shelfKeys.ts';
import type { MadeFile } from '$publish/archive.ts';
import type { Output, Progress } from '$publish/publishOrder.ts';
import type { Session } from '../bench/session.svelte.ts';
import { mediaType } from './mediaType.ts';
import type { PublishClient } from './publishClient.ts';
import { seenSheet, type SeenSheet } from './seenSheet.ts';

/** What a publishing page works with. */
export interface PublishParts {
  readonly session: Session;
  readonly store: Pick<KeyStore, 'get' | 'setMany'>;
  /** Threads of their own, so that a file being made isn't stopped by a change of what is seen. */
  readonly seeing: PublishClient;
  readonly taking: PublishClient;
  readonly after: (delayMs: number, run: () => void) => () => void;
}

/** What is being made for the maker to take away. */
export interface Taking {
  readonly what: string;
  readonly progress: Progress | null;
}

/** How long choices must rest before the sheets are set again. */
const REST_MS = 350;

const BEGUN: Progress = { done: 0, of: 1, making: 'sheets' };

/** What goes out of a pattern, how it looks, and the files that are made of it. */
export class PublishDesk {
  readonly #parts: PublishParts;
  #callOff: (() => void) | null = null;

  session = $state.raw<Session>({} as Session);
  choices = $state.raw<PublishChoices>({} as PublishChoices);
  pngDpi = $state.raw(300);
  sheets = $state.raw<readonly SeenSheet[]>([]);
  /** How far the sheets that will be seen are; null while they rest. They are on their way from the start, also while kept choices are fetched. */
  setting = $state.raw<Progress | null>(BEGUN);
  taking = $state.raw<Taking | null>(null);
  /** What came of the last thing, in words; null if there is nothing to say. */
  says = $state.raw<string | null>(null);

  readonly problems = $derived(choiceProblems(this.session.pattern, this.choices));

  constructor(parts: PublishParts) {
    this.#parts = parts;
    this.session = parts.session;
    // As the charts are drawn on the work page.
    const { hand, symbols, view, mono } = parts.session.drawn;
    this.choices = { ...defaultChoices(parts.session.pattern), hand, symbols, view, mono };
  }

  get #key(): string {
    return shelfKeys.choices(this.session.pattern.id);
  }

  /** Takes up the choices that were kept for this pattern, where they still hold, and sets the sheets. */
  async begin(): Promise<void> {
    const kept = await this.#parts.store.get(this.#key).catch(() => null);
    if (kept && typeof kept === 'object') {
      const choices = { ...this.choices, ...kept };
      if (choiceProblems(this.session.pattern, choices).length === 0) this.choices = choices;
    }
    await this.set();
  }

  choose(change: Partial<PublishChoices>): void {
    this.choices = { ...this.choices, ...change };
    void this.#parts.store.setMany([[this.#key, this.choices]]).catch(() => undefined);
    this.setSoon();
  }

  togglePart(part: PublishPart, isIn: boolean): void {
    this.choose({ parts: defaultChoices(this.session.pattern).parts.filter((each) => (each === part ? isIn : this.choices.parts.includes(each))) });
  }

  toggleChart(kind: ChartKind, isIn: boolean): void {
    this.choose({ charts: CHART_KINDS.filter((each) => (each === kind ? isIn : this.choices.charts.includes(each))) });
  }

  /** Sets the sheets again when nothing has changed for a moment. */
  setSoon(): void {
    this.#callOff?.();
    this.#callOff = this.#parts.after(REST_MS, () => void this.set());
  }

  async set(): Promise<void> {
    this.setting = this.problems.length > 0 ? null : BEGUN;
    if (!this.setting) return;
    const ended = await this.#parts.seeing.run(this.#order(['svg'], false), (progress) => (this.setting = progress));
    if (ended.kind === 'stopped') return;
    this.setting = null;
    if (ended.kind === 'refused') this.says = ended.says;
    else this.sheets = ended.files.map(seenSheet);
  }

  /** Makes files and hands them over: one as it is, several in one archive. */
  async take(what: string, outputs: readonly Output[], zip: boolean): Promise<void> {
    this.says = null;
    this.taking = { what, progress: null };
    const ended = await this.#parts.taking.run(this.#order(outputs, zip), (progress) => (this.taking = { what, progress }));
    if (ended.kind === 'stopped') return;
    this.taking = null;
    if (ended.kind === 'refused') this.says = ended.says;
    else if (ended.files.length === 0) this.says = 'Nothing was made: choose more of what goes out.';
    else {
      for (const file of ended.files) hand(file);
      this.says = `${ended.files.map(({ name }) => name).join(', ')} is on its way to your downloads.`;
    }
  }

  stop(): void {
    this.#parts.taking.stop();
    this.taking = null;
    this.says = 'Stopped; nothing was saved.';
  }

  close(): void {
    this.#callOff?.();
    this.#parts.seeing.close();
    this.#parts.taking.close();
  }

  #order(outputs: readonly Output[], zip: boolean) {
    return { pattern: this.session.pattern, choices: this.choices, outputs, pngDpi: this.pngDpi, zip };
  }
}

function hand({ name, bytes }: MadeFile): void {
  saveAsFile(name, new Blob([bytes as BlobPart], { type: mediaType(name) }));
}
