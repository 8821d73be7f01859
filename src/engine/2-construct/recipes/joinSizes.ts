import type { Line } from '../../1-pattern/pattern.ts';
import type { Terms } from '../../craft/terms.ts';
import type { Amount, Stated } from '../../notation/instruction.ts';
import { writeRow } from '../../notation/writeRow.ts';
import type { MadeRow } from './madeRow.ts';
import { mergeBodies, mergeNumbers } from './mergeBodies.ts';
import { sizesText } from './sizesText.ts';

type Row = Extract<MadeRow, { kind: 'row' }>;

/** A role in the sizes that have it. */
interface Held<T extends MadeRow = MadeRow> {
  readonly sizes: readonly number[];
  readonly made: readonly T[];
}

/**
 * The lines of a section from its lines in every size: numbers that differ become one per size, rows that a size doesn't
 * have stand for 0 rows there. Where the same role is worded differently in some sizes, each wording gets a line of its own.
 * Lines keep the order in which the sizes have them; ids are `section.role`. Refuses a step or a note that only some sizes have.
 */
export function joinSizes(section: string, perSize: readonly (readonly MadeRow[])[], terms: Terms): Line[] {
  const lists = perSize.map((made) => made.filter((row) => row.kind !== 'row' || row.rows > 0));
  return rolesInOrder(lists).flatMap((role) => {
    const sizes: number[] = [];
    const made: MadeRow[] = [];
    lists.forEach((list, size) => {
      const own = list.find((row) => row.role === role);
      if (own) {
        sizes.push(size);
        made.push(own);
      }
    });
    return linesOf(`${section}.${role}`, { sizes, made }, perSize.length, terms);
  });
}

/** All roles, each after those that stand before it in the sizes that have it. Refuses sizes that have them in different orders. */
function rolesInOrder(lists: readonly (readonly MadeRow[])[]): readonly string[] {
  const order: string[] = [];
  for (const list of lists) {
    let at = 0;
    for (const { role } of list) {
      const known = order.indexOf(role);
      if (known < 0) order.splice(at, 0, role);
      if (known >= 0 && known < at) throw new RangeError(`${role} stands before and after other lines in different sizes`);
      at = (known < 0 ? at : known) + 1;
    }
  }
  return order;
}

function linesOf(id: string, { sizes, made }: Held, all: number, terms: Terms): Line[] {
  const first = made[0]!;
  if (first.kind === 'row') return shapesOf(made as readonly Row[]).map((members, i) => rowLine(i === 0 ? id : `${id}~${i + 1}`, { sizes: members.map((at) => sizes[at]!), made: members.map((at) => made[at] as Row) }, all, terms));
  if (sizes.length < all) throw new RangeError(`${id} stands in ${sizes.length} of ${all} sizes; only rows can be left out`);
  if (first.kind === 'note') return [{ kind: 'note', id, text: noteText(made as readonly Extract<MadeRow, { kind: 'note' }>[]) }];
  const body = mergeBodies((made as readonly Extract<MadeRow, { kind: 'step' }>[]).map((one) => one.body), sizes, all);
  if (!body) throw new RangeError(`${id} is worded differently in different sizes`);
  return [{ kind: 'step', id, text: sentence(writeRow(body, null, { terms })) }];
}

/** Which of the rows can be written in one wording: groups of indices. */
function shapesOf(made: readonly Row[]): readonly (readonly number[])[] {
  const groups: number[][] = [];
  made.forEach((row, at) => {
    const alike = groups.find((group) => {
      const other = made[group[0]!]!;
      return row.word === other.word && row.side === other.side && row.stated?.unit === other.stated?.unit && mergeBodies([...group, at].map((member) => made[member]!.body), [...group, at], made.length) !== null;
    });
    if (alike) alike.push(at);
    else groups.push([at]);
  });
  return groups;
}

function rowLine(id: string, { sizes, made }: Held<Row>, all: number, terms: Terms): Line {
  const body = mergeBodies(made.map((row) => row.body), sizes, all)!;
  const first = made[0]!;
  const everywhere = (numbers: readonly number[], absent: number): Amount => mergeNumbers(numbers, sizes, all, absent);
  const text = writeRow(body, statedOf(made, sizes, all), { terms });
  return { kind: 'row', id, label: { word: first.word, rows: everywhere(made.map((row) => row.rows), 0), start: null, side: first.side }, text };
}

function statedOf(made: readonly Row[], sizes: readonly number[], all: number): Stated | null {
  const stated = made.map((row) => row.stated);
  if (stated.some((one) => one === null)) return null;
  const counts = stated.map((one) => one!.count);
  const steps = stated.map((one) => one!.step);
  const numbers = (values: readonly number[]) => mergeNumbers(values, sizes, all, values[0]!);
  const range = [0, 0] as const;
  const unit = stated[0]!.unit;
  if (steps.every((one) => one === 0)) return { count: numbers(counts), unit, of: 'row', step: null, range };
  // A single row beside others that move has the step of the others, which its one count doesn't show.
  const common = steps.find((one) => one !== 0)!;
  return { count: numbers(counts), unit, of: 'last', step: numbers(steps.map((one) => (one === 0 ? common : one))), range };
}

function noteText(made: readonly Extract<MadeRow, { kind: 'note' }>[]): string {
  return made[0]!.words.map((word, i) => (typeof word === 'string' ? word : sizesText(made.map((one) => Number(one.words[i]))))).join('');
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
