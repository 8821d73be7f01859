import { stitchWord, TERM_WORDS } from '../craft/terms.ts';
import { mapAmount } from './amounts.ts';
import { changeAmounts } from './changeAmounts.ts';
import type { Instruction, Stated } from './instruction.ts';
import { listOfNames } from './sizeParts.ts';
import { isOne, writeAmount, writeOrdinal } from './writeAmount.ts';
import { writeNoun } from './writeStitch.ts';
import { statedWords, writeStated } from './writeStated.ts';
import { withEachCorner } from './writeCorners.ts';
import { writeAsRows, writeInPattern, writeEvenly, writeSpread } from './writeRepeated.ts';
import { writeExtent, writePlace, writeWork } from './writeWork.ts';
import type { WriteOptions } from './writeWork.ts';

/** Where clauses stand, as far as it changes how they are written. */
interface Inside {
  /** Right inside a star repeat: a star there would close it. */
  readonly star: boolean;
  /** Right inside parentheses, so that a group takes brackets. */
  readonly paren: boolean;
}

/** Clauses after which a dash ends what they say: words that are kept as they are would take it in. */
const DASHED = new Set<Instruction['kind']>(['work', 'group', 'repeat', 'leave', 'spread', 'evenly', 'inPattern', 'mesh']);

const TOP: Inside = { star: false, paren: false };

/**
 * A row as text: clauses with commas, what is left unworked as a sentence of its own, the count in parentheses at the end.
 * Reading it back in the same terms and with the same sizes gives the same instructions, ranges aside. (Stars inside
 * stars can't be said and are written as parentheses.) Empty for a row without instructions and count.
 */
export function writeRow(body: readonly Instruction[], stated: Stated | null, options: WriteOptions): string {
  const words = writeBody(body, options, TOP);
  const count = stated ? writeStated(stated, options) : '';
  if (words === '') return count;
  if (stated && options.style?.count === 'dash' && !stated.list && DASHED.has(body.at(-1)!.kind)) return `${words} — ${statedWords(stated, options)}.`;
  return count === '' ? `${words}.` : `${words}. ${count}`;
}

/** Clauses joined as print joins them. */
export function writeBody(clauses: readonly Instruction[], options: WriteOptions, inside: Inside): string {
  const body = withEachCorner(clauses);
  // Runs of several yarns stand closer than the clauses of a row in one.
  const oneYarn = inside === TOP && !options.runs && body.filter(({ kind }) => kind === 'yarn').length === 1;
  let named = inside !== TOP;
  let text = '';
  body.forEach((node, index) => {
    const before = body[index - 1];
    const further = before ? writeFurther(node, before, options) : null;
    const short = options.runs && node.kind === 'yarn' && node.word === 'with' && named && body[index + 1]?.kind === 'work';
    named ||= namesYarn(node);
    const clause = further ?? (short ? node.letter : writeClause(node, options, inside));
    if (index === 0) text = clause;
    else if (further !== null) text += ` and ${further}`;
    else if (before?.kind === 'yarn' && before.word === 'with' && node.kind === 'work' && !oneYarn) text += ` ${clause}`;
    else if (node.kind === 'remark' && before?.kind !== 'unread') text += ` ${clause}`;
    else if (before?.kind === 'forSizes' && node.kind !== 'forSizes') text += `. All sizes: ${clause}`;
    else if (inside === TOP && (startsSentence(node) || (before && startsSentence(before)))) text += `. ${node.kind === 'unread' ? clause : sentence(clause)}`;
    else text += `, ${clause}`;
  });
  return text;
}

/** `sizes S and L: sc in next 5 (7) sts`: one number for each of the sizes named. */
function writeForSizes({ sizes, body }: Extract<Instruction, { kind: 'forSizes' }>, options: WriteOptions): string {
  const names = sizes.map((at) => options.sizeNames?.[at] ?? String(at + 1));
  const own = changeAmounts(body, (amount) => (typeof amount === 'number' ? amount : sizes.length === 1 ? amount[sizes[0]!]! : sizes.map((at) => amount[at]!)));
  return `${sizes.length === 1 ? 'size' : 'sizes'} ${listOfNames(names)}: ${writeBody(own, options, TOP)}`;
}

/** Clauses that stand as sentences of their own. */
function startsSentence(node: Instruction): boolean {
  return node.kind === 'leave' || node.kind === 'forSizes';
}

function namesYarn(node: Instruction): boolean {
  return node.kind === 'yarn' || (node.kind === 'repeat' && node.body.some(namesYarn));
}

function sentence(clause: string): string {
  return clause.charAt(0).toUpperCase() + clause.slice(1);
}

/** `and in each ch across`, after the first stitch into the chain. */
function writeFurther(node: Instruction, before: Instruction, options: WriteOptions): string | null {
  if (node.kind !== 'work' || before.kind !== 'work' || before.into.at !== 'fromHook') return null;
  if (options.style?.runs === 'short' && node.into.at === 'next' && node.into.what === 'st') return null;
  if (node.into.at !== 'across' && node.into.at !== 'next') return null;
  if (node.each !== 1 || before.each !== 1 || node.stitch.together > 1 || JSON.stringify(node.stitch) !== JSON.stringify(before.stitch)) return null;
  if (node.stitch.spike > 0 || node.stitch.post !== 'none' || node.stitch.loop !== 'both') return null;
  return writePlace(node.into, false, 'in', options);
}

function writeClause(node: Instruction, options: WriteOptions, inside: Inside): string {
  const { terms, size } = options;
  const skip = TERM_WORDS[terms].skip;
  switch (node.kind) {
    case 'work':
      return writeWork(node, options);
    case 'group': {
      const [open, close] = inside.paren ? ['[', ']'] : ['(', ')'];
      const body = node.body.map((part) => writeInGroup(part, options)).join(', ');
      return `${open}${body}${close} ${writePlace(node.into, false, 'in', options)}`;
    }
    case 'chain':
      return `ch ${writeAmount(node.count, size)}${COUNTING[node.counts ?? 'unsaid']}`;
    case 'skip': {
      const one = isOne(node.count, size);
      return `${skip} next ${one ? '' : `${writeAmount(node.count, size)} `}${writeNoun(node.what, !one, terms)}`;
    }
    case 'skipSeam':
      return `${skip} the seam`;
    case 'turn':
      return 'turn';
    case 'leave':
      return node.count === 'rest' ? 'leave the rest unworked' : `leave ${writeAmount(node.count, size)} ${writeNoun(node.what ?? 'st', !isOne(node.count, size), terms)} unworked`;
    case 'mesh':
      return `${writeAmount(node.count, size)} ${node.mesh} ${isOne(node.count, size) ? 'mesh' : 'meshes'}`;
    case 'repeat':
      return writeRepeat(node, options, inside);
    case 'ring':
      return 'magic ring';
    case 'joinRing':
      return 'join to form a ring';
    case 'join':
      return 'join with sl st in first st';
    case 'noJoin':
      return 'do not join';
    case 'joinAt': {
      const from = { start: '', beforeSeam: ' before the seam', afterSeam: ' after the seam', opening: ' of the opening' }[node.from];
      return `join ${node.yarn ?? 'yarn'} with a sl st in the ${writeOrdinal(node.nth, size)} st${from}`;
    }
    case 'yarn':
      return node.word === 'with' ? `with ${node.letter}` : `change to ${node.letter}`;
    case 'marker':
      return 'place marker';
    case 'otherSide':
      return 'working along the other side of the chain';
    case 'seam':
      if (node.closes) return node.closes.by === 'slst' ? `${stitchWord('slst', terms)} the ${node.closes.name} closed` : `sew the ${node.closes.name} closed`;
      return 'seam the side edges';
    case 'fastenOff':
      return 'fasten off';
    case 'forSizes':
      return writeForSizes(node, options);
    case 'drawThrough':
      return 'draw the yarn through the remaining sts and pull tight';
    case 'asRows':
      return writeAsRows(node, options);
    case 'inPattern':
      return writeInPattern(node, options);
    case 'spread':
      return writeSpread(node, options);
    case 'evenly':
      return writeEvenly(node, options);
    case 'remark':
      return `(${node.text})`;
    case 'unread':
      return node.text;
  }
}

const COUNTING = { stitch: ' (counts as a st)', no: ' (does not count)', each: ' (each counts as a st)', unsaid: '' } as const;

/** In a group the place is said once, after it: `(2 dc, ch 2, 2 dc) in next st`. */
function writeInGroup(node: Instruction, options: WriteOptions): string {
  if (node.kind !== 'work' || node.into.at !== 'same' || node.stitch.together > 1 || node.stitch.spike > 0) return writeClause(node, options, { star: true, paren: true });
  const each = isOne(node.each, options.size) ? '' : `${writeAmount(node.each, options.size)} `;
  return each + writeWork({ ...node, each: 1 }, options).replace(/ (in|around) same st$/, '');
}

function writeRepeat(node: Extract<Instruction, { kind: 'repeat' }>, options: WriteOptions, inside: Inside): string {
  const asked = options.style?.repeats === 'bracket' && node.style === 'star' ? 'bracket' : node.style;
  const style = asked === 'star' && inside.star ? 'paren' : asked;
  const { times } = node;
  const { size } = options;
  const body = writeBody(node.body, options, { star: style === 'star', paren: style === 'paren' || (inside.paren && style === 'star') });
  if (style === 'star') {
    if (times.kind === 'toEnd') return `*${body}; rep from * ${writeExtent(times, size)}`;
    const counts = typeof times.times === 'number' ? [times.times] : times.times;
    if (counts.every((count) => count >= 2)) return `*${body}; rep from * ${writeAmount(mapAmount(times.times, (count) => count - 1), size)} more ${isOne(mapAmount(times.times, (count) => count - 1), size) ? 'time' : 'times'}`;
    return `*${body}* ${writeAmount(times.times, size)} times`;
  }
  const [open, close] = style === 'paren' ? ['(', ')'] : ['[', ']'];
  return `${open}${body}${close} ${times.kind === 'toEnd' ? writeExtent(times, size) : `${writeAmount(times.times, size)} times`}`;
}
