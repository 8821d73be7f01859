import { stitchRow } from '../craft/stitches.ts';
import { stitchWord } from '../craft/terms.ts';
import type { Terms } from '../craft/terms.ts';
import type { PlaceWord, StitchCall } from './instruction.ts';

/** Stitches whose number of legs is always said, as readers do not agree on it. */
const LEGS_SAID = new Set(['bobble', 'popcorn', 'cluster']);

/** A stitch as written in a row: `sc`, `sc2tog`, `5-dc bobble`, `BLO sc`, `FPdc`, `spike sc`. */
export function writeStitch(call: StitchCall, terms: Terms): string {
  const row = stitchRow(call.kind);
  const post = call.post === 'none' ? '' : call.post === 'front' ? 'FP' : 'BP';
  let word = post + stitchWord(call.kind, terms);
  if (call.together > 1) word += `${call.together}tog`;
  const legKind = call.legKind ?? row.legKind;
  if (legKind && (LEGS_SAID.has(call.kind) || call.legs !== row.legs || call.legKind !== undefined)) {
    word = legKind === 'ch' ? `${stitchWord('ch', terms)}-${call.legs} ${word}` : `${call.legs}-${stitchWord(legKind, terms)} ${word}`;
  }
  if (call.spike > 0) word = `spike ${word}`;
  return call.loop === 'both' ? word : `${call.loop === 'front' ? 'FLO' : 'BLO'} ${word}`;
}

/** Several of a stitch: names that are words, and what ends in `st`, take an s; abbreviations stay as print has them (`12 sc`). */
export function pluralOf(word: string): string {
  return /(?:\bst|bobble|popcorn|cluster|shell|picot)$/.test(word) ? `${word}s` : word;
}

/** The noun of a place: `st`, `sts`, `chs`, `ch-2 sp`, `sc`. Stitches stand in the singular after a number, as print has them. */
export function writeNoun(what: PlaceWord, plural: boolean, terms: Terms, loops?: number): string {
  const ending = plural ? 's' : '';
  if (what === 'st' || what === 'ch') return `${what}${ending}`;
  if (what === 'corner') return `corner${ending}`;
  if (what === 'cornerSt') return `corner st${ending}`;
  if (what === 'cornerSp') return `corner ${loops === undefined ? '' : `ch-${loops} `}sp${ending}`;
  if (what === 'rowEnd') return `row end${ending}`;
  if (what === 'sp') return loops === undefined ? `ch-sp${ending}` : `ch-${loops} sp${ending}`;
  return plural ? pluralOf(stitchWord(what, terms)) : stitchWord(what, terms);
}
