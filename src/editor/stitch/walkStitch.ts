import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import type { WalkStep } from '../chart/chartData.ts';
import { basesOf, stitchesAbove, type WorkedInto } from './workedInto.ts';

/**
 * The stitch one step on: left and right along the row as the right side shows it, up to the first stitch worked into
 * this one, down to its base. Null at the border.
 */
export function walkStitch(fabric: Fabric, above: WorkedInto, stitch: number, step: WalkStep): number | null {
  if (step === 'up') return stitchesAbove(above, stitch)[0] ?? null;
  if (step === 'down') return basesOf(fabric, stitch)[0] ?? null;
  const row = fabric.rows[fabric.row[stitch] ?? -1];
  if (!row) return null;
  const next = stitch + (step === 'right' ? row.direction : -row.direction);
  return next >= row.first && next < row.end ? next : null;
}
