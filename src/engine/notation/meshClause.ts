import { readAmount } from './amounts.ts';
import type { Instruction } from './instruction.ts';
import type { RowReader } from './rowReader.ts';

const OPEN = new Set(['open', 'empty']);
const SOLID = new Set(['solid', 'filled', 'closed', 'full']);
const MESH = new Set(['mesh', 'meshes', 'square', 'squares', 'sq', 'sqs']);
/** What US filet charts call a solid mesh (*common practice*). */
const BLOCK = new Set(['block', 'blocks', 'bl', 'bls']);

/** `87 open meshes`, `3 solid meshes`, `1 filled square`, `5 blocks`. A mesh without a word for it is none: it may be either. */
export function readMesh(reader: RowReader): Instruction | null {
  const start = reader.at;
  const count = readAmount(reader) ?? 1;
  if (reader.at > start && reader.take(BLOCK)) return { kind: 'mesh', mesh: 'solid', count, range: reader.range(start) };
  const open = reader.take(OPEN);
  if ((!open && !reader.take(SOLID)) || !reader.take(MESH)) return null;
  return { kind: 'mesh', mesh: open ? 'open' : 'solid', count, range: reader.range(start) };
}
