import type { RowKey } from '../../engine/1-pattern/pattern.ts';
import { keepClip, takeClip, type Clip } from '../../keep/clip.ts';
import { copyRows, pasteRows, type RowClip } from './commands/rowClip.ts';
import { copyBlock, pasteBlock, type StitchBlock } from './commands/stitchBlock.ts';
import type { Session } from './session.svelte.ts';

/** What is copied and where it can be put: rows after a row, blocks of stitches on a stitch. One for all patterns of this device. */
export class Clipboard {
  readonly #session: Session;
  readonly #storage: Pick<Storage, 'getItem' | 'setItem'>;
  clip = $state.raw<Clip | null>(null);

  constructor(session: Session, storage: Pick<Storage, 'getItem' | 'setItem'>) {
    this.#session = session;
    this.#storage = storage;
    this.clip = takeClip(storage);
  }

  /** Takes up what another window has copied meanwhile. */
  look(): void {
    this.clip = takeClip(this.#storage) ?? this.clip;
  }

  copyRows(keys: readonly RowKey[]): boolean {
    const clip = copyRows(this.#session.state, keys);
    if (clip) this.#keep({ kind: 'rows', clip: clip as Extract<Clip, { kind: 'rows' }>['clip'] });
    return clip !== null;
  }

  /** Copies the block of stitches that is chosen. */
  copyBlock(): boolean {
    const { block, state } = this.#session;
    const copied = block && copyBlock(state, block.from, block.to);
    if (copied) this.#keep({ kind: 'block', block: copied as Extract<Clip, { kind: 'block' }>['block'] });
    return copied !== null;
  }

  /** Puts what was copied at the row or the stitch in hand. */
  put(everySize: boolean): boolean {
    const session = this.#session;
    const { clip } = this;
    if (clip?.kind === 'block') return session.stitchInHand !== null && session.commit(pasteBlock(clip.block satisfies StitchBlock, session.stitchInHand, everySize));
    const entry = session.entries.find((each) => each.row === session.inHand?.row);
    return clip?.kind === 'rows' && entry !== undefined && session.commit(pasteRows(clip.clip satisfies RowClip, entry.key, entry.name.toLowerCase()));
  }

  #keep(clip: Clip): void {
    this.clip = clip;
    keepClip(this.#storage, clip);
  }
}
