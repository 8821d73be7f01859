import { describe, expect, it } from 'vitest';
import { NO_HISTORY } from '../../../src/engine/1-pattern/history.ts';
import type { Pattern, Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { Session } from '../../../src/editor/bench/session.svelte.ts';
import { ChartTouch } from '../../../src/editor/bench/touchBench.svelte.ts';
import type { ChartPointer } from '../../../src/editor/chart/touches.ts';
import { choiceSentence } from '../../../src/editor/touch/choice.ts';
import { LEG, stitchesOfRow, TICK } from '../bench/benchOf.ts';

const LAID: Placement = { id: 'p1', section: 'leg', motif: 'tick', row: { line: 'plain', nth: 0 }, align: 'left', offset: 0, across: 1, up: 1, gap: 0, mirror: false };
const PATTERN: Pattern = { ...LEG, motifs: [TICK], placements: [LAID] };
const MOUSE: ChartPointer = { clientX: 0, clientY: 0, shift: false, alt: false, control: false, pointer: 'mouse', presses: 1 };

function touchOf(pattern: Pattern = PATTERN) {
  const session = new Session({ pattern, history: NO_HISTORY, keep: () => undefined, now: () => 1 });
  const column = (stitch: number) => session.grid.columns.columnOf[stitch]!;
  return { session, touch: new ChartTouch(session, () => pattern.motifs), row: (n: number) => stitchesOfRow(session.state, n).filter((stitch) => column(stitch) >= 0).sort((a, b) => column(a) - column(b)) };
}

describe('dragging a placed motif over the chart', () => {
  it('shows where it would lie, and moves it as one step', () => {
    const { session, touch, row } = touchOf();
    session.choice = { kind: 'move', placement: 'p1' };
    const [from, to] = [row(2)[0]!, row(3)[4]!];
    touch.onstroke('start', [from], MOUSE);
    touch.onstroke('move', [to], MOUSE);
    expect(touch.ghost!.length).toBeGreaterThan(0);
    expect(touch.says).toContain('Tick: 1 repeat');
    expect(session.pattern.placements).toEqual([LAID]);
    touch.onstroke('end', [], MOUSE);
    expect(session.pattern.placements[0]!.row).toEqual({ line: 'plain', nth: 1 });
    expect(session.pattern.placements[0]!.offset).toBe(4);
    expect(session.history.past).toHaveLength(1);
    expect(touch.ghost).toBeNull();
  });

  it('leaves it where it is when the drag is called off, goes nowhere, or it is locked', () => {
    const { session, touch, row } = touchOf();
    session.choice = { kind: 'move', placement: 'p1' };
    touch.onstroke('start', [row(2)[0]!], MOUSE);
    touch.onstroke('move', [row(4)[3]!], MOUSE);
    touch.onstroke('cancel', [], MOUSE);
    touch.onstroke('start', [row(2)[0]!], MOUSE);
    touch.onstroke('end', [], MOUSE);
    expect(session.history.past).toHaveLength(0);

    const locked = touchOf({ ...PATTERN, placements: [{ ...LAID, locked: true }] });
    locked.session.choice = { kind: 'move', placement: 'p1' };
    locked.touch.onstroke('start', [locked.row(2)[0]!], MOUSE);
    locked.touch.onstroke('move', [locked.row(4)[3]!], MOUSE);
    expect(locked.touch.says).toBe('“Tick” is locked where it lies; unlock it first.');
    locked.touch.onstroke('end', [], MOUSE);
    expect(locked.session.pattern.placements[0]).toMatchObject({ offset: 0 });
  });
});

const KEY: ChartPointer = { ...MOUSE, pointer: 'keyboard' };

describe('a motif on its way over a seamed panel', () => {
  it('says what is left over and what meets at the seam', () => {
    const seamed: Pattern = { ...PATTERN, placements: [], sections: [{ ...PATTERN.sections[0]!, lines: [...PATTERN.sections[0]!.lines, { kind: 'step', id: 'sew', text: 'Seam the side edges.' }] }], motifs: [{ ...TICK, cells: ['.BB', 'B..', 'BBB'] }] };
    const { session, touch, row } = touchOf(seamed);
    session.choice = { kind: 'motif', motif: 'tick', lie: 'left', mirror: false };
    session.pointAt(row(2)[5]!, 'chart');
    expect(touch.says).toBe('Tick: 3 repeats of 3 in 10 stitches; 0 left and 1 right stay free. At the seam 1 stitch lies between the last repeat and the first, 0 elsewhere. Whole repeats fill 9 or 12.');
  });
});

describe('moving a placed motif by keys', () => {
  it('takes it up with Enter, shows it on its way, and puts it down with Enter', () => {
    const { session, touch, row } = touchOf();
    session.choice = { kind: 'move', placement: 'p1' };
    touch.ontap(row(2)[0]!, KEY);
    session.pointAt(row(3)[4]!, 'chart');
    expect(touch.says).toContain('Tick: 1 repeat');
    expect(touch.ghost!.length).toBeGreaterThan(0);
    touch.ontap(row(3)[4]!, KEY);
    expect(session.pattern.placements[0]).toMatchObject({ row: { line: 'plain', nth: 1 }, offset: 4 });
    expect(session.history.past).toHaveLength(1);
    session.pointAt(row(4)[6]!, 'chart');
    expect(touch.ghost).toBeNull();
  });

  it('lets it go where something else is chosen in between', () => {
    const { session, touch, row } = touchOf();
    session.choice = { kind: 'move', placement: 'p1' };
    touch.ontap(row(2)[0]!, KEY);
    session.choice = { kind: 'point' };
    session.choice = { kind: 'move', placement: 'p1' };
    session.pointAt(row(3)[4]!, 'chart');
    expect(touch.ghost).toBeNull();
    expect(session.history.past).toHaveLength(0);
  });
});

describe('laying a yarn by strokes', () => {
  const lettersOf = ({ session, row }: ReturnType<typeof touchOf>, n: number) => row(n).map((stitch) => session.pattern.yarns[session.colours.yarn[stitch]!]!.letter).join('');
  const press = ({ touch }: ReturnType<typeof touchOf>, stitch: number, presses: number) => {
    touch.onstroke('start', [stitch], { ...MOUSE, presses });
    touch.onstroke('end', [], { ...MOUSE, presses });
  };

  it('fills what was of one yarn with a double press, as one step', () => {
    const bench = touchOf({ ...LEG, cells: [{ section: 'leg', row: { line: 'plain', nth: 1 }, size: 0, from: 6, letters: 'B' }] });
    const { session, row } = bench;
    session.choice = { kind: 'yarn', letter: 'B' };
    expect(lettersOf(bench, 3)).toBe('AAAAAABAAA');
    press(bench, row(3)[2]!, 1);
    expect(lettersOf(bench, 3)).toBe('AABAAABAAA');
    press(bench, row(3)[2]!, 2);
    expect(lettersOf(bench, 3)).toBe('BBBBBBBAAA');
    expect(session.history.past).toHaveLength(1);
    session.undo();
    expect(lettersOf(bench, 3)).toBe('AAAAAABAAA');
  });

  it('fills with a double press where the first press had nothing to lay', () => {
    const bench = touchOf({ ...LEG, cells: [{ section: 'leg', row: { line: 'plain', nth: 1 }, size: 0, from: 1, letters: 'BBB' }] });
    const { session, row } = bench;
    session.choice = { kind: 'yarn', letter: 'A' };
    press(bench, row(3)[2]!, 1);
    press(bench, row(3)[2]!, 2);
    expect(lettersOf(bench, 3)).toBe('AAAAAAAAAA');
    press(bench, row(3)[7]!, 1);
    press(bench, row(3)[7]!, 2);
    expect(session.history.past).toHaveLength(1);
  });

  it('goes straight along the row with Shift', () => {
    const bench = touchOf(LEG);
    const { session, touch, row } = bench;
    session.choice = { kind: 'yarn', letter: 'B' };
    touch.onstroke('start', [row(3)[1]!], MOUSE);
    touch.onstroke('move', [row(4)[2]!, row(3)[4]!, row(4)[5]!], { ...MOUSE, shift: true });
    touch.onstroke('end', [], { ...MOUSE, shift: true });
    expect(lettersOf(bench, 3)).toBe('ABBBBAAAAA');
    expect(lettersOf(bench, 4)).toBe('AAAAAAAAAA');
  });
});

describe('laying a yarn by keys', () => {
  const lettersOf = ({ session, row }: ReturnType<typeof touchOf>, n: number) => row(n).map((stitch) => session.pattern.yarns[session.colours.yarn[stitch]!]!.letter).join('');

  it('lays it on the stitch, with Shift along the row from there, with Control on what is of one yarn', () => {
    const bench = touchOf(LEG);
    const { session, touch, row } = bench;
    session.choice = { kind: 'yarn', letter: 'B' };
    touch.ontap(row(3)[2]!, KEY);
    expect(lettersOf(bench, 3)).toBe('AABAAAAAAA');
    touch.ontap(row(3)[5]!, { ...KEY, shift: true });
    expect(lettersOf(bench, 3)).toBe('AABBBBAAAA');
    touch.ontap(row(3)[8]!, { ...KEY, control: true });
    expect(lettersOf(bench, 3)).toBe('AABBBBBBBB');
    expect(session.history.past).toHaveLength(3);
    // From another row there is no straight way.
    touch.ontap(row(4)[1]!, { ...KEY, shift: true });
    expect(lettersOf(bench, 4)).toBe('ABAAAAAAAA');
  });
});

describe('dropping a motif', () => {
  it('places it where the chart was pointed at last, then only points', () => {
    const { session, touch, row } = touchOf();
    session.choice = { kind: 'motif', motif: 'tick', lie: 'centre', mirror: false };
    session.pointAt(row(3)[2]!, 'chart');
    touch.drop();
    expect(session.pattern.placements).toHaveLength(2);
    expect(session.choice).toEqual({ kind: 'point' });
    touch.drop();
    expect(session.pattern.placements).toHaveLength(2);
  });
});

describe('what is chosen, as a sentence', () => {
  it.each([
    [{ kind: 'move', placement: 'p1' } as const, 'Move Tick: drag it over the chart.'],
    [{ kind: 'yarn', letter: 'B' } as const, 'Lay B chalk. Drag over stitches.'],
    [{ kind: 'motif', motif: 'tick', lie: 'once', mirror: false } as const, 'Place Tick. Its bottom row goes on the row you touch.'],
  ])('%o', (choice, sentence) => {
    expect(choiceSentence(choice, PATTERN)).toBe(sentence);
  });

  it('says that a motif is locked', () => {
    expect(choiceSentence({ kind: 'move', placement: 'p1' }, { ...PATTERN, placements: [{ ...LAID, locked: true }] })).toBe('Tick is locked where it lies.');
  });
});
