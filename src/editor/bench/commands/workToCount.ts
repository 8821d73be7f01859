import { applyTransaction } from '../../../engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../../engine/1-pattern/edit.ts';
import type { RowKey } from '../../../engine/1-pattern/pattern.ts';
import { readLine } from '../../../engine/2-construct/readLine.ts';
import { evenRow } from '../../../engine/2-construct/recipes/evenRow.ts';
import { mergeBodies, mergeNumbers } from '../../../engine/2-construct/recipes/mergeBodies.ts';
import { FLAG, type Fabric, type WorkedRow } from '../../../engine/3-fabric/fabric.ts';
import type { Instruction } from '../../../engine/notation/instruction.ts';
import { writeRow } from '../../../engine/notation/writeRow.ts';
import { stitchOfCode, type StitchKind } from '../../../engine/craft/stitches.ts';
import { sectionShown, type Command } from '../benchState.ts';
import { followCounts } from './followCounts.ts';
import { rowAlone } from './rowAlone.ts';
import { rowOfLine } from './rowOfLine.ts';

/** Most stitches that a row may be asked to make. */
export const MOST_STITCHES = 2000;

/**
 * Rewrites a row so that it makes `wanted` stitches, its increases or decreases spread evenly, in every size so many more or
 * fewer than the row below as in the size shown; what stands before its first stitch and after its last stays, and the counts of
 * the rows above follow. None in rows that leave stitches, go beyond the row below, or are worked in more than one stitch or yarn, and
 * where a size would be left with less than one stitch.
 */
export function workToCount(key: RowKey, wanted: number, name: string): Command {
  return (state) => {
    const section = sectionShown(state);
    const row = section && rowOfLine(state.pattern, section.id, key, state.size);
    if (!section || !row || row.line.kind !== 'row' || !Number.isInteger(wanted) || wanted < 1 || wanted > MOST_STITCHES) return null;
    const { body, stated } = readLine(row.line, state.pattern);
    const plain = state.grids.map(({ fabric }) => plainRow(fabric, section.id, key));
    const own = plain[state.size];
    if (!own || own === 'no' || own.made === wanted || plain.some((each) => each === 'no')) return null;
    const change = wanted - own.made;
    const sizes = plain.flatMap((each, size) => (each === null ? [] : [size]));
    const rows = sizes.map((size) => plain[size] as PlainRow);
    if (rows.some((each) => each.stitch !== own.stitch || each.made + change < 1)) return null;
    const head = body.slice(0, body.findIndex(makes));
    const tail = body.slice(body.findLastIndex(makes) + 1);
    if (head.some(isOther) || tail.some(isOther)) return null;
    const bodies = rows.map((each) => evenRow(each.stitch, each.takes, each.made + change - each.chain, each.round ? 'stacked' : 'staggered', each.round ? 'around' : 'across'));
    const all = state.pattern.sizes.length;
    const spread = mergeBodies(bodies, sizes, all) ?? bySizes(bodies, sizes);
    const counts = rows.map((each) => each.made + change);
    const count = { count: mergeNumbers(counts, sizes, all, counts[0]!), unit: stated?.unit ?? own.stitch, of: 'row', step: null, range: [0, 0] } as const;
    const alone = rowAlone(state.pattern, row);
    const text = writeRow([...head, ...spread, ...tail], count, { terms: state.pattern.terms, sizeNames: state.pattern.sizes });
    const edits: Edit[] = [...alone.edits, { kind: 'setLine', section: section.id, line: { ...alone.line, text } }];
    const set = applyTransaction(state.pattern, { label: '', at: 0, edits });
    return set.ok ? { label: `Work ${name} to ${wanted} stitches`, at: state.at, edits: [...edits, ...followCounts(set.pattern, section.id, alone.line.id)] } : null;
  };
}

interface PlainRow {
  readonly stitch: StitchKind;
  readonly made: number;
  /** Places that its plain stitches take; the turning chain that counts takes one of its own. */
  readonly takes: number;
  readonly chain: number;
  readonly round: boolean;
}

/** The row in one size if it is worked in one stitch over the whole of the row below; null where the size hasn't got it. */
function plainRow(fabric: Fabric, section: string, key: RowKey): PlainRow | 'no' | null {
  const row = fabric.rows.find((each) => each.key.line === key.line && each.key.nth === key.nth && fabric.sections[each.section]?.id === section);
  if (!row) return null;
  if (row.word === 'foundation' || row.word === 'step' || row.below < 0 || row.left.ahead + row.left.behind > 0) return 'no';
  let stitch: StitchKind | null = null;
  let chain = 0;
  for (let i = row.first; i < row.end; i++) {
    const flags = fabric.flags[i]!;
    if (flags & FLAG.turning) chain += flags & FLAG.counts ? 1 : 0;
    if (flags & (FLAG.turning | FLAG.join) || !(flags & FLAG.counts)) continue;
    const { kind, legs } = stitchOfCode(fabric.kind[i]!);
    if (legs > 0 || (stitch !== null && stitch !== kind) || flags & (FLAG.attaching | FLAG.frontPost | FLAG.backPost | FLAG.frontLoop | FLAG.backLoop | FLAG.spike | FLAG.inSpace | FLAG.corner)) return 'no';
    stitch = kind;
  }
  chain = Math.min(1, chain);
  const takes = row.used - chain;
  return stitch === null || takes < 1 || isPartOfBelow(fabric, row) ? 'no' : { stitch, made: row.made, takes, chain, round: row.round };
}

/** Whether the row passes over places of the row below. */
function isPartOfBelow(fabric: Fabric, row: WorkedRow): boolean {
  const taken = new Set(fabric.bases.subarray(fabric.baseStart[row.first]!, fabric.baseStart[row.end]!));
  return taken.size !== row.used;
}

/** Clauses for each size, where one wording can't hold for all. */
function bySizes(bodies: readonly (readonly Instruction[])[], sizes: readonly number[]): readonly Instruction[] {
  return sizes.map((size, at) => ({ kind: 'forSizes', sizes: [size], body: bodies[at]!, range: [0, 0] }));
}

function makes({ kind }: Instruction): boolean {
  return kind === 'work' || kind === 'group' || kind === 'repeat' || kind === 'skip' || kind === 'asRows' || kind === 'forSizes';
}

function isOther({ kind }: Instruction): boolean {
  return kind === 'leave' || kind === 'forSizes' || kind === 'asRows';
}
