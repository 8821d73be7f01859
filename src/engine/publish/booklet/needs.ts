import { stitchWord, TERM_WORDS } from '../../craft/terms.ts';
import { sizeReport } from '../../readings/sizes/sizeReport.ts';
import type { WordsDocument } from '../../readings/words/wordsDocument.ts';
import { documentParts } from '../../readings/words/documentParts.ts';
import { yarnNeed, type YarnTotal } from '../../readings/yarn/yarnNeed.ts';
import { block, inCell, type Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { lengthWords } from '../../6-drawing/schematic/lengthWords.ts';
import type { PublishChoices } from '../publishChoices.ts';
import { printable } from '../type/printable.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import { besideHeading, gapMm, labelled, paragraph, table, type Cell } from './setBlocks.ts';
import { setText, sideBySide } from '../page/setText.ts';
import { yarnSwatch } from './yarnSwatch.ts';

const MEASURE_WORDS: Readonly<Record<string, string>> = {
  footLength: 'Foot, length', footGirth: 'Foot, around', heelDiagonal: 'Heel, around', ankle: 'Ankle, around', opening: 'Ankle, around', calf: 'Top of leg, around', legLength: 'Leg, length',
  width: 'Width', topWidth: 'Width at the far edge', height: 'Height', girth: 'Around', endGirth: 'Around the far end', across: 'Across', length: 'Length',
};

/** Sizes with what they measure when finished, a row a measurement. */
export function sizesPart({ pattern, sizes }: WorkedPattern, choices: PublishChoices, format: Format): readonly Block[] {
  const reports = sizes.map(({ fabric, colours, size }) => sizeReport(pattern, fabric, colours, size, { swatches: pattern.piece?.swatches ?? [], measures: pattern.piece?.measures ?? [] }));
  const first = reports[0]!.finished.filter(({ piece }) => piece === 0);
  if (first.length === 0) return [];
  const measured = first.map(({ name }, i) => ({ name, cm: reports.map((report) => report.finished.filter(({ piece }) => piece === 0)[i]?.cm ?? null) }));
  const cell = (text: string, face: 'strong' | 'text', end = false): Cell => ({ runs: [{ text, face }], end });
  const head = [cell('Finished', 'strong'), ...sizes.map(({ name }) => cell(printable(name) || 'One size', 'strong', true))];
  const rows = measured.map(({ name, cm }) => [cell(MEASURE_WORDS[name] ?? name, 'text'), ...cm.map((one) => cell(one === null ? '–' : lengthWords(one, choices.lengths), 'text', true))]);
  return besideHeading('Sizes', wideTable([head, ...rows], format), format);
}

/** A table of sizes: names in the first column, the others alike; parted below one another where the sizes are too many for the width. */
function wideTable(rows: readonly (readonly Cell[])[], format: Format): readonly Block[] {
  const { widthMm, labelMm, measure, bodyPt } = format;
  const sizes = rows[0]!.length - 1;
  const wide = Math.max(...rows.flatMap((row) => row.slice(1).map(({ runs: [run] }) => measure(run!.text, run!.face, bodyPt)))) + 4.5;
  const x = labelMm;
  const first = Math.min(Math.max(...rows.map(([name]) => measure(name!.runs[0]!.text, 'text', bodyPt))) + 3.5, (widthMm - x) * 0.5);
  const column = Math.min(wide, widthMm - x - first);
  const many = Math.max(1, Math.floor((widthMm - x - first) / column));
  const parts = Array.from({ length: Math.ceil(sizes / many) }, (_, part) => rows.map(([name, ...rest]) => [name!, ...rest.slice(part * many, (part + 1) * many)]));
  return parts.flatMap((part) => table(part, [first, ...part[0]!.slice(1).map(() => column)], x, format));
}

/** Yarns with what each size needs of them, hook, and what else the pattern's own header names. */
export function materialsPart({ pattern, sizes }: WorkedPattern, document: WordsDocument, choices: PublishChoices, format: Format): readonly Block[] {
  const needs = sizes.map(({ fabric, colours }) => yarnNeed(pattern, fabric, colours));
  const margin = needs[0]!.marginPercent;
  const used = pattern.yarns.flatMap((yarn, i) => (needs.some(({ yarns }) => yarns[i]!.metres.estimate > 0) ? [{ yarn, i }] : []));
  const blocks = used.map(({ yarn, i }) => {
    const totals = needs.map(({ yarns }) => yarns[i]!);
    const text = `${yarn.letter}  ${printable(yarn.name)}: `;
    return yarnSwatch(yarn, labelled('', [{ text, face: 'bold' }, { text: needWords(totals, choices), face: 'text' }], format), choices.mono, format);
  });
  const guessed = needs.some(({ yarns }) => yarns.some((yarn) => yarn.guessed && yarn.metres.estimate > 0));
  const note = `Amounts are estimates${sizes.length > 1 ? `, in the order of the sizes ${sizeNames(sizes.map(({ name }) => printable(name)))}` : ''}${totalsHaveBalls(needs.flatMap(({ yarns }) => yarns)) ? `; whole balls are for ${margin} % more` : ''}.${guessed ? ' No swatch was weighed: they rest on usual figures for the stitch.' : ''}`;
  const others = documentParts(document).filter(({ name }) => name === 'Materials').flatMap(({ entries }) => entries).filter(({ word }) => !/^(yarn [A-Z]|hook)$/i.test(word));
  return besideHeading('Materials', [
    ...blocks, paragraph(note, format, 'italic', { sizePt: format.smallPt, soft: true }),
    ...(pattern.hookMm === null ? [] : [labelled('Hook', [{ text: `${pattern.hookMm} mm, or the size that gives the ${TERM_WORDS[choices.terms].gauge.toLowerCase()}`, face: 'text' }], format)]),
    ...others.map(({ word, value }) => labelled(word, [{ text: printable(value), face: 'text' }], format)),
  ], format);
}

function sizeNames([first, ...others]: readonly string[]): string {
  return `${first!} (${others.join(', ')})`;
}

function totalsHaveBalls(totals: readonly YarnTotal[]): boolean {
  return totals.some(({ balls }) => balls !== null && balls > 0);
}

/** `185 (210, 240) m, 74 (84, 96) g, 2 (3, 3) balls`: metres to the next 5, grams to the next whole one; yards where inches are wanted. */
function needWords(totals: readonly YarnTotal[], { lengths }: PublishChoices): string {
  const vector = (values: readonly number[]): string => (values.every((one) => one === values[0]) ? String(values[0]) : sizeNames(values.map(String)));
  const rounded = (metres: number, step: number): number => Math.ceil(metres / step - 1e-9) * step;
  const step = (value: number): number => (value < 20 ? 1 : 5);
  const metres = totals.map(({ metres: { estimate } }) => rounded(estimate, step(estimate)));
  const yards = totals.map(({ metres: { estimate } }) => rounded(estimate / 0.9144, step(estimate)));
  const long = [lengths === 'in' ? '' : `${vector(metres)} m`, lengths === 'cm' ? '' : `${vector(yards)} yd`].filter((part) => part !== '').join(' / ');
  const grams = totals.every((total) => total.grams !== null) ? `, ${vector(totals.map(({ grams }) => Math.ceil(grams!.estimate - 1e-9)))} g` : '';
  const balls = totals.map((total) => total.balls);
  const whole = balls.every((one) => one !== null) ? `, ${vector(balls.map((one) => one!))} ${balls.every((one) => one === 1) ? 'ball' : 'balls'}` : '';
  return `${long}${grams}${whole}`;
}

/** What the gauge is, over how many cm. */
export function gaugePart({ pattern }: WorkedPattern, { terms, lengths }: PublishChoices, format: Format): readonly Block[] {
  const { gauge } = pattern;
  const word = TERM_WORDS[terms].gauge;
  return besideHeading(word, [paragraph(`${gauge.stitches} sts and ${gauge.rows} rows over ${lengthWords(gauge.overCm, lengths)} in ${stitchWord(gauge.stitch, terms)}. Make a swatch and wash it as the piece will be washed; if it comes out otherwise, change the hook.`, format)], format);
}

/** Terms, abbreviations that the rows use, special stitches and the designer's notes. */
export function wordsParts(document: WordsDocument, format: Format): readonly Block[] {
  const parts = documentParts(document).filter(({ name }) => name === 'Abbreviations' || name === 'Special stitches' || name === 'Notes');
  return parts.flatMap(({ name, entries }) => {
    const shown = entries.filter(({ word }) => !/^(designer|level|caution)$/i.test(word) || name !== 'Notes').filter(({ word }) => !/^(terms)$/i.test(word));
    if (name === 'Abbreviations') return besideHeading(name, [paragraph(`In ${document.terms.toUpperCase()} terms.`, format, 'italic'), ...inColumns(shown, format)], format);
    return shown.length === 0 ? [] : besideHeading(name, shown.map(({ word, value }) => labelled(format.labelMm === 0 ? word : '', [...(format.labelMm === 0 || word === '' ? [] : [{ text: `${printable(word)}: `, face: 'bold' as const }]), { text: printable(value), face: 'text' }], format)), format);
  });
}

/** Short words with what they mean, in two columns read downwards (one in large print). */
function inColumns(entries: readonly { readonly word: string; readonly value: string }[], format: Format): readonly Block[] {
  const { labelMm, widthMm, measure, bodyPt, large } = format;
  const columns = large ? 1 : 2;
  const wide = (widthMm - labelMm) / columns;
  const short = Math.min(wide * 0.4, Math.max(0, ...entries.map(({ word }) => measure(printable(word), 'bold', bodyPt))) + 4);
  const rows = Math.ceil(entries.length / columns);
  return Array.from({ length: rows }, (_, row) => {
    const strips = Array.from({ length: columns }, (_, column) => entries[column * rows + row]).flatMap((entry, column) => {
      if (!entry) return [];
      const x = labelMm + column * wide;
      const nth = column * rows + row;
      return [
        inCell(setText({ runs: [{ text: printable(entry.word), face: 'bold' }], sizePt: bodyPt, xMm: x, widthMm: short - 2 }, measure), { row: nth, column: 0, headOf: 'row' }),
        inCell(setText({ runs: [{ text: printable(entry.value), face: 'text' }], sizePt: bodyPt, xMm: x + short, widthMm: wide - short - 4 }, measure), { row: nth, column: 1, headOf: null }),
      ];
    });
    return block(strips.reduce((all, one) => sideBySide(all, one), []), row === 0 ? gapMm(format) : 0);
  });
}
