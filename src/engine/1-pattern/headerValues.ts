import { STITCH_PHRASES } from '../craft/terms.ts';
import type { Terms } from '../craft/terms.ts';
import type { Gauge, PrintMark, Yarn } from './pattern.ts';

/** A header value read, with the words of it that were not used, so that they can be kept. */
export interface ReadValue<T> {
  readonly value: T;
  readonly rest: string;
}

const NUMBER = String.raw`(\d{1,4}(?:[.,]\d{1,3})?)[ ]?([½¼¾])?`;
const FRACTION: Readonly<Record<string, number>> = { '½': 0.5, '¼': 0.25, '¾': 0.75 };
const GAUGE = new RegExp(
  String.raw`${NUMBER}\s*([\p{L} ]*?)\s*(?:and|x|×|by|,|&|\+)\s*${NUMBER}\s*(?:rows?|rnds?|rounds?)\b\s*(?:=|to|over|per|in|measure|:|–|-)?\s*(?:a\s+)?${NUMBER}\s*(cm|mm|inch(?:es)?|in\b\.?|["”″])(?:\s*[x×]\s*\d+(?:[.,]\d+)?\s*(?:cm|mm|in(?:ch(?:es)?)?|["”″]))?(?:\s*sq(?:uare)?)?(?:\s*[(/][^)]*?(?:cm|in(?:ch(?:es)?)?|["”″])\)?)?(?:,?\s*(?:in|of|over|worked in)\s+([\p{L} ]+))?`,
  'iu',
);
const MM_PER: Readonly<Record<string, number>> = { c: 1, m: 0.1, i: 2.54, '"': 2.54, '”': 2.54, '″': 2.54 };

function numberOf(digits: string, fraction: string | undefined): number {
  return Number(digits.replace(',', '.')) + (fraction === undefined ? 0 : FRACTION[fraction]!);
}

/** The stitch that a gauge is counted in, from words such as `sc` or `half treble crochet`; null if they name none of the three. */
function gaugeStitch(words: string | undefined, terms: Terms): Gauge['stitch'] | null {
  const said = words?.trim().toLowerCase().replace(/-/g, ' ').replace(/s$/, '') ?? '';
  const kind = STITCH_PHRASES[terms].find((phrase) => phrase.words.join(' ') === said)?.kind;
  return kind === 'sc' || kind === 'hdc' || kind === 'dc' ? kind : null;
}

/** `16 sts and 18 rows = 10 cm in sc`, also in inches; widths in centimetres. Null if it does not say stitches, rows and a width above 0. */
export function readGauge(text: string, terms: Terms): ReadValue<Gauge> | null {
  const match = GAUGE.exec(text);
  if (!match) return null;
  const stitches = numberOf(match[1]!, match[2]);
  const rows = numberOf(match[4]!, match[5]);
  const overCm = Number((numberOf(match[6]!, match[7]) * MM_PER[match[8]![0]!.toLowerCase()]!).toFixed(4));
  if (!(stitches > 0) || !(rows > 0) || !(overCm > 0)) return null;
  const named = match[9] === undefined ? null : gaugeStitch(match[9], terms);
  const stitch = named ?? gaugeStitch(match[3], terms) ?? 'sc';
  const rest = text.slice(0, match.index) + (match[9] !== undefined && named === null ? ` in ${match[9]}` : '') + text.slice(match.index + match[0].length);
  return { value: { stitches, rows, overCm, stitch }, rest: tidy(rest) };
}

/** `4.5 mm`: the hook's thickness in millimetres, 0.4 to 60. Null if no millimetres are named. */
export function readHook(text: string): ReadValue<number> | null {
  const match = /(\d{1,2}(?:[.,]\d{1,3})?)\s*mm\b/i.exec(text);
  const mm = match ? Number(match[1]!.replace(',', '.')) : 0;
  if (!match || mm < 0.4 || mm > 60) return null;
  return { value: mm, rest: tidy(text.slice(0, match.index) + text.slice(match.index + match[0].length)) };
}

function tidy(rest: string): string {
  return rest.replace(/\(\s*\)/g, '').replace(/\s+/g, ' ').replace(/^[\s,.;]+|[\s,;.]+$/g, '');
}

/** Colours for yarns that the text gives none, in the order of letters: apart in hue and in lightness. */
const COLOURS = ['#4b5a6b', '#f2efe6', '#d9822b', '#3d7a63', '#a23b52', '#e3c65b', '#2e2f45', '#8fb3c9'];
const MARKS: readonly PrintMark[] = ['none', 'dot', 'slash', 'cross', 'bars', 'ring', 'solid', 'wedge'];

/** A yarn from its letter, the words after it (`slate #4b5a6b`) and its place in the pattern, which gives its print mark. */
export function readYarn(letter: string, text: string, index: number): Yarn {
  const colour = /#([0-9a-f]{6}|[0-9a-f]{3})\b/i.exec(text);
  const hex = colour?.[1]?.toLowerCase();
  const full = hex === undefined ? COLOURS[index % COLOURS.length]! : `#${hex.length === 3 ? [...hex].map((digit) => digit + digit).join('') : hex}`;
  const name = (colour ? text.slice(0, colour.index) + text.slice(colour.index + colour[0].length) : text).replace(/\s+/g, ' ').replace(/^[\s,;:=-]+|[\s,;.]+$/g, '');
  return { letter, name: name === '' ? `yarn ${letter}` : name, colour: full, mark: MARKS[index % MARKS.length]! };
}

/** `A slate #4b5a6b, B chalk`: several yarns on one line. Null unless every part begins with a letter of its own. */
export function readYarnList(text: string): readonly { readonly letter: string; readonly text: string }[] | null {
  const parts = text.split(/[,;]/).map((part) => /^\s*([A-Z])\b[\s:=-]*(.*)$/.exec(part));
  if (parts.some((part) => part === null)) return null;
  return parts.map((part) => ({ letter: part![1]!, text: part![2]! }));
}
