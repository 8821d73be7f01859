import { isCornerWord, type Instruction, type PlaceWord, type TextRange } from '../notation/instruction.ts';
import { asksForCorners, cornersAhead, cornersTaken } from './corners.ts';
import { amountOf, MOST_STITCHES, report, type RowWork } from './rowWork.ts';

type Repeat = Extract<Instruction, { kind: 'repeat' }>;

/** Works a repeat: so many times, or until only so many places of the row below are left. */
export function workRepeat(work: RowWork, clause: Repeat, body: (body: readonly Instruction[]) => void): void {
  const { hook } = work;
  if (clause.times.kind === 'times') {
    const times = amountOf(work, clause.times.times);
    if (times > MOST_STITCHES) {
      report(work, 'wrong', 'tooManyStitches', clause.range, { found: times, expected: MOST_STITCHES });
      return;
    }
    for (let i = 0; i < times && !work.stopped; i++) {
      const known = work.findings.length;
      const taken = hook.takenStitches;
      body(clause.body);
      // A repeat that ran out of places goes on finding the same; once is enough.
      const short = work.findings.length > known ? work.findings.at(-1)! : null;
      if (short?.rule !== 'notEnoughPlaces') continue;
      work.findings[work.findings.length - 1] = { ...short, params: { ...short.params, times, fit: i, over: hook.takenStitches - taken } };
      return;
    }
    return;
  }
  const what = firstWord(clause.body);
  const taken = () => (isCornerWord(what) ? cornersTaken(work) : what === 'sp' ? hook.takenSpaces : hook.takenStitches);
  // Corner by corner, the sides between may have any number of stitches.
  const except = isCornerWord(what) ? 0 : amountOf(work, clause.times.except);
  const start = taken();
  // At a row's start a turning chain may still take the first place, so the places are counted after the first pass.
  let reach = -1;
  let step = 0;
  let passes = 0;
  for (;;) {
    const before = taken();
    const rest = reach < 0 ? countReach(work, what, clause.range) - except : reach - (before - start) - except;
    if (reach < 0) reach = rest + except;
    if (passes > 0 && rest < Math.max(1, step)) {
      if (rest !== 0) report(work, 'wrong', 'repeatUneven', clause.range, { found: rest, expected: step, params: { over: rest, ...nearby(work, what, rest, step) } });
      return;
    }
    if (passes === 0 && rest <= 0 && isCornerWord(what) && asksForCorners(work)) return;
    if (passes === 0 && rest <= 0) {
      report(work, 'wrong', 'notEnoughPlaces', clause.range, { expected: except + 1, found: Math.max(0, rest + except) });
      return;
    }
    const known = work.findings.length;
    body(clause.body);
    passes++;
    if (work.stopped) return;
    step = taken() - before;
    if (step === 0) {
      report(work, 'wrong', 'repeatEmpty', clause.range);
      return;
    }
    if (work.findings.slice(known).some((found) => found.rule === 'notEnoughPlaces')) return;
  }
}

/** The numbers of stitches of the row below, next to what it has, with which the repeat would come out even. */
function nearby({ hook }: RowWork, what: PlaceWord, rest: number, step: number): { down: number; up: number } | Record<string, never> {
  if (what === 'sp' || isCornerWord(what)) return {};
  const all = hook.takenStitches + hook.reachCount('st');
  return { down: all - rest, up: all - rest + step };
}

function countReach(work: RowWork, what: PlaceWord, range: TextRange): number {
  return isCornerWord(what) ? cornersAhead(work, range).length : work.hook.reachCount(what === 'sp' ? 'sp' : 'st');
}

/** The places a repeat is counted in: those of its first clause that takes any. */
function firstWord(body: readonly Instruction[]): PlaceWord {
  for (const clause of body) {
    if (clause.kind === 'skip') return clause.what;
    if ((clause.kind === 'work' || clause.kind === 'group') && (clause.into.at === 'next' || clause.into.at === 'across')) {
      return clause.into.at !== 'across' ? clause.into.what : clause.into.word === 'corner' ? 'corner' : clause.into.word === 'space' ? 'sp' : clause.into.what;
    }
    if (clause.kind === 'repeat') return firstWord(clause.body);
  }
  return 'st';
}
