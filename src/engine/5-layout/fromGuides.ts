import type { Ground } from './ground.ts';
import type { Ghost, Guide } from './layout.ts';

/**
 * A line under each run of upright grey stitches that belong to one other section, for that section's name. Only where the stitches
 * lie in a row side by side. `clearRows`: rows from the lowest of their heads down to the line.
 */
export function fromGuides({ fabric, w, h }: Ground, ghosts: readonly Ghost[], clearRows = 1.3): Guide[] {
  const sectionOf = (stitch: number): number => fabric.rows[fabric.row[stitch]!]!.section;
  const level = ghosts.filter(({ angle }) => angle === 0).sort((a, b) => a.headX - b.headX);
  const guides: Guide[] = [];
  for (let from = 0; from < level.length; ) {
    const section = sectionOf(level[from]!.stitch);
    let end = from + 1;
    let lowest = level[from]!.headY;
    while (end < level.length && sectionOf(level[end]!.stitch) === section && level[end]!.headX - level[end - 1]!.headX < 1.5 * w) {
      lowest = Math.max(lowest, level[end]!.headY);
      end++;
    }
    const [x0, x1] = [level[from]!.headX - 0.4 * w, level[end - 1]!.headX + 0.4 * w];
    const y = lowest + clearRows * h;
    guides.push({ kind: 'from', points: [x0, y - 0.25 * h, x0, y, x1, y, x1, y - 0.25 * h], section, textX: (x0 + x1) / 2, textY: y + 0.25 * h });
    from = end;
  }
  return guides;
}
