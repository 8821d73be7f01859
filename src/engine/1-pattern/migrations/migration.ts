/**
 * One step up of the file format: from version `from` to `from + 1`. `up` gets the pattern of a file as plain JSON of the
 * older version, unchecked, and gives it in the newer form; what it can't read it leaves, for validation to name. It must
 * not throw and not change its argument. A migration is never edited once a version is released.
 */
export interface Migration {
  readonly from: number;
  /** What changed, for the reader of the code. */
  readonly change: string;
  readonly up: (pattern: unknown) => unknown;
  /** Set where edits written for the older version mean something else in the newer: kept steps and journals go no further then. */
  readonly breaksEdits?: true;
}
