import { dequal } from 'dequal';
import type { Line, Pattern, Section } from '../engine/1-pattern/pattern.ts';

/** The fields that a sentence of its own says nothing of, in the words of a maker. */
const FIELDS: Readonly<Partial<Record<keyof Pattern, string>>> = {
  title: 'title', designer: 'designer', terms: 'terms', gauge: 'gauge', hookMm: 'hook', yarns: 'yarns', sizes: 'sizes', hdcTurningChainCounts: 'turning chain', notes: 'notes',
  versions: 'versions', colourLimits: 'limits of colours', piece: 'measurements', wording: 'wording', imprint: 'imprint',
};

/** What one state of a pattern has otherwise than another, in short phrases; none if they are the same. */
export function whatChanged(from: Pattern, to: Pattern): readonly string[] {
  const phrases: string[] = [];
  const fields = (Object.keys(FIELDS) as (keyof Pattern)[]).filter((field) => !dequal(from[field], to[field])).map((field) => FIELDS[field]!);
  phrases.push(...sectionPhrases(from.sections, to.sections));
  phrases.push(...listPhrase('motif', byId(from.motifs), byId(to.motifs)), ...listPhrase('placed motif', byId(from.placements), byId(to.placements)));
  const cells = changedCells(from, to);
  if (cells > 0) phrases.push(`${count(cells, 'row')} coloured by hand`);
  if (fields.length > 0) phrases.push(`${fields.join(', ')} changed`);
  return phrases;
}

function sectionPhrases(from: readonly Section[], to: readonly Section[]): readonly string[] {
  const before = new Map(from.map((section) => [section.id, section]));
  const after = new Set(to.map((section) => section.id));
  const name = (section: Section) => named(section.name);
  const phrases: string[] = [];
  for (const section of to) {
    const was = before.get(section.id);
    if (!was) phrases.push(`${name(section)} added`);
    else if (was !== section) {
      const lines = listCounts(byId(was.lines), byId(section.lines));
      const said = [lines.changed && `${count(lines.changed, 'row')} changed`, lines.added && `${lines.added} added`, lines.gone && `${lines.gone} taken out`].filter(Boolean);
      if (said.length > 0) phrases.push(`${name(section)}: ${said.join(', ')}`);
      else if (!dequal({ ...was, lines: [] }, { ...section, lines: [] })) phrases.push(`${name(section)} set otherwise`);
    }
  }
  phrases.push(...from.filter((section) => !after.has(section.id)).map((section) => `${name(section)} taken out`));
  return phrases;
}

function listPhrase(what: string, from: ReadonlyMap<string, unknown>, to: ReadonlyMap<string, unknown>): readonly string[] {
  const { changed, added, gone } = listCounts(from, to);
  return [added && `${count(added, what)} added`, changed && `${count(changed, what)} changed`, gone && `${count(gone, what)} taken out`].filter((each) => each !== 0);
}

function listCounts(from: ReadonlyMap<string, unknown>, to: ReadonlyMap<string, unknown>): { readonly changed: number; readonly added: number; readonly gone: number } {
  let [changed, added, gone] = [0, 0, 0];
  for (const [id, value] of to) {
    if (!from.has(id)) added++;
    else if (!dequal(from.get(id), value)) changed++;
  }
  for (const id of from.keys()) if (!to.has(id)) gone++;
  return { changed, added, gone };
}

function changedCells(from: Pattern, to: Pattern): number {
  if (from.cells === to.cells) return 0;
  const byRow = ({ cells }: Pattern) => {
    const rows = new Map<string, string>();
    for (const { section, row, size, from: at, letters } of cells) {
      const key = JSON.stringify([section, row.line, row.nth, size]);
      rows.set(key, `${rows.get(key) ?? ''} ${at}${letters}`);
    }
    return rows;
  };
  const { changed, added, gone } = listCounts(byRow(from), byRow(to));
  return changed + added + gone;
}

function byId<T extends { readonly id: string }>(list: readonly T[]): ReadonlyMap<string, T> {
  return new Map(list.map((each) => [each.id, each]));
}

function named(name: string): string {
  return name === '' ? 'A section' : name[0] + name.slice(1).toLowerCase();
}

function count(many: number, what: string): string {
  return `${many} ${what}${many === 1 ? '' : 's'}`;
}

/** What a pattern comes to, in words: its rows and sections. */
export function sizeOfPattern({ sections }: Pattern): string {
  const rows = sections.reduce((sum, { lines }) => sum + lines.reduce((rows, line) => rows + rowsOf(line), 0), 0);
  return `${count(rows, 'row')} in ${count(sections.length, 'section')}`;
}

function rowsOf(line: Line): number {
  if (line.kind !== 'row') return 0;
  const { rows } = line.label;
  return typeof rows === 'number' ? rows : (rows[0] ?? 0);
}
