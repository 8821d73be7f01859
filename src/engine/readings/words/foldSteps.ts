import type { Instruction } from '../../notation/instruction.ts';
import type { Step } from './unrollRow.ts';

/** How a repeat may end: to the end of the row below, or only by a number of times. */
export interface FoldLimits {
  /** Word for "to the end"; null when the row does not use up the row below. */
  readonly toEnd: 'end' | 'around' | null;
  /** A turning chain that counts takes the first place, so that a repeat from the row's first stitch on is counted in times. */
  readonly chainCounts: boolean;
  readonly letters: readonly string[];
}

const NO_RANGE = [0, 0] as const;
/** Longer repeats are not looked for: no reader sees them. */
const LONGEST_PERIOD = 120;
/** A repeat's own words weigh as much as so many clauses. */
const REPEAT_WEIGHT = 1.5;

/**
 * A number for each step, the same for steps of the same clause (ranges aside) in the same yarn. A step without a yarn goes
 * on in the one before.
 */
function numbered(steps: readonly Step[]): Int32Array {
  const clauses = new Map<Instruction, string>();
  const known = new Map<string, number>();
  return Int32Array.from(steps, ({ node, yarn }) => {
    const clause = clauses.get(node) ?? JSON.stringify(node, (name, value: unknown) => (name === 'range' ? undefined : value));
    clauses.set(node, clause);
    const key = `${yarn}|${clause}`;
    const number = known.get(key) ?? known.size;
    known.set(key, number);
    return number;
  });
}

function joins(node: Instruction): boolean {
  return (node.kind === 'work' && node.into.at === 'next') || node.kind === 'skip';
}

/** Places of the row below that a step takes; null when it is not told by the step alone. */
function takes({ node }: Step): number | null {
  if (node.kind === 'chain') return 0;
  if (node.kind === 'skip') return typeof node.count === 'number' && node.what !== 'sp' ? node.count : null;
  if (node.kind !== 'work' && node.kind !== 'group') return null;
  if (node.into.at === 'same') return 0;
  if (node.into.at !== 'next' || (node.into.what !== 'st' && node.into.what !== 'ch')) return null;
  return node.kind === 'work' ? node.stitch.together : 1;
}

interface Fold {
  readonly start: number;
  readonly period: number;
  readonly times: number;
  readonly cost: number;
}

/**
 * Clauses from the steps of a row: equal steps one after another become runs (`B sc 5`), and where a part of the row
 * repeats and saying so is shorter, the shortest such repeat is folded, from the place that leaves the least around it.
 * Every change of yarn becomes a yarn clause. Quadratic in the steps of a row, with periods up to 120.
 */
export function foldSteps(steps: readonly Step[], limits: FoldLimits): Instruction[] {
  const from = steps.findIndex(({ node }) => node.kind === 'work' || node.kind === 'group' || node.kind === 'skip');
  if (from < 0) return runs(steps, limits.letters, null);
  let to = from;
  while (to < steps.length && isRun(steps[to]!)) to++;
  const before = steps.slice(0, from);
  const middle = steps.slice(from, to);
  const after = steps.slice(to);
  const fold = bestFold(middle);
  if (!fold) return runs(steps, limits.letters, null, from);
  const { start, period, times } = fold;
  const rest = middle.slice(start + period * times);
  const except = after.some(({ node }) => node.kind === 'work' || node.kind === 'group' || node.kind === 'skip') ? null : sum(rest.map(takes));
  const unit = middle.slice(start, start + period);
  const taken = sum(unit.map(takes));
  const toEnd = except !== null && taken !== null && taken > 0 && !(limits.chainCounts && start === 0) ? limits.toEnd : null;
  const lead = runs([...before, ...middle.slice(0, start)], limits.letters, null, start > 0 ? from : undefined);
  const body = runs(unit, limits.letters, null, 0);
  const tail = rest.length > 0 ? runs([...rest, ...after], limits.letters, null, 0) : runs(after, limits.letters, lastYarn(unit));
  const repeat: Instruction = {
    kind: 'repeat', body, style: 'star', range: NO_RANGE,
    times: toEnd ? { kind: 'toEnd', except: except!, word: except === 0 ? toEnd : 'end' } : { kind: 'times', times },
  };
  return [...lead, repeat, ...tail];
}

function isRun({ node }: Step): boolean {
  return node.kind === 'work' || node.kind === 'group' || node.kind === 'skip' || node.kind === 'chain';
}

function lastYarn(steps: readonly Step[]): number | null {
  return steps.findLast(({ endsIn }) => endsIn !== null)?.endsIn ?? null;
}

function sum(values: readonly (number | null)[]): number | null {
  return values.reduce<number | null>((total, value) => (total === null || value === null ? null : total + value), 0);
}

/** The repeat that makes the row shortest; null when none does. */
function bestFold(steps: readonly Step[]): Fold | null {
  const keys = numbered(steps);
  const breaks = breaksOf(steps, keys);
  const cost = (from: number, to: number) => (to > from ? 1 + breaks[to - 1]! - breaks[from]! : 0);
  const length = keys.length;
  let best: Fold | null = null;
  let least = cost(0, length);
  for (let period = 2; period <= Math.min(LONGEST_PERIOD, Math.floor(length / 2)); period++) {
    let run = 0;
    for (let at = length - period - 1; at >= -1; at--) {
      if (at >= 0 && keys[at] === keys[at + period]) {
        run++;
        continue;
      }
      const begin = at + 1;
      if (run >= period) {
        for (let offset = 0; offset < period && run - offset >= period; offset++) {
          const start = begin + offset;
          const times = Math.floor((run - offset) / period) + 1;
          const inside = cost(start, start + period);
          if (inside < 2) continue;
          const whole = cost(0, start) + inside + cost(start + times * period, length) + REPEAT_WEIGHT;
          if (whole < least) {
            least = whole;
            best = { start, period, times, cost: whole };
          }
        }
      }
      run = 0;
    }
  }
  return best;
}

/** `breaks[i]`: how many clauses begin in steps 1 … i. */
function breaksOf(steps: readonly Step[], keys: Int32Array): Int32Array {
  const breaks = new Int32Array(keys.length);
  for (let index = 1; index < keys.length; index++) breaks[index] = breaks[index - 1]! + (keys[index] === keys[index - 1] && joins(steps[index]!.node) ? 0 : 1);
  return breaks;
}

/** Runs of equal steps as clauses, with a yarn clause wherever the yarn is not `yarn` or that of the step before; at step `said` it is said in any case. */
function runs(steps: readonly Step[], letters: readonly string[], yarn: number | null, said?: number): Instruction[] {
  const nodes: Instruction[] = [];
  const keys = numbered(steps);
  let now = yarn;
  steps.forEach((step, index) => {
    const changes = step.yarn !== null && (step.yarn !== now || index === said);
    const last = nodes.at(-1);
    if (!changes && last && index > 0 && keys[index] === keys[index - 1] && joins(step.node)) nodes[nodes.length - 1] = oneMore(last, step.node);
    else {
      if (changes) nodes.push({ kind: 'yarn', letter: letters[step.yarn!]!, word: 'with', range: NO_RANGE });
      nodes.push(step.node);
    }
    if (step.endsIn !== null) now = step.endsIn;
  });
  return nodes;
}

function oneMore(node: Instruction, more: Instruction): Instruction {
  if (node.kind === 'skip' && more.kind === 'skip') return { ...node, count: Number(node.count) + Number(more.count) };
  if (node.kind === 'work' && node.into.at === 'next') return { ...node, into: { ...node.into, count: Number(node.into.count) + 1 } };
  return node;
}
