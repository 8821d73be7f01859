/** The seven symmetry groups of a strip that repeats along its length, by their names in the International Tables (IUC). */
export type FriezeGroup = 'p1' | 'p11g' | 'p1m1' | 'p2' | 'p2mg' | 'p11m' | 'p2mm';

/** What a group contains besides the shift by one repeat. */
export interface FriezeRow {
  readonly group: FriezeGroup;
  /** Mirrored over the line along the strip. */
  readonly alongMirror: boolean;
  /** Mirrored over lines across the strip. */
  readonly acrossMirror: boolean;
  /** Turned half round. */
  readonly turn: boolean;
  /** Shifted by half a repeat and mirrored along. */
  readonly glide: boolean;
  /** The same in plain words. */
  readonly words: string;
}

/**
 * The seven groups with what they contain. Source: the structure of frieze groups as in common reference works (IUC
 * notation); a mirror along the strip implies the glide, a mirror across together with a turn implies it too.
 */
export const FRIEZE_GROUPS: readonly FriezeRow[] = [
  { group: 'p1', alongMirror: false, acrossMirror: false, turn: false, glide: false, words: 'repeated only' },
  { group: 'p11g', alongMirror: false, acrossMirror: false, turn: false, glide: true, words: 'upright and upside down by turns, like footprints' },
  { group: 'p1m1', alongMirror: false, acrossMirror: true, turn: false, glide: false, words: 'mirrored left and right' },
  { group: 'p2', alongMirror: false, acrossMirror: false, turn: true, glide: false, words: 'turned half round' },
  { group: 'p2mg', alongMirror: false, acrossMirror: true, turn: true, glide: true, words: 'mirrored left and right, and turned half round between' },
  { group: 'p11m', alongMirror: true, acrossMirror: false, turn: false, glide: true, words: 'mirrored top and bottom' },
  { group: 'p2mm', alongMirror: true, acrossMirror: true, turn: true, glide: true, words: 'mirrored left and right, top and bottom' },
];

const ROWS = new Map(FRIEZE_GROUPS.map((row) => [row.group, row]));

/** What a group contains. */
export function friezeRow(group: FriezeGroup): FriezeRow {
  return ROWS.get(group)!;
}
