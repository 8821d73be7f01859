import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import { gaugeCell } from '../../engine/5-layout/gaugeCell.ts';
import { silhouette, type Silhouette } from './silhouette.ts';

/** The silhouette of a pattern in its first size. */
export function pieceOf(pattern: Pattern): Silhouette {
  const fabric = work(construct(pattern, 0));
  const cell = gaugeCell(pattern.gauge);
  return silhouette(fabric, colour(pattern, fabric, 0).yarn, cell.widthMm, cell.heightMm);
}
