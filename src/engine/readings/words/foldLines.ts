import type { Terms } from '../../craft/terms.ts';
import { bodyForSize } from '../../notation/changeAmounts.ts';
import { amountFor } from '../../notation/instruction.ts';
import type { Amount, Instruction, Stated } from '../../notation/instruction.ts';
import { plainTimes } from './plainTimes.ts';
import { listOfNames } from '../../notation/sizeParts.ts';
import { writeLabel } from '../../notation/writeLabel.ts';
import { writeRow } from '../../notation/writeRow.ts';
import type { WordStyle } from '../../notation/writeWork.ts';
import { writeStated } from '../../notation/writeStated.ts';
import type { RowLabel } from '../../notation/written.ts';
import { groupRows, sameBody } from './groupRows.ts';
import type { Group, PatternLine } from './groupRows.ts';
import { mergeNumbers, mergeSizes } from './mergeSizes.ts';
import { familiesAt } from './rowFamilies.ts';
import type { Family } from './rowFamilies.ts';
import type { WordsLine } from './wordsDocument.ts';

/** What lines of a section are written with. */
export interface FoldContext {
  /** Section id. */
  readonly section: string;
  /** Names of all sizes of the pattern. */
  readonly sizeNames: readonly string[];
  /** The sizes written, as indices into the names, in the order of `PatternLine.sizes`. */
  readonly written: readonly number[];
  readonly terms: Terms;
  readonly style?: WordStyle;
}

/** A group in all the sizes it is for, ready to be written. */
export interface Merged {
  readonly line: PatternLine['line'];
  readonly also: string[];
  readonly groups: readonly Group[];
  readonly sizes: readonly number[];
  readonly stated: Stated | null;
  last: boolean;
}

/**
 * Lines of a section as written: rows that say the same become ranges, rows whose numbers move by a fixed step one line that
 * names the row they follow, sizes become vectors.
 */
export function foldLines(lines: readonly PatternLine[], context: FoldContext): WordsLine[] {
  const merged = joinEqual(lines.flatMap((line) => mergeLine(line)));
  const single = merged.map((one) => writeMerged(one, context));
  const known = new Map<readonly Instruction[], string>();
  const folded: WordsLine[] = [];
  for (let at = 0; at < merged.length; at++) {
    const best = familiesAt(merged, at, context.written, known)
      .map((family) => ({ family, line: writeFamily(merged, at, family, context), plain: textLength(single.slice(at + family.period, at + family.period + family.length)) }))
      .filter(({ line, plain }) => line !== null && textLength([line]) < plain)
      .sort((a, b) => b.plain - textLength([b.line!]) - (a.plain - textLength([a.line!])))[0];
    if (!best) {
      folded.push(single[at]!);
      continue;
    }
    folded.push(...single.slice(at, at + best.family.period), best.line!);
    at += best.family.period + best.family.length - 1;
  }
  return folded;
}

function textLength(lines: readonly WordsLine[]): number {
  return lines.reduce((sum, { label, text }) => sum + label.length + text.length + 3, 0);
}

/** The lines of a family as one: `Rows 5-19: work as row 4, with 1 more st in the 2nd run in each row.` Null where the counts can't be said. */
function writeFamily(merged: readonly Merged[], at: number, family: Family, { section, sizeNames, written, terms, style }: FoldContext): WordsLine | null {
  const members = merged.slice(at + family.period, at + family.period + family.length);
  const [first] = members;
  if (!first || first.line.kind !== 'row') return null;
  const groups = first.groups.map((group, index) => ({ ...group, made: members.flatMap((member) => madeOf(member.groups[index]!)) }));
  const rows = groups[0]!.made.length;
  const listed = groups.map(({ unit, made }) => ({ unit, made }));
  const stated = listed.some(({ unit }) => unit === null) ? null : statedOfRows(listed as { unit: string; made: number[] }[]);
  if (stated === 'unsaid' || (stated === null && members.some(({ stated: said }) => said !== null))) return null;
  const body: Instruction[] = [{ kind: 'asRows', from: family.first, to: family.last, ...(family.changes.length > 0 ? { changes: family.changes } : {}), range: [0, 0] }];
  const { word } = first.line.label;
  return {
    kind: 'row', section, line: first.line.id, nthFrom: first.groups[0]!.from, nthTo: first.groups[0]!.to, also: members.flatMap(({ line, also }, index) => (index === 0 ? also : [line.id, ...also])).filter((id) => id !== first.line.id),
    label: writeLabel({ ...first.line.label, side: null, rows }, first.groups[0]!.number!),
    text: writeRow(body, stated, { terms, round: word === 'round', ...(style ? { style } : {}) }),
    sizes: first.sizes.length === written.length ? [] : first.sizes.map((index) => sizeNames[written[index]!]!),
  };
}

/** The count of each row of a group: groups keep one count where all their rows have it. */
function madeOf({ made, from, to }: Group): readonly number[] {
  return made.length === to - from + 1 ? made : Array.from({ length: to - from + 1 }, (_, index) => made[Math.min(index, made.length - 1)]!);
}

/** More counts than this are not listed. */
const MOST_LISTED = 40;

function statedOfRows(sizes: readonly { readonly unit: string; readonly made: readonly number[] }[]): Stated | 'unsaid' {
  const [first] = sizes;
  const unit = sizes.every((size) => size.unit === first!.unit) ? first!.unit : 'sts';
  const rows = first!.made.length;
  const list = Array.from({ length: rows }, (_, row) => mergeNumbers(sizes.map(({ made }) => made[row]!)));
  const count = list.at(-1)!;
  if (sizes.every(({ made }) => made.every((one) => one === made[0]))) return { count, unit, of: 'row', step: null, range: [0, 0] };
  const steps = sizes.map(({ made }) => made[1]! - made[0]!);
  const even = sizes.every(({ made }, size) => made.every((one, row) => one === made[0]! + row * steps[size]!));
  if (even && !(steps.some((step) => step > 0) && steps.some((step) => step < 0))) return { count, unit, of: 'last', step: mergeNumbers(steps), range: [0, 0] };
  return rows > MOST_LISTED ? 'unsaid' : { count, unit, of: 'last', step: null, list, range: [0, 0] };
}

function mergeLine(line: PatternLine): Merged[] {
  const perSize = line.sizes.map((size) => groupRows(line, size));
  const present = perSize.map((groups, index) => ({ groups, index })).filter(({ groups }) => groups.length > 0);
  const count = present[0]?.groups.length ?? 0;
  const { stated } = line;
  if (present.every(({ groups }) => groups.length === count)) {
    const sizes = present.map(({ index }) => index);
    return Array.from({ length: count }, (_, at) => ({ line: line.line, also: [], groups: present.map(({ groups }) => groups[at]!), sizes, stated, last: at === count - 1 }));
  }
  return present.flatMap(({ groups, index }) => groups.map((group, at) => ({ line: line.line, also: [], groups: [group], sizes: [index], stated, last: at === groups.length - 1 })));
}

/** Folds lines one after another that say the same and whose numbers follow. */
function joinEqual(merged: readonly Merged[]): Merged[] {
  const joined: Merged[] = [];
  for (const one of merged) {
    const before = joined.at(-1);
    if (before && canJoin(before, one)) {
      before.groups.forEach((group, index) => {
        const more = one.groups[index]!;
        group.to += more.to - more.from + 1;
        group.made.push(...more.made);
      });
      before.also.push(one.line.id);
      before.last = one.last;
    } else joined.push({ ...one, groups: one.groups.map((group) => ({ ...group, made: [...group.made] })) });
  }
  return joined;
}

function canJoin(before: Merged, one: Merged): boolean {
  if (before.line.kind !== 'row' || one.line.kind !== 'row' || before.line.id === one.line.id) return false;
  const [a, b] = [before.line.label, one.line.label];
  if (a.word !== b.word || (a.word !== 'row' && a.word !== 'round') || b.side !== null || before.sizes.join() !== one.sizes.join()) return false;
  return before.groups.every((group, index) => {
    const more = one.groups[index]!;
    const steady = (made: readonly number[]) => made.every((count) => count === group.made[0]);
    return (
      group.unit === more.unit && group.runs === more.runs && group.body.every(({ kind }) => kind !== 'asRows') && steady(group.made) && steady(more.made) &&
      group.number !== null && more.number === group.number + (group.to - group.from + 1) && sameBody(group.body, more.body, new Map())
    );
  });
}

function writeMerged(merged: Merged, context: FoldContext): WordsLine {
  const { line, groups, sizes } = merged;
  const first = groups[0]!;
  const text = writeText(merged, context);
  return {
    kind: line.kind, section: context.section, line: line.id, nthFrom: first.from, nthTo: first.to, also: merged.also,
    label: line.kind === 'row' ? labelOf(line.label, merged) : '', text: line.kind === 'step' ? text.charAt(0).toUpperCase() + text.slice(1) : text,
    sizes: sizes.length === context.written.length ? [] : sizes.map((at) => context.sizeNames[context.written[at]!]!),
  };
}

function labelOf(label: RowLabel, { groups }: Merged): string {
  const rows = mergeNumbers(groups.map(({ from, to }) => to - from + 1));
  const first = mergeNumbers(groups.map(({ number }) => number ?? 0));
  const side = groups.every(({ from }) => from === 0) ? label.side : null;
  return writeLabel({ ...label, rows, side }, first);
}

function writeText(merged: Merged, { sizeNames, written, terms, style: asked }: FoldContext): string {
  const style = asked ? { style: asked } : {};
  const round = merged.line.kind === 'row' && merged.line.label.word === 'round';
  const { groups, sizes } = merged;
  const { runs, body } = groups[0]!;
  const whole = sizes.length === sizeNames.length && groups.every((group) => group.body === body) && body.every(({ kind }) => kind !== 'forSizes');
  const bodies = whole ? [] : groups.map((group, at) => bodyForSize(group.body, written[sizes[at]!]!));
  const one = whole ? body : groups.every((group) => group.runs === runs) ? mergeSizes(bodies) : null;
  if (one) return writeRow(plainTimes(one), statedOf(merged, groups, written), { terms, runs, round, ...style });
  // The wording differs: each wording with the sizes that share it, one count for all after them.
  const wordings: { readonly members: number[]; body: readonly Instruction[]; readonly runs: boolean }[] = [];
  groups.forEach((group, at) => {
    const alike = wordings.find(({ members, runs: theirs }) => theirs === group.runs && mergeSizes([...members, at].map((member) => bodies[member]!)) !== null);
    if (alike) {
      alike.members.push(at);
      alike.body = mergeSizes(alike.members.map((member) => bodies[member]!))!;
    } else wordings.push({ members: [at], body: bodies[at]!, runs: group.runs });
  });
  const texts = wordings.map(({ members, body: words, runs: theirs }) => {
    const names = members.map((at) => sizeNames[written[sizes[at]!]!]!);
    return `${names.length > 1 ? 'Sizes' : 'Size'} ${listOfNames(names)}: ${writeRow(plainTimes(words), null, { terms, runs: theirs, round, ...style })}`;
  });
  const stated = statedOf(merged, groups, written);
  return [...texts, ...(stated ? [writeStated(stated, { terms })] : [])].join(' ');
}

/** The count to write after groups: steady, or moving by a step; in units that are no stitches, and for foundations, what the pattern says. */
function statedOf({ stated: said, sizes, last }: Merged, groups: readonly Group[], written: readonly number[]): Stated | null {
  const [first] = groups;
  if (!first) return null;
  if (groups.some(({ unit }) => unit === null)) {
    if (!said || (said.of === 'last' && !last)) return null;
    const inSizes = (amount: Amount) => mergeNumbers(sizes.map((at) => amountFor(amount, written[at]!)));
    return { ...said, count: inSizes(said.count), step: said.step === null ? null : inSizes(said.step) };
  }
  const unit = groups.every((group) => group.unit === first.unit) ? first.unit! : 'sts';
  const steps = groups.map(({ made }) => (made.length > 1 ? made[1]! - made[0]! : 0));
  if (groups.some(({ made }, index) => made.some((count, at) => count !== made[0]! + at * steps[index]!))) {
    const listed = groups.map((group) => ({ unit, made: madeOf(group) }));
    const stated = listed.every(({ made }) => made.length === listed[0]!.made.length) ? statedOfRows(listed) : 'unsaid';
    return stated === 'unsaid' ? null : stated;
  }
  const count = mergeNumbers(groups.map(({ made }) => made.at(-1)!));
  if (steps.every((step) => step === 0)) return { count, unit, of: 'row', step: null, range: [0, 0] };
  // More in one size and fewer in another can't be said in one phrase.
  if (steps.some((step) => step > 0) && steps.some((step) => step < 0)) return null;
  return { count, unit, of: 'last', step: mergeNumbers(steps), range: [0, 0] };
}
