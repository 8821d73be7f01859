import type { Transaction } from '../../../engine/1-pattern/edit.ts';
import type { Fabric } from '../../../engine/3-fabric/fabric.ts';
import { replaceYarn } from '../../../engine/4-colour/replaceYarn.ts';
import type { BenchState } from '../benchState.ts';

/** The step that takes a yarn out, or why it can't be. */
export type YarnRemoved = { readonly ok: true; readonly step: Transaction } | { readonly ok: false; readonly reason: string };

/** What would be in another yarn: rows (in the size shown) that are worked in it as their words say, cells of motifs, loose cells. */
export interface YarnUse {
  readonly rows: number;
  readonly cells: number;
}

/** Where a yarn is used, but for stripes and grounds. */
export function yarnUse({ pattern, fabric }: Pick<BenchState, 'pattern' | 'fabric'>, letter: string): YarnUse {
  const index = pattern.yarns.findIndex((yarn) => yarn.letter === letter);
  const inText = (text: string) => text.split(letter).length - 1;
  return {
    rows: fabric.rows.filter(({ word, first, end }) => word !== 'step' && isIn(fabric, first, end, index)).length,
    cells: pattern.motifs.reduce((sum, motif) => sum + inText(motif.cells.join('')), 0) + pattern.cells.reduce((sum, run) => sum + inText(run.letters), 0),
  };
}

/** "24 rows and 12 cells"; empty where it is used nowhere. */
export function yarnUseWords({ rows, cells }: YarnUse): string {
  return [...(rows > 0 ? [`${rows} ${rows === 1 ? 'row' : 'rows'}`] : []), ...(cells > 0 ? [`${cells} ${cells === 1 ? 'cell' : 'cells'}`] : [])].join(' and ');
}

/** Takes a yarn out with `to` in its place everywhere: in the words of rows, motifs, loose cells and grounds, as one step. */
export function removeYarn(state: Pick<BenchState, 'pattern' | 'fabric' | 'grids' | 'at'>, letter: string, to: string): YarnRemoved {
  const { pattern } = state;
  const called = (of: string) => `${of} ${pattern.yarns.find((yarn) => yarn.letter === of)?.name ?? ''}`.trim();
  if (letter === to || ![letter, to].every((of) => pattern.yarns.some((yarn) => yarn.letter === of))) return { ok: false, reason: `There is no yarn ${to} to put in the place of ${letter}.` };
  const replaced = replaceYarn(pattern, state.grids.map((grid) => grid.fabric), letter, to);
  if (!replaced.ok) return { ok: false, reason: `${placeOf(state, replaced.line)} can’t be changed from ${letter} to ${to} letter by letter; change its words by hand first.` };
  const use = yarnUseWords(yarnUse(state, letter));
  return { ok: true, step: { label: `Take out ${called(letter)}${use === '' ? '' : `: ${use} in ${called(to)}`}`, at: state.at, edits: replaced.edits } };
}

function isIn({ yarn }: Fabric, first: number, end: number, index: number): boolean {
  for (let i = first; i < end; i++) if (yarn[i] === index) return true;
  return false;
}

function placeOf({ pattern, fabric }: Pick<BenchState, 'pattern' | 'fabric'>, line: string | null): string {
  const section = pattern.sections.find((each) => each.lines.some((one) => one.id === line));
  const row = fabric.rows.find((each) => each.key.line === line);
  const name = section ? section.name.charAt(0) + section.name.slice(1).toLowerCase() : 'The pattern';
  return !row || row.number === null ? `A line of ${name}` : `${name}, ${row.round ? 'round' : 'row'} ${row.number}`;
}
