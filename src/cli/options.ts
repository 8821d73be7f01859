import { parseArgs } from 'node:util';
import type { WordStyle } from '../engine/index.ts';
import { PUBLISH_USAGE } from './publishOptions.ts';
import { styleOf } from './styleOf.ts';

/** What the command line was asked, checked; `problem` says what is wrong with it. */
export type Asked =
  | { readonly ok: true; readonly command: Command; readonly file: string; readonly options: Options }
  | { readonly ok: false; readonly problem: string };

export type Command = 'read' | 'words' | 'chart' | 'piece';

export interface Options {
  readonly size: string | null;
  readonly json: boolean;
  readonly terms: 'us' | 'uk' | null;
  readonly out: string | null;
  readonly section: string | null;
  readonly paper: 'a4' | 'letter' | 'none';
  readonly mm: number;
  readonly mono: boolean;
  readonly leftHanded: boolean;
  readonly symbols: 'us' | 'jis';
  readonly view: 'wedge' | 'grid' | 'fan';
  readonly format: 'text' | 'md' | 'html';
  readonly style: WordStyle;
}

export const USAGE = `Turnwork on the command line. FILE is a written pattern (text) or a pattern file (JSON).

  read FILE [--size M] [--json]           every row: number, side, made, used, left open, stated; findings
  words FILE [--terms us|uk] [--size all|M] [--format text|md|html] [--style LIST]
                                          the written pattern; LIST of short (6 sc), bracket ([…] to end), dash (— 26 sts)
  chart FILE --out DIR [--section NAME] [--size M] [--paper a4|letter|none] [--mm 4] [--mono] [--left-handed]
        [--symbols us|jis] [--view wedge|grid|fan]
                                          the chart of each section as SVG for print
  piece FILE [--size M] [--json] [--out DIR]
                                          finished measurements and yarn needed; schematics as SVG into DIR
${PUBLISH_USAGE}

Exit: 0 fine, 1 findings of degree wrong, 2 the file or the command can't be read (of several files, the worst).`;

/** Reads the arguments after the program's name. */
export function askedFor(args: readonly string[]): Asked {
  const no = (problem: string): Asked => ({ ok: false, problem });
  let parsed;
  try {
    parsed = parseArgs({
      args: [...args], allowPositionals: true, strict: true,
      options: {
        size: { type: 'string' }, json: { type: 'boolean' }, terms: { type: 'string' }, out: { type: 'string' }, section: { type: 'string' },
        paper: { type: 'string' }, mm: { type: 'string' }, mono: { type: 'boolean' }, format: { type: 'string' }, style: { type: 'string' }, 'left-handed': { type: 'boolean' }, symbols: { type: 'string' }, view: { type: 'string' }, help: { type: 'boolean' },
      },
    });
  } catch (error) {
    return no((error as Error).message);
  }
  const { values, positionals } = parsed;
  const [command, file, ...more] = positionals;
  if (values.help || command === undefined) return no('');
  if (command !== 'read' && command !== 'words' && command !== 'chart' && command !== 'piece') return no(`There is no command “${command}”: read, words, chart, piece or publish was expected.`);
  if (file === undefined) return no(`${command} needs a FILE.`);
  if (more.length > 0) return no(`One FILE was expected, ${more.length + 1} are given.`);
  const { terms = null, paper = 'none' } = values;
  if (terms !== null && terms !== 'us' && terms !== 'uk') return no(`--terms ${terms}: us or uk was expected.`);
  if (paper !== 'a4' && paper !== 'letter' && paper !== 'none') return no(`--paper ${paper}: a4, letter or none was expected.`);
  const { symbols = 'us', view = 'wedge' } = values;
  if (symbols !== 'us' && symbols !== 'jis') return no(`--symbols ${symbols}: us or jis was expected.`);
  if (view !== 'wedge' && view !== 'grid' && view !== 'fan') return no(`--view ${view}: wedge, grid or fan was expected.`);
  const { format = 'text' } = values;
  if (format !== 'text' && format !== 'md' && format !== 'html') return no(`--format ${format}: text, md or html was expected.`);
  const style = styleOf(values.style ?? '');
  if (typeof style === 'string') return no(`--style ${style}: short, bracket and dash, with commas between, were expected.`);
  const mm = Number(values.mm ?? 4);
  if (!(mm >= 0.5 && mm <= 50)) return no(`--mm ${values.mm}: millimetres per stitch from 0.5 to 50 were expected.`);
  if (command === 'chart' && !values.out) return no('chart needs --out DIR.');
  return {
    ok: true, command, file,
    options: {
      size: values.size ?? null, json: values.json ?? false, terms, out: values.out ?? null, section: values.section ?? null,
      paper, mm, mono: values.mono ?? false, leftHanded: values['left-handed'] ?? false, symbols, view, format, style,
    },
  };
}
