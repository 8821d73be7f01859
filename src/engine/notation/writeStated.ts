import { STITCHES } from '../craft/stitches.ts';
import { stitchWord } from '../craft/terms.ts';
import { mapAmount } from './amounts.ts';
import type { Amount, Stated } from './instruction.ts';
import { isOne, writeAmount } from './writeAmount.ts';
import { pluralOf } from './writeStitch.ts';
import type { WriteOptions } from './writeWork.ts';

/** The count of a row in parentheses: `(40 (44, 48) sc)`, `(24 dc, 6 ch-1 sps)`, `(counts 8, 9, 10 sts)`, `(1 st more in each row, ending with 24 sts)`. */
export function writeStated(stated: Stated, options: WriteOptions): string {
  return `(${statedWords(stated, options)})`;
}

/** The words of a count without brackets. */
export function statedWords(stated: Stated, options: WriteOptions): string {
  const { size } = options;
  const one = (count: Amount, unit: string) => {
    const word = writeUnit(unit, count, options);
    return `${writeAmount(count, size)}${word === '' ? '' : ` ${word}`}`;
  };
  const count = [one(stated.count, stated.unit), ...(stated.also ?? []).map((more) => one(more.count, more.unit))].join(', ');
  if (stated.of === 'row') return count;
  if (stated.list) return `counts ${[...stated.list.slice(0, -1).map((each) => writeAmount(each, size)), count].join(', ')}`;
  if (stated.step === null) return `ending with ${count}`;
  const fewer = values(stated.step).some((step) => step < 0);
  const step = mapAmount(stated.step, (value) => (fewer ? -value : value));
  return `${writeAmount(step, size)} ${isOne(step, size) ? 'st' : 'sts'} ${fewer ? 'fewer' : 'more'} in each ${options.round ? 'rnd' : 'row'}, ending with ${count}`;
}

function values(amount: Amount): readonly number[] {
  return typeof amount === 'number' ? [amount] : amount;
}

/** The unit in the terms asked for; units that name no stitch stay as they are. */
function writeUnit(unit: string, count: Amount, { terms, size }: WriteOptions): string {
  const row = STITCHES.find((stitch) => stitch.us === unit);
  if (row) return isOne(count, size) ? stitchWord(row.kind, terms) : pluralOf(stitchWord(row.kind, terms));
  return unit === 'sts' && isOne(count, size) ? 'st' : unit;
}
