import type { Motif, Yarn } from '../../engine/1-pattern/pattern.ts';
import { keepFault } from '../../keep/keepFault.ts';
import type { OwnMotif, OwnMotifs } from '../../keep/ownMotifs.ts';

/** The designer's own motifs as the pages show them. */
export class OwnShelf {
  readonly #kept: OwnMotifs;
  list = $state.raw<readonly OwnMotif[]>([]);
  /** What the device says where it keeps nothing. */
  trouble = $state.raw<string | null>(null);

  constructor(kept: OwnMotifs) {
    this.#kept = kept;
  }

  load(): Promise<void> {
    return this.#after(Promise.resolve());
  }

  keep(motif: Motif, yarns: readonly Yarn[], at: number): Promise<void> {
    return this.#after(this.#kept.put(motif, yarns, at));
  }

  forget(id: string): Promise<void> {
    return this.#after(this.#kept.remove(id));
  }

  async #after(done: Promise<void>): Promise<void> {
    try {
      await done;
      this.list = await this.#kept.list();
      this.trouble = null;
    } catch (error) {
      this.trouble = keepFault(error).words;
    }
  }
}
