import type { StitchKind } from '../../src/engine/craft/stitches.ts';
import { plainCall } from '../../src/engine/notation/instruction.ts';
import type { Instruction, Into, StitchCall } from '../../src/engine/notation/instruction.ts';
import type { Program, ProgramRow } from '../../src/engine/2-construct/program.ts';
import { work } from '../../src/engine/3-fabric/work.ts';
import type { Fabric } from '../../src/engine/3-fabric/fabric.ts';

const range = [0, 0] as const;

/** A stitch into each of the next `count` places. */
export function next(kind: StitchKind, count = 1, call: Partial<StitchCall> = {}): Instruction {
  const legs = kind === 'bobble' ? 5 : kind === 'cluster' || kind === 'puff' ? 3 : 0;
  return { kind: 'work', range, stitch: { ...plainCall(kind, legs), ...call }, each: 1, into: { at: 'next', count, what: 'st' } };
}

/** `each` stitches in every next place of `count`. */
export function each(kind: StitchKind, eachOf: number, count = 1): Instruction {
  return { ...next(kind, count), each: eachOf } as Instruction;
}

/** A stitch into each place to the end of the row below, leaving the last `except`. */
export function across(kind: StitchKind, except = 0, word: 'across' | 'around' = 'across'): Instruction {
  return { kind: 'work', range, stitch: plainCall(kind), each: 1, into: { at: 'across', except, what: 'st', word } };
}

/** Two places drawn together, `count` times. */
export function dec(kind: StitchKind = 'sc', count = 1): Instruction {
  return next(kind, count, { together: 2 });
}

/** A stitch into another place. */
export function into(kind: StitchKind, place: Into): Instruction {
  return { kind: 'work', range, stitch: plainCall(kind), each: 1, into: place };
}

export const ch = (count: number): Instruction => ({ kind: 'chain', range, count, counts: null });
export const turn: Instruction = { kind: 'turn', range };
export const join: Instruction = { kind: 'join', range, at: 'first' };
export const joinRing: Instruction = { kind: 'joinRing', range };
export const ring: Instruction = { kind: 'ring', range };
export const seam: Instruction = { kind: 'seam', range };
export const leave: Instruction = { kind: 'leave', range, count: 'rest' };
export const skip = (count: number): Instruction => ({ kind: 'skip', range, count, what: 'st' });
export const skipSeam: Instruction = { kind: 'skipSeam', range };
export const open: Instruction = into('sc', { at: 'open', count: 1, word: 'unworked' });
export const beforeSeam = (nth: number): Instruction => ({ kind: 'joinAt', range, nth, from: 'beforeSeam', yarn: null });
export const yarn = (letter: string): Instruction => ({ kind: 'yarn', range, letter, word: 'with' });
export const times = (count: number, ...body: Instruction[]): Instruction => ({ kind: 'repeat', range, body, times: { kind: 'times', times: count }, style: 'paren' });

/** A row: its word and its clauses. */
export type BuiltRow = readonly [word: ProgramRow['word'], ...body: Instruction[]];

/** Works sections of hand-made rows. Rows and rounds are numbered from 1 in each section. */
export function fabricOf(sections: Readonly<Record<string, readonly BuiltRow[]>>, letters: readonly string[] = ['A', 'B', 'C']): Fabric {
  const names = Object.keys(sections);
  const rows: ProgramRow[] = [];
  names.forEach((name, section) => {
    let number = 0;
    sections[name]!.forEach(([word, ...body], line) => {
      const numbered = word === 'row' || word === 'round' || word === 'next';
      rows.push({ key: { line: `${name}-${line}`, nth: 0 }, section, word, number: numbered ? ++number : null, side: null, body, stated: null });
    });
  });
  const program: Program = { size: 0, sections: names.map((name) => ({ id: name, name })), rows, letters, hdcTurningChainCounts: false, findings: [] };
  return work(program);
}

/** `count` rows of single crochet over `width` stitches, back and forth, in the order foundation, row 1 … */
export function plainRows(width: number, count: number): BuiltRow[] {
  const rows: BuiltRow[] = [['foundation', ch(width + 1)]];
  for (let r = 0; r < count; r++) {
    rows.push(r === 0 ? ['row', into('sc', { at: 'fromHook', nth: 2 }), across('sc')] : ['row', ch(1), turn, across('sc')]);
  }
  return rows;
}

/** Joined rounds of single crochet over a ring of `width` chains. */
export function plainRounds(width: number, count: number): BuiltRow[] {
  const rows: BuiltRow[] = [['foundation', ch(width), joinRing]];
  for (let r = 0; r < count; r++) rows.push(['round', ch(1), across('sc', 0, 'around'), join]);
  return rows;
}

/**
 * A heel of turned short rows on a seamed leg: `width` stitches about the seam, `left` left open after row 2 and `right`
 * after row 3, then one more in each row until all are used.
 */
export function shortRowHeel(width: number, left: number, right: number, legRows = 4): Readonly<Record<string, readonly BuiltRow[]>> {
  const half = Math.floor(width / 2);
  const heel: BuiltRow[] = [
    ['row', beforeSeam(half), ch(1), next('sc', half), skipSeam, next('sc', width - half), leave],
    ['row', ch(1), turn, next('sc', width - left), leave],
    ['row', ch(1), turn, next('sc', width - left - right), leave],
  ];
  for (let r = 0; r < left + right; r++) heel.push(['row', ch(1), turn, across('sc'), open]);
  return { LEG: [...plainRows(width * 2, legRows), ['step', seam]], HEEL: heel };
}
