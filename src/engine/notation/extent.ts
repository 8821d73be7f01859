import { readAmount } from './amounts.ts';
import type { Amount, ExtentWord } from './instruction.ts';
import { readNoun } from './noun.ts';
import type { RowReader } from './rowReader.ts';

const CH = new Set(['ch', 'chs', 'chain', 'chains']);
const ROW = new Set(['row', 'rows', 'rnd', 'rnds', 'round', 'rounds']);
const MARKER = new Set(['marker', 'm']);
const AFTER_AROUND = new Set(['the', 'each', 'next', 'same', 'first', 'last', 'post', 'front', 'back', 'foll', 'following']);

/** Reads how far a run or a repeat goes: `across`, `around`, `to end`, `to last 3 sts`, `to marker`, `to next corner`, `to next ch-2 sp`. */
export function readExtent(reader: RowReader): { readonly word: ExtentWord; readonly except: Amount } | null {
  const start = reader.at;
  if (reader.is('all') && (reader.is('around', 1) || reader.is('across', 1) || reader.is('the', 1))) {
    reader.at++;
    reader.takeAll('the', 'way');
  }
  let word: 'across' | 'around' | 'end' | null = null;
  if (reader.take('across')) word = 'across';
  else if (reader.is('around') || (reader.is('round') && !reader.is(AFTER_AROUND, 1))) {
    reader.at++;
    word = 'around';
  }
  if (word) {
    const articles = reader.at;
    reader.takeArticles();
    if (!reader.take(ROW) && reader.at > articles) {
      reader.at = start;
      return null;
    }
    const ahead = reader.is(',') ? 1 : 0;
    if (ahead === 1 && !reader.is('to', 1)) return { word, except: 0 };
    const comma = reader.at;
    reader.at += ahead;
    const to = readTo(reader);
    if (to && to.word !== 'end') return { word: to.word, except: to.except };
    if (to && to.except !== 0) return { word, except: to.except };
    if (!to) reader.at = comma;
    return { word, except: 0 };
  }
  const to = readTo(reader);
  if (!to) reader.at = start;
  return to;
}

function readTo(reader: RowReader): { readonly word: 'end' | 'marker' | 'corner' | 'space'; readonly except: Amount } | null {
  const start = reader.at;
  const until = reader.is('until');
  if (!until && !reader.is('to')) return null;
  reader.at++;
  const within = reader.take('within');
  reader.takeArticles();
  if (!within && (reader.take('end') || reader.take('ends'))) {
    takeOfRow(reader);
    return { word: 'end', except: 0 };
  }
  if (!within && reader.take(MARKER)) return { word: 'marker', except: 0 };
  const far = within ? null : takeCorner(reader);
  if (far) return { word: far, except: 0 };
  if (!within && reader.is('last')) {
    reader.at++;
    const except = readAmount(reader) ?? 1;
    readNoun(reader);
    takeOfRow(reader);
    return { word: 'end', except };
  }
  const except = readAmount(reader);
  if (except !== null) {
    readNoun(reader);
    if (until && (reader.takeAll('are', 'left') || reader.take('left') || reader.take('remain') || reader.take('remaining') || reader.take('rem'))) return { word: 'end', except };
    if (reader.take('before') || (within && reader.take('of'))) {
      reader.takeArticles();
      if (reader.take(MARKER)) return { word: 'marker', except };
      if (reader.take('end')) {
        takeOfRow(reader);
        return { word: 'end', except };
      }
    }
  }
  reader.at = start;
  return null;
}

/** `next corner`, `corner ch-2 sp`, `corner st`: the next corner; `next ch-2 sp`: the next chain space. */
function takeCorner(reader: RowReader): 'corner' | 'space' | null {
  const start = reader.at;
  const next = reader.take('next');
  const corner = reader.take('corner');
  const noun = readNoun(reader);
  if (corner) return 'corner';
  if (next && noun?.what === 'sp') return 'space';
  reader.at = start;
  return null;
}

/** Words that only say which row: `of the row`, `of last rnd`, `of previous row`. Not `of the row below`, which opens an edge. */
export function takeOfRow(reader: RowReader): boolean {
  const start = reader.at;
  if (reader.take('of')) {
    reader.takeArticles();
    while (reader.is('last') || reader.is('previous') || reader.is('prev') || reader.is('foundation') || reader.is('starting')) reader.at++;
    if (reader.take(ROW) || reader.take(CH) || reader.take('ring')) {
      reader.take('below');
      return true;
    }
  }
  reader.at = start;
  return false;
}
