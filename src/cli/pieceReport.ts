import { check, colour, gaugeOf, makePiece, motifMultiple, settingsOf, construct, describeFinding, sizeChecks, sizeReport, work, yarnBySection, yarnNeed, cautionsFor, CAUTION_GUIDANCE, featuresOf, lengthWords, type Finding, type MotifMultipleCost, type Origin, type Pattern, type YarnAmount } from '../engine/index.ts';
import type { Loaded } from './loadFile.ts';

/** What `piece --json` prints: cm, metres and grams unrounded. */
export interface PieceReport {
  readonly title: string;
  readonly sizes: readonly string[];
  readonly size: string;
  readonly sections: readonly { readonly name: string; readonly kind: string; readonly rows: number; readonly stitches: { readonly first: number; readonly last: number; readonly most: number }; readonly widthCm: number; readonly heightCm: number; /** What the measurements ask for, fractions kept, and made less asked for; null where nothing asks. */ readonly wanted: { readonly stitches: number | null; readonly rows: number | null; readonly widthCm: number | null; readonly heightCm: number | null } | null }[];
  readonly finished: readonly { readonly measure: string; readonly piece: number; readonly section: string; readonly cm: number; readonly count: number; readonly unit: 'sts' | 'rows'; readonly wantedCm: number | null; readonly differenceCm: number | null }[];
  readonly motifs: readonly { readonly motif: string; readonly stitches: number; readonly over: number; readonly down: number; readonly up: number; readonly downCm: number; readonly upCm: number }[];
  /** The multiple that a motif is heeded with, and what the counts beside it cost; null where none is. */
  readonly multiple: MotifMultipleCost | null;
  readonly yarn: readonly { readonly letter: string; readonly name: string; readonly metres: YarnAmount; readonly grams: YarnAmount | null; readonly balls: number | null; readonly cost: number | null; readonly guessed: boolean; readonly source: string }[];
  /** Metres by section and yarn, by what they go into; the sums of each yarn are its estimate. */
  readonly yarnBySection: readonly { readonly section: string; readonly letter: string; readonly stitches: number; readonly carried: number; readonly ends: number; readonly seams: number; readonly fringe: number; readonly metres: number }[];
  readonly cost: number | null;
  readonly currency: string;
  readonly cautions: readonly { readonly says: string; readonly source: string }[];
  readonly findings: readonly { readonly degree: Finding['degree']; readonly rule: string; readonly message: string }[];
}

/** Works a pattern in one size and says what it measures and what yarn it needs; what the sizes raise stands in the findings. */
export function pieceReport({ pattern }: Loaded, size: number): PieceReport {
  const fabric = work(construct(pattern, size));
  const colours = colour(pattern, fabric, size);
  const facts = pattern.piece ?? {};
  const [measures, swatches] = [facts.measures ?? [], facts.swatches ?? []];
  const numbers = numbersOf(pattern, size);
  const report = sizeReport(pattern, fabric, colours, size, { measures, swatches, ...(numbers ? { numbers } : {}) });
  const need = yarnNeed(pattern, fabric, colours, facts);
  const found = [...check(pattern, fabric, colours).filter(({ degree }) => degree === 'wrong'), ...sizeChecks(pattern, [report], measures, swatches)];
  return {
    title: pattern.title, sizes: pattern.sizes.filter((name) => name !== ''), size: pattern.sizes[size]!,
    sections: report.sections.map(({ name, kind, rows, stitches, widthCm, heightCm, wanted }) => ({
      name, kind, rows, stitches, widthCm, heightCm, wanted: wanted && { stitches: wanted.stitches, rows: wanted.rows, widthCm: wanted.widthCm, heightCm: wanted.heightCm },
    })),
    finished: report.finished.map(({ name, piece, section, cm, count, unit, wanted, differenceCm }) => ({ measure: name, piece, section, cm, count, unit, wantedCm: wanted?.value ?? null, differenceCm })),
    motifs: report.motifs.map(({ motif, stitches, over, down, up, downCm, upCm }) => ({ motif, stitches, over, down, up, downCm, upCm })),
    multiple: numbers && motifMultiple(numbers, gaugeOf(pattern.gauge, swatches, 'sc', 'plain').stitchesPerCm),
    yarn: need.yarns.map(({ letter, name, metres, grams, balls, cost, guessed, source }) => ({ letter, name, metres, grams, balls, cost, guessed, source })),
    yarnBySection: yarnBySection(need).map(({ section, yarn, cm, sumCm }) => ({
      section: pattern.sections[section]!.name, letter: pattern.yarns[yarn]!.letter,
      stitches: cm.stitches / 100, carried: cm.carried / 100, ends: cm.ends / 100, seams: cm.seams / 100, fringe: cm.fringe / 100, metres: sumCm / 100,
    })),
    cost: need.cost, currency: need.currency,
    cautions: cautionsFor(facts.wearer ?? null, featuresOf(pattern, fabric)).map(({ says, source }) => ({ says, source })),
    findings: found.map((one) => ({ degree: one.degree, rule: one.rule, message: describeFinding(one) })),
  };
}

/** The numbers that a recipe's piece is made by in one size; null for other patterns, and where measurements are missing. */
function numbersOf(pattern: Pattern, size: number): ReadonlyMap<string, Origin> | null {
  const settings = settingsOf(pattern);
  if (!settings) return null;
  const { measures = [], pins = {}, swatches = [] } = pattern.piece ?? {};
  try {
    return makePiece({ settings, gauge: pattern.gauge, swatches, sizes: pattern.sizes, measures, pins }, pattern.terms).numbers[size] ?? null;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

const MEASURES: Readonly<Record<string, string>> = {
  footGirth: 'round the foot', calf: 'round the top', opening: 'narrowest opening', legLength: 'leg', footLength: 'foot', topWidth: 'width of the far edge', endGirth: 'round the far end', girth: 'round', across: 'across',
};

const NEAR: Readonly<Record<string, string>> = { topWidth: 'width', endGirth: 'girth', opening: 'footGirth', calf: 'footGirth' };

/** The same for reading. */
export function pieceToText(report: PieceReport): string {
  const lines = [report.size ? `${report.title}, size ${report.size}` : report.title, '', 'FINISHED'];
  const pieces = new Set(report.finished.map(({ piece }) => piece)).size;
  for (const { measure, piece, cm, count, unit, wantedCm, differenceCm } of report.finished) {
    // A far edge like the near one goes without saying.
    const near = NEAR[measure];
    if (near && wantedCm === null && report.finished.some((one) => one.piece === piece && one.measure === near && Math.abs(one.cm - cm) < 0.05)) continue;
    const name = `${MEASURES[measure] ?? measure}${pieces > 1 && piece > 0 ? ` (piece ${piece + 1})` : ''}`;
    const asked = wantedCm === null || differenceCm === null ? '' : `  wanted ${lengthWords(wantedCm)}, ${differenceCm >= 0 ? '+' : '−'}${Math.abs(differenceCm).toFixed(1)} cm`;
    const counted = Number(count.toFixed(1));
    lines.push(`  ${name.padEnd(26)} ${lengthWords(cm).padEnd(20)} ${`${counted} ${counted === 1 ? unit.slice(0, -1) : unit}`.padEnd(10)}${asked}`.trimEnd());
  }
  lines.push('', 'SECTIONS');
  for (const { name, kind, rows, stitches, widthCm, heightCm, wanted } of report.sections) {
    const counts = stitches.first === stitches.last && stitches.most === stitches.first ? `${stitches.first}` : `${stitches.first} to ${stitches.last}${stitches.most > Math.max(stitches.first, stitches.last) ? `, most ${stitches.most}` : ''}`;
    lines.push(`  ${name.padEnd(16)} ${kind.padEnd(7)} ${String(rows).padStart(4)} ${rows === 1 ? 'row ' : 'rows'}  ${counts.padEnd(18)} ${widthCm.toFixed(1)} × ${heightCm.toFixed(1)} cm${off(wanted)}`);
  }
  for (const { motif, stitches, over, down, up, downCm, upCm } of report.motifs) {
    if (over > 0) lines.push(`  ${motif} on ${stitches} stitches leaves ${over}; ${down} (${downCm.toFixed(1)} cm) or ${up} (+${upCm.toFixed(1)} cm) would fill.`);
  }
  if (report.multiple) {
    const { every, plus, stitches, without, down, downCm, up, upCm } = report.multiple;
    lines.push(`  A multiple of ${every}${plus > 0 ? ` and ${plus}` : ''}: ${stitches} stitches (${without} without a motif); ${down === null || downCm === null ? '' : `${down} (${downCm.toFixed(1)} cm) or `}${up} (${upCm >= 0 ? '+' : ''}${upCm.toFixed(1)} cm) fit.`);
  }
  lines.push('', 'YARN');
  for (const { letter, name, metres, grams, balls, cost, guessed } of report.yarn) {
    const ball = balls === null ? '' : `, ${balls} ${balls === 1 ? 'ball' : 'balls'}${cost === null ? '' : ` (${cost.toFixed(2)}${report.currency ? ` ${report.currency}` : ''})`}`;
    lines.push(`  ${letter} ${name.padEnd(16)} ${about(metres, 'm')}${grams ? `, ${about(grams, 'g')}` : ''}${ball}${guessed ? '; a guess, no swatch was weighed' : ''}`);
  }
  if (report.cost !== null) lines.push(`  in all ${report.cost.toFixed(2)}${report.currency ? ` ${report.currency}` : ''}`);
  if (report.cautions.length > 0) {
    lines.push('', 'CAUTIONS', ...report.cautions.map(({ says, source }) => `  ${says} (${source})`), `  ${CAUTION_GUIDANCE}`);
  }
  lines.push('', report.findings.length === 0 ? 'No findings.' : `${report.findings.length} findings:`, ...report.findings.map(({ degree, message }) => `  ${degree}: ${message}`));
  return lines.join('\n');
}

/** How far a section is off what was wanted: `  off +0.2 × −0.1 cm`. */
function off(wanted: PieceReport['sections'][number]['wanted']): string {
  if (!wanted || (wanted.widthCm === null && wanted.heightCm === null)) return '';
  const signed = (cm: number | null) => (cm === null ? '–' : `${cm < -0.05 ? '−' : cm < 0.05 ? '' : '+'}${Math.abs(cm).toFixed(1)}`);
  return `  off ${signed(wanted.widthCm)} × ${signed(wanted.heightCm)} cm`;
}

function about({ estimate, least, most }: YarnAmount, unit: string): string {
  return `${Math.round(estimate)} ${unit} (${Math.round(least)} to ${Math.round(most)})`;
}
