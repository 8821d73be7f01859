import type { Pattern, RowKey } from '../1-pattern/pattern.ts';
import type { Terms } from '../craft/terms.ts';
import type { TurnedView } from '../5-layout/layout.ts';
import type { Lengths } from '../6-drawing/schematic/lengthWords.ts';
import type { WordStyle } from '../notation/writeWork.ts';

/** What can be published. With `booklet` the other parts stand inside it; without, each is set on sheets of its own. */
export const PUBLISH_PARTS = ['booklet', 'words', 'charts', 'legend', 'schematic', 'steps', 'errata'] as const;

export type PublishPart = (typeof PUBLISH_PARTS)[number];

/** Cells in their yarns without symbols, symbols on rows tinted by side, or symbols on cells in their yarns. */
export const CHART_KINDS = ['colour', 'symbol', 'both'] as const;

export type ChartKind = (typeof CHART_KINDS)[number];

/** Stitch widths that can be asked for, mm. */
export const MM_PER_STITCH = { least: 1, most: 30 } as const;

/** Everything that may be chosen about what is published; nothing else changes its bytes. */
export interface PublishChoices {
  readonly parts: readonly PublishPart[];
  readonly charts: readonly ChartKind[];
  /** Size index, or all of them. */
  readonly sizes: 'all' | number;
  /** Sizes that differ only in width on one chart with lines that say which stitches each works, or a chart for each. */
  readonly sizeCharts: 'together' | 'apart';
  /** Version id; null: the pattern as it stands. */
  readonly version: string | null;
  readonly terms: Terms;
  readonly style: WordStyle;
  readonly paper: 'a4' | 'letter';
  /** Width of a stitch on paper, mm (the height follows from the gauge); `'fit'`: as large as a page allows, from 2 to 6 mm. */
  readonly mmPerStitch: number | 'fit';
  /** Black and white: yarns by print mark. */
  readonly mono: boolean;
  readonly hand: 'right' | 'left';
  readonly symbols: 'us' | 'jis';
  /** How turned short rows are drawn. */
  readonly view: TurnedView;
  /** 18 pt text, none under 12 pt, heavier lines. */
  readonly largePrint: boolean;
  /** Rows shown step by step; `'heel'`: of every heel turned in short rows, the first two rows and the last of each written line. */
  readonly stepRows: 'heel' | readonly RowKey[];
  readonly lengths: Lengths;
}

/** A booklet of all sizes in the pattern's own terms and wording, with all that goes into it. */
export function defaultChoices(pattern: Pattern): PublishChoices {
  const { terms, ...style } = pattern.wording ?? {};
  return {
    parts: ['booklet', 'words', 'charts', 'legend', 'schematic', 'steps', 'errata'],
    charts: hasColourwork(pattern) ? ['colour', 'symbol'] : ['symbol'],
    sizes: 'all', sizeCharts: 'together', version: null, terms: terms ?? pattern.terms, style, paper: pattern.terms === 'us' ? 'letter' : 'a4',
    mmPerStitch: 'fit', mono: false, hand: 'right', symbols: 'us', view: 'wedge', largePrint: false, stepRows: 'heel', lengths: 'both',
  };
}

function hasColourwork(pattern: Pattern): boolean {
  return pattern.placements.length > 0 || pattern.cells.length > 0;
}

/**
 * What is wrong with choices for this pattern, one sentence each with what was found and what was expected; empty when they can
 * be published. Takes whatever came out of a form, a stored setting or a command line.
 */
export function choiceProblems(pattern: Pattern, choices: PublishChoices): readonly string[] {
  const problems: string[] = [];
  const expect = (holds: boolean, what: string, found: unknown, expected: string): void => {
    if (!holds) problems.push(`${what}: ${expected} was expected, ${shown(found)} was found.`);
  };
  const among = <T>(what: string, found: T, allowed: readonly T[]): void => expect(allowed.includes(found), what, found, allowed.join(', '));
  const list = (found: unknown): readonly unknown[] | null => (Array.isArray(found) ? found : null);
  const parts = list(choices.parts);
  expect(parts !== null && parts.length > 0 && parts.every((part) => PUBLISH_PARTS.includes(part as PublishPart)), 'Parts', choices.parts, `one or more of ${PUBLISH_PARTS.join(', ')}`);
  const charts = list(choices.charts);
  expect(charts !== null && charts.every((kind) => CHART_KINDS.includes(kind as ChartKind)) && !(charts.length === 0 && parts?.includes('charts')), 'Charts', choices.charts, `one or more of ${CHART_KINDS.join(', ')}`);
  expect(choices.sizes === 'all' || (Number.isInteger(choices.sizes) && choices.sizes >= 0 && choices.sizes < pattern.sizes.length), 'Sizes', choices.sizes, `all or a number from 0 to ${pattern.sizes.length - 1}`);
  among('Charts of several sizes', choices.sizeCharts, ['together', 'apart']);
  expect(choices.version === null || (pattern.versions ?? []).some(({ id }) => id === choices.version), 'Version', choices.version, `none or one of the pattern’s ${pattern.versions?.length ?? 0} versions`);
  among('Terms', choices.terms, ['us', 'uk']);
  const style: WordStyle = choices.style ?? {};
  among('Style of runs', style.runs ?? 'long', ['long', 'short']);
  among('Style of repeats', style.repeats ?? 'star', ['star', 'bracket']);
  among('Style of counts', style.count ?? 'paren', ['paren', 'dash']);
  among('Paper', choices.paper, ['a4', 'letter']);
  const { mmPerStitch: mm } = choices;
  expect(mm === 'fit' || (typeof mm === 'number' && mm >= MM_PER_STITCH.least && mm <= MM_PER_STITCH.most), 'Width of a stitch', mm, `fit, or ${MM_PER_STITCH.least} to ${MM_PER_STITCH.most} mm`);
  among('Black and white', choices.mono, [true, false]);
  among('Hand', choices.hand, ['right', 'left']);
  among('Symbols', choices.symbols, ['us', 'jis']);
  among('View of short rows', choices.view, ['wedge', 'grid', 'fan']);
  among('Large print', choices.largePrint, [true, false]);
  const rows = choices.stepRows === 'heel' ? [] : list(choices.stepRows);
  expect(rows !== null && rows.every((key) => isRow(pattern, key)), 'Rows shown step by step', choices.stepRows, 'heel, or rows of this pattern');
  among('Lengths', choices.lengths, ['cm', 'in', 'both']);
  return problems;
}

function isRow(pattern: Pattern, key: unknown): boolean {
  const { line, nth } = (key ?? {}) as Partial<RowKey>;
  return typeof nth === 'number' && nth >= 0 && Number.isInteger(nth) && pattern.sections.some((section) => section.lines.some((one) => one.kind !== 'note' && one.id === line));
}

function shown(value: unknown): string {
  const text = typeof value === 'string' ? `“${value}”` : (JSON.stringify(value) ?? 'nothing');
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}
