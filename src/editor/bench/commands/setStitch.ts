import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import type { Edit, Transaction } from '../../../engine/1-pattern/edit.ts';
import { construct } from '../../../engine/2-construct/construct.ts';
import { readLine } from '../../../engine/2-construct/readLine.ts';
import { mergeBodies } from '../../../engine/2-construct/recipes/mergeBodies.ts';
import { work } from '../../../engine/3-fabric/work.ts';
import { STITCHES } from '../../../engine/craft/stitches.ts';
import type { Instruction, Stated } from '../../../engine/notation/instruction.ts';
import { writeRow } from '../../../engine/notation/writeRow.ts';
import { sectionShown, type BenchState, type Command } from '../benchState.ts';
import { changedRow, type ChangedRow } from './changedRow.ts';
import { followCounts } from './followCounts.ts';
import type { Refused } from './isolateStitch.ts';
import { placeInOther, rowInSize, type RowInSize } from './placeInSizes.ts';
import { rowAlone } from './rowAlone.ts';
import { rowOfLine, type RowOfLine } from './rowOfLine.ts';
import { onlyThatDiffers } from './onlyThatDiffers.ts';
import { changeName, type StitchChange } from './stitchChange.ts';

/**
 * Changes one stitch of a row: in every size at the same distance from the row's start, centre or end, whichever third it is in
 * (`placeInOther`). Runs, repeats and groups are cut so that only that stitch differs; the counts of the row and of the rows above
 * follow. Null where it can't be done: `setStitchOr` says why.
 */
export function setStitch(stitch: number, change: StitchChange): Command {
  return (state) => {
    const step = setStitchOr(stitch, change, state);
    return 'reason' in step ? null : step;
  };
}

/** The step that changes a stitch, or why there is none, in words. */
export function setStitchOr(stitch: number, change: StitchChange, state: BenchState): Transaction | Refused {
  const section = sectionShown(state);
  const worked = state.fabric.rows[state.fabric.row[stitch] ?? -1];
  if (!section || !worked || state.fabric.sections[worked.section]?.id !== section.id) return { reason: 'That stitch is in another section.' };
  const row = rowOfLine(state.pattern, section.id, worked.key, state.size);
  if (!row || row.line.kind !== 'row' || worked.word === 'foundation') return { reason: 'A foundation is changed in its words.' };
  const read = readLine(row.line, state.pattern).body;
  if (row.most > 1 && read.some((each) => each.kind === 'asRows')) return { reason: 'These rows are worked as earlier rows: write the row’s words out first.' };
  const sizes = sizesOf(state, row, stitch, change);
  if ('reason' in sizes) return sizes;
  const texts = textsOf(state, row, read, sizes, change);
  const before = sizes.map(({ size, found }) => ({ fabric: state.grids[size]!.fabric, index: found.index }));
  for (const text of texts) {
    const alone = rowAlone(state.pattern, row);
    const edits: Edit[] = [...alone.edits, { kind: 'setLine', section: section.id, line: { ...alone.line, text } }];
    const set = applyTransaction(state.pattern, { label: '', at: 0, edits });
    if (!set.ok) return { reason: set.reason };
    const fabrics = set.pattern.sizes.map((_, size) => work(construct(set.pattern, size), state.grids[size]!.fabric));
    if (!sizes.every(({ size, changed }, i) => onlyThatDiffers(before[i]!.fabric, fabrics[size]!, before[i]!.index, changed))) continue;
    const where = worked.number === null ? 'the row' : `${worked.word === 'round' ? 'round' : 'row'} ${worked.number}`;
    return { label: `${changeName(change, state.pattern.terms)} in ${where}`, at: state.at, edits: [...edits, ...followCounts(set.pattern, section.id, alone.line.id, fabrics)] };
  }
  return { reason: 'The words of this row can’t say that: write it in them.' };
}

interface SizeChange {
  readonly size: number;
  readonly found: RowInSize;
  readonly body: readonly Instruction[];
  readonly changed: ChangedRow;
}

/** The change in every size that has the row, or the reason of the first that can't. */
function sizesOf(state: BenchState, { section, line, nth }: RowOfLine, stitch: number, change: StitchChange): readonly SizeChange[] | Refused {
  const rows = state.grids.map(({ fabric }) => rowInSize(fabric, section.id, { line: line.id, nth }));
  const own = rows[state.size]!;
  const at = own.stitches.indexOf(stitch);
  if (at < 0) return { reason: 'Turning chains and joins stay as they are: they follow the row.' };
  const made: SizeChange[] = [];
  for (const [size, found] of rows.entries()) {
    if (!found) continue;
    const name = state.pattern.sizes[size];
    const inSize = size === state.size ? '' : ` (in size ${name === '' ? size + 1 : name})`;
    const place = placeInOther(at, own.stitches.length, found.stitches.length);
    if (place === null) return { reason: `The row has too few stitches for that${inSize}.` };
    const { body } = construct(state.pattern, size).rows[found.index]!;
    const changed = changedRow(state.grids[size]!.fabric, found, body, size, place, change);
    if ('reason' in changed) return { reason: `${changed.reason.replace(/\.$/, '')}${inSize}.` };
    made.push({ size, found, body, changed });
  }
  return made;
}

/** The row's words with the change: within its own words where that can be, else written anew. */
function textsOf(state: BenchState, { line }: RowOfLine, read: readonly Instruction[], sizes: readonly SizeChange[], change: StitchChange): readonly string[] {
  const { terms, sizes: names } = state.pattern;
  const options = { terms, sizeNames: names };
  const which = sizes.map(({ size }) => size);
  const from = Math.min(...sizes.map(({ changed }) => changed.from));
  const to = Math.max(...sizes.map(({ changed }) => changed.to));
  const within = (start: number, end: number) => inSizes(which, names.length, sizes.map(({ changed }) => [...changed.body.slice(start, changed.from), ...changed.clauses, ...changed.body.slice(changed.to, end)]));
  const own = readLine(line, state.pattern).stated;
  const stated = own && countOfAll(own, change);
  const whole = writeRow(within(0, Infinity), stated, options).replace(/^s(?=izes? )/, 'S');
  if (!sizes.every(({ body }) => body === read)) return [whole];
  const part = within(from, to);
  const texts = [writeRow([...read.slice(0, from), ...part, ...read.slice(to)], stated, options), whole];
  if (part[0]?.kind === 'forSizes') return texts;
  const [before, last] = [read[from - 1], read[to - 1]!];
  const rest = own && stated !== own ? line.text.slice(last.range[1], own.range[0]) + writeRow([], stated, options) + line.text.slice(own.range[1]) : line.text.slice(last.range[1]);
  const words = writeRow(part, null, options).replace(/\.$/, '');
  return [`${before ? `${line.text.slice(0, before.range[1])}, ` : ''}${words}${rest}`, ...texts];
}

/** The clauses of several sizes as one, else of those sizes together that can be told in the same words. */
function inSizes(which: readonly number[], all: number, bodies: readonly (readonly Instruction[])[]): readonly Instruction[] {
  const groups: { sizes: number[]; bodies: (readonly Instruction[])[] }[] = [];
  which.forEach((size, i) => {
    const body = bodies[i]!;
    const alike = groups.find((group) => mergeBodies([...group.bodies, body], [...group.sizes, size], all) !== null);
    if (alike) {
      alike.sizes.push(size);
      alike.bodies.push(body);
    } else groups.push({ sizes: [size], bodies: [body] });
  });
  const told = groups.map((group) => ({ sizes: group.sizes, body: mergeBodies(group.bodies, group.sizes, all)! }));
  return told.length === 1 ? told[0]!.body : told.map(({ sizes, body }) => ({ kind: 'forSizes', sizes, body, range: [0, 0] }));
}

/** A count of one kind of stitch is of all stitches as soon as there is another kind in the row. */
function countOfAll(stated: Stated, change: StitchChange): Stated {
  const isOther = (change.kind === 'replace' || change.kind === 'group') && change.stitch !== stated.unit;
  return isOther && !stated.also && STITCHES.some(({ us }) => us === stated.unit) ? { ...stated, unit: 'sts' } : stated;
}
