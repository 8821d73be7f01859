import { CAUTION_GUIDANCE, cautionsFor, type Caution, type Feature } from '../../craft/cautions.ts';
import { featuresOf } from '../../readings/sizes/featuresOf.ts';
import type { Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import type { Run } from '../type/breakLines.ts';
import { printable } from '../type/printable.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import { besideHeading, labelled, paragraph } from './setBlocks.ts';

/** Words that say nothing by themselves. */
const EMPTY = new Set(['while', 'with', 'that', 'this', 'from', 'them', 'they', 'your', 'must', 'only', 'none']);
/** A sentence says a caution again when it has so many of its words. */
const SAME_SHARE = 2 / 3;

/**
 * The designer's own cautions, then those that apply to what the piece has and for whom it is made, each with its source. One that the
 * designer says in nearly the same words is not said twice: its source stands after the designer's words.
 */
export function cautionsPart({ pattern, sizes }: WorkedPattern, format: Format): readonly Block[] {
  const features = new Set<Feature>(sizes.flatMap(({ dressed }) => [...featuresOf(pattern, dressed)]));
  const cautions = cautionsFor(pattern.piece?.wearer ?? null, features);
  const own = pattern.notes.filter(({ word }) => /^caution/i.test(word)).map(({ value }) => value);
  if (cautions.length === 0 && own.length === 0) return [];
  const again = new Set<Caution>();
  const ownBlocks = own.map((value) => {
    const same = cautions.filter((caution) => !again.has(caution) && saysAgain(value, caution.says));
    for (const caution of same) again.add(caution);
    const sources = same.map(sourceOf).filter((source) => source !== '').join(' ');
    return labelled('', [{ text: `${printable(value)} `, face: 'text' }, { text: sources, face: 'italic', soft: true }], format);
  });
  const others = cautions.filter((caution) => !again.has(caution)).map((caution) => labelled('', [{ text: `${caution.says} `, face: 'text' }, { text: sourceOf(caution), face: 'italic', soft: true }] satisfies Run[], format));
  const said = [...ownBlocks, ...others];
  return besideHeading('Take care', [...said.slice(0, -1), ...said.slice(-1).map((one) => ({ ...one, withNext: true })), paragraph(CAUTION_GUIDANCE, format, 'italic', { sizePt: format.smallPt, soft: true })], format);
}

function sourceOf({ source, seen }: Caution): string {
  return source === 'common practice' ? '' : `${source}${seen || /memory/.test(source) ? '' : ' (from memory)'}.`;
}

/** Whether one sentence of a text has nearly all telling words of a caution. */
export function saysAgain(text: string, caution: string): boolean {
  const wanted = tellingWords(caution);
  return wanted.size > 0 && text.split(/[.!?]\s/).some((sentence) => {
    const has = tellingWords(sentence);
    return [...wanted].filter((word) => has.has(word)).length / wanted.size >= SAME_SHARE - 1e-9;
  });
}

function tellingWords(text: string): Set<string> {
  return new Set((text.toLowerCase().match(/\p{L}{4,}/gu) ?? []).filter((word) => !EMPTY.has(word)));
}
