import type { Section } from '../../1-pattern/pattern.ts';
import type { Origin } from '../../2-construct/recipes/origin.ts';

/** A count beside the exact number that the measurements ask for, before it was made whole. */
export interface Wanted {
  /** Fractions kept. */
  readonly exact: number;
  readonly origin: Origin;
}

/** What a section is asked to be: stitches of one of its rows, and rows. Null where nothing asks. */
export interface SectionWants {
  readonly stitches: (Wanted & { /** The row that the stitches are asked of. */ readonly of: 'first' | 'last' | 'most' }) | null;
  readonly rows: Wanted | null;
}

type Asked = readonly [stitches: string | null, of: 'first' | 'last' | 'most', rows: string | null];

/** The numbers that each section of a recipe is made to, by their keys. */
const KEYS: Readonly<Record<string, Asked>> = {
  'sock.cuff': ['top', 'first', 'cuff.rows'], 'sock.leg': ['around', 'last', 'leg.rows'], 'sock.heel': ['heel.stitches', 'first', null], 'sock.flap': ['heel.stitches', 'first', null],
  'sock.turn': [null, 'first', null], 'sock.gusset': ['around', 'last', 'gusset.rounds'], 'sock.foot': ['around', 'last', 'foot.rounds'], 'sock.toe': ['toe.stop', 'last', 'toe.rounds'],
  'panel.panel': ['width.stitches', 'first', 'rows'], 'tube.start': ['around', 'first', 'start.rows'], 'tube.tube': ['far', 'last', 'rounds'], 'tube.end': ['far', 'last', 'end.rows'],
  'disc.crown': ['around', 'last', 'rounds'], 'disc.sides': [null, 'last', 'sides'], 'disc.brim': [null, 'last', 'brim.rows'], 'oval.oval': [null, 'last', 'rounds'], 'ball.ball': [null, 'most', 'rounds'],
};

/** Keys that stand in where a piece has no number of that name: a tube that is as wide at its far end as at its near one. */
const INSTEAD: Readonly<Record<string, string>> = { far: 'around' };

/**
 * What the measurements ask of a section that a recipe made, from the numbers of one size: exact, before rounding to whole
 * stitches and rows. A number set by hand is asked as it would have been reckoned. Null for rows that no recipe made.
 */
export function sectionWants({ recipe }: Pick<Section, 'recipe'>, numbers: ReadonlyMap<string, Origin>): SectionWants | null {
  const asked = recipe && KEYS[recipe.name];
  if (!asked) return null;
  const [stitches, of, rows] = asked;
  const count = wantedOf(numbers, stitches);
  // A heel in an opening goes round its stitches and as many chains.
  const times = recipe.settings['kind'] === 'afterthought' ? 2 : 1;
  return { stitches: count && { ...count, exact: count.exact * times, of }, rows: wantedOf(numbers, rows) };
}

function wantedOf(numbers: ReadonlyMap<string, Origin>, key: string | null): Wanted | null {
  const origin = key === null ? undefined : (numbers.get(key) ?? numbers.get(INSTEAD[key] ?? ''));
  const exact = origin && exactOf(origin);
  return origin && exact !== undefined && exact !== null ? { exact, origin } : null;
}

/** An exact number as its measurements ask for it: through numbers that only pass another one on. */
function exactOf({ from }: Origin): number | null {
  if (from.kind === 'pinned') return exactOf(from.instead);
  return from.kind === 'formula' ? from.exact : null;
}
