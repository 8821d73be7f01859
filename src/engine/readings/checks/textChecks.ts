import type { Pattern, Section } from '../../1-pattern/pattern.ts';
import { readLine } from '../../2-construct/readLine.ts';
import { stitchRow, type StitchKind } from '../../craft/stitches.ts';
import { stitchName, stitchWord } from '../../craft/terms.ts';
import { finding, type Finding } from '../../notation/finding.ts';
import type { Instruction } from '../../notation/instruction.ts';
import { labelChecks } from './labelChecks.ts';

/** What a technical editor asks about the words themselves: labels, abbreviations, turning chains. Linear in the pattern's lines. */
export function textChecks(pattern: Pattern): Finding[] {
  return [...pattern.sections.flatMap((section, index) => [...labelChecks(section, index, pattern), ...turningChains(section, pattern)]), ...abbreviations(pattern)];
}

interface Rise {
  readonly line: string;
  readonly chains: number;
  readonly range: readonly [number, number];
  readonly text: string;
}

/** Kinds whose turning chains are compared; taller stitches often begin with chains that are a space too. */
const COMPARED = new Set<StitchKind>(['sc', 'hdc', 'dc']);

/** Rows of a section that rise to the same stitch with other chains than most of its rows. */
function turningChains(section: Section, pattern: Pattern): Finding[] {
  const rises = new Map<StitchKind, Rise[]>();
  for (const line of section.lines) {
    if (line.kind !== 'row') continue;
    const rise = riseOf(readLine(line, pattern).body);
    if (!rise) continue;
    const list = rises.get(rise.kind) ?? [];
    rises.set(rise.kind, list);
    list.push({ line: line.id, chains: rise.chains, range: rise.range, text: line.text.slice(...rise.range) });
  }
  return [...rises].flatMap(([kind, list]) => {
    const counts = new Map<number, number>();
    for (const { chains } of list) counts.set(chains, (counts.get(chains) ?? 0) + 1);
    const [most] = [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0]);
    if (!most || counts.size < 2 || most[1] < 2) return [];
    return list
      .filter(({ chains }) => chains !== most[0])
      .map((rise) => {
        const said = [...rise.text.matchAll(/\d+/g)];
        const mend = said.length === 1 ? { line: rise.line, range: [rise.range[0] + said[0]!.index, rise.range[0] + said[0]!.index + said[0]![0].length] as const, text: String(most[0]) } : null;
        return finding('doubtful', 'turningChains', { section: section.id, line: rise.line, nth: 0, text: rise.range }, { found: rise.chains, expected: most[0], params: { stitch: stitchWord(kind, pattern.terms), rows: most[1] }, mend });
      });
  });
}

/** The chains at a row's start and the stitch they rise to; null where the row has none, or chains that are more than a rise. */
function riseOf(body: readonly Instruction[]): { readonly kind: StitchKind; readonly chains: number; readonly range: readonly [number, number] } | null {
  const chain = body.findIndex(({ kind }) => kind === 'chain');
  const turned = body.slice(0, chain + 2).some(({ kind }) => kind === 'turn');
  const made = chain < 0 ? undefined : body.slice(chain + 1).find(({ kind }) => kind !== 'turn' && kind !== 'remark' && kind !== 'yarn');
  const node = body[chain];
  if (!turned || node?.kind !== 'chain' || typeof node.count !== 'number' || body.slice(0, chain).some(({ kind }) => kind !== 'turn' && kind !== 'yarn' && kind !== 'remark')) return null;
  const work = made?.kind === 'repeat' ? made.body[0] : made;
  if (work?.kind !== 'work' || !COMPARED.has(work.stitch.kind) || work.into.at === 'fromHook' || node.count > stitchRow(work.stitch.kind).turningChains) return null;
  return { kind: work.stitch.kind, chains: node.count, range: node.range };
}

/** Stitches that rows use and that the pattern's own list of abbreviations leaves out. */
function abbreviations(pattern: Pattern): Finding[] {
  const list = pattern.notes.filter(({ word }) => /^abbreviations?\b/i.test(word)).map(({ value }) => value).join('\n');
  if (list.trim() === '') return [];
  const seen = new Set<StitchKind>();
  const found: Finding[] = [];
  for (const section of pattern.sections) {
    for (const line of section.lines) {
      if (line.kind === 'note') continue;
      for (const { kind, range } of stitchesIn(readLine(line, pattern).body)) {
        if (seen.has(kind)) continue;
        seen.add(kind);
        const word = stitchWord(kind, pattern.terms);
        const name = stitchName(kind, pattern.terms);
        // Words that print in full need no explanation.
        if (word === name || explains(list, word) || pattern.notes.some((note) => explains(note.word, word) || explains(note.value, word) && /special/i.test(note.word))) continue;
        if (!new RegExp(`(?<![\\p{L}])${escaped(word)}`, 'iu').test(line.text)) continue;
        found.push(finding('doubtful', 'abbreviationUnexplained', { section: section.id, line: line.id, nth: 0, text: range }, { found: word, expected: name }));
      }
    }
  }
  return found;
}

function explains(list: string, word: string): boolean {
  return new RegExp(`(?<![\\p{L}\\p{N}])${escaped(word)}s?(?![\\p{L}])`, 'iu').test(list.replace(/[()[\]]/g, ' '));
}

function escaped(word: string): string {
  return word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/[- ]/g, '[- ]?');
}

function stitchesIn(body: readonly Instruction[]): { readonly kind: StitchKind; readonly range: readonly [number, number] }[] {
  return body.flatMap((node) => {
    if (node.kind === 'work' || node.kind === 'spread' || node.kind === 'evenly') return [{ kind: node.stitch.kind, range: node.range }];
    if (node.kind === 'chain') return [{ kind: 'ch' as const, range: node.range }];
    return node.kind === 'repeat' || node.kind === 'group' || node.kind === 'forSizes' ? stitchesIn(node.body) : [];
  });
}
