import type { Program, ProgramRow } from '../../2-construct/program.ts';
import { FLAG } from '../../3-fabric/fabric.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import type { Colours } from '../../4-colour/colours.ts';
import { isCornerWord, type Instruction } from '../../notation/instruction.ts';
import { foldSteps } from './foldSteps.ts';
import { unrollRow } from './unrollRow.ts';

/** A row's clauses as they will be written. */
export interface PrintedRow {
  readonly body: readonly Instruction[];
  /** Written in yarn runs: the row has more than one yarn. */
  readonly runs: boolean;
}

const NO_RANGE = [0, 0] as const;
/** Clauses that make stitches, or change where the yarn hangs. */
const MAKES = new Set<Instruction['kind']>(['work', 'group', 'repeat', 'chain', 'ring', 'join', 'joinRing']);

/** A worked size of a pattern: its rows as a program, what they made (with the stitches that motifs set, if they do), and the yarns of it. */
export interface WorkedSize {
  readonly program: Program;
  readonly fabric: Fabric;
  readonly colours: Pick<Colours, 'yarn'>;
}

/**
 * The clauses of one row as they are to be written, from its own words where the row is worked in the yarns that they say
 * (or in one yarn), else in yarn runs from the worked stitches; so too where a motif sets stitches in it. A yarn that is not
 * in hand at the row's start is named.
 */
export function printedRow(worked: WorkedSize, rowIndex: number): PrintedRow {
  const { program, fabric, colours } = worked;
  const row = fabric.rows[rowIndex]!;
  const words = program.rows[rowIndex]!;
  const inHand = yarnInHand(worked, rowIndex);
  if (row.end === row.first) return { body: words.body, runs: false };
  const first = colours.yarn[row.first]!;
  const uniform = colours.yarn.subarray(row.first, row.end).every((yarn) => yarn === first);
  if (saysItself(worked, rowIndex)) return { body: startsIn(words.body, first, inHand, program), runs: !uniform };
  const isSet = hasSetStitches(fabric, rowIndex);
  if (uniform && !isSet) return { body: startsIn(withoutYarns(words.body), first, inHand, program), runs: false };
  const steps = unrollRow(words.body, program.size, fabric, rowIndex, colours.yarn, program.letters);
  if (!steps) return { body: [...startsIn(withoutYarns(words.body), first, inHand, program), colourRemark(worked, rowIndex)], runs: false };
  const whole = row.left.ahead === 0 && row.below >= 0 && !words.body.some(goesBeyond);
  const chainCounts = fabric.flags.subarray(row.first, row.end).some((flags) => (flags & FLAG.turning) !== 0 && (flags & FLAG.counts) !== 0);
  const body = foldSteps(steps, { toEnd: whole ? (row.round ? 'around' : 'end') : null, chainCounts, letters: program.letters });
  if (uniform) return { body: startsIn(withoutYarns(body), first, inHand, program), runs: false };
  return { body: inHand === first ? withoutFirst(body) : body, runs: true };
}

/** Chains before the first run are in the yarn in hand: no need to name it twice. */
function withoutFirst(body: readonly Instruction[]): readonly Instruction[] {
  const [head, next] = body;
  return head?.kind === 'yarn' && next?.kind === 'chain' ? body.slice(1) : body;
}

/** Whether a motif sets a stitch of a row. */
function hasSetStitches(fabric: Fabric, rowIndex: number): boolean {
  const { first, end } = fabric.rows[rowIndex]!;
  return fabric.flags.subarray(first, end).some((flags) => (flags & FLAG.setByMotif) !== 0);
}

/** Whether every stitch of a row is the one, in the yarn, that the row's own words give it. */
export function saysItself({ fabric, colours }: WorkedSize, rowIndex: number): boolean {
  const { first, end } = fabric.rows[rowIndex]!;
  if (hasSetStitches(fabric, rowIndex)) return false;
  for (let stitch = first; stitch < end; stitch++) if (fabric.yarn[stitch] !== colours.yarn[stitch]) return false;
  return true;
}

function goesBeyond(node: Instruction): boolean {
  if (node.kind === 'leave' || node.kind === 'otherSide') return true;
  if (node.kind === 'repeat') return node.body.some(goesBeyond);
  return (node.kind === 'work' || node.kind === 'group') && (node.into.at === 'open' || node.into.at === 'section' || node.into.at === 'ring' || node.into.at === 'marker' || node.into.at === 'beside' || (node.into.at === 'across' && (node.into.word === 'corner' || node.into.word === 'space')) || ('what' in node.into && isCornerWord(node.into.what)));
}

function yarnOf(yarn: number, program: Program): Instruction {
  return { kind: 'yarn', letter: program.letters[yarn]!, word: 'with', range: NO_RANGE };
}

/** Names the first yarn unless it is in hand or the words name it before the first stitch. */
function startsIn(body: readonly Instruction[], yarn: number, inHand: number | null, program: Program): readonly Instruction[] {
  if (inHand === yarn) return body;
  const named = body.find(({ kind }) => kind === 'yarn' || kind === 'joinAt' || MAKES.has(kind));
  if (named?.kind === 'yarn' || (named?.kind === 'joinAt' && named.yarn !== null)) return body;
  return [yarnOf(yarn, program), ...body];
}

/** Clauses without changes of yarn, but for those after the last stitch. */
function withoutYarns(body: readonly Instruction[]): readonly Instruction[] {
  const last = body.findLastIndex(({ kind }) => MAKES.has(kind));
  return body
    .filter(({ kind }, index) => kind !== 'yarn' || index > last)
    .map((node) => (node.kind === 'repeat' || node.kind === 'group' ? { ...node, body: withoutYarns(node.body).filter(({ kind }) => kind !== 'yarn') } : node));
}

/** Yarn runs of a row that can't be told in clauses, as words beside them. */
function colourRemark({ fabric, colours, program }: WorkedSize, rowIndex: number): Instruction {
  const { first, end } = fabric.rows[rowIndex]!;
  const parts: string[] = [];
  for (let from = first, to = first; from < end; from = to) {
    while (to < end && colours.yarn[to] === colours.yarn[from]) to++;
    parts.push(`${to - from} in ${program.letters[colours.yarn[from]!]!}`);
  }
  return { kind: 'remark', text: `in order of working: ${parts.join(', ')}`, range: NO_RANGE };
}

/** Index of the yarn in hand where a row begins, as the written rows before leave it; null before the first stitch of a pattern of several yarns. */
export function yarnInHand({ program, fabric, colours }: WorkedSize, rowIndex: number): number | null {
  for (let index = rowIndex - 1; index >= 0; index--) {
    const trailing = yarnAfterLastStitch(program.rows[index]!, program);
    if (trailing !== null) return trailing;
    const { first, end } = fabric.rows[index]!;
    if (end > first) return colours.yarn[end - 1]!;
  }
  return program.letters.length > 1 ? null : 0;
}

function yarnAfterLastStitch({ body }: ProgramRow, program: Program): number | null {
  for (let index = body.length - 1; index >= 0; index--) {
    const node = body[index]!;
    const letter = node.kind === 'yarn' ? node.letter : node.kind === 'joinAt' ? node.yarn : null;
    const yarn = letter === null ? -1 : program.letters.indexOf(letter);
    if (yarn >= 0) return yarn;
    if (MAKES.has(node.kind)) return null;
  }
  return null;
}
