import { mapAmount } from './amounts.ts';
import { isEnd, type Amount, type Instruction, type RunChange } from './instruction.ts';

type Work = Extract<Instruction, { kind: 'work' }>;

/** Whether a clause is a run, whose number may move from row to row: `sc in next 6 sts`, one stitch in each. */
export function isRun(node: Instruction): node is Work {
  return node.kind === 'work' && node.into.at === 'next' && node.each === 1 && node.stitch.together === 1;
}

/** The runs of a row in the order of its words, those inside repeats too. */
export function runsOf(body: readonly Instruction[]): readonly Work[] {
  return body.flatMap((node) => (isRun(node) ? [node] : node.kind === 'repeat' ? runsOf(node.body) : []));
}

/**
 * A row with its runs longer or shorter, each change made `times` over. Runs that come to nothing are left out. The very
 * same list where nothing changes.
 */
export function growRow(body: readonly Instruction[], changes: readonly RunChange[], times: number): readonly Instruction[] {
  if (times === 0 || changes.length === 0) return body;
  const between = changes.find((change) => change.runs === 'between');
  if (between && runsOf(body).length === 0) return firstRuns(body, mapAmount(between.by, (by) => by * times));
  const all = runsOf(body);
  const inRepeats = new Set(body.flatMap((node) => (node.kind === 'repeat' && shapes(node.body) ? runsOf(node.body) : [])));
  const moves = all.map((run, index) =>
    changes.reduce<Amount>((sum, { runs, by }) => {
      const meant =
        runs === 'each' ? true
        : runs === 'last' ? index === all.length - 1
        : runs === 'between' ? (inRepeats.size > 0 ? inRepeats.has(run) : shapes(body))
        : runs.includes(index + 1);
      return meant ? plus(sum, mapAmount(by, (one) => one * times)) : sum;
    }, 0),
  );
  if (moves.every((move) => move === 0)) return body;
  const moved = new Map(all.map((run, index) => [run, moves[index]!]));
  const grow = (nodes: readonly Instruction[]): readonly Instruction[] =>
    nodes.flatMap((node): readonly Instruction[] => {
      if (node.kind === 'repeat') {
        const inside = grow(node.body);
        return inside.length > 0 ? [{ ...node, body: inside }] : [];
      }
      if (!isRun(node) || node.into.at !== 'next') return [node];
      const count = plus(node.into.count, moved.get(node) ?? 0);
      return isNothing(count) ? [] : [{ ...node, into: { ...node.into, count } }];
    });
  return grow(body);
}

/** Whether clauses increase or decrease. */
export function shapes(body: readonly Instruction[]): boolean {
  return body.some((node) => (node.kind === 'work' && (node.each !== 1 || node.stitch.together > 1)) || node.kind === 'group' || node.kind === 'skip' || (node.kind === 'repeat' && shapes(node.body)));
}

/** `2 sc in each st around` with `count` stitches between its increases. */
function firstRuns(body: readonly Instruction[], count: Amount): readonly Instruction[] {
  if (isNothing(count)) return body;
  return body.map((node) => {
    if (node.kind === 'repeat' && shapes(node.body)) {
      const shaping = node.body.find((part): part is Work => part.kind === 'work');
      return shaping ? { ...node, body: [runLike(shaping, count), ...node.body] } : node;
    }
    if (node.kind !== 'work' || node.into.at !== 'across' || !isEnd(node.into.word) || (node.each === 1 && node.stitch.together === 1)) return node;
    const { word, except, what } = node.into;
    const shaping: Instruction = { ...node, into: { at: 'next', count: 1, what } };
    return { kind: 'repeat', style: 'star', times: { kind: 'toEnd', word, except }, body: [runLike(node, count), shaping], range: node.range };
  });
}

function runLike(shaping: Work, count: Amount): Instruction {
  return { kind: 'work', stitch: { ...shaping.stitch, together: 1 }, each: 1, into: { at: 'next', count, what: 'st' }, range: shaping.range };
}

function isNothing(count: Amount): boolean {
  return typeof count === 'number' ? count <= 0 : count.every((one) => one <= 0);
}

function plus(a: Amount, b: Amount): Amount {
  if (typeof a === 'number') return mapAmount(b, (value) => a + value);
  return a.map((value, size) => value + (typeof b === 'number' ? b : (b[size] ?? 0)));
}
