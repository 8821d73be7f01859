import { describe, expect, it } from 'vitest';
import { NO_HISTORY } from '../../../src/engine/1-pattern/history.ts';
import type { Motif } from '../../../src/engine/1-pattern/pattern.ts';
import { Session } from '../../../src/editor/bench/session.svelte.ts';
import { MotifDesk } from '../../../src/editor/motif/motifDesk.svelte.ts';
import { LEG } from '../bench/benchOf.ts';

const BLANK: Motif = { id: 'm', name: 'Blank', cells: ['....', '....', '....'] };

function deskOf(motif: Motif = BLANK): { session: Session; desk: MotifDesk; cells: () => readonly string[] } {
  const session = new Session({ pattern: { ...LEG, motifs: [motif] }, history: NO_HISTORY, keep: () => undefined, now: () => 1 });
  const desk = new MotifDesk(session, () => motif.id);
  desk.ink = { kind: 'yarn', letter: 'B' };
  return { session, desk, cells: () => session.pattern.motifs[0]!.cells };
}

describe('drawing on the sheet', () => {
  it('makes one step of a stroke, however long, and undo takes it back', () => {
    const { session, desk, cells } = deskOf();
    desk.start({ x: 0, y: 0 }, false);
    desk.move({ x: 2, y: 0 });
    desk.move({ x: 3, y: 1 });
    expect(cells()).toEqual(BLANK.cells);
    expect(desk.shown!.cells).toEqual(['BBB.', '...B', '....']);
    desk.end();
    expect(cells()).toEqual(['BBB.', '...B', '....']);
    expect(session.undoLabel).toBe('Draw Blank');
    expect(session.history.past).toHaveLength(1);
    session.undo();
    expect(cells()).toEqual(BLANK.cells);
  });

  it.each([
    ['line', false, ['B...', '.BB.', '...B']],
    ['rectangle', false, ['BBBB', 'B..B', 'BBBB']],
    ['rectangle', true, ['BBBB', 'BBBB', 'BBBB']],
  ] as const)('draws a %s (filled: %s) from corner to corner', (tool, isFilled, drawn) => {
    const { desk, cells } = deskOf();
    desk.tool = tool;
    desk.isFilled = isFilled;
    desk.start({ x: 0, y: 0 }, false);
    desk.move({ x: 3, y: 2 });
    desk.end();
    expect(cells()).toEqual(drawn);
  });

  it('fills what hangs together', () => {
    const { desk, cells } = deskOf({ ...BLANK, cells: ['.A..', '.A..', 'AA..'] });
    desk.tool = 'fill';
    desk.start({ x: 0, y: 0 }, false);
    desk.end();
    expect(cells()).toEqual(['BA..', 'BA..', 'AA..']);
  });

  it('draws with symmetry', () => {
    const { desk, cells } = deskOf();
    desk.symmetry = { group: 'p2mm', axis: -1 };
    desk.start({ x: 0, y: 0 }, false);
    desk.end();
    expect(cells()).toEqual(['B..B', '....', 'B..B']);
  });

  it('sets stitches in a grid of their own, which goes when it is empty', () => {
    const { session, desk } = deskOf();
    desk.ink = { kind: 'stitch', letter: 'b' };
    desk.start({ x: 1, y: 1 }, false);
    desk.end();
    expect(session.pattern.motifs[0]!.stitches).toEqual(['....', '.b..', '....']);
    desk.ink = { kind: 'stitch', letter: '.' };
    desk.start({ x: 1, y: 1 }, false);
    desk.end();
    expect(session.pattern.motifs[0]!.stitches).toBeUndefined();
  });

  it('calls a stroke off', () => {
    const { desk, cells } = deskOf();
    desk.start({ x: 0, y: 0 }, false);
    desk.cancel();
    desk.end();
    expect(cells()).toEqual(BLANK.cells);
  });

  it('passes what is drawn beyond the edges over', () => {
    const { desk, cells } = deskOf();
    desk.start({ x: 3, y: 2 }, false);
    desk.move({ x: 9, y: 2 });
    desk.end();
    expect(cells()).toEqual(['....', '....', '...B']);
  });
});

describe('choosing a part', () => {
  const MARKED = { ...BLANK, cells: ['AB..', 'B...', '....'] };

  it('moves it, or a copy', () => {
    const { desk, cells } = deskOf(MARKED);
    desk.tool = 'select';
    desk.start({ x: 0, y: 0 }, false);
    desk.move({ x: 1, y: 1 });
    desk.end();
    expect(desk.part).toEqual({ x: 0, y: 0, width: 2, height: 2 });
    desk.start({ x: 0, y: 0 }, false);
    desk.move({ x: 2, y: 1 });
    desk.end();
    expect(cells()).toEqual(['....', '..AB', '..B.']);
    expect(desk.part).toEqual({ x: 2, y: 1, width: 2, height: 2 });
    desk.start({ x: 2, y: 1 }, true);
    desk.move({ x: 0, y: 1 });
    desk.end();
    expect(cells()).toEqual(['....', 'ABAB', 'B.B.']);
  });

  it('copies and lays it by keys, and clears it', () => {
    const { desk, cells } = deskOf(MARKED);
    desk.grow(1, 0);
    desk.grow(0, 1);
    expect(desk.part).toEqual({ x: 0, y: 0, width: 2, height: 2 });
    desk.copy();
    desk.walk(1, 0);
    desk.paste();
    expect(cells()).toEqual(['AB..', 'B.AB', '..B.']);
    desk.clear();
    expect(cells()).toEqual(['AB..', 'B...', '....']);
    desk.lay('A');
    expect(cells()).toEqual(['AB..', 'B.AA', '..AA']);
  });

  it('moves by keys within the edges', () => {
    const { desk, cells } = deskOf(MARKED);
    desk.part = { x: 0, y: 0, width: 2, height: 2 };
    desk.shift(1, 1, false);
    expect(cells()).toEqual(['....', '.AB.', '.B..']);
    desk.shift(0, 5, false);
    expect(desk.part).toEqual({ x: 1, y: 1, width: 2, height: 2 });
  });
});

describe('using the tools by keys', () => {
  it.each([
    ['line', ['B...', '.BB.', '...B']],
    ['rectangle', ['BBBB', 'B..B', 'BBBB']],
  ] as const)('begins a %s with one press and ends it with the next', (tool, drawn) => {
    const { session, desk, cells } = deskOf();
    desk.tool = tool;
    desk.press(false);
    for (const [dx, dy] of [[1, 0], [1, 0], [1, 0], [0, 1], [0, 1]] as const) desk.walk(dx, dy);
    expect(desk.cursor).toEqual({ x: 3, y: 2 });
    expect(desk.shown!.cells).toEqual(drawn);
    expect(cells()).toEqual(BLANK.cells);
    desk.press(false);
    expect(cells()).toEqual(drawn);
    expect(session.history.past).toHaveLength(1);
  });

  it('calls a line off', () => {
    const { session, desk } = deskOf();
    desk.tool = 'line';
    desk.press(false);
    desk.walk(2, 0);
    desk.cancel();
    expect(desk.isDrawing).toBe(false);
    expect(session.history.past).toHaveLength(0);
  });

  it('fills, and draws with the pencil, with one press', () => {
    const { desk, cells } = deskOf({ ...BLANK, cells: ['.A..', '.A..', 'AA..'] });
    desk.tool = 'fill';
    desk.press(false);
    expect(cells()).toEqual(['BA..', 'BA..', 'AA..']);
    desk.tool = 'pencil';
    desk.walk(3, 0);
    desk.press(false);
    expect(cells()).toEqual(['BA.B', 'BA..', 'AA..']);
  });

  it.each([[false, ['..B.', '....', '....']], [true, ['B.B.', '....', '....']]] as const)('chooses a part, takes it up (a copy: %s) and puts it down', (isCopy, drawn) => {
    const { desk, cells } = deskOf({ ...BLANK, cells: ['B...', '....', '....'] });
    desk.tool = 'select';
    desk.press(false);
    desk.walk(0, 1);
    desk.press(false);
    expect(desk.part).toEqual({ x: 0, y: 0, width: 1, height: 2 });
    desk.press(isCopy);
    desk.walk(1, 0);
    desk.walk(1, 0);
    desk.press(isCopy);
    expect(cells()).toEqual(drawn);
    expect(desk.part).toEqual({ x: 2, y: 0, width: 1, height: 2 });
  });
});
