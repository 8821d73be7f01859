import type { CellRun, ColourLimits, Imprint, Line, Motif, Pattern, Placement, RowKey, Section, SectionColour, Version, Wording } from './pattern.ts';
import type { PieceFacts } from './pieceFacts.ts';

/** Fields of the pattern that are replaced whole. */
export type Field = 'title' | 'designer' | 'terms' | 'gauge' | 'hookMm' | 'yarns' | 'sizes' | 'hdcTurningChainCounts' | 'notes';

/** One step of change, plain JSON. Every edit has an inverse, which is an edit too. Closed on `kind`. */
export type Edit =
  | { [F in Field]: { readonly kind: 'set'; readonly field: F; readonly value: Pattern[F] } }[Field]
  | { readonly kind: 'insertSection'; readonly at: number; readonly section: Section }
  | { readonly kind: 'removeSection'; readonly section: string }
  /** Name, remark and recipe; lines and colour stay. */
  | { readonly kind: 'setSection'; readonly section: string; readonly name: string; readonly remark: string; readonly recipe: Section['recipe'] }
  /** How the colours of a section are worked; null where nothing is to be said. */
  | { readonly kind: 'setSectionColour'; readonly section: string; readonly colour: SectionColour | null }
  /** Replaces the line of the same id. */
  | { readonly kind: 'setLine'; readonly section: string; readonly line: Line }
  | { readonly kind: 'insertLines'; readonly section: string; readonly at: number; readonly lines: readonly Line[] }
  /** Lines that stand one after another. */
  | { readonly kind: 'removeLines'; readonly section: string; readonly lines: readonly string[] }
  /** Cuts a row line of several rows in two before its row `at` (from 0): the first part keeps the id, the second gets `newId`; row keys of placements and cells follow. */
  | { readonly kind: 'splitLine'; readonly section: string; readonly line: string; readonly at: number; readonly newId: string }
  /** The inverse: joins a line with the one after it, which must differ in nothing but id and rows. */
  | { readonly kind: 'joinLines'; readonly section: string; readonly line: string }
  | { readonly kind: 'insertMotif'; readonly at: number; readonly motif: Motif }
  | { readonly kind: 'setMotif'; readonly motif: Motif }
  | { readonly kind: 'removeMotif'; readonly motif: string }
  | { readonly kind: 'insertPlacement'; readonly at: number; readonly placement: Placement }
  | { readonly kind: 'setPlacement'; readonly placement: Placement }
  | { readonly kind: 'removePlacement'; readonly placement: string }
  /** Lays a placement at another place of the layers: `to` is its place when it has been moved. */
  | { readonly kind: 'movePlacement'; readonly placement: string; readonly to: number }
  | { readonly kind: 'insertVersion'; readonly at: number; readonly version: Version }
  /** Replaces the version of the same id. */
  | { readonly kind: 'setVersion'; readonly version: Version }
  | { readonly kind: 'removeVersion'; readonly version: string }
  /** From where on the checks of colour ask; null for what the techniques have. */
  | { readonly kind: 'setColourLimits'; readonly limits: ColourLimits | null }
  /** What the piece is made to and of; null where nothing is to be said. */
  | { readonly kind: 'setPiece'; readonly piece: PieceFacts | null }
  /** How the pattern is worded when it is written out; null for as usual. */
  | { readonly kind: 'setWording'; readonly wording: Wording | null }
  /** What is said about it where it is published; null where nothing is to be said. */
  | { readonly kind: 'setImprint'; readonly imprint: Imprint | null }
  /** Puts another state of the whole pattern in its place, such as an earlier one; the id stays. */
  | { readonly kind: 'setPattern'; readonly pattern: Pattern }
  /** Replaces all loose cells of one row in one size. */
  | { readonly kind: 'setCells'; readonly section: string; readonly row: RowKey; readonly size: number; readonly runs: readonly Pick<CellRun, 'from' | 'letters'>[] };

/** What applying an edit gives: the new pattern with the inverse, or a refusal with its reason in words. */
export type Applied =
  | { readonly ok: true; readonly pattern: Pattern; readonly inverse: Edit }
  | { readonly ok: false; readonly reason: string };

/** Edits that belong together: one step of undo, named in words ("Lay B chalk on 12 stitches"). `at` is milliseconds, passed in. */
export interface Transaction {
  readonly label: string;
  readonly at: number;
  readonly edits: readonly Edit[];
}
