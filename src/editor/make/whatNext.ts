import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import type { Program } from '../../engine/2-construct/program.ts';
import { FLAG, type Fabric } from '../../engine/3-fabric/fabric.ts';
import { stitchOfCode } from '../../engine/craft/stitches.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import { goOf, runAfter } from './runs.ts';

/** One size of a pattern as it is made: its rows as a program, what they make, and the yarn of each stitch. */
export interface MadeSize {
  readonly pattern: Pattern;
  readonly program: Program;
  readonly fabric: Fabric;
  readonly yarn: Uint8Array;
}

/** What the hook does next, in words: "single crochet in each of the next 5 stitches, in chalk". */
export function whatNext({ pattern, program, fabric, yarn }: MadeSize, stitch: number, terms: Terms): string {
  const row = fabric.rows[fabric.row[stitch]!]!;
  const { end } = row;
  const go = goOf(fabric, stitch, row.first, end);
  const after = runAfter(fabric, yarn, stitch, end);
  const flags = fabric.flags[stitch]!;
  const kind = stitchOfCode(fabric.kind[stitch]!);
  const name = terms === 'uk' ? kind.ukName : kind.usName;
  const yarnName = pattern.yarns.length > 1 ? pattern.yarns[yarn[stitch]!]?.name ?? null : null;
  const inYarn = yarnName ? `, in ${yarnName}` : '';
  const times = goesIn(fabric, stitch, after, row.first, end);

  if (flags & FLAG.join) return `${name} to join the round${inYarn}`;
  if (kind.kind === 'ring') return `magic ring${inYarn}`;
  const isLeftOut = (flags & FLAG.turning) !== 0 && program.rows[fabric.row[stitch]!]?.body[fabric.instruction[stitch]!]?.kind === 'work';
  if (kind.kind === 'ch' && isLeftOut) return after - stitch === 1 ? 'leave out the last chain: it is the turning chain' : `leave out the last ${after - stitch} chains: they are the turning chain`;
  const isWholeFoundation = row.word === 'foundation' && after === end;
  const chains = after - stitch + (isWholeFoundation ? Math.max(0, row.made - (end - row.first)) : 0);
  if (kind.kind === 'ch' || go.bases === 0) return `${kind.kind === 'ch' ? 'chain' : name} ${chains}${flags & FLAG.turning ? ', the turning chain' : ''}${inYarn}`;
  if (go.bases > 1) return `${name} ${go.bases} together${times > 1 ? `, ${times} times` : ''}${inYarn}`;
  // The rest of stitches that share a place are made where the hook already is.
  if (flags & FLAG.sameBase) return `${name} again in the same place${inYarn}`;
  const made = go.end - go.first > 1 ? `${go.end - go.first} × ${name}` : name;
  return `${made} ${intoPlace(flags, times)}${inYarn}`;
}

function goesIn(fabric: Fabric, from: number, to: number, rowFirst: number, end: number): number {
  let goes = 0;
  for (let at = from; at < to; at = goOf(fabric, at, rowFirst, end).end) goes++;
  return goes;
}

function intoPlace(flags: number, times: number): string {
  const stitches = times === 1 ? 'the next stitch' : `each of the next ${times} stitches`;
  if (flags & FLAG.attaching) return times === 1 ? 'in the next open stitch beyond the row below' : `in each of the next ${times} open stitches beyond the row below`;
  if (flags & FLAG.inSpace) return times === 1 ? 'in the next space' : `in each of the next ${times} spaces`;
  if (flags & FLAG.frontPost) return `around the front post of ${stitches}`;
  if (flags & FLAG.backPost) return `around the back post of ${stitches}`;
  if (flags & FLAG.spike) return `into the row further below, ${times === 1 ? 'once' : `${times} times`}`;
  if (flags & FLAG.frontLoop) return `in the front loop only of ${stitches}`;
  if (flags & FLAG.backLoop) return `in the back loop only of ${stitches}`;
  return `in ${stitches}`;
}
