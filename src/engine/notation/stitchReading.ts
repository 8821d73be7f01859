import { STITCH_PHRASES, otherTerms } from '../craft/terms.ts';
import type { StitchPhrase, Terms } from '../craft/terms.ts';
import { stitchRow } from '../craft/stitches.ts';
import type { StitchKind } from '../craft/stitches.ts';
import type { StitchCall } from './instruction.ts';
import type { OpenCall, RowReader } from './rowReader.ts';
import type { SpecialStitch } from './specialStitches.ts';

/** A stitch as written, before it is known where it goes. */
export interface ReadStitch {
  readonly call: OpenCall;
  /** Two stitches in one place: `inc`. */
  readonly increase: boolean;
  /** `dec` by itself: a number of stitches to go over may still widen it. */
  readonly decrease: boolean;
  /** `spike` was said: the number of rows below follows or is one. */
  readonly spike: boolean;
}

const INCREASE = new Set(['inc', 'incs', 'increase']);
const DECREASE = new Set(['dec', 'decs', 'decrease', 'invdec']);
/** Stitches that legs of a bobble and its like may be of. */
const LEGS = new Set<StitchKind>(['sc', 'hdc', 'dc', 'tr', 'dtr']);
const LOOP = new Set(['loop', 'loops', 'lp', 'lps']);
/** Words of UK print that name another stitch, or none, in US print. */
const NOT_IN_US = new Set(['trtr', 'tr tr', 'triple treble', 'treble treble', 'triple treble crochet']);

type ByFirst = ReadonlyMap<string, readonly StitchPhrase[]>;
const INDEX: Readonly<Record<Terms, ByFirst>> = { us: indexOf('us'), uk: indexOf('uk') };

function indexOf(terms: Terms): ByFirst {
  const map = new Map<string, StitchPhrase[]>();
  for (const phrase of STITCH_PHRASES[terms]) map.set(phrase.words[0]!, [...(map.get(phrase.words[0]!) ?? []), phrase]);
  return map;
}

/** A stitch word found `ahead` of the reader: its kind and how many tokens it takes. */
export interface StitchMatch {
  readonly kind: StitchKind;
  readonly length: number;
  readonly post: StitchCall['post'];
  readonly foreign: boolean;
}

/** Looks for the words of a stitch that the pattern explains. Moves nothing. */
export function matchSpecial(reader: RowReader): { readonly special: SpecialStitch; readonly length: number } | null {
  const { special = [] } = reader.options;
  if (special.length === 0 || reader.token().kind !== 'word') return null;
  let best: { readonly special: SpecialStitch; readonly length: number } | null = null;
  for (const one of special) {
    for (const words of one.phrases) {
      const { word } = reader.token();
      const first = word === words[0] || (words.length === 1 && (word === `${words[0]}s` || word === `${words[0]}es`));
      const length = first ? lengthOf(reader, 0, words) : 0;
      if (length > (best?.length ?? 0)) best = { special: one, length };
    }
  }
  return best;
}

/** Looks for a stitch word, singular or plural, with or without a post prefix (FPdc). Moves nothing. Many clauses ask at the same place: the answer is kept. */
export function matchStitch(reader: RowReader, ahead = 0): StitchMatch | null {
  const at = reader.at + ahead;
  const known = reader.stitches.get(at);
  if (known?.end === reader.end) return known.match;
  const match = findStitch(reader, ahead);
  reader.stitches.set(at, { end: reader.end, match });
  return match;
}

function findStitch(reader: RowReader, ahead: number): StitchMatch | null {
  const token = reader.token(ahead);
  if (token.kind !== 'word') return null;
  const { terms } = reader.options;
  const whole = matchIn(reader, ahead, token.word, terms) ?? matchPlural(reader, ahead, token.word, terms);
  if (whole) return { ...whole, post: 'none', foreign: false };
  if (/^[fb]p./.test(token.word)) {
    const rest = matchIn(reader, ahead, token.word.slice(2), terms) ?? matchPlural(reader, ahead, token.word.slice(2), terms);
    if (rest) return { ...rest, post: token.word[0] === 'f' ? 'front' : 'back', foreign: false };
  }
  const foreign = matchIn(reader, ahead, token.word, otherTerms(terms)) ?? matchPlural(reader, ahead, token.word, otherTerms(terms));
  return foreign && !(terms === 'us' && foreign.kind === 'dtr' && NOT_IN_US.has(foreign.words)) ? { ...foreign, post: 'none', foreign: true } : null;
}

type Found = { kind: StitchKind; length: number; words: string };

function matchIn(reader: RowReader, ahead: number, first: string, terms: Terms): Found | null {
  for (const { kind, words } of INDEX[terms].get(first) ?? []) {
    const length = lengthOf(reader, ahead, words);
    if (length > 0) return { kind, length, words: words.join(' ') };
  }
  return null;
}

/** Plurals of one-word stitches: scs, bobbles. (Longer words have their plural in the last word, see `lengthOf`.) */
function matchPlural(reader: RowReader, ahead: number, first: string, terms: Terms): Found | null {
  return first.length > 2 && first.endsWith('s') ? matchIn(reader, ahead, first.slice(0, -1), terms) : null;
}

/** Tokens taken by the words of a stitch, hyphens included; 0 if they don't stand there. The first word is known to fit. */
function lengthOf(reader: RowReader, ahead: number, words: readonly string[]): number {
  let next = ahead + 1;
  for (let index = 1; index < words.length; index++) {
    if (reader.is('-', next)) next++;
    const { word } = reader.token(next);
    const last = index === words.length - 1;
    if (word !== words[index] && !(last && (word === `${words[index]}s` || word === `${words[index]}es`))) return 0;
    next++;
  }
  return next - ahead;
}

/** Reads `BLO`, `FLO`, `[BLO]`, `back loops only`, `tbl`; null, with nothing moved, if no loop is named. */
export function readLoop(reader: RowReader): { readonly loop: 'front' | 'back'; readonly plural: boolean } | null {
  const start = reader.at;
  const bracket = reader.is('[') || reader.is('(') ? reader.token().close : -1;
  if (bracket >= 0 && bracket - reader.at <= 4) reader.at++;
  reader.takeArticles();
  let found: { loop: 'front' | 'back'; plural: boolean } | null = null;
  const { word } = reader.token();
  if (word === 'blo' || word === 'bl' || word === 'tbl') found = { loop: 'back', plural: false };
  else if (word === 'flo' || word === 'fl' || word === 'tfl') found = { loop: 'front', plural: false };
  if (found) reader.at++;
  else if ((word === 'back' || word === 'front') && reader.is(LOOP, 1)) {
    found = { loop: word, plural: reader.is('loops', 1) || reader.is('lps', 1) };
    reader.at += 2;
  }
  if (found) reader.take('only');
  if (found && bracket >= 0 && start !== reader.at && reader.tokens[start]!.close === bracket) {
    if (reader.at === bracket) reader.at++;
    else found = null;
  }
  if (!found) reader.at = start;
  return found;
}

/** Reads a stitch with its legs, its post and how many are drawn together. Null, with nothing moved, if none stands there. */
export function readStitch(reader: RowReader): ReadStitch | null {
  const start = reader.at;
  const loop = readLoop(reader);
  const own = matchSpecial(reader);
  if (own?.special.call) {
    reader.at += own.length;
    return { call: { ...own.special.call, ...(loop ? { loop: loop.loop } : {}) }, increase: false, decrease: false, spike: false };
  }
  const spike = reader.take('spike');
  let post: StitchCall['post'] = 'none';
  if (reader.takeAll('fp', '-') || reader.takeAll('front', '-', 'post') || reader.takeAll('front', 'post') || reader.take('fp')) post = 'front';
  else if (reader.takeAll('bp', '-') || reader.takeAll('back', '-', 'post') || reader.takeAll('back', 'post') || reader.take('bp')) post = 'back';
  const read = readLegged(reader) ?? readShaped(reader, spike);
  if (!read) {
    reader.at = start;
    return null;
  }
  if (loop) read.call.loop = loop.loop;
  else if (post === 'none' && read.call.post === 'none') read.call.loop = reader.loop;
  if (post !== 'none') read.call.post = post;
  return { ...read, spike };
}

function openCall(kind: StitchKind): OpenCall {
  return { kind, together: 1, legs: stitchRow(kind).legs, loop: 'both', post: 'none', spike: 0 };
}

/** `5-dc bobble`, `dc bobble`, `ch-3 picot`: `3-tr bobble` with legs of another stitch than the catalogue's. */
function readLegged(reader: RowReader): Omit<ReadStitch, 'spike'> | null {
  const start = reader.at;
  const numbered = reader.token().kind === 'number' ? reader.token().value : null;
  if (numbered !== null) {
    reader.at++;
    reader.take('-');
  }
  const leg = matchStitch(reader);
  if (leg) {
    reader.at += leg.length;
    let legs = numbered;
    if (leg.kind === 'ch' && legs === null) {
      const ahead = reader.is('-') ? 1 : 0;
      if (reader.token(ahead).kind === 'number') {
        legs = reader.token(ahead).value;
        reader.at += ahead + 1;
      }
    }
    reader.take('-');
    const whole = matchStitch(reader);
    const own = whole ? stitchRow(whole.kind).legKind : null;
    const legged = own !== null && (own === leg.kind || (own !== 'ch' && LEGS.has(leg.kind) && legs !== null));
    if (whole && legged && (legs === null || (legs > 0 && legs <= 255))) {
      reader.at += whole.length;
      if (leg.foreign) reader.foreign(start, leg.kind);
      const call = openCall(whole.kind);
      if (legs !== null) call.legs = legs;
      if (own !== leg.kind) call.legKind = leg.kind;
      return { call, increase: false, decrease: false };
    }
  }
  reader.at = start;
  return null;
}

/** A plain stitch, `sc2tog`, `inc`, `dec`, `sc inc`. */
function readShaped(reader: RowReader, spike: boolean): Omit<ReadStitch, 'spike'> | null {
  const start = reader.at;
  if (reader.is('invisible') || reader.is('inv')) reader.at++;
  const match = matchStitch(reader);
  if (!match) {
    const increase = reader.is(INCREASE);
    if (increase || reader.is(DECREASE)) {
      reader.at++;
      const call = openCall('sc');
      reader.settle(call);
      if (!increase) call.together = 2;
      return { call, increase, decrease: !increase };
    }
    if (spike && (reader.is('st') || reader.is('stitch') || reader.is('sts'))) {
      reader.at++;
      return { call: openCall('sc'), increase: false, decrease: false };
    }
    reader.at = start;
    return null;
  }
  reader.at += match.length;
  if (match.foreign) reader.foreign(start, match.kind);
  const call = openCall(match.kind);
  call.post = match.post;
  const plain = call.legs === 0 && call.kind !== 'ch';
  if (call.legs > 0) reader.attempt(() => readLegsAfter(reader, call));
  if (plain && call.kind !== 'slst') {
    const { kind, value } = reader.token();
    if (kind === 'number' && value >= 2 && value <= 255 && (reader.is('tog', 1) || reader.is('together', 1))) {
      call.together = value;
      reader.at += 2;
    } else {
      const ahead = reader.is('-') ? 1 : 0;
      if (reader.is(INCREASE, ahead)) {
        reader.at += ahead + 1;
        return { call, increase: true, decrease: false };
      }
      if (reader.is(DECREASE, ahead)) {
        reader.at += ahead + 1;
        call.together = 2;
        return { call, increase: false, decrease: true };
      }
    }
    reader.sawPlain(call.kind);
  }
  return { call, increase: false, decrease: false };
}

/** `bobble (5 dc) in next st`: the legs in brackets after the name. */
function readLegsAfter(reader: RowReader, call: OpenCall): true | null {
  const { close } = reader.token();
  if (!(reader.is('(') || reader.is('[')) || close < 0) return null;
  reader.at++;
  const { kind, value } = reader.token();
  const leg = kind === 'number' ? matchStitch(reader, 1) : null;
  const own = stitchRow(call.kind).legKind;
  if (!leg || leg.foreign || value < 1 || value > 30 || reader.at + 1 + leg.length !== close || own === null || (leg.kind !== own && (own === 'ch' || !LEGS.has(leg.kind)))) return null;
  reader.at = close + 1;
  call.legs = value;
  if (leg.kind !== own) call.legKind = leg.kind;
  return true;
}

/** Words that can begin another clause without a mark before it. */
const BEGINS = new Set([
  'turn', 'then', 'and', 'rep', 'repeat', 'leave', 'leaving', 'work', 'inc', 'dec', 'with', 'in', 'change', 'changing', 'join', 'place', 'pm', 'fasten', 'do', 'don\'t', 'skip', 'sk', 'miss',
  'spike', 'blo', 'flo', 'loosely', 'tightly', 'carefully', 'again', 'alternately', 'neatly', 'firmly', 'now', 'also', 'x', 'times', 'twice', 'once', 'more', 'between',
]);

/** Whether a word follows that belongs to what was just read but is not known: `12 crosses`, `6 sc spots`. */
export function strangerFollows(reader: RowReader): boolean {
  const { kind, word, capital } = reader.token();
  return kind === 'word' && !capital && !BEGINS.has(word) && matchStitch(reader) === null && !/^[fb]p/.test(word);
}
