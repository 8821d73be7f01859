import * as v from 'valibot';
import { motifSchema } from '../engine/1-pattern/schema.ts';
import type { Motif, Yarn } from '../engine/1-pattern/pattern.ts';
import type { KeyStore } from './keyStore.ts';

const entrySchema = v.strictObject({ motif: motifSchema, colours: v.record(v.string(), v.string()), keptAt: v.number() });

/** A motif of the designer's own, with the colours that its letters had. */
export interface OwnMotif {
  readonly motif: Motif;
  readonly colours: Readonly<Record<string, string>>;
  /** Milliseconds since 1970. */
  readonly keptAt: number;
}

/** The designer's own motifs, kept on this device for all patterns. */
export interface OwnMotifs {
  /** Last kept first. Entries that can't be read are passed over; they stay where they are. */
  list(): Promise<readonly OwnMotif[]>;
  /** Keeps a motif under its own key; one of the same key is replaced. */
  put(motif: Motif, yarns: readonly Yarn[], at: number): Promise<void>;
  /** Keeps a motif as it was kept before, with its time. */
  putBack(own: OwnMotif): Promise<void>;
  remove(id: string): Promise<void>;
}

/** A kept motif, `null` if the value is none. */
export function readOwnMotif(value: unknown): OwnMotif | null {
  const entry = v.safeParse(entrySchema, value);
  return entry.success ? (entry.output as OwnMotif) : null;
}

const MOTIF = 'motif/';

/** The own motifs in a store. */
export function ownMotifsOf(store: KeyStore): OwnMotifs {
  return {
    async list() {
      const keys = (await store.keys()).filter((key) => key.startsWith(MOTIF));
      const found = (await store.getMany(keys)).flatMap((value) => readOwnMotif(value) ?? []);
      return found.sort((a, b) => b.keptAt - a.keptAt || (a.motif.id < b.motif.id ? -1 : 1));
    },
    async put(motif, yarns, at) {
      const used = new Set(motif.cells.join(''));
      const colours = Object.fromEntries(yarns.filter((yarn) => used.has(yarn.letter)).map((yarn) => [yarn.letter, yarn.colour]));
      await store.setMany([[MOTIF + motif.id, { motif, colours, keptAt: at } satisfies OwnMotif]]);
    },
    putBack: (own) => store.setMany([[MOTIF + own.motif.id, own]]),
    remove: (id) => store.delMany([MOTIF + id]),
  };
}
