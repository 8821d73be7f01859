import { STITCHES } from '../craft/stitches.ts';
import { stitchWord } from '../craft/terms.ts';
import { mapAmount } from './amounts.ts';
import type { Amount, Stated } from './instruction.ts';
import { isOne, writeAmount } from './writeAmount.ts';
import type { WriteOptions } from './writeWork.ts';

/** The count of a row in parentheses: `(40 (44, 48) sc)`, `(1 st more in each row, ending with 24 sts)`. */
export function writeStated(stated: Stated, options: WriteOptions): string {
  const { size } = options;
  const unit = writeUnit(stated, options);
  const count = `${writeAmount(stated.count, size)}${unit === '' ? '' : ` ${unit}`}`;
  if (stated.of === 'row') return `(${count})`;
  if (stated.step === null) return `(ending with ${count})`;
  const fewer = values(stated.step).some((step) => step < 0);
  const step = mapAmount(stated.step, (value) => (fewer ? -value : value));
  return `(${writeAmount(step, size)} ${isOne(step, size) ? 'st' : 'sts'} ${fewer ? 'fewer' : 'more'} in each row, ending with ${count})`;
}

function values(amount: Amount): readonly number[] {
  return typeof amount === 'number' ? [amount] : amount;
}

/** The unit in the terms asked for; units that name no stitch stay as they are. */
function writeUnit(stated: Stated, { terms, size }: WriteOptions): string {
  const { unit } = stated;
  const row = STITCHES.find((stitch) => stitch.us === unit);
  if (row) return stitchWord(row.kind, terms);
  return unit === 'sts' && isOne(stated.count, size) ? 'st' : unit;
}
