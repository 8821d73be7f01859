import type { StitchKind } from '../craft/stitches.ts';
import type { Terms } from '../craft/terms.ts';
import { mapAmount } from './amounts.ts';
import { isCornerWord, type Amount, type ExtentWord, type Instruction, type Into } from './instruction.ts';
import { ordinalWord } from './numberWords.ts';
import { isOne, writeAmount } from './writeAmount.ts';
import { writeNoun, writeStitch } from './writeStitch.ts';

/** What a designer may choose of the wording; what is left out is as first named here. */
export interface WordStyle {
  /** `sc in next 6 sts` or `6 sc`. */
  readonly runs?: 'long' | 'short';
  /** `*…; rep from * to end` or `[…] to end`. */
  readonly repeats?: 'star' | 'bracket';
  /** `(26 sts)` or `— 26 sts`. */
  readonly count?: 'paren' | 'dash';
}

/** How rows are written. */
export interface WriteOptions {
  readonly style?: WordStyle;
  /** The row is a round: rows it names are called so. */
  readonly round?: boolean;
  readonly terms: Terms;
  /** Writes the numbers of this size (0-based); without it, all sizes as vectors. */
  readonly size?: number;
  /** Yarn runs in the short form that colourwork rows have: `with A sc 3, B sc 2` for `with A sc in next 3 sts, with B …`. */
  readonly runs?: boolean;
  /** Names of the sizes, for clauses that stand for some sizes only; without them their numbers from 1. */
  readonly sizeNames?: readonly string[];
}

/** Places that no post belongs to. */
const OFF_POST = new Set<Into['at']>(['ring', 'marker', 'top', 'fromHook']);

/** Stitches that a number before them only counts. */
const PLAIN_RUN = new Set<StitchKind>(['sc', 'hdc', 'dc', 'tr', 'dtr', 'slst']);

type Work = Extract<Instruction, { kind: 'work' }>;

/** How far a run or a repeat goes: `across`, `to end`, `to last 3 sts`, `across to last 3 sts`, `to 3 sts before marker`. */
export function writeExtent(extent: { readonly word: ExtentWord; readonly except: Amount }, size: number | undefined): string {
  const { word, except } = extent;
  if (word === 'corner') return 'to next corner';
  if (word === 'space') return 'to next ch-sp';
  const none = except === 0 || (size !== undefined && writeAmount(except, size) === '0');
  if (word === 'marker') return none ? 'to marker' : `to ${writeAmount(except, size)} ${isOne(except, size) ? 'st' : 'sts'} before marker`;
  if (none) return word === 'end' ? 'to end' : word;
  const last = isOne(except, size) ? 'to last st' : `to last ${writeAmount(except, size)} sts`;
  return word === 'end' ? last : `${word} ${last}`;
}

/** Where a stitch goes, with its preposition; `each` for several made in each of several places. */
export function writePlace(into: Into, each: boolean, preposition: string, { terms, size }: WriteOptions): string {
  switch (into.at) {
    case 'next': {
      if (isOne(into.count, size)) return `${preposition} next ${writeNoun(into.what, false, terms, into.loops)}`;
      return `${preposition} ${each ? 'each of ' : ''}next ${writeAmount(into.count, size)} ${writeNoun(into.what, true, terms, into.loops)}`;
    }
    case 'across':
      // "Each corner" goes round by itself.
      if (isCornerWord(into.what) && into.word === 'across' && into.except === 0) return `${preposition} each ${writeNoun(into.what, false, terms, into.loops)}`;
      return `${preposition} each ${writeNoun(into.what, false, terms, into.loops)} ${writeExtent(into, size)}`;
    case 'same':
      return `${preposition} same st`;
    case 'open': {
      const one = isOne(into.count, size);
      const noun = one ? 'st' : 'sts';
      const count = one ? '' : `${writeAmount(into.count, size)} `;
      const next = `${preposition} ${each && !one ? 'each of ' : ''}next`;
      return into.word === 'unworked' ? `${next} ${count}unworked ${noun}` : `${next} ${count}${noun} of the row below`;
    }
    case 'section': {
      const one = isOne(into.count, size);
      return `${preposition} ${each && !one ? 'each of ' : ''}next ${one ? '' : `${writeAmount(into.count, size)} `}${one ? 'st' : 'sts'} of the ${into.name}`;
    }
    case 'first':
    case 'last':
      return `${preposition} ${into.at} ${writeNoun(into.what, false, terms)}`;
    case 'fromHook':
      return `${preposition} ${ordinalWord(into.nth)} ch from hook`;
    case 'beside':
      return `${into.side} next ${writeNoun(into.what, false, terms)}`;
    case 'ring':
      return `${preposition} ring`;
    case 'marker':
      return `${preposition} marked st`;
    case 'top':
      return `${preposition} top of st just made`;
  }
}

/** One `work` clause: `sc in next 6 sts`, `2 sc in next st`, `sc2tog over next 4 sts`, `FPdc around next st`. */
export function writeWork(node: Work, options: WriteOptions): string {
  const { stitch, each, into } = node;
  const { terms, size } = options;
  const word = writeStitch(stitch, terms);
  if (stitch.kind === 'picot' && into.at === 'top') return isOne(each, size) ? word : `${writeAmount(each, size)} ${word}s`;
  const below = stitch.spike > 0 ? ` ${stitch.spike} ${stitch.spike === 1 ? 'row' : 'rows'} below` : '';
  if (stitch.together > 1) return writeTogether(node, word, options) + below;
  if (options.runs && each === 1 && below === '' && into.at === 'next' && into.what === 'st' && stitch.post === 'none') return `${word} ${writeAmount(into.count, size)}`;
  if (options.style?.runs === 'short' && each === 1 && below === '' && into.at === 'next' && into.what === 'st' && PLAIN_RUN.has(stitch.kind) && stitch.post === 'none' && stitch.loop === 'both') return `${writeAmount(into.count, size)} ${word}`;
  const number = isOne(each, size) ? '' : `${writeAmount(each, size)} `;
  const preposition = stitch.post === 'none' || OFF_POST.has(into.at) ? 'in' : 'around';
  return `${number}${word} ${writePlace(into, number !== '', preposition, options)}${below}`;
}

function writeTogether(node: Work, word: string, options: WriteOptions): string {
  const { stitch, into } = node;
  const preposition = stitch.post === 'none' ? 'over' : 'around';
  if (into.at === 'next') {
    if (isOne(into.count, options.size) && into.what === 'st' && stitch.post === 'none') return word;
    const places = mapAmount(into.count, (count) => count * stitch.together);
    return `${word} ${writePlace({ ...into, count: places }, false, preposition, options)}`;
  }
  if (into.at === 'across' && into.what === 'st' && stitch.post === 'none') return `${word} ${writeExtent(into, options.size)}`;
  return `${word} ${writePlace(into, false, stitch.post === 'none' ? 'in' : 'around', options)}`;
}
