import { mapAmount, readAmount } from './amounts.ts';
import { isEnd, type Times } from './instruction.ts';
import { readExtent } from './extent.ts';
import type { RowReader } from './rowReader.ts';

const TIMES = new Set(['times', 'time', 'x']);
const REP = new Set(['rep', 'repeat', 'repeated', 'repeating', 'work', 'worked']);
const ONCE: Readonly<Record<string, number>> = { once: 1, twice: 2, thrice: 3 };

/**
 * Reads how often something is worked. `'bracket'` and `'clause'`: `6 times`, `x 6`, `twice` are that often in all;
 * `5 more times` one more. `'from'` (after `rep from *`): the first time has been worked already, so `5 times` and
 * `5 more times` both make 6, `6 times in all` makes 6. Extents (`across`, `to last 3 sts`) are read but for `'clause'`.
 * Null, with nothing moved, if nothing of that stands there.
 */
export function readTimes(reader: RowReader, after: 'bracket' | 'clause' | 'from'): Times | null {
  const start = reader.at;
  if (after === 'bracket') {
    if (reader.is(',') || reader.is(';')) {
      const ahead = reader.is(REP, 1) ? 2 : 1;
      if (ahead === 1 && !startsTimes(reader, 1)) return null;
      reader.at += ahead;
    } else reader.take(REP);
  }
  const times = readNumberOfTimes(reader, after);
  if (times) return times;
  if (after !== 'clause') {
    const extent = readExtent(reader);
    if (extent && isEnd(extent.word)) return { kind: 'toEnd', except: extent.except, word: extent.word };
  }
  reader.at = start;
  return null;
}

/** Whether a plain number of times stands there: `6 times`, `x 6`. */
function startsTimes(reader: RowReader, ahead: number): boolean {
  const { kind } = reader.token(ahead);
  return kind === 'number' && (reader.is(TIMES, ahead + 1) || reader.is('more', ahead + 1));
}

function readNumberOfTimes(reader: RowReader, after: 'bracket' | 'clause' | 'from'): Times | null {
  const start = reader.at;
  const worked = after === 'from' ? 1 : 0;
  reader.takeAll('a', 'total', 'of');
  const total = reader.at > start;
  const once = ONCE[reader.token().word];
  if (once !== undefined) {
    reader.at++;
    return { kind: 'times', times: once + (reader.take('more') ? 1 : worked) };
  }
  const sign = reader.take('x');
  const amount = readAmount(reader);
  if (amount === null) {
    reader.at = start;
    return null;
  }
  let more = reader.take('more');
  if (!reader.take(TIMES) && !sign) {
    reader.at = start;
    return null;
  }
  more = reader.take('more') || more;
  const all = reader.takeAll('in', 'all') || reader.takeAll('in', 'total') || reader.take('total') || reader.take('altogether') || total;
  const extra = all ? 0 : more ? 1 : worked;
  return { kind: 'times', times: mapAmount(amount, (value) => value + extra) };
}
