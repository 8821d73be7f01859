import type { CornerWord, PlaceWord } from './instruction.ts';
import type { RowReader } from './rowReader.ts';
import { matchStitch } from './stitchReading.ts';

const ST = new Set(['st', 'sts', 'stitch', 'stitches']);
const SP = new Set(['sp', 'sps', 'space', 'spaces']);
const LP = new Set(['loop', 'loops', 'lp', 'lps']);
const CH = new Set(['ch', 'chs', 'chain', 'chains']);

/** Reads what kind of place is meant: `sts`, `chs`, `ch-2 sp`, `sc`. Null, with nothing moved, if no such word stands there. */
export function readNoun(reader: RowReader): { readonly what: Exclude<PlaceWord, CornerWord>; readonly loops?: number } | null {
  if (reader.take(ST)) return { what: 'st' };
  if (takeRowEnd(reader)) return { what: 'rowEnd' };
  if (reader.take(SP)) return { what: 'sp' };
  if (reader.is(LP) && !reader.is('only', 1)) {
    reader.at++;
    return { what: 'sp' };
  }
  if (reader.is(CH)) {
    const hyphen = reader.is('-', 1) ? 1 : 0;
    const number = reader.token(1 + hyphen);
    if (number.kind === 'number') {
      const second = reader.is('-', 2 + hyphen) ? 1 : 0;
      const space = reader.is(SP, 2 + hyphen + second) || reader.is(LP, 2 + hyphen + second);
      if (space || (hyphen === 1 && number.glued)) {
        reader.at += 2 + hyphen + (space ? second + 1 : 0);
        return { what: 'sp', loops: number.value };
      }
    }
    if (reader.is(SP, 1 + hyphen) || reader.is(LP, 1 + hyphen)) {
      reader.at += 2 + hyphen;
      return { what: 'sp' };
    }
    reader.at++;
    return { what: 'ch' };
  }
  if (reader.token().kind === 'number' && reader.is('-', 1) && reader.is(CH, 2) && (reader.is(SP, 3) || reader.is(LP, 3))) {
    const loops = reader.token().value;
    reader.at += 4;
    return { what: 'sp', loops };
  }
  const match = matchStitch(reader);
  if (!match) return null;
  const start = reader.at;
  reader.at += match.length;
  if (match.foreign) reader.foreign(start, match.kind);
  return { what: match.kind };
}

const ENDS = new Set(['end', 'ends']);
const SIDE = new Set(['side', 'edge', 'sides', 'edges']);
const ALONG = new Set(['along', 'down', 'up']);

/** `row end`, `row-ends`, `ends of rows`, and whose they are: `along the side of the flap`, `of the heel flap`. */
function takeRowEnd(reader: RowReader): boolean {
  const hyphen = reader.is('-', 1) ? 1 : 0;
  if (reader.is('row') && reader.is(ENDS, 1 + hyphen)) reader.at += 2 + hyphen;
  else if (reader.is(ENDS) && reader.is('of', 1) && (reader.is('rows', 2) || (reader.is('row', 2) && !reader.is('below', 3)))) reader.at += 3;
  else return false;
  const start = reader.at;
  if (reader.take(ALONG)) {
    reader.takeArticles();
    for (let words = 0; words < 3 && !reader.is(SIDE) && reader.token().kind === 'word'; words++) reader.at++;
    if (!reader.take(SIDE)) reader.at = start;
  }
  const owner = reader.at;
  if (reader.take('of')) {
    reader.takeArticles();
    let words = 0;
    while (words < 3 && reader.token().kind === 'word' && OWNERS.has(reader.token().word)) {
      reader.at++;
      words++;
    }
    if (words === 0) reader.at = owner;
  }
  return true;
}

/** Words that say whose row ends they are. */
const OWNERS = new Set(['flap', 'heel', 'leg', 'panel', 'piece', 'foot', 'sole', 'vamp', 'instep', 'cuff', 'band', 'strip']);
