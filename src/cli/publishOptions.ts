import { parseArgs } from 'node:util';
import type { Pattern } from '../engine/index.ts';
import { defaultChoices, type PublishChoices } from '../engine/publish/publishChoices.ts';
import { PNG_DPI } from '../publish/pngSize.ts';
import { OUTPUTS, type Output } from '../publish/publishOrder.ts';
import { styleOf } from './styleOf.ts';

/** What `publish` was asked, checked as far as it can be without a pattern. */
export interface PublishAsked {
  readonly files: readonly string[];
  readonly out: string;
  readonly outputs: readonly Output[];
  readonly dpi: number;
  readonly zip: boolean;
  /** The choices for a pattern; a sentence where it has no such size or version. The engine checks the rest. */
  readonly choicesFor: (pattern: Pattern) => PublishChoices | string;
}

export const PUBLISH_USAGE = `  publish FILE... --out DIR [--as pdf,svg,png,text] [--dpi 300] [--zip]
        [--parts booklet,words,charts,legend,schematic,steps,errata] [--charts colour,symbol,both] [--steps heel|none]
        [--size all|M] [--size-charts together|apart] [--version NAME] [--terms us|uk] [--style LIST] [--lengths cm|in|both]
        [--paper a4|letter] [--mm fit|4] [--mono] [--large-print] [--left-handed] [--symbols us|jis] [--view wedge|grid|fan]
                                          the booklet of each pattern as PDF (or sheets as SVG and PNG, texts);
                                          a file that can't be published doesn't stop the others and is named at the end`;

/** Reads the arguments after `publish`; a sentence says what is wrong with them. Choices that are not given are the app's own. */
export function publishAskedFor(args: readonly string[]): PublishAsked | string {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...args], allowPositionals: true, strict: true,
      options: {
        out: { type: 'string' }, as: { type: 'string' }, dpi: { type: 'string' }, zip: { type: 'boolean' }, parts: { type: 'string' }, charts: { type: 'string' }, steps: { type: 'string' },
        size: { type: 'string' }, 'size-charts': { type: 'string' }, version: { type: 'string' }, terms: { type: 'string' }, style: { type: 'string' }, lengths: { type: 'string' }, paper: { type: 'string' },
        mm: { type: 'string' }, mono: { type: 'boolean' }, 'large-print': { type: 'boolean' }, 'left-handed': { type: 'boolean' }, symbols: { type: 'string' }, view: { type: 'string' },
      },
    });
  } catch (error) {
    return (error as Error).message;
  }
  const { values, positionals } = parsed;
  if (positionals.length === 0) return 'publish needs a FILE, or several.';
  if (!values.out) return 'publish needs --out DIR.';
  const outputs = list(values.as ?? 'pdf');
  const stranger = outputs.find((one) => !OUTPUTS.includes(one as Output));
  if (stranger !== undefined || outputs.length === 0) return `--as ${values.as}: one or more of ${OUTPUTS.join(', ')} were expected.`;
  const dpi = Number(values.dpi ?? 300);
  if (!(dpi >= PNG_DPI.least && dpi <= PNG_DPI.most)) return `--dpi ${values.dpi}: ${PNG_DPI.least} to ${PNG_DPI.most} were expected.`;
  const style = values.style === undefined ? null : styleOf(values.style);
  if (typeof style === 'string') return `--style ${style}: short, bracket and dash, with commas between, were expected.`;
  const { steps } = values;
  if (steps !== undefined && steps !== 'heel' && steps !== 'none') return `--steps ${steps}: heel or none was expected.`;
  const given = <K extends keyof PublishChoices>(key: K, value: unknown): Partial<PublishChoices> => (value === undefined ? {} : { [key]: value });
  // Whatever is given is handed on as it is: the engine says which words it expected.
  const choices: Partial<PublishChoices> = {
    ...given('parts', values.parts === undefined ? undefined : list(values.parts)), ...given('charts', values.charts === undefined ? undefined : list(values.charts)),
    ...given('sizeCharts', values['size-charts']), ...given('terms', values.terms), ...given('lengths', values.lengths), ...given('paper', values.paper),
    ...given('mmPerStitch', values.mm === undefined || values.mm === 'fit' ? values.mm : Number(values.mm)), ...given('mono', values.mono), ...given('largePrint', values['large-print']),
    ...given('hand', values['left-handed'] ? 'left' : undefined), ...given('symbols', values.symbols), ...given('view', values.view),
    ...given('stepRows', steps === 'none' ? [] : steps), ...(style === null ? {} : { style }),
  };
  const { size, version } = values;
  return {
    files: positionals, out: values.out, outputs: outputs as Output[], dpi, zip: values.zip ?? false,
    choicesFor: (pattern) => {
      const sizes = size === undefined || size === 'all' ? 'all' : pattern.sizes.findIndex((name) => name.toLowerCase() === size.toLowerCase());
      if (sizes === -1) return `there is no size “${size}”; the pattern has ${pattern.sizes.filter((name) => name !== '').join(', ') || 'one size without a name'}.`;
      const versions = pattern.versions ?? [];
      const chosen = version === undefined ? null : versions.find(({ name, id }) => name.toLowerCase() === version.toLowerCase() || id === version);
      if (chosen === undefined) return `there is no version “${version}”; the pattern has ${versions.map(({ name }) => name).join(', ') || 'none'}.`;
      return { ...defaultChoices(pattern), ...choices, ...given('sizes', size === undefined ? undefined : sizes), ...given('version', chosen?.id) };
    },
  };
}

function list(words: string): string[] {
  return words.split(',').map((word) => word.trim()).filter((word) => word !== '');
}
