import type { Finding, Rule } from '../../notation/finding.ts';
import type { Pattern } from '../../1-pattern/pattern.ts';

type Say = (found: Finding) => string;

const many = (count: number | string | null | undefined, one: string, more = `${one}s`) => `${count ?? 'some'} ${String(count) === '1' ? one : more}`;
const termsOf = (terms: number | string | null) => String(terms).toUpperCase();
const sts = (count: number | string | null | undefined) => many(count, 'stitch', 'stitches');

/** In how many rows it is so, where there are several. */
const inRows = (f: Finding, so: string) => (Number(f.params['rows']) > 1 ? `; in ${f.params['rows']} rows ${so}` : '');

/** How often a counted repeat fits that runs past the row below. */
const timesThatFit = ({ params }: Finding) => `The repeat fits ${params['fit']} times in the place of ${params['times']}${params['over'] === 0 ? '' : `, with ${sts(params['over'])} over`}.`;

const LACKS: Readonly<Record<string, string>> = { protan: 'red (protan)', deutan: 'green (deutan)', tritan: 'blue (tritan)' };

/** Why corners are a question. */
const CORNER_DOUBTS: Readonly<Record<string, Say>> = {
  none: () => 'it has no chain space and no group of stitches in one place that could be one',
  spaces: () => 'the words ask for stitches, and its corners are chain spaces',
  stitches: () => 'the words ask for chain spaces, and its groups have none',
  several: (f) => `${f.found} places could be, and they are not all alike`,
  many: (f) => `${f.found} places could be, more than the corners of a figure`,
  even: () => 'its groups are of an even number of stitches, so that none is in the middle',
};

/** One sentence a rule: what was found and what was expected, in the words of the trade. The only place with such prose. */
const SENTENCES = {
  unread: (f) => `These words could not be read: “${f.found}”. They are kept; the rest of the row is worked.`,
  emptyText: () => 'There is no text here. A pattern begins with its title, then a section and its rows.',
  tooLong: (f) => `The text is ${f.found} characters long; at most ${f.expected} are read at once. Nothing was read; paste it section by section.`,
  sizesMismatch: (f) => `${f.found} numbers stand here, but the pattern has ${many(f.expected, 'size')}: give one number for all, or one for each.`,
  labelOrder: (f) => `This is labelled ${f.found}, after the rows before it ${f.expected} was expected.`,
  badHeader: (f) => `“${f.found}” can't be read; ${f.expected} was expected.`,
  otherTerms: (f) => `“${f.found}” is a word of the other terms; in these it is ${f.expected}.`,
  unknownYarn: (f) => `There is no yarn ${f.found}${f.expected ? `; the pattern has ${f.expected}` : ' in the pattern'}.`,
  textOutsideSection: (f) => `“${f.found}” stands before the first section; it is kept as a note.`,
  termsGuessed: (f) =>
    f.params['by'] === 'mixed' ? `Words of both US and UK terms stand here (${f.found}); it was read in ${termsOf(f.expected)} terms. Set the terms if they are the others.`
    : `The text doesn't say its terms; by its turning chains it was read in ${termsOf(f.expected)} terms.`,
  noRows: () => 'No rows were found: a row begins with a label such as “Row 1:” or “Rnd 1:”.',
  rowsAssumed: (f) => `${f.expected} cm ${f.params['whole'] === 1 ? 'of this part in all is taken for' : 'is taken for'} ${f.found} ${f.params['whole'] === 1 ? 'more ' : ''}${f.found === 1 ? 'row' : 'rows'}${f.params['gauge'] === '' ? ', by a middle gauge, as the pattern gives none' : `, by the gauge of ${f.params['gauge']}`}. Count your own.`,
  notEnoughPlaces: (f) => (f.params['what'] === 'picot' || f.params['what'] === 'corner' ? `The row below has ${many(f.found, String(f.params['what']))} here, ${f.expected} ${f.expected === 1 ? 'is' : 'are'} asked for.` : f.params['what'] === 'open' ? `No open stitch is left to work into: ${f.found} of ${f.expected} could be worked.` : `The row below has ${sts(f.found)} here, ${f.expected} ${f.expected === 1 ? 'is' : 'are'} asked for.${f.params['fit'] === undefined ? '' : ` ${timesThatFit(f)}`}`),
  repeatUneven: (f) => `The repeat doesn't come out even: it takes ${f.expected} at a time and ${sts(f.found)} ${f.found === 1 ? 'is' : 'are'} left over.${f.params['down'] === undefined ? '' : ` A row of ${f.params['down']} or ${f.params['up']} would divide.`}`,
  statedCount: (f) => `Says ${f.found}, makes ${f.expected}.`,
  leftCount: (f) => `Says to leave ${f.expected} unworked, ${f.found} ${f.found === 1 ? 'is' : 'are'} left.`,
  noBase: () => 'There is no stitch to work into here.',
  noSeam: () => 'There is no seam here: the piece is flat, or already closed.',
  noRing: () => 'There is no ring here to work into or to close.',
  noMarker: () => 'No marker was placed before this.',
  noSuchRow: (f) => `Row ${f.found} of this section, which is to be repeated, comes later or not at all.`,
  repeatEmpty: () => 'This repeat uses no stitch of the row below, so it would never end.',
  tooManyStitches: (f) => `${f.found} is more than a piece of crochet can have here (at most ${f.expected}); the row stops before it.`,
  lastNotNext: (f) => `The last stitch is not the next one: ${sts(f.found)} are still to come.`,
  leftUnsaid: (f) => `${sts(f.found)} of the ${f.params['word'] === 'round' ? 'round' : 'row'} below ${f.found === 1 ? 'is' : 'are'} left unworked, which the words don't say.${f.params['fit'] === undefined ? '' : ` ${f.params['fit']} times in the place of ${f.params['times']} would use them all.`}`,
  noPiece: () => 'Nothing is on the hook: a foundation chain, a ring or a join is needed first.',
  sideSaid: (f) => `Labelled ${f.found}, but after the turns before it the ${f.expected} faces.`,
  turningChains: (f) => `Rises to ${f.params['stitch']} with ch ${f.found}; ${many(f.params['rows'], 'row')} of this section ${f.params['rows'] === 1 ? 'does' : 'do'} it with ch ${f.expected}.`,
  abbreviationUnexplained: (f) => `The pattern's abbreviations leave out ${f.found} (${f.expected}).`,
  cornersUnsure: (f) => `Which places of the ${f.params['word'] === 'round' ? 'round' : 'row'} below are its corners is not certain: ${CORNER_DOUBTS[String(f.params['why'])]?.(f) ?? 'there are none'}. Name them, or say the stitches between. No corner was worked.`,
  evenlyUnsaid: (f) => `How many are worked evenly is not said; by the heights of the rows it would be ${f.found}. Give the number, or the row's count.`,
  neverUsed: (f) => `${sts(f.found)} of this row ${f.found === 1 ? 'is' : 'are'} still open at the end.`,
  heelOpen: (f) => `The heel isn't closed: ${sts(f.found)} left open ${f.found === 1 ? 'is' : 'are'} not worked yet (${f.params['ahead']} ahead, ${f.params['behind']} behind).`,
  heelOffCentre: (f) => `The heel is ${f.found} stitches off the seam: ${f.params['before']} before it, ${f.params['after']} after it.`,
  openSidesUnequal: (f) => `${f.params['first']} and ${f.params['second']} stitches are left open; the sides close evenly when they are equal or the side left first has one more.`,
  motifCut: (f) => `${f.params['motif']} is cut at the seam: ${f.params['repeats']} repeats leave ${sts(f.found)}; whole repeats fill ${f.params['down']} or ${f.params['up']}.`,
  motifRowsCut: (f) => `${f.params['motif']} is cut at the top: ${many(f.found, 'row')} of it ${f.found === 1 ? 'finds' : 'find'} no row to lie on.`,
  motifPastEdge: (f) => `${f.params['motif']} hangs ${sts(f.found)} over the edge.`,
  unknownMotif: (f) => `The motif ${f.found} that is placed here is not in the pattern.`,
  raisedFar: (f) => `${f.found} raised ${f.found === 1 ? 'stitch' : 'stitches'} of ${f.params['motif']} (${f.params['stitch']}) ${f.found === 1 ? 'lies' : 'lie'} on right side ${f.params['round'] === 1 ? 'rounds' : 'rows'}, where ${f.found === 1 ? 'it stands' : 'they stand'} out on the wrong side${f.params['round'] === 1 ? ': push them through, or set popcorns' : f.params['other'] === 0 ? '; a row higher or lower puts them right' : ''}.`,
  stitchesLeftOut: (f) => `${sts(f.found)} that ${f.params['motif']} sets ${f.found === 1 ? 'falls' : 'fall'} on decreases, post stitches or chains and ${f.found === 1 ? 'is' : 'are'} left out.`,
  carryLong: (f) => `${f.params['yarn']} is carried over ${sts(f.found)} (${f.params['cm']} cm), ${f.expected} ${f.expected === 1 ? 'is' : 'are'} the most${f.params['technique'] === 'stranded' ? ' for a float that is not caught' : ''}${inRows(f, 'it is too long')}.`,
  yarnsInRow: (f) => `${many(f.found, 'yarn')} in one row (${f.params['yarns']}); ${f.params['technique']} takes ${f.expected} at most${inRows(f, 'there are more')}.`,
  loneStitches: (f) => `${sts(f.found)} ${f.found === 1 ? 'stands' : 'stand'} alone, with none of ${f.found === 1 ? 'its' : 'their'} yarn around; ${f.found === 1 ? 'it is' : 'they are'} easily lost and cost${f.found === 1 ? 's' : ''} two changes each.`,
  jog: (f) => `In ${many(f.found, 'round')} the yarn changes where the round begins${f.params['spiral'] === 1 ? ', and in a spiral that shows as a step' : ', which shows as a small step at the join'}.`,
  changeInStripes: (f) => `This is to be worked in stripes, but ${many(f.found, 'row')} ${f.found === 1 ? 'changes' : 'change'} yarn inside.`,
  yarnAtOtherEnd: (f) => `${f.params['yarn']} hangs at the other end of the row when it is needed, ${many(f.found, 'time')}, and has to be joined anew; stripes of an even number of rows avoid that.`,
  intarsiaInRounds: (f) => `Intarsia in rounds leaves each yarn at the far end of its area: in ${many(f.found, 'round')} yarns have to travel back, up to ${sts(f.params['most'])}. Work flat, or carry the yarns.`,
  yarnsAlike: (f) => `${f.params['one']} and ${f.params['other']} are hard to tell apart: they differ by ${f.found} (CIEDE2000), ${f.expected} or more is wanted.`,
  yarnsAlikeSeen: (f) => `${f.params['one']} and ${f.params['other']} are hard to tell apart for eyes that lack ${LACKS[String(f.params['vision'])] ?? 'a colour'}: they differ by ${f.found} then (CIEDE2000), ${f.expected} or more is wanted.`,
  yarnsAlikeInTone: (f) => `${f.params['one']} and ${f.params['other']} are nearly the same in black and white: a contrast of ${f.found} to 1, ${f.expected} to 1 or more is wanted.`,
  marksAlike: (f) => `${f.params['one']} and ${f.params['other']} have print marks that can't be told apart (${f.found}).`,
  gaugeUnusual: (f) => `${f.found} ${f.params['stitch']} in 10 cm is outside the published range of yarn weight ${f.params['weight']} (${f.params['name']}): ${f.expected}${f.params['fits'] ? `; it is the range of ${f.params['fits']}` : ''}. The ranges are guidelines (${f.params['source']}).`,
  hookUnusual: (f) => `A hook of ${f.found} mm is outside the published range of yarn weight ${f.params['weight']} (${f.params['name']}): ${f.expected} mm. The ranges are guidelines (${f.params['source']}).`,
  swatchSmall: (f) => `The swatch ${f.params['swatch']} counts ${f.found} stitches and rows; ${f.expected} are more certain.`,
  swatchUnwashed: (f) => `The swatch ${f.params['swatch']} was counted before washing: the piece may change as it is washed.`,
  openingNarrow: (f) => `${f.params['size'] ? `Size ${f.params['size']}: the` : 'The'} narrowest row of the leg measures ${f.params['openingCm']} cm and reaches ${f.found} cm when stretched ${f.params['stretch']} times${f.params['guessed'] === 1 ? ' (a guess: stretch the swatch)' : ''}; heel and ankle need ${f.expected} cm${f.params['measured'] === 1 ? '' : ' (1.36 times the girth of the foot, mean of ANSUR II, 2012)'}.`,
  measureOff: (f) => `${f.params['size'] ? `Size ${f.params['size']}: the` : 'The'} ${f.params['measure']} is ${f.found} cm, ${f.expected} cm was wanted.`,
  pinUnusable: (f) => `${f.params['says']} can't be ${f.found}; ${f.expected} was expected. The reckoned number is used.`,
} satisfies Record<Rule, Say>;

/** A finding in a sentence, without its place (see `placeOfFinding`). */
export function describeFinding(found: Finding): string {
  const said = SENTENCES[found.rule](found);
  const { unsure } = found.params;
  if (unsure === undefined || found.rule === 'unread') return said;
  return `${said} ${unsure === 'here' ? 'Some of this row’s words were not read' : unsure === 'asked' ? 'The row was worked without its corners' : 'It stands on a row that is not certain'}, so it may be right.`;
}

/** Where a finding is, in words: "Heel, row 9". `number` is the row's number where known. */
export function placeOfFinding(found: Finding, pattern: Pattern, number: number | null): string {
  const section = pattern.sections.find((one) => one.id === found.where.section);
  if (!section) return pattern.title || 'The pattern';
  const line = section.lines.find((one) => one.id === found.where.line);
  if (!line) return section.name;
  if (line.kind !== 'row') return `${section.name}, “${line.text.slice(0, 40)}”`;
  if (line.label.word === 'foundation' || number === null) return `${section.name}, ${line.label.word === 'foundation' ? 'foundation' : 'set-up row'}`;
  return `${section.name}, ${line.label.word === 'round' ? 'round' : 'row'} ${number}`;
}
