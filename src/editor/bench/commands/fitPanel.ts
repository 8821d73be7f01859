import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import type { Edit, Transaction } from '../../../engine/1-pattern/edit.ts';
import type { Line, Pattern } from '../../../engine/1-pattern/pattern.ts';
import { construct } from '../../../engine/2-construct/construct.ts';
import { sizesText } from '../../../engine/2-construct/recipes/sizesText.ts';
import type { Fabric } from '../../../engine/3-fabric/fabric.ts';
import { work } from '../../../engine/3-fabric/work.ts';
import type { Finding } from '../../../engine/notation/finding.ts';
import { describeFinding, placeOfFinding } from '../../../engine/readings/checks/prose.ts';
import type { BenchState } from '../benchState.ts';
import { followCounts } from './followCounts.ts';

/** The step that changes a panel's stitches, or why its rows don't allow it. */
export type PanelFitted = { readonly ok: true; readonly step: Transaction } | { readonly ok: false; readonly reason: string };

const CHAIN = /\bch\s+(\d+)((?:\s*\(\s*\d+(?:\s*,\s*\d+)*\s*\))?)/;

/**
 * Gives a section so many stitches more (or fewer) in each size: the chain that it grows from is made longer, the counts
 * that rows state follow. The rows are worked anew here: where they don't take it (stitches counted one by one, a heel
 * that would lie off centre), nothing is changed and the reason says what would be wrong.
 */
export function fitPanel(state: Pick<BenchState, 'pattern' | 'at'>, section: string, more: readonly number[]): PanelFitted {
  const { pattern } = state;
  if (more.length !== pattern.sizes.length) throw new RangeError(`${more.length} changes given for ${pattern.sizes.length} sizes`);
  if (more.every((count) => count === 0)) return { ok: false, reason: 'The panel has these stitches already.' };
  const target = pattern.sections.findIndex((each) => each.id === section);
  const at = pattern.sections.findLastIndex((each, i) => i <= target && each.lines.some(isFoundation));
  const source = pattern.sections[at];
  const line = source?.lines.find(isFoundation);
  const found = line && CHAIN.exec(line.text);
  if (!source || !line || !found) return { ok: false, reason: 'There is no chain that the panel grows from, so its stitches can’t be changed here; change its rows by hand.' };
  const told = `${found[1]!}${found[2]!}`.match(/\d+/g)!.map(Number);
  const chains = more.map((count, size) => (told.length === 1 ? told[0]! : (told[size] ?? told[0]!)) + count);
  if (chains.some((count) => count < 2)) return { ok: false, reason: 'Too few stitches would be left.' };
  const text = line.text.slice(0, found.index) + `ch ${sizesText(chains)}` + line.text.slice(found.index + found[0].length);
  const edits: Edit[] = [{ kind: 'setLine', section: source.id, line: { ...line, text } }];
  for (const each of pattern.sections.slice(at)) {
    const now = applyTransaction(pattern, { label: '', at: 0, edits });
    if (!now.ok) return { ok: false, reason: now.reason };
    edits.push(...followCounts(now.pattern, each.id, each.lines[0]?.id ?? ''));
  }
  const changed = new Set(edits.flatMap((edit) => (edit.kind === 'setLine' ? [edit.section] : [])));
  for (const each of pattern.sections) if (changed.has(each.id) && each.recipe) edits.push({ kind: 'setSection', section: each.id, name: each.name, remark: each.remark, recipe: null });
  const fitted = applyTransaction(pattern, { label: '', at: 0, edits });
  if (!fitted.ok) return { ok: false, reason: fitted.reason };
  const reason = reasonAgainst(pattern, fitted.pattern, section, more);
  if (reason !== null) return { ok: false, reason };
  const name = source.id === section ? pattern.sections[target]!.name : `${source.name} and ${pattern.sections[target]!.name}`;
  return { ok: true, step: { label: `Change the stitches of ${name.toLowerCase()}`, at: state.at, edits } };
}

function isFoundation(line: Line): boolean {
  return line.kind === 'row' && line.label.word === 'foundation';
}

/** What would not come out, in the first size where something doesn't. */
function reasonAgainst(before: Pattern, after: Pattern, section: string, more: readonly number[]): string | null {
  for (const [size, name] of after.sizes.entries()) {
    const old = work(construct(before, size));
    const now = work(construct(after, size));
    const known = new Set(old.findings.map(keyOf));
    const fresh = now.findings.find((each) => each.degree !== 'note' && !known.has(keyOf(each)));
    const of = name === '' ? '' : ` in size ${name}`;
    if (fresh) return `The rows don’t take it${of}. ${placeOfFinding(fresh, after, rowNumber(now, fresh))}: ${describeFinding(fresh)}`;
    const rows = now.rows.findIndex((row, i) => now.sections[row.section]?.id === section && row.made > 0 && row.made - (old.rows[i]?.made ?? 0) !== more[size]);
    if (rows >= 0) return `The rows don’t take it${of}: ${after.sections.find((each) => each.id === section)?.name.toLowerCase() ?? 'the panel'}, row ${now.rows[rows]!.number ?? rows + 1} would have ${now.rows[rows]!.made} stitches.`;
  }
  return null;
}

function keyOf(found: Finding): string {
  return `${found.rule} ${found.where.line} ${found.where.nth}`;
}

function rowNumber(fabric: Fabric, found: Finding): number | null {
  return fabric.rows.find((row) => row.key.line === found.where.line && row.key.nth === (found.where.nth ?? 0))?.number ?? null;
}
