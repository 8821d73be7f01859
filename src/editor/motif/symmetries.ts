import { FRIEZE_GROUPS } from '../../engine/craft/friezeGroups.ts';
import type { Symmetry } from '../../engine/4-colour/drawMotif.ts';

/** A way of drawing with symmetry, as it is offered. */
export interface OfferedSymmetry {
  readonly id: string;
  readonly name: string;
  readonly symmetry: Symmetry;
}

/** Where the first mirror line or turn centre lies: at the left edge, between two repeats, or on the first stitch. */
export type AxisPlace = 'between' | 'on';

/** All ways: cell by cell, as a strip of one of the groups, all over. */
export function symmetries(axis: AxisPlace): readonly OfferedSymmetry[] {
  return [
    { id: 'none', name: 'each cell alone', symmetry: 'none' },
    ...FRIEZE_GROUPS.filter(({ group }) => group !== 'p1').map(({ group, words }) => ({ id: group, name: `${words} (${group})`, symmetry: { group, axis: axis === 'between' ? -1 : 0 } })),
    { id: 'halfDrop', name: 'all over, half-dropped', symmetry: 'halfDrop' },
  ];
}
