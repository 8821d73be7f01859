import { dequal } from 'dequal/lite';
import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { MeasureName, PieceFacts } from '../../../engine/1-pattern/pieceFacts.ts';
import type { Pattern } from '../../../engine/1-pattern/pattern.ts';
import { resize, type NewSize } from '../../../engine/1-pattern/resize.ts';
import type { Command } from '../../bench/benchState.ts';

/** A size to put in: its name and the measurements that are known, in cm. */
export interface SizeToAdd {
  readonly name: string;
  readonly cm: Readonly<Partial<Record<MeasureName, number>>>;
}

/**
 * Puts sizes in after the others, as one step. Rows take the numbers of the last size until the piece is made anew, and
 * measurements that aren't given stay as the last size has them. An only size without a name gets one.
 */
export function addSizes(added: readonly SizeToAdd[], label: string): Command {
  return ({ pattern, at }) => {
    if (added.length === 0) return null;
    const last = pattern.sizes.length - 1;
    const names = pattern.sizes.length === 1 && pattern.sizes[0] === '' ? ['1'] : pattern.sizes;
    const sizes: NewSize[] = [...names.map((name, from) => ({ name, from })), ...added.map(({ name }) => ({ name: unusedName(name, names), from: last }))];
    const edits = resize(pattern, sizes);
    const piece = pieceAfter(pattern, edits);
    if (!piece) return null;
    const first = pattern.sizes.length;
    const known = new Set(added.flatMap(({ cm }) => Object.keys(cm) as MeasureName[]));
    const measures = [...(piece.measures ?? []), ...[...known].filter((name) => !piece.measures?.some((one) => one.name === name)).map((name) => ({ name, cm: sizes.map(() => null), easePercent: 0, easeCm: 0 }))].map((measure) => ({
      ...measure, cm: measure.cm.map((cm, i) => (i < first ? cm : (added[i - first]!.cm[measure.name] ?? cm))),
    }));
    const pins = piece.pins && Object.fromEntries(Object.entries(piece.pins).map(([key, all]) => [key, all.map((pin, i) => (i < first ? pin : null))]));
    const next: PieceFacts = { ...piece, ...(measures.length > 0 ? { measures } : {}), ...(pins ? { pins } : {}) };
    return { label, at, edits: dequal(next, piece) ? edits : [...edits, { kind: 'setPiece', piece: next }] };
  };
}

/** Takes a size out with all its numbers, as one step. The only one stays. */
export function removeSize(size: number): Command {
  return ({ pattern, at }) => {
    if (pattern.sizes.length < 2 || pattern.sizes[size] === undefined) return null;
    const left = pattern.sizes.flatMap((name, from): NewSize[] => (from === size ? [] : [{ name, from }]));
    return { label: `Take out size ${pattern.sizes[size]}`, at, edits: resize(pattern, left) };
  };
}

/** Gives a size another name. */
export function renameSize(size: number, name: string): Command {
  return ({ pattern, at }) => {
    if (pattern.sizes[size] === undefined || pattern.sizes[size] === name) return null;
    return { label: `Call size ${pattern.sizes[size] || size + 1} ${name}`, at, edits: [{ kind: 'set', field: 'sizes', value: pattern.sizes.map((one, i) => (i === size ? name : one)) }] };
  };
}

function unusedName(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  let number = 2;
  while (taken.includes(`${name} ${number}`)) number++;
  return `${name} ${number}`;
}

function pieceAfter(pattern: Pattern, edits: readonly Edit[]): PieceFacts | null {
  const done = applyTransaction(pattern, { label: '', at: 0, edits });
  return done.ok ? (done.pattern.piece ?? {}) : null;
}
