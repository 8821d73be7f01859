import { readerFigure } from '../words/readerFigure.ts';
import type { Yarn } from '../../engine/1-pattern/pattern.ts';
import type { Carry, RowCarry, SectionCarry } from '../../engine/4-colour/carry.ts';

const count = (n: number, one: string, more = `${one}s`) => `${n} ${n === 1 ? one : more}`;

/** A length of stitches in cm, to a tenth. */
export function cmOf(stitches: number, widthMm: number): string {
  return readerFigure(Math.round(stitches * widthMm) / 10, 1);
}

const WHERE: Readonly<Record<Carry['kind'], string>> = { inRow: '', overEnd: ', over the end of the round', fromBelow: ', from the row below' };

/** The longest carry of a row: "B over 7, 3.9 cm"; empty where nothing is carried. */
export function carryWords(longest: Carry | null, yarns: readonly Yarn[], widthMm: number): string {
  if (!longest) return '';
  return `${yarns[longest.yarn]?.letter ?? '?'} over ${longest.stitches}, ${cmOf(longest.stitches, widthMm)} cm${WHERE[longest.kind]}`;
}

/** Where the yarns come from that a row takes up: "C up 3 rows; A over 12 sts, cut and joined anew". */
export function travelWords({ travels }: Pick<RowCarry, 'travels'>, yarns: readonly Yarn[]): string {
  return travels
    .map(({ yarn, stitches, rows, isAgainst, isCut }) => {
      const way = [...(rows > 0 ? [`up ${count(rows, 'row')}`] : []), ...(stitches > 0 ? [`over ${count(stitches, 'stitch', 'stitches')}`] : [])].join(' and ');
      return `${yarns[yarn]?.letter ?? '?'} ${way}${isCut ? ', cut and joined anew' : isAgainst ? ', against the row' : ''}`;
    })
    .join('; ');
}

/** What the yarns do in a section, in one sentence or two. */
export function sectionCarryWords(section: SectionCarry, yarns: readonly Yarn[], widthMm: number): string {
  const used = yarns.filter((_, i) => section.rows.some((row) => row.yarns.includes(i))).map((yarn) => yarn.letter);
  if (used.length === 0) return 'No stitches are worked here.';
  const parts = [`${used.length === 1 ? `Yarn ${used[0]}` : `Yarns ${used.slice(0, -1).join(', ')} and ${used.at(-1)}`}, at most ${section.mostYarns} in a row`, count(section.changes, 'change'), `${count(section.ends, 'end')} to weave in`];
  const { longest } = section;
  const long = longest ? ` The longest carry is ${yarns[longest.yarn]?.letter ?? '?'} over ${count(longest.stitches, 'stitch', 'stitches')}, ${cmOf(longest.stitches, widthMm)} cm.` : ' Nothing is carried.';
  const bobbins = section.technique === 'intarsia' ? ` ${count(section.mostSupplies, 'bobbin')} hang at the same time.` : '';
  return `${parts.join('; ')}.${long}${bobbins}`;
}
