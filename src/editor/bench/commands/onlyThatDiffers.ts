import { FLAG, type Fabric } from '../../../engine/3-fabric/fabric.ts';
import type { ChangedRow } from './changedRow.ts';

const LOOKS = FLAG.turning | FLAG.join | FLAG.frontLoop | FLAG.backLoop | FLAG.frontPost | FLAG.backPost | FLAG.spike | FLAG.otherSide | FLAG.corner;

/** Whether a row was worked anew with nothing else changed than asked: as many places used, as many stitches more, all others as they were. */
export function onlyThatDiffers(before: Fabric, after: Fabric, index: number, { more, touched }: Pick<ChangedRow, 'more' | 'touched'>): boolean {
  const [old, now] = [before.rows[index]!, after.rows[index]];
  if (!now || now.used !== old.used) return false;
  const [was, is] = [old.end - old.first, now.end - now.first];
  if (is !== was + more) return false;
  const same = (a: number, b: number) => before.kind[a] === after.kind[b] && before.yarn[a] === after.yarn[b] && (before.flags[a]! & LOOKS) === (after.flags[b]! & LOOKS);
  let ahead = 0;
  while (ahead < Math.min(was, is) && same(old.first + ahead, now.first + ahead)) ahead++;
  let behind = 0;
  while (behind < Math.min(was, is) - ahead && same(old.end - 1 - behind, now.end - 1 - behind)) behind++;
  return was - ahead - behind <= touched;
}
