import { isCornerWord, type Instruction, type Into } from '../notation/instruction.ts';
import { CORNER_ROWS } from './cornersOfRow.ts';

/** What working a row looks at beyond the tops on the edge. */
export interface ReadsBack {
  /** Rows that spike stitches go down. */
  readonly spike: number;
  /** Whether the stitch pattern of the rows before is followed. */
  readonly inPattern: boolean;
  /** Whether picots of the row below are looked for. */
  readonly picots: boolean;
}

const KNOWN = new WeakMap<readonly Instruction[], ReadsBack>();
const NOTHING: ReadsBack = { spike: 0, inPattern: false, picots: false };

/** What the clauses of a row, inner ones included, look back at. */
export function readsBack(body: readonly Instruction[]): ReadsBack {
  const known = KNOWN.get(body);
  if (known) return known;
  const found = body.map(ofClause).reduce(both, NOTHING);
  KNOWN.set(body, found);
  return found;
}

/** What either of two looks back at. */
export function both(a: ReadsBack, b: ReadsBack): ReadsBack {
  return { spike: Math.max(a.spike, b.spike), inPattern: a.inPattern || b.inPattern, picots: a.picots || b.picots };
}

/** Corners are found from the groups of the rows below, and from what their stitches stand on. */
const CORNERS: ReadsBack = { spike: CORNER_ROWS, inPattern: true, picots: false };

function ofClause(clause: Instruction): ReadsBack {
  switch (clause.kind) {
    case 'work':
      return both({ spike: clause.stitch.spike, inPattern: false, picots: clause.into.at === 'beside' }, atCorner(clause.into) ? CORNERS : NOTHING);
    case 'evenly':
      // How high rows are shows in their outermost stitches.
      return { ...NOTHING, spike: clause.count === null ? Math.max(1, clause.stitch.spike) : clause.stitch.spike };
    case 'spread':
      return { ...NOTHING, spike: clause.stitch.spike };
    case 'inPattern':
      return { ...NOTHING, inPattern: true };
    case 'skip':
    case 'leave':
      return { ...NOTHING, picots: clause.what === 'picot' };
    case 'group':
      return both(readsBack(clause.body), atCorner(clause.into) ? CORNERS : { ...NOTHING, picots: clause.into.at === 'beside' });
    case 'repeat':
    case 'forSizes':
      return readsBack(clause.body);
    default:
      return NOTHING;
  }
}

function atCorner(into: Into): boolean {
  return ('what' in into && isCornerWord(into.what)) || (into.at === 'across' && into.word === 'corner');
}
