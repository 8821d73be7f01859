import type { Ground, Pattern } from '../1-pattern/pattern.ts';
import type { ColourGrid } from './colourGrid.ts';

/**
 * The yarn of every stitch under all layers: what the rows say, or what the ground of its section has in its place.
 * Stripes go by the rows and rounds of the section; a foundation is in the yarn of the first stripe, and so is a step
 * before the first row. Letters that no yarn has change nothing. Gives the fabric's own list where no section has a ground.
 */
export function groundYarns(pattern: Pick<Pattern, 'sections' | 'yarns'>, grid: ColourGrid): Uint8Array {
  const { fabric } = grid;
  const grounds = new Map(pattern.sections.flatMap(({ id, colour }) => (colour?.ground && colour.ground.kind !== 'rows' ? [[id, colour.ground] as const] : [])));
  if (grounds.size === 0) return fabric.yarn;
  const yarn = fabric.yarn.slice();
  for (const [s, section] of fabric.sections.entries()) {
    const ground = grounds.get(section.id);
    if (!ground) continue;
    const carriesColour = new Set(grid.rows.of(section.id));
    const own = ground.kind === 'stripes' ? stripeYarns(ground, pattern) : null;
    const replaced = ground.kind === 'replace' ? replacedYarns(ground, pattern) : null;
    let stripeRow = -1;
    for (let r = section.firstRow; r < section.endRow; r++) {
      const row = fabric.rows[r]!;
      if (row.section !== s) continue;
      if (carriesColour.has(r)) stripeRow++;
      const stripe = own?.(Math.max(stripeRow, 0));
      for (let i = row.first; i < row.end; i++) yarn[i] = stripe ?? replaced?.[yarn[i]!] ?? yarn[i]!;
    }
  }
  return yarn;
}

/** Yarn index by row of the section, from 0; undefined where the pattern has no yarn of that letter. */
function stripeYarns(ground: Extract<Ground, { kind: 'stripes' }>, pattern: Pick<Pattern, 'yarns'>): (row: number) => number | undefined {
  const cycle = ground.stripes.map(({ letter, rows }) => {
    const index = pattern.yarns.findIndex((one) => one.letter === letter);
    return { index: index < 0 ? undefined : index, rows };
  });
  const height = cycle.reduce((sum, stripe) => sum + stripe.rows, 0);
  return (row) => {
    let left = row % height;
    for (const stripe of cycle) {
      if (left < stripe.rows) return stripe.index;
      left -= stripe.rows;
    }
    return undefined;
  };
}

/** New index by old index; all replacements at once. */
function replacedYarns(ground: Extract<Ground, { kind: 'replace' }>, pattern: Pick<Pattern, 'yarns'>): readonly number[] {
  const indexOf = (letter: string) => pattern.yarns.findIndex((one) => one.letter === letter);
  return pattern.yarns.map((one, i) => {
    const to = ground.yarns.find(({ from }) => from === one.letter);
    const index = to ? indexOf(to.to) : i;
    return index < 0 ? i : index;
  });
}
