import type { Finding } from '../notation/finding.ts';
import type { RowKey } from '../1-pattern/pattern.ts';

/** Flags of a worked stitch, bits of `Fabric.flags`. */
export const FLAG = {
  /** Counts in the row's stated count. */
  counts: 1,
  /** Part of a turning chain, counted or not. */
  turning: 2,
  /** Slip stitch that joins a round. */
  join: 4,
  frontLoop: 8,
  backLoop: 16,
  frontPost: 32,
  backPost: 64,
  spike: 128,
  /** Worked into a chain space or ring, around the whole of it. */
  inSpace: 256,
  /** Worked into an open stitch beyond the end of the row below: the attaching stitch of a turned short row. */
  attaching: 512,
  /** Shares its base with the stitch before. */
  sameBase: 1024,
  /** Worked on the other side of the foundation chain. */
  otherSide: 2048,
  /** Ties a corner to another section (corner slip stitch). */
  corner: 4096,
  /** Made by a foundation row. */
  foundation: 8192,
  /** Hangs as a chain space (chain between stitches). */
  space: 16384,
  /** Set by a motif in the place of the row's own stitch; never on a fabric as it was worked (see `fabricWithStitches`). */
  setByMotif: 32768,
} as const;

/** What a worked row reports. Stitch numbers `[first, end)` are the row's stitches in working order. */
export interface WorkedRow {
  readonly key: RowKey;
  /** Index of the section. */
  readonly section: number;
  readonly word: 'row' | 'round' | 'foundation' | 'setup' | 'next' | 'step';
  readonly number: number | null;
  readonly side: 'RS' | 'WS';
  /** Working direction as seen on the right side, right-handed: RS rows run right to left (-1), WS rows left to right (+1). */
  readonly direction: -1 | 1;
  readonly first: number;
  readonly end: number;
  /** Stitches that count. */
  readonly made: number;
  /** Places taken off the edge (worked into or skipped). */
  readonly used: number;
  /** Places put on the edge, counting or not. */
  readonly placed: number;
  /** Open places of this section's earlier rows next to the row's end (ahead) and before its start (behind), in the row's own direction. */
  readonly left: { readonly ahead: number; readonly behind: number };
  /** Stated count and its number for this size, or null. */
  readonly stated: number | null;
  /** Open places on the whole edge that the hook is on, after the row. */
  readonly open: number;
  /** Whether the edge is a ring at the end of the row. */
  readonly ring: boolean;
  /** Worked in the round: begins where it ends. */
  readonly round: boolean;
  /** Row index of the row below this one (-1 for a first row): the row that made the place its first stitch went into. */
  readonly below: number;
}

/**
 * The worked piece: a structure of arrays, index = stitch number in working order. `bases` in compressed rows: the base
 * stitches of stitch i are `bases[baseStart[i]] … bases[baseStart[i + 1] - 1]`. A foundation chain or ring has none.
 */
export interface Fabric {
  readonly count: number;
  /** Stitch codes, see `stitchCode`. */
  readonly kind: Uint8Array;
  /** Index of the yarn letter, as the rows say; motifs and cells are laid over it by the colour stage. */
  readonly yarn: Uint8Array;
  readonly flags: Uint16Array;
  /** Legs of a bobble and its like, chains of a picot; 0 for others. */
  readonly legs: Uint8Array;
  /** Code of the stitch that the legs are of, where the row says another than the catalogue's (a bobble of trebles); else 0. */
  readonly legKind: Uint8Array;
  /** Row index of each stitch. */
  readonly row: Int32Array;
  /** Stitch made before it in the same run of yarn; -1 at a start. */
  readonly previous: Int32Array;
  readonly baseStart: Int32Array;
  readonly bases: Int32Array;
  /** Index of the top-level instruction in its row's body. */
  readonly instruction: Uint16Array;
  readonly rows: readonly WorkedRow[];
  readonly sections: readonly { readonly id: string; readonly name: string; /** Row indices [firstRow, endRow). */ readonly firstRow: number; readonly endRow: number }[];
  /** Seam marks: the stitches on either side when the seam was closed, in ring order. */
  readonly seams: readonly { readonly row: number; readonly before: number; readonly after: number }[];
  /** Rings closed flat, as a toe is: the stitches that were joined, in pairs. */
  readonly closings: readonly { readonly row: number; readonly pairs: readonly (readonly [number, number])[] }[];
  /** Stitches whose tops are open at the end, each with its reason to be so. */
  readonly openAtEnd: Int32Array;
  readonly findings: readonly Finding[];
}
