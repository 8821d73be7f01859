import type { Instruction } from '../notation/instruction.ts';

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

function ofClause(clause: Instruction): ReadsBack {
  switch (clause.kind) {
    case 'work':
      return { spike: clause.stitch.spike, inPattern: false, picots: clause.into.at === 'beside' };
    case 'spread':
      return { ...NOTHING, spike: clause.stitch.spike };
    case 'inPattern':
      return { ...NOTHING, inPattern: true };
    case 'skip':
    case 'leave':
      return { ...NOTHING, picots: clause.what === 'picot' };
    case 'group':
      return both(readsBack(clause.body), { ...NOTHING, picots: clause.into.at === 'beside' });
    case 'repeat':
    case 'forSizes':
      return readsBack(clause.body);
    default:
      return NOTHING;
  }
}
