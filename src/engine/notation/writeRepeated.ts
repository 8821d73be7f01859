import { mapAmount } from './amounts.ts';
import type { Amount, Instruction, RunChange } from './instruction.ts';
import { ordinalWord } from './numberWords.ts';
import { isOne, writeAmount } from './writeAmount.ts';
import { writeStitch } from './writeStitch.ts';
import { writeExtent } from './writeWork.ts';
import type { WriteOptions } from './writeWork.ts';

type Of<K extends Instruction['kind']> = Extract<Instruction, { kind: K }>;

/** `rep row 4`, `rep rows 2 and 4`, `rep last 2 rows`, `work as row 4, with 1 more st in each run in each row`. */
export function writeAsRows(node: Of<'asRows'>, options: WriteOptions): string {
  const word = options.round ? 'rnd' : 'row';
  const { changes = [] } = node;
  const lead = changes.length > 0 ? 'work as' : 'rep';
  const rows =
    node.last !== undefined ? (node.last === 1 ? `last ${word}` : `last ${node.last} ${word}s`)
    : node.rows ? `${word}s ${listed(node.rows.map(String))}`
    : node.from === node.to ? `${word} ${node.from}`
    : `${word}s ${node.from}${node.to === node.from + 1 ? ' and ' : '-'}${node.to}`;
  if (changes.length === 0) return `${lead} ${rows}`;
  // Of several rows, each is met again only every so often.
  const several = node.last !== undefined ? node.last > 1 : node.rows !== undefined || node.to > node.from;
  return `${lead} ${rows}, with ${changes.map((change) => writeChange(change, options)).join(', and ')} ${several ? 'each time' : `in each ${word}`}`;
}

function writeChange({ runs, by }: RunChange, { size }: WriteOptions): string {
  const fewer = numbers(by).some((one) => one < 0);
  const amount = mapAmount(by, (one) => (fewer ? -one : one) || 0);
  return `${writeAmount(amount, size)} ${fewer ? 'fewer' : 'more'} ${isOne(amount, size) ? 'st' : 'sts'} ${writeRuns(runs, fewer)}`;
}

function writeRuns(runs: RunChange['runs'], fewer: boolean): string {
  if (runs === 'each') return 'in each run';
  if (runs === 'between') return fewer ? 'between decs' : 'between incs';
  if (runs === 'last') return 'before the last st';
  return runs.length === 1 ? `in the ${ordinalWord(runs[0]!)} run` : `in runs ${listed(runs.map(String))}`;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
}

/** `work even across`, `work in pattern over next 34 sts`, `work in pattern to last 2 sts`. */
export function writeInPattern({ into, even }: Of<'inPattern'>, { size }: WriteOptions): string {
  if (even) return `work even ${into.at === 'across' && into.word === 'around' ? 'around' : 'across'}`;
  if (into.at === 'next') return `work in pattern over next ${isOne(into.count, size) ? 'st' : `${writeAmount(into.count, size)} sts`}`;
  return `work in pattern ${writeExtent(into, size)}`;
}

/** `sc in each st around, increasing 6 evenly`. */
export function writeSpread({ stitch, word, by }: Of<'spread'>, { terms, size }: WriteOptions): string {
  const fewer = numbers(by).some((one) => one < 0);
  const amount = mapAmount(by, (one) => (fewer ? -one : one) || 0);
  return `${writeStitch(stitch, terms)} in each st ${writeExtent({ word, except: 0 }, size)}, ${fewer ? 'decreasing' : 'increasing'} ${writeAmount(amount, size)} evenly`;
}

/** `work 10 sc evenly along row ends`, `sc evenly along row ends`, `work 10 sc evenly across`. */
export function writeEvenly({ stitch, count, along }: Of<'evenly'>, { terms, size }: WriteOptions): string {
  const where = along === 'rowEnds' ? 'along row ends' : along === 'end' ? 'to end' : along;
  return `${count === null ? '' : `work ${writeAmount(count, size)} `}${writeStitch(stitch, terms)} evenly ${where}`;
}

function numbers(amount: Amount): readonly number[] {
  return typeof amount === 'number' ? [amount] : amount;
}
