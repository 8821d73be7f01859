import type { Instruction } from './instruction.ts';
import type { RowReader } from './rowReader.ts';

/**
 * Words of the trade that a row may hold and that change no stitch, as patterns over the lower-case words of a clause:
 * which side faces, what to do with ends and markers, what is not done.
 */
const REMARKS: readonly RegExp[] = [
  /^(do not|don't|without) (turn|turning|fasten off|cut|break)\b/,
  /^(with )?(rs|ws|(right|wrong) side)( is)?( of work)?( now)?( facing| out| inside)?( you| out)?$/,
  /^weave in\b/,
  /^sew in\b/,
  /^(leave|leaving) (a|an) .*\b(tail|end|yarn)\b/,
  /^(leave|leaving) (?!.*\bunworked\b).*\btail\b/,
  /^(begin |start |continue )?stuff(ing)?\b/,
  /^moving (the |a )?(marker|m)\b/,
  /^(pull|draw)( the)?( ring| yarn)? (tight|tightly|up|closed|to close)\b/,
  /^close( the)? ring$/,
  /^(move|slip|remove|replace|sm)( the| a)?( marker| m)?( up)?$/,
  /^(carry|carrying|drop|dropping) /,
  /^(the )?\d* ?skipped (ch|chs|chains?)\b.*\bcount/,
  /^counts? as\b/,
  /^worked along both sides$/,
  /^work(ing)? (back and forth )?in (rows|rounds|rnds)$/,
  /^(work |working )?to (correspond|match)\b/,
  /^(stretch|ease|block)\b/,
];
/** `picot made`, `first shell completed`: tells what the words before were. */
const MADE = /^(?!\d)(?:[\p{L}\d-]+ ){1,4}(?:is )?(?:made|completed?|formed)$/u;
const PLACED = /\b(?:in|into|of|to|over|on|around|just|last|times)\b/;
const STOP = new Set([',', ';', '.', ':', '*', ')', ']', '}', 'and', 'then']);

/** Reads words that say what has been made, before they are read as asking for it. */
export function readMade(reader: RowReader): Instruction | null {
  return readWordsAs(reader, (words) => MADE.test(words) && !PLACED.test(words));
}

/** Reads a clause that changes nothing; the rest of the clause belongs to it. */
export function readRemark(reader: RowReader): Instruction | null {
  return readWordsAs(reader, (words) => REMARKS.some((pattern) => pattern.test(words)));
}

function readWordsAs(reader: RowReader, fits: (words: string) => boolean): Instruction | null {
  const start = reader.at;
  let end = start;
  while (end < reader.end && end - start < 24 && !STOP.has(reader.tokens[end]!.word) && reader.tokens[end]!.close < 0) end++;
  const words = reader.tokens
    .slice(start, end)
    .map((token) => token.word)
    .join(' ');
  if (!fits(words)) return null;
  reader.at = end;
  return { kind: 'remark', text: reader.slice(start), range: reader.range(start) };
}
