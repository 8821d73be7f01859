import type { MeasureName } from '../../engine/1-pattern/pieceFacts.ts';
import { DISC, NO_EDGE, PANEL, SOCK, TUBE } from '../../engine/2-construct/recipes/defaults.ts';
import type { PieceSettings } from '../../engine/2-construct/recipes/settings.ts';

/** A measurement that the shelf asks for, with a sound first value in cm. */
export interface AskedMeasure {
  readonly name: MeasureName;
  readonly label: string;
  readonly cm: number;
}

/** A construction as the shelf offers it. */
export interface ConstructionOffer {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  /** Null: an empty piece, to write on from. */
  readonly settings: PieceSettings | null;
  readonly measures: readonly AskedMeasure[];
}

const ask = (name: MeasureName, label: string, cm: number): AskedMeasure => ({ name, label, cm });
const FOOT = [ask('footGirth', 'Round the foot', 25), ask('legLength', 'Cuff to heel', 30), ask('footLength', 'Heel to toe', 24)];
const ROUNDS_SOCK = { ...SOCK, leg: { ...SOCK.leg, way: 'rounds' }, cuff: { ...SOCK.cuff, edge: 'posts' } } as const;

/** What a pattern can be started from. */
export const CONSTRUCTIONS: readonly ConstructionOffer[] = [
  { id: 'bootSock', name: 'Boot sock from the cuff', says: 'Leg flat and seamed, heel in short rows, foot in rounds, toe in paired decreases.', settings: SOCK, measures: FOOT },
  { id: 'flapSock', name: 'Sock with heel flap', says: 'All in rounds; a flap, a turned heel and a gusset.', settings: { ...ROUNDS_SOCK, heel: { ...SOCK.heel, kind: 'flap' } }, measures: FOOT },
  { id: 'setInSock', name: 'Sock with a heel set in', says: 'A tube with an opening; the heel is worked into it afterwards.', settings: { ...ROUNDS_SOCK, heel: { ...SOCK.heel, kind: 'afterthought' } }, measures: FOOT },
  { id: 'legWarmer', name: 'Leg warmer tube', says: 'One tube in a spiral, no seam.', settings: TUBE, measures: [ask('girth', 'Round the leg', 30), ask('height', 'Height', 35)] },
  { id: 'flatPanel', name: 'Flat panel', says: 'Rows back and forth.', settings: PANEL, measures: [ask('width', 'Width', 25), ask('height', 'Height', 20)] },
  { id: 'disc', name: 'Disc', says: 'From the middle out, the same number more in each round; even sides if it is higher than half its width.', settings: DISC, measures: [ask('across', 'Across', 18), ask('height', 'Middle to edge', 9)] },
  { id: 'cap', name: 'Cap', says: 'From the crown to a ribbed brim.', settings: { ...DISC, brim: { ...NO_EDGE, edge: 'posts', heightCm: 4 } }, measures: [ask('girth', 'Round the head', 54), ask('height', 'Crown to edge', 20)] },
  { id: 'oval', name: 'Oval', says: 'Flat, round a chain.', settings: { kind: 'oval', yarn: 'A' }, measures: [ask('width', 'Width', 12), ask('length', 'Length', 20)] },
  { id: 'ball', name: 'Ball', says: 'Increased and decreased by the sine, to be stuffed.', settings: { kind: 'ball', yarn: 'A' }, measures: [ask('across', 'Across', 10)] },
  { id: 'empty', name: 'Empty', says: 'One foundation and one row, to write on from.', settings: null, measures: [] },
];
