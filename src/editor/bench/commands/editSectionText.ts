import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { Line, Pattern, Section } from '../../../engine/1-pattern/pattern.ts';
import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import { removal } from '../../../engine/1-pattern/removal.ts';
import { linesFromText } from '../../../engine/readings/words/sectionText.ts';
import { sectionTitle } from '../../piece/sectionTitle.ts';
import type { Command } from '../benchState.ts';
import { freshIds } from './freshIds.ts';

/**
 * Gives a section other lines, as its text says, in one step. Lines that stay keep their ids, and a line that takes another's
 * place takes its id too, so that what is laid on its rows stays there.
 */
export function editSectionText(section: string, text: string): Command {
  return ({ pattern, at }) => {
    const known = pattern.sections.find((each) => each.id === section);
    if (!known) return null;
    const edits = sectionEdits(pattern, known, linesFromText(text, pattern).lines);
    return edits.length === 0 ? null : { label: `Change the text of the ${sectionTitle(known.name).toLowerCase() || 'section'}`, at, edits };
  };
}

function sectionEdits(pattern: Pattern, section: Section, wanted: readonly Line[]): readonly Edit[] {
  const pairs = alike(section.lines, wanted);
  const ids = freshIds(pattern, 'line-', wanted.length);
  const kept = new Map<number, number>(pairs.map(([old, next]) => [next, old]));
  // In a gap between lines that stay, the first of the old ones become the first of the new ones.
  const bounds = [...pairs, [section.lines.length, wanted.length] as const];
  let [fromOld, fromNew] = [0, 0];
  for (const [old, next] of bounds) {
    for (let i = 0; fromOld + i < old && fromNew + i < next; i++) kept.set(fromNew + i, fromOld + i);
    [fromOld, fromNew] = [old + 1, next + 1];
  }
  const staying = new Set(kept.values());
  const edits: Edit[] = [];
  let now = pattern;
  const step = (...more: readonly Edit[]): void => {
    for (const edit of more) {
      const done = applyTransaction(now, { label: '', at: 0, edits: [edit] });
      if (!done.ok) throw new RangeError(`a step of a section's new text could not be taken: ${done.reason}`);
      now = done.pattern;
      edits.push(edit);
    }
  };
  for (const [index, line] of wanted.entries()) {
    const old = kept.get(index);
    if (old === undefined) step({ kind: 'insertLines', section: section.id, at: index + removedBefore(section, staying, kept, index), lines: [{ ...line, id: ids[index]! }] });
    else if (!same(section.lines[old]!, line)) step({ kind: 'setLine', section: section.id, line: { ...line, id: section.lines[old]!.id } });
  }
  for (const [index, line] of section.lines.entries()) if (!staying.has(index)) step(...removal(now, { kind: 'lines', section: section.id, lines: [line.id] }));
  return edits;
}

/** Old lines that will go but still stand before the place of new line `index`. */
function removedBefore(section: Section, staying: ReadonlySet<number>, kept: ReadonlyMap<number, number>, index: number): number {
  let last = -1;
  for (let i = index - 1; i >= 0 && last < 0; i--) last = kept.get(i) ?? -1;
  let gone = 0;
  for (let old = 0; old < last && old < section.lines.length; old++) if (!staying.has(old)) gone++;
  return gone;
}

function same(a: Line, b: Line): boolean {
  return a.text === b.text && (a.kind === 'row') === (b.kind === 'row') && (a.kind !== 'row' || b.kind !== 'row' || JSON.stringify(a.label) === JSON.stringify(b.label));
}

/** Lines between the first and the last that differ are paired by their longest common run up to so many pairs; beyond, by their order. */
const MOST_PAIRS = 4_000_000;

/** Pairs of lines that are the same, in order: those before and after all that differ, and between them a longest common run. */
function alike(old: readonly Line[], wanted: readonly Line[]): (readonly [number, number])[] {
  const shorter = Math.min(old.length, wanted.length);
  let head = 0;
  while (head < shorter && same(old[head]!, wanted[head]!)) head++;
  let tail = 0;
  while (tail < shorter - head && same(old[old.length - 1 - tail]!, wanted[wanted.length - 1 - tail]!)) tail++;
  const between = commonRun(old.slice(head, old.length - tail), wanted.slice(head, wanted.length - tail));
  return [
    ...Array.from({ length: head }, (_, i) => [i, i] as const),
    ...between.map(([from, to]) => [from + head, to + head] as const),
    ...Array.from({ length: tail }, (_, i) => [old.length - tail + i, wanted.length - tail + i] as const),
  ];
}

function commonRun(old: readonly Line[], wanted: readonly Line[]): (readonly [number, number])[] {
  if (old.length * wanted.length > MOST_PAIRS) return [];
  const lengths = Array.from({ length: old.length + 1 }, () => new Uint16Array(wanted.length + 1));
  for (let i = old.length - 1; i >= 0; i--) for (let j = wanted.length - 1; j >= 0; j--) lengths[i]![j] = same(old[i]!, wanted[j]!) ? lengths[i + 1]![j + 1]! + 1 : Math.max(lengths[i + 1]![j]!, lengths[i]![j + 1]!);
  const pairs: (readonly [number, number])[] = [];
  for (let i = 0, j = 0; i < old.length && j < wanted.length; ) {
    if (same(old[i]!, wanted[j]!)) pairs.push([i++, j++]);
    else if (lengths[i + 1]![j]! >= lengths[i]![j + 1]!) i++;
    else j++;
  }
  return pairs;
}
