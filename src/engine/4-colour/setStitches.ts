import type { Pattern } from '../1-pattern/pattern.ts';
import { STITCH_OVERRIDES, type StitchOverride } from '../craft/stitchOverrides.ts';
import { stitchCode, stitchRow, type StitchKind } from '../craft/stitches.ts';
import { FLAG, type Fabric } from '../3-fabric/fabric.ts';
import type { StitchCall } from '../notation/instruction.ts';
import type { ColourGrid } from './colourGrid.ts';
import { placementInSize } from './placementInSize.ts';
import { layRow, placementLie } from './placementLie.ts';

/** What motifs set in the place of the rows' own stitches, in one size. */
export interface SetStitches {
  /** For each stitch an index into `STITCH_OVERRIDES`, plus 1; 0 where the row's own stitch stays. */
  readonly override: Uint8Array;
  /** Index of the placement that set it, plus 1; 0 where none did. */
  readonly placement: Uint16Array;
  /** For each placement with stitches, how many fell on stitches that can't be changed (increases, decreases, stitches around a post, chains). */
  readonly leftOut: ReadonlyMap<string, number>;
  /** Whether any stitch is set. */
  readonly isAny: boolean;
}

const PLAIN = new Set<number>((['sc', 'hdc', 'dc', 'tr', 'dtr'] satisfies StitchKind[]).map(stitchCode));
const SHAPED = FLAG.frontPost | FLAG.backPost | FLAG.frontLoop | FLAG.backLoop | FLAG.spike | FLAG.inSpace | FLAG.turning | FLAG.join | FLAG.sameBase;
const INDEX = new Map(STITCH_OVERRIDES.map((one, i) => [one.letter, i]));

/**
 * The stitches that the motifs set, on the fabric as the rows have it: each in the place of a plain stitch that is worked alone into one place.
 * Later placements win, as in colour. Linear in the cells laid.
 */
export function setStitches(pattern: Pattern, grid: ColourGrid, size: number): SetStitches {
  const { fabric, columns } = grid;
  const override = new Uint8Array(fabric.count);
  const placement = new Uint16Array(fabric.count);
  const leftOut = new Map<string, number>();
  let isAny = false;
  for (const [i, whole] of pattern.placements.entries()) {
    const one = placementInSize(whole, size);
    const motif = one && pattern.motifs.find((other) => other.id === one.motif);
    const lie = one && motif?.stitches && placementLie(one, motif, grid, size);
    if (!lie || !motif.stitches) continue;
    let off = 0;
    for (const [position, row] of lie.rows.entries()) {
      layRow(lie, grid, position, motif.stitches, (column, letter) => {
        const stitch = columns.stitches[columns.start[row]! + column]!;
        const index = INDEX.get(letter);
        if (index === undefined) return;
        if (!isPlain(fabric, stitch)) {
          off++;
          return;
        }
        override[stitch] = index + 1;
        placement[stitch] = i + 1;
        isAny = true;
      });
    }
    if (off > 0) leftOut.set(one.id, off);
  }
  return { override, placement, leftOut, isAny };
}

function isPlain(fabric: Fabric, stitch: number): boolean {
  const bases = fabric.baseStart[stitch + 1]! - fabric.baseStart[stitch]!;
  if (stitch + 1 < fabric.count && fabric.flags[stitch + 1]! & FLAG.sameBase) return false;
  return PLAIN.has(fabric.kind[stitch]!) && (fabric.flags[stitch]! & SHAPED) === 0 && bases <= 1;
}

/** The override of a stitch, or null where the row's own stays. */
export function overrideAt({ override }: SetStitches, stitch: number): StitchOverride | null {
  return STITCH_OVERRIDES[override[stitch]! - 1] ?? null;
}

/**
 * The call of a stitch as it is really worked on its side: the override's kind with its usual legs, its loop, its post.
 * What is meant as seen on the right side is turned round on wrong side rows.
 */
export function overriddenCall(call: StitchCall, override: StitchOverride, side: 'RS' | 'WS'): StitchCall {
  const kind = override.kind ?? call.kind;
  // The back loop on a right side row, the front loop on a wrong side row: either leaves the other loop on the right side.
  const loop = override.loop === 'seen' ? (side === 'RS' ? 'back' : 'front') : override.loop;
  const post = override.post === 'seen' ? (side === 'RS' ? 'front' : 'back') : 'none';
  return { ...call, kind, legs: override.kind ? stitchRow(override.kind).legs : call.legs, loop, post };
}

/**
 * The fabric with the stitches that motifs set: kinds, legs and loops changed and flagged `setByMotif`, everything else
 * shared. Draw this one and give it to the words; lay out the plain one, because a raised stitch folds outwards and makes its
 * row no taller. It is no base to take up work from (`work` starts anew on it). The same fabric where nothing is set.
 */
export function fabricWithStitches(fabric: Fabric, set: SetStitches): Fabric {
  if (!set.isAny) return fabric;
  const kind = fabric.kind.slice();
  const legs = fabric.legs.slice();
  const flags = fabric.flags.slice();
  for (let stitch = 0; stitch < fabric.count; stitch++) {
    const override = overrideAt(set, stitch);
    if (!override) continue;
    const { side } = fabric.rows[fabric.row[stitch]!]!;
    const call = overriddenCall({ kind: 'sc', together: 1, legs: 0, loop: 'both', post: 'none', spike: 0 }, override, side);
    flags[stitch]! |= FLAG.setByMotif;
    if (override.kind) {
      kind[stitch] = stitchCode(call.kind);
      legs[stitch] = call.legs;
    }
    if (call.loop !== 'both') flags[stitch]! |= call.loop === 'front' ? FLAG.frontLoop : FLAG.backLoop;
    if (call.post !== 'none') flags[stitch]! |= call.post === 'front' ? FLAG.frontPost : FLAG.backPost;
  }
  return { ...fabric, kind, legs, flags };
}
