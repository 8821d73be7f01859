import type { Placement } from '../../engine/1-pattern/pattern.ts';

/** Where the repeats start, as it is offered. */
export type Start = 'left' | 'centre' | 'right' | 'seam' | 'front';

export const STARTS: readonly { readonly start: Start; readonly name: string }[] = [
  { start: 'centre', name: 'the middle of the row' },
  { start: 'left', name: 'the left edge' },
  { start: 'right', name: 'the right edge' },
  { start: 'seam', name: 'the seam' },
  { start: 'front', name: 'the centre front' },
];

/** How the width is filled, as it is offered. */
export type Lie = 'whole' | 'spread' | 'edges' | 'count';

export const LIES: readonly { readonly lie: Lie; readonly name: string }[] = [
  { lie: 'whole', name: 'as many as fit, borders equal' },
  { lie: 'spread', name: 'as many as fit, gaps spread' },
  { lie: 'edges', name: 'on to the edges, cut there' },
  { lie: 'count', name: 'so many' },
];

/** Where a placement starts. */
export function startOf({ anchor = 'row', align }: Pick<Placement, 'anchor' | 'align'>): Start {
  return anchor === 'row' ? align : anchor;
}

/** A placement that starts elsewhere, right there. */
export function withStart(placement: Placement, start: Start): Placement {
  const { anchor: _, ...plain } = placement;
  if (start === 'seam') return { ...plain, anchor: 'seam', align: 'left', offset: 0 };
  if (start === 'front') return { ...plain, anchor: 'front', align: 'centre', offset: 0 };
  return { ...plain, align: start, offset: 0 };
}

/** How a placement fills the width. */
export function lieOf({ across, fill = 'whole' }: Pick<Placement, 'across' | 'fill'>): Lie {
  return across === 'fill' ? fill : 'count';
}

/** A placement that fills the width otherwise; `now` repeats where they are to be counted. */
export function withLie(placement: Placement, lie: Lie, now: number): Placement {
  const { fill: _, ...plain } = placement;
  if (lie === 'count') return { ...plain, across: Math.max(1, now) };
  return lie === 'whole' ? { ...plain, across: 'fill' } : { ...plain, across: 'fill', fill: lie };
}
