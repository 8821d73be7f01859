import { plainCall, type Instruction } from './instruction.ts';

type Chain = Extract<Instruction, { kind: 'chain' }>;

/** Chains of a picot (*common practice*: three, four or so); more of them are a loop. */
const FEWEST = 2;
const MOST = 6;
/** Stitches so low that chains closed in the same place as them stand up as a picot; beside taller ones they come down as a petal does. */
const LOW = new Set(['sc', 'slst', 'hdc']);
const MAKES = new Set<Instruction['kind']>(['work', 'group', 'repeat', 'spread', 'evenly', 'inPattern', 'mesh']);

/**
 * Chains closed by a slip stitch in their own first one, or in the stitch that they stand on, as the picot that they are: `ch 3, sl
 * st in 3rd ch from hook`, `ch 3, sl st in first ch`, `ch 3, sl st in last sc made`, after single crochet `ch 3, sl st in same st`.
 * Only after a stitch, or within a repeat that makes some; others are a ring or a foundation. The same list where none is.
 */
export function foldPicots(body: readonly Instruction[], place: 'row' | 'repeat' | 'group' = 'row'): readonly Instruction[] {
  const out: Instruction[] = [];
  let stands = place === 'repeat' && body.some((node) => MAKES.has(node.kind) && !(node.kind === 'work' && node.stitch.kind === 'slst'));
  for (let at = 0; at < body.length; at++) {
    const node = body[at]!;
    const next = body[at + 1];
    if (stands && node.kind === 'chain' && next && isPicot(node, next, out.at(-1), place)) {
      out.push({ kind: 'work', stitch: plainCall('picot', Number(node.count)), each: 1, into: { at: 'top' }, range: rangeOf(node, next) });
      at++;
      continue;
    }
    stands ||= MAKES.has(node.kind);
    if (node.kind === 'repeat' || node.kind === 'group') {
      const inner = foldPicots(node.body, node.kind);
      out.push(inner === node.body ? node : { ...node, body: inner });
    } else if (node.kind === 'forSizes') out.push({ ...node, body: foldPicots(node.body, place) });
    else out.push(node);
  }
  return out.length === body.length && out.every((node, index) => node === body[index]) ? body : out;
}

function isPicot(chain: Chain, slip: Instruction, before: Instruction | undefined, place: 'row' | 'repeat' | 'group'): boolean {
  if (chain.counts !== null || typeof chain.count !== 'number' || chain.count < FEWEST || chain.count > MOST) return false;
  // Within a repeat no ring is formed.
  if (slip.kind === 'joinRing') return place === 'repeat';
  if (slip.kind !== 'work' || slip.stitch.kind !== 'slst' || slip.each !== 1 || slip.stitch.loop !== 'both' || slip.stitch.post !== 'none' || slip.stitch.spike > 0) return false;
  const { into } = slip;
  if (into.at === 'fromHook') return into.nth === chain.count;
  if (into.at === 'top' || (into.at === 'first' && into.what === 'ch')) return true;
  return into.at === 'same' && place !== 'group' && before?.kind === 'work' && LOW.has(before.stitch.kind) && before.stitch.together === 1;
}

function rangeOf(from: Instruction, to: Instruction): Instruction['range'] {
  return to.range[1] > from.range[0] ? [from.range[0], to.range[1]] : [0, 0];
}
