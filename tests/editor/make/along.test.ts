import { describe, expect, it } from 'vitest';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { alongRows } from '../../../src/editor/make/alongRows.ts';
import { lengthOf, nextStitch, placeAgain, rowBack, rowIsMade, rowOn, runBack, runOn, START, stitchBack, stitchOn, type Place } from '../../../src/editor/make/place.ts';
import { tally } from '../../../src/editor/make/tally.ts';
import { whatNext } from '../../../src/editor/make/whatNext.ts';
import { openPatternFile } from '../../../src/engine/1-pattern/file.ts';
import { readFileSync } from 'node:fs';

/** A pattern worked as a maker makes it along. */
function made(text: string, size = 0) {
  const { pattern } = patternFromText(text);
  if (!pattern) throw new Error('the text gave no pattern');
  const program = construct(pattern, size);
  const fabric = work(program);
  return { pattern, program, fabric, rows: alongRows(pattern, fabric), yarn: colour(pattern, fabric, size).yarn };
}

const SMALL = `Small example
Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6

PANEL (worked flat)
Foundation: with A, ch 9.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (8 sc)
Row 2: ch 1, turn, 2 sc in next st, sc in next 4 sts, sc2tog, B sc 1. (8 sc)
Row 3: ch 1, turn, sc in next 5 sts. Leave 3 unworked. (5 sc)
`;

describe('going along', () => {
  const worked = made(SMALL);
  const { fabric, rows, yarn } = worked;
  const says = (place: Place, terms: 'us' | 'uk' = 'us') => whatNext(worked, nextStitch(rows, place)!, terms);

  it('says each run of a row in turn: the turning chain, the increase, the plain stitches, two together, the other yarn', () => {
    const said: string[] = [];
    let place: Place = { at: 2, done: 0 };
    while (!rowIsMade(rows, place)) {
      said.push(says(place));
      place = runOn(rows, fabric, yarn, place);
    }
    expect(said).toEqual([
      'chain 1, the turning chain, in slate',
      '2 × single crochet in the next stitch, in slate',
      'single crochet in each of the next 4 stitches, in slate',
      'single crochet 2 together, in slate',
      'single crochet in the next stitch, in chalk',
    ]);
  });

  it('names the stitches in the terms asked for', () => {
    expect(says({ at: 1, done: 1 }, 'uk')).toBe('double crochet in each of the next 8 stitches, in slate');
  });

  it('chains what the foundation says, and leaves out the last one in the first row', () => {
    expect(says({ at: 0, done: 0 })).toBe('chain 9, in slate');
    expect(tally(fabric, 0, lengthOf(rows, 0), 'right')).toMatchObject({ made: 9, of: 9 });
    expect(says({ at: 1, done: 0 })).toBe('leave out the last chain: it is the turning chain');
  });

  it('counts what is made and what the row leaves open, as the chart shows it', () => {
    const row = rows[3]!;
    expect(tally(fabric, row.row, 3, 'right')).toEqual({ made: 2, of: 5, openLeft: 3, openRight: 0 });
    expect(tally(fabric, row.row, 3, 'left')).toEqual({ made: 2, of: 5, openLeft: 0, openRight: 3 });
  });

  it('comes to the end of every row once, by stitches, runs or rows, and back the same way', () => {
    for (const [on, back] of [[stitchOn, stitchBack], [rowOn, (_rows: unknown, place: Place) => rowBack(place)]] as const) {
      let place: Place = START;
      const seen: string[] = [];
      for (let n = 0; n < 100; n++) {
        seen.push(`${place.at} ${place.done}`);
        const next = on(rows, place);
        if (next.at === place.at && next.done === place.done) break;
        place = next;
      }
      expect(new Set(seen).size).toBe(seen.length);
      expect(place).toEqual({ at: rows.length - 1, done: lengthOf(rows, rows.length - 1) });
      for (let n = 0; n < seen.length; n++) place = back(rows, place);
      expect(place).toEqual(START);
    }
    let place: Place = { at: 2, done: lengthOf(rows, 2) };
    const starts: number[] = [];
    while (place.at === 2 && place.done > 0) starts.push((place = runBack(rows, fabric, yarn, place)).done);
    expect(starts).toEqual([8, 7, 3, 1, 0]);
  });

  it('finds a kept place again, and not in a row that is gone', () => {
    const { line, nth } = rows[2]!.key;
    expect(placeAgain(rows, { line, nth, done: 4 })).toEqual({ at: 2, done: 4 });
    expect(placeAgain(rows, { line, nth, done: 400 })).toEqual({ at: 2, done: 9 });
    expect(placeAgain(rows, { line: 'gone', nth: 0, done: 1 })).toBeNull();
  });
});

describe('the demo made along', () => {
  it.each([0, 1, 2])('goes through every stitch of size %i once by runs, and counts each row as the fabric does', (size) => {
    const opened = openPatternFile(readFileSync(new URL('../../../static/puffin-quay.json', import.meta.url), 'utf8'));
    if (opened.kind !== 'ok') throw new Error('the demo could not be opened');
    const { pattern } = opened;
    const fabric = work(construct(pattern, size));
    const { yarn } = colour(pattern, fabric, size);
    const rows = alongRows(pattern, fabric);
    let place: Place = START;
    let stitches = 0;
    for (let steps = 0; steps < 20_000; steps++) {
      const next = runOn(rows, fabric, yarn, place);
      if (next.at === place.at) stitches += next.done - place.done;
      else expect(tally(fabric, rows[place.at]!.row, place.done, 'right').made).toBe(fabric.rows[rows[place.at]!.row]!.made);
      if (next.at === place.at && next.done === place.done) break;
      place = next;
    }
    expect(place).toEqual({ at: rows.length - 1, done: lengthOf(rows, rows.length - 1) });
    expect(stitches).toBe(rows.reduce((sum, row) => sum + row.end - row.first, 0));
  });
});
