import type { Mark, MarkRole } from '../../engine/6-drawing/drawing.ts';
import { UNITS_PER_MM } from './pathUnits.ts';

/** The lines or areas of one role as one path. */
export interface RolePath {
  readonly role: MarkRole;
  readonly kind: 'line' | 'area';
  readonly d: string;
}

/** One path a role and kind, in the order given by `roles`; marks of other roles are left out. */
export function marksPath(marks: readonly Mark[], roles: readonly MarkRole[]): RolePath[] {
  const paths: RolePath[] = [];
  for (const role of roles) {
    for (const kind of ['area', 'line'] as const) {
      let d = '';
      for (const mark of marks) if (mark.role === role && mark.kind === kind) d += polyline(mark.points, kind === 'area');
      if (d !== '') paths.push({ role, kind, d });
    }
  }
  return paths;
}

function polyline(points: readonly number[], closed: boolean): string {
  let d = '';
  for (let p = 0; p + 1 < points.length; p += 2) d += `${p === 0 ? 'M' : 'L'}${Math.round(points[p]! * UNITS_PER_MM)} ${Math.round(points[p + 1]! * UNITS_PER_MM)}`;
  return closed ? `${d}z` : d;
}
