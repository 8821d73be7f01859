import { colour, construct, work, type Colours, type Fabric, type Pattern } from '../engine/index.ts';

/** One size of a pattern, worked and coloured. */
export interface WorkedSize {
  readonly size: number;
  readonly fabric: Fabric;
  readonly colours: Colours;
}

const WORKED = new WeakMap<Pattern, Map<number, WorkedSize>>();

/** A size worked once for everything that a command prints and for its exit code; the very same again when asked again. */
export function workedSize(pattern: Pattern, size: number): WorkedSize {
  const known = WORKED.get(pattern) ?? new Map<number, WorkedSize>();
  WORKED.set(pattern, known);
  const had = known.get(size);
  if (had) return had;
  const fabric = work(construct(pattern, size));
  const worked = { size, fabric, colours: colour(pattern, fabric, size) };
  known.set(size, worked);
  return worked;
}
