import { stitchCode } from '../../craft/stitches.ts';
import { FLAG } from '../../3-fabric/fabric.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { sectionRows } from '../ground.ts';
import { rowSlots } from '../rowSlots.ts';

const SLIP = stitchCode('slst');

/** The stitches of one row that have a place in the piece, left to right as seen on the right side. */
export interface Strand {
  /** Row index in the fabric. */
  readonly row: number;
  readonly stitches: Int32Array;
  /** A ring that the round above is worked into: its one stitch stands for all of it. */
  readonly centre: boolean;
  /** The counted turning chain `[from, end)`; its last chain stands for it. */
  readonly stack: readonly [from: number, end: number];
}

/** All strands of a fabric in working order, and for every stitch the one that stands for it: itself, the top of its turning chain, its ring; -1 for none. */
export function strandsOf(fabric: Fabric): { readonly strands: readonly Strand[]; readonly standsFor: Int32Array } {
  const standsFor = new Int32Array(fabric.count).fill(-1);
  const taken = new Uint8Array(fabric.count);
  for (let b = 0; b < fabric.bases.length; b++) taken[fabric.bases[b]!] = 1;
  const strands: Strand[] = [];
  fabric.sections.forEach((_, section) => {
    const rows = sectionRows(fabric, section);
    rows.forEach((row, r) => {
      const { slots, stack, perched, rings } = rowSlots(fabric, row, rows[r + 1] ?? null);
      const ring = rings[0];
      if (ring !== undefined) {
        for (const stitch of rings) standsFor[stitch] = ring;
        strands.push({ row: row.index, stitches: Int32Array.of(ring), centre: true, stack: [0, 0] });
      }
      const stitches = slots.filter((stitch) => keepsPlace(fabric, stitch) || taken[stitch]);
      for (const stitch of stitches) standsFor[stitch] = stitch;
      for (let chain = stack[0]; chain < stack[1]; chain++) standsFor[chain] = stack[1] - 1;
      for (const stitch of perched) standsFor[stitch] = standsFor[stitch - 1] ?? -1;
      if (stitches.length > 0) strands.push({ row: row.index, stitches, centre: false, stack });
    });
  });
  return { strands: strands.map((strand, index) => asCentre(fabric, strand, strands[index + 1], taken, standsFor)), standsFor };
}

/** Slip stitches that don't count (corners, ties) lie on the fabric and take no place of their own, but for those that take up an open stitch. */
function keepsPlace(fabric: Fabric, stitch: number): boolean {
  return fabric.kind[stitch] !== SLIP || (fabric.flags[stitch]! & (FLAG.counts | FLAG.foundation | FLAG.attaching)) !== 0;
}

/** A foundation of which one chain only is worked into, by a whole round, is a ring; chains at its ends that nothing is worked into drop off. */
function asCentre(fabric: Fabric, strand: Strand, above: Strand | undefined, taken: Uint8Array, standsFor: Int32Array): Strand {
  if (strand.centre || !above || fabric.rows[strand.row]!.word !== 'foundation') return strand;
  const worked = [...strand.stitches.keys()].filter((k) => taken[strand.stitches[k]!]);
  const from = worked[0] ?? 0;
  const end = (worked.at(-1) ?? strand.stitches.length - 1) + 1;
  const centre = worked.length === 1 && above.stitches.length >= 3;
  strand.stitches.forEach((stitch, k) => {
    if (k < from || k >= end) standsFor[stitch] = centre ? strand.stitches[from]! : -1;
  });
  return { ...strand, stitches: strand.stitches.slice(from, end), centre };
}
