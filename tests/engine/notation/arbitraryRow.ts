import fc from 'fast-check';
import type { StitchKind } from '../../../src/engine/craft/stitches.ts';
import { foldPicots } from '../../../src/engine/notation/foldPicots.ts';
import { stitchRow } from '../../../src/engine/craft/stitches.ts';
import type { Amount, Instruction, Into, PlaceWord, Stated, StitchCall, Times } from '../../../src/engine/notation/instruction.ts';

const range = [0, 0] as const;
const PLAIN: readonly StitchKind[] = ['sc', 'hdc', 'dc', 'tr', 'dtr'];
const LEGGED: readonly StitchKind[] = ['bobble', 'puff', 'popcorn', 'cluster', 'shell', 'vst'];
const EXTENT = fc.constantFrom('across' as const, 'around' as const, 'end' as const);

/** A number, or one for each of `sizes` sizes that are not all the same. */
function amount(sizes: number, min: number, max: number): fc.Arbitrary<Amount> {
  const one = fc.integer({ min, max });
  return sizes === 1 ? one : fc.oneof({ weight: 2, arbitrary: one }, { weight: 1, arbitrary: fc.array(one, { minLength: sizes, maxLength: sizes }) });
}

const call: fc.Arbitrary<StitchCall> = fc.oneof(
  fc.record({ kind: fc.constantFrom(...PLAIN, 'slst' as const), loop: fc.constantFrom('both' as const, 'front' as const, 'back' as const) }).map(({ kind, loop }) => ({ kind, loop, together: 1, legs: 0, post: 'none' as const, spike: 0 })),
  fc.record({ kind: fc.constantFrom(...PLAIN), together: fc.integer({ min: 2, max: 5 }) }).map(({ kind, together }) => ({ kind, together, loop: 'both' as const, legs: 0, post: 'none' as const, spike: 0 })),
  fc.record({ kind: fc.constantFrom(...PLAIN), post: fc.constantFrom('front' as const, 'back' as const) }).map(({ kind, post }) => ({ kind, together: 1, loop: 'both' as const, legs: 0, post, spike: 0 })),
  fc.integer({ min: 1, max: 4 }).map((spike) => ({ kind: 'sc' as const, together: 1, loop: 'both' as const, legs: 0, post: 'none' as const, spike })),
  fc.record({ kind: fc.constantFrom(...LEGGED), legs: fc.integer({ min: 0, max: 7 }) }).map(({ kind, legs }) => ({ kind, together: 1, loop: 'both' as const, legs: legs < 2 ? stitchRow(kind).legs : legs, post: 'none' as const, spike: 0 })),
  fc.record({ kind: fc.constantFrom(...LEGGED), legs: fc.integer({ min: 2, max: 7 }), of: fc.constantFrom('tr' as const, 'dtr' as const, 'sc' as const) }).map(({ kind, legs, of }) => ({ kind, together: 1, loop: 'both' as const, legs, post: 'none' as const, spike: 0, legKind: of })),
);

const what: fc.Arbitrary<PlaceWord> = fc.constantFrom('st', 'st', 'st', 'ch', 'sp', 'sc', 'dc', 'hdc', 'slst', 'bobble', 'puff');

const corner = fc.oneof(
  fc.constantFrom<{ what: PlaceWord }>({ what: 'corner' }, { what: 'cornerSt' }, { what: 'cornerSp' }),
  fc.integer({ min: 1, max: 5 }).map((loops) => ({ what: 'cornerSp' as const, loops })),
);

function place(sizes: number): fc.Arbitrary<Into> {
  return fc.oneof(
    fc.record({ count: amount(sizes, 1, 30), what, loops: fc.integer({ min: 1, max: 6 }), looped: fc.boolean() }).map(({ count, what, loops, looped }): Into => ({ at: 'next', count, what, ...(what === 'sp' && looped ? { loops } : {}) })),
    fc.record({ except: fc.oneof(fc.constant(0), amount(sizes, 1, 9)), what, word: EXTENT }).map((into): Into => ({ at: 'across', ...into })),
    fc.record({ except: fc.constantFrom(0, 1, 3), what: fc.constant('st' as const) }).map((into): Into => ({ at: 'across', ...into, word: 'marker' })),
    fc.record({ of: what, word: fc.constantFrom('corner' as const, 'space' as const) }).map(({ of, word }): Into => ({ at: 'across', except: 0, what: of, word })),
    fc.record({ count: amount(sizes, 1, 6), of: corner }).map(({ count, of }): Into => ({ at: 'next', count, ...of })),
    fc.constantFrom<Into>({ at: 'same' }, { at: 'ring' }, { at: 'marker' }, { at: 'top' }),
    fc.record({ count: amount(sizes, 1, 9), word: fc.constantFrom('unworked' as const, 'rowBelow' as const) }).map((into): Into => ({ at: 'open', ...into })),
    fc.record({ count: amount(sizes, 1, 9), name: fc.constantFrom('leg', 'instep', 'right foot') }).map((into): Into => ({ at: 'section', ...into })),
    fc.record({ at: fc.constantFrom('first' as const, 'last' as const), what }),
    fc.integer({ min: 1, max: 24 }).map((nth): Into => ({ at: 'fromHook', nth })),
  );
}

function work(sizes: number): fc.Arbitrary<Instruction> {
  const beside = fc.constantFrom<Into>({ at: 'beside', side: 'before', what: 'picot' }, { at: 'beside', side: 'after', what: 'picot' });
  return fc.record({ stitch: call, each: fc.oneof({ weight: 3, arbitrary: fc.constant(1) }, { weight: 1, arbitrary: amount(sizes, 2, 9) }), into: fc.oneof({ weight: 12, arbitrary: place(sizes) }, { weight: 1, arbitrary: beside }) }).map(({ stitch, each, into }) => {
    // Decreases go over next places or to the end; how often into each place can't be said of them.
    const drawn = stitch.together > 1 && into.at !== 'next' && into.at !== 'across' ? ({ at: 'next', count: 1, what: 'st' } as const) : into;
    // A slip stitch in the first stitch after others is a join.
    const joins = stitch.kind === 'slst' && into.at === 'first';
    return { kind: 'work', stitch, each: stitch.together > 1 ? 1 : each, into: joins ? { at: 'last', what: 'st' } : drawn, range };
  });
}

/** Rows named by number, as a list, or the last ones; with or without moving numbers. */
function asRows(sizes: number): fc.Arbitrary<Instruction> {
  const rows = fc.oneof(
    fc.record({ from: fc.integer({ min: 1, max: 30 }), more: fc.integer({ min: 0, max: 4 }) }).map(({ from, more }) => ({ from, to: from + more })),
    fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 2, maxLength: 4 }).filter((list) => !list.every((row, at) => row === list[0]! + at)).map((list) => ({ from: Math.min(...list), to: Math.max(...list), rows: list })),
    fc.integer({ min: 1, max: 9 }).map((last) => ({ from: 0, to: 0, last })),
  );
  const runs = fc.oneof(fc.constantFrom('each' as const, 'between' as const, 'last' as const), fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 3 }));
  const change = fc.record({ runs, by: amount(sizes, 1, 6), fewer: fc.boolean() }).map(({ runs: which, by, fewer }) => ({ runs: which, by: fewer ? (typeof by === 'number' ? -by : by.map((one) => -one)) : by }));
  return fc.record({ which: rows, changes: fc.array(change, { maxLength: 3 }) }).map(({ which, changes }): Instruction => ({ kind: 'asRows', ...which, ...(changes.length > 0 ? { changes } : {}), range }));
}

function leaf(sizes: number): fc.Arbitrary<Instruction> {
  return fc.oneof(
    { weight: 12, arbitrary: work(sizes) },
    { weight: 1, arbitrary: fc.integer({ min: 1, max: 5 }).map((legs): Instruction => ({ kind: 'work', stitch: { kind: 'picot', together: 1, legs: legs < 2 ? 3 : legs, loop: 'both', post: 'none', spike: 0 }, each: 1, into: { at: 'top' }, range })) },
    { weight: 2, arbitrary: fc.record({ count: amount(sizes, 1, 60), counts: fc.constantFrom('stitch' as const, 'no' as const, 'each' as const, null, null) }).map(({ count, counts }): Instruction => ({ kind: 'chain', count, counts, range })) },
    { weight: 2, arbitrary: fc.record({ count: amount(sizes, 1, 12), what }).map(({ count, what }): Instruction => ({ kind: 'skip', count, what, range })) },
    { weight: 1, arbitrary: fc.oneof(amount(sizes, 1, 20), fc.constant('rest' as const)).map((count): Instruction => ({ kind: 'leave', count, range })) },
    { weight: 1, arbitrary: fc.oneof(fc.record({ mesh: fc.constantFrom('open' as const, 'solid' as const), count: amount(sizes, 1, 90) }).map(({ mesh, count }): Instruction => ({ kind: 'mesh', mesh, count, range })), amount(sizes, 1, 30).map((count): Instruction => ({ kind: 'leave', count, what: 'picot', range }))) },
    { weight: 1, arbitrary: fc.record({ nth: amount(sizes, 1, 40), from: fc.constantFrom('beforeSeam' as const, 'afterSeam' as const, 'start' as const), yarn: fc.constantFrom('A', 'B', null) }).map(({ nth, from, yarn }): Instruction => ({ kind: 'joinAt', nth, from, yarn, range })) },
    { weight: 2, arbitrary: fc.record({ letter: fc.constantFrom('A', 'B', 'C'), word: fc.constantFrom('with' as const, 'change' as const) }).map(({ letter, word }): Instruction => ({ kind: 'yarn', letter, word, range })) },
    { weight: 1, arbitrary: asRows(sizes) },
    { weight: 1, arbitrary: fc.oneof(fc.record({ count: amount(sizes, 1, 60) }).map(({ count }): Instruction => ({ kind: 'inPattern', even: false, into: { at: 'next', count, what: 'st' }, range })), fc.record({ except: fc.oneof(fc.constant(0), amount(sizes, 1, 9)), word: EXTENT }).map(({ except, word }): Instruction => ({ kind: 'inPattern', even: false, into: { at: 'across', except, what: 'st', word }, range })), fc.constantFrom('across' as const, 'around' as const).map((word): Instruction => ({ kind: 'inPattern', even: true, into: { at: 'across', except: 0, what: 'st', word }, range }))) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constantFrom(...PLAIN), word: EXTENT, by: amount(sizes, 1, 30), fewer: fc.boolean() }).map(({ kind, word, by, fewer }): Instruction => ({ kind: 'spread', stitch: { kind, together: 1, legs: 0, loop: 'both', post: 'none', spike: 0 }, word, by: fewer ? (typeof by === 'number' ? -by : by.map((one) => -one)) : by, range })) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constantFrom(...PLAIN), count: fc.oneof(amount(sizes, 1, 60), fc.constant(null)), along: fc.constantFrom('rowEnds' as const, 'across' as const, 'around' as const, 'end' as const) }).map(({ kind, count, along }): Instruction => ({ kind: 'evenly', stitch: { kind, together: 1, legs: 0, loop: 'both', post: 'none', spike: 0 }, count: along === 'rowEnds' ? count : (count ?? 7), along, range })) },
    { weight: 1, arbitrary: fc.constantFrom('RS', 'the seam lies at the back', 'a corner').map((text): Instruction => ({ kind: 'remark', text, range })) },
    { weight: 1, arbitrary: fc.constantFrom('twiddle it', 'brioche over 4 ribs', 'widen a little').map((text): Instruction => ({ kind: 'unread', text, range })) },
    {
      weight: 3,
      arbitrary: fc.constantFrom('turn', 'ring', 'joinRing', 'noJoin', 'marker', 'otherSide', 'seam', 'fastenOff', 'drawThrough', 'skipSeam').map((kind) => ({ kind, range }) as Instruction),
    },
    { weight: 1, arbitrary: fc.constant<Instruction>({ kind: 'join', at: 'first', range }) },
  );
}

/** Stitches of a group are made in its place: their own place is the same one, as reading gives them. */
function inGroup(sizes: number): fc.Arbitrary<Instruction> {
  return fc.oneof(
    fc.record({ stitch: call.filter(({ together, spike }) => together === 1 && spike === 0), each: amount(sizes, 1, 5) }).map(({ stitch, each }): Instruction => ({ kind: 'work', stitch, each, into: { at: 'same' }, range })),
    fc.integer({ min: 1, max: 5 }).map((count): Instruction => ({ kind: 'chain', count, counts: null, range })),
  );
}

function times(sizes: number): fc.Arbitrary<Times> {
  return fc.oneof(
    amount(sizes, 1, 40).map((count): Times => ({ kind: 'times', times: count })),
    fc.record({ except: fc.oneof(fc.constant(0), amount(sizes, 1, 9)), word: EXTENT }).map(({ except, word }): Times => ({ kind: 'toEnd', except, word })),
  );
}

/** A round that goes corner by corner, with the run after the last corner. */
function eachCorner(sizes: number): fc.Arbitrary<readonly Instruction[]> {
  const run: fc.Arbitrary<Instruction> = fc.constantFrom(...PLAIN).map((kind) => ({ kind: 'work', stitch: { kind, together: 1, legs: 0, loop: 'both', post: 'none', spike: 0 }, each: 1, into: { at: 'across', except: 0, what: 'st', word: 'corner' }, range }));
  const inCorner = fc.oneof(
    fc.record({ kind: fc.constantFrom(...PLAIN), each: amount(sizes, 2, 7) }).map(({ kind, each }) => ({ kind: 'work' as const, stitch: { kind, together: 1, legs: 0, loop: 'both' as const, post: 'none' as const, spike: 0 }, each, range })),
    fc.array(inGroup(sizes), { minLength: 1, maxLength: 3 }).map((body) => ({ kind: 'group' as const, body, range })),
  );
  return fc.record({ run, one: inCorner, of: corner, word: EXTENT }).map(({ run: to, one, of, word }) => [{ kind: 'repeat', body: [to, { ...one, into: { at: 'next', count: 1, ...of } }], times: { kind: 'toEnd', except: 0, word }, style: 'paren', range }, to]);
}

function clause(sizes: number, depth: number, star: boolean): fc.Arbitrary<Instruction> {
  const group = fc
    .record({ body: fc.array(inGroup(sizes), { minLength: 1, maxLength: 4 }), into: place(sizes) })
    .map(({ body, into }): Instruction => ({ kind: 'group', body, into, range }));
  if (depth === 0) return fc.oneof({ weight: 8, arbitrary: leaf(sizes) }, { weight: 1, arbitrary: group });
  const styles = star ? (['paren', 'bracket'] as const) : (['star', 'paren', 'bracket'] as const);
  const repeat = fc.constantFrom(...styles).chain((style) =>
    fc.record({ body: fc.array(clause(sizes, depth - 1, style === 'star'), { minLength: 1, maxLength: 4 }).filter(([first]) => first!.kind !== 'unread'), times: times(sizes) }).map(({ body, times }): Instruction => ({ kind: 'repeat', body, times, style, range })),
  );
  return fc.oneof({ weight: 8, arbitrary: leaf(sizes) }, { weight: 1, arbitrary: group }, { weight: 2, arbitrary: repeat });
}

function stated(sizes: number): fc.Arbitrary<Stated | null> {
  const count = amount(sizes, 1, 200);
  const unit = fc.constantFrom('', 'sts', 'sc', 'dc', 'hdc', 'tr', 'sl st', 'puff st', 'picot');
  return fc.oneof(
    fc.constant(null),
    fc.record({ count, unit }).map(({ count, unit }): Stated => ({ count, unit, of: 'row', step: null, range })),
    fc.record({ count, more: count }).map(({ count, more }): Stated => ({ count, unit: 'dc', of: 'row', step: null, also: [{ count: more, unit: 'ch-1 sps' }, { count, unit: 'sc' }], range })),
    fc.array(count, { minLength: 2, maxLength: 9 }).map((list): Stated => ({ count: list.at(-1)!, unit: 'sts', of: 'last', step: null, list, range })),
    fc.record({ count, unit, step: fc.oneof(fc.constant(null), fc.integer({ min: -6, max: 6 }).map((step) => step || 0), amount(sizes, 1, 4)) }).map(({ count, unit, step }): Stated => ({ count, unit, of: 'last', step, range })),
  );
}

/** A row of a pattern with so many sizes: instructions that reading can give, and a count. */
export function arbitraryRow(sizes: number): fc.Arbitrary<{ readonly body: readonly Instruction[]; readonly stated: Stated | null }> {
  const clauses = fc.array(fc.oneof({ weight: 14, arbitrary: clause(sizes, 2, false).map((one) => [one] as readonly Instruction[]) }, { weight: 1, arbitrary: eachCorner(sizes) }), { minLength: 1, maxLength: 8 });
  // Chains closed at once are picots, as reading gives them.
  return fc.record({ body: clauses.map((parts) => foldPicots(parts.flat())), stated: stated(sizes) });
}
