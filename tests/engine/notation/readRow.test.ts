import { cpuMs } from '../../setup/cpuMs.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_TEXT, readRow } from '../../../src/engine/notation/readRow.ts';
import type { Instruction } from '../../../src/engine/notation/instruction.ts';
import { compactRow } from './compactRow.ts';
import { PHRASES } from './phrases.ts';

const us = { terms: 'us', sizes: 1 } as const;

describe.each(PHRASES)('phrases in print: $source', ({ terms, sizes, rows }) => {
  it.each(rows)('%s', (phrase, tree) => {
    const { body, stated, findings } = readRow(phrase, { terms, sizes });
    expect(compactRow(body, stated)).toBe(tree);
    expect(findings).toEqual([]);
  });

  it.each(rows)('the same in capitals: %s', (phrase, tree) => {
    // The article A before a stitch can't be told from yarn A in capitals, so rows with one are left as they are.
    const written = /\ba\b/.test(phrase) || /\[[a-z]/.test(phrase) ? phrase : phrase.toUpperCase();
    expect(compactRow(readRow(written, { terms, sizes }).body).toLowerCase()).toBe(tree.replace(/ = .*$/, '').toLowerCase());
  });
});

describe('words that can not be read', () => {
  it.each([
    ['sc in next 3 sts, wibble the yarn, sc in next 2 sts', 'sc@next3 ?wibble the yarn? sc@next2', [['unread', 18, 33]]],
    ['sc 2; sc in 3rd ch of next loop, sc', 'sc@next2 ?sc in 3rd ch of next loop? sc@next1', [['unread', 6, 31]]],
    ['dc in each dc and in each ch-1 sp across, turn', '?dc in each dc and in each ch-1 sp across? turn', [['unread', 0, 40]]],
    ['sc in each dc and 2 sc in each ch-2 sp around', '?sc in each dc and 2 sc in each ch-2 sp around?', [['unread', 0, 45]]],
    ['skip 12 crosses, sc', '?skip 12 crosses? sc@next1', [['unread', 0, 15]]],
    ['B 2', '?B 2?', [['unread', 0, 3]]],
    ['ch-3 sp', '?ch-3 sp?', [['unread', 0, 7]]],
    ['sc2tog over next 3 sts, sc', '?sc2tog over next 3 sts? sc@next1', [['unread', 0, 22]]],
    ['(sc 3, wibble) 2 times', '(sc@next3 ?wibble?)x2', [['unread', 7, 13]]],
    ['*sc 2, wibble; rep from * to end', '*sc@next2 ?wibble?*>end', [['unread', 7, 13]]],
    ['foo (bar, baz) qux, sc', '?foo (bar, baz) qux? sc@next1', [['unread', 0, 18]]],
    ['(sc in next 3 sts', '?(? sc@next3', [['unread', 0, 1]]],
    ['sc 3), sc 2', 'sc@next3 ?)? sc@next2', [['unread', 4, 5]]],
    ['sc 3 ] ch 1', 'sc@next3 ?]? ch1', [['unread', 5, 6]]],
    ['*sc 3', '?*? sc@next3', [['unread', 0, 1]]],
    ['rep from * to end, sc', '?rep from * to end? sc@next1', [['unread', 0, 17]]],
    ['wibble and sc in next st', '?wibble? sc@next1', [['unread', 0, 6]]],
    ['wibble then sc', '?wibble? sc@next1', [['unread', 0, 6]]],
    ['sc in next 3 sts evenly spaced', 'sc@next3 ?evenly spaced?', [['unread', 17, 30]]],
    ['sc in next 99999999999 sts', '?sc in next 99999999999 sts?', [['unread', 0, 26]]],
    ['quintr in next st', '?quintr in next st?', [['unread', 0, 17]]],
    ['ch 1 over the point, sc', 'ch1 ?over the point? sc@next1', [['unread', 5, 19]]],
  ] as const)('%s', (text, tree, found) => {
    const { body, findings } = readRow(text, us);
    expect(compactRow(body)).toBe(tree);
    expect(findings.map(({ rule, where }) => [rule, ...where.text!])).toEqual(found);
    for (const { where, found: words } of findings) expect(text.slice(...where.text!)).toBe(words);
  });
});

describe('the first stitch missed under a turning chain', () => {
  it.each([
    ['ch 3, turn, miss first st, dc in each st to end', 'ch3=stitch turn "miss first st" dc@end'],
    ['turn, ch 3 (counts as dc), skip the first dc, dc 4', 'turn ch3=stitch "skip the first dc" dc@next4'],
    ['ch 2, miss 1st st, hdc 4, join', 'ch2=stitch "miss 1st st" hdc@next4 join'],
    ['ch 1, turn, skip first st, sc in each st across', 'ch1 turn skip1 sc@across'],
    ['ch 3 (does not count), turn, skip first st, dc 4', 'ch3=no turn skip1 dc@next4'],
    ['ch 3, turn, skip next st, dc 4', 'ch3 turn skip1 dc@next4'],
    ['ch 3, turn, dc 2, skip first st', 'ch3 turn dc@next2 skip1'],
  ])('%s', (text, tree) => {
    expect(compactRow(readRow(text, us).body)).toBe(tree);
  });
});

describe('words that contradict the pattern', () => {
  it.each([
    ['us', 3, 'sc in next 20 (24) sts', 'sizesMismatch', [11, 18], 2, 3],
    ['us', 3, 'ch 41 (45, 49, 53)', 'sizesMismatch', [3, 18], 4, 3],
    ['us', 1, 'sc in next 6 (8) sts', 'sizesMismatch', [11, 16], 2, 1],
    ['us', 1, 'sc 4 (5, 6), sc', 'sizesMismatch', [3, 11], 3, 1],
    ['us', 3, 'sc in each st across (40, 44)', 'sizesMismatch', [22, 28], 2, 3],
    ['uk', 1, 'sc in next st', 'otherTerms', [0, 2], 'sc', 'dc'],
    ['us', 1, 'htr in next 2 sts', 'otherTerms', [0, 3], 'htr', 'hdc'],
    ['us', 1, 'dc in next htr', 'otherTerms', [11, 14], 'htr', 'hdc'],
  ] as const)('in %s terms and %i sizes: %s', (terms, sizes, text, rule, range, found, expected) => {
    expect(readRow(text, { terms, sizes }).findings.map((one) => [one.rule, one.where.text, one.found, one.expected])).toEqual([[rule, range, found, expected]]);
  });

  it('finds a yarn that the pattern has not, and reads it all the same', () => {
    const { body, findings } = readRow('sc in next 2 sts, change to D, sc', { ...us, letters: ['A', 'B'] });
    expect(compactRow(body)).toBe('sc@next2 to$D sc@next1');
    expect(findings.map((one) => [one.rule, one.where.text, one.found])).toEqual([['unknownYarn', [28, 29], 'D']]);
  });

  it('takes small letters for yarns where the pattern has them', () => {
    expect(compactRow(readRow('with b, sc in next 3 sts', { ...us, letters: ['A', 'B'] }).body)).toBe('$B sc@next3');
    expect(compactRow(readRow('with a, ch 4', us).body)).toBe('$A ch4');
  });

  it('refuses a pattern of no sizes', () => {
    expect(() => readRow('sc', { terms: 'us', sizes: 0 })).toThrow(new RangeError('a pattern has 1 size or more, not 0'));
  });
});

describe('reading any text', () => {
  const words = ['sc', '2', 'dc', 'in', 'next', 'st', 'sts', 'each', 'ch', '(', ')', '[', ']', '*', ',', ';', '.', 'rep', 'from', 'to', 'end', 'last', '3', 'turn', 'leave', 'unworked', 'of', 'the', 'row', 'below', 'A', 'B', 'with', 'join', 'sl', 'ring', 'inc', 'dec', 'times', 'x', '-', '—', '26', '(26 sts)', 'and', 'then', 'rows', '4', 'skip', 'seam', 'BLO', 'FPdc', 'spike', '5-dc', 'bobble', 'ending', 'more', 'as', 'around', 'across', 'until', '’', '½', '{', '}', 'magic', 'same', 'first', '2nd', 'from', 'hook', 'yarn', 'draw', 'through', 'sew', 'cut', 'place', 'marker'];
  const soup = fc.array(fc.constantFrom(...words), { maxLength: 60 }).map((list) => list.join(' '));
  const anything = fc.oneof(soup, fc.string({ unit: 'grapheme', maxLength: 200 }), fc.string({ unit: 'binary', maxLength: 120 }));

  it('never throws, keeps every range inside its text and in order, and takes less than a second', () => {
    let slowest = 0;
    fc.assert(
      fc.property(anything, fc.constantFrom('us' as const, 'uk' as const), fc.integer({ min: 1, max: 4 }), (text, terms, sizes) => {
        const from = cpuMs();
        const { body, findings, stated } = readRow(text, { terms, sizes });
        slowest = Math.max(slowest, cpuMs() - from);
        const inside = ([start, end]: readonly [number, number]) => start >= 0 && start <= end && end <= text.length;
        const check = (nodes: readonly Instruction[]) => {
          for (const node of nodes) {
            expect(inside(node.range)).toBe(true);
            if (node.kind === 'unread') expect(text.slice(...node.range)).toBe(node.text);
            if (node.kind === 'repeat' || node.kind === 'group') check(node.body);
          }
        };
        check(body);
        if (stated) expect(inside(stated.range)).toBe(true);
        for (const { where } of findings) expect(inside(where.text!)).toBe(true);
      }),
      { numRuns: 2500, seed: 20 },
    );
    expect(slowest).toBeLessThan(1000);
  });

  it.each(['sc in next 3 sts, ', 'foo ', '(', '((a) ', '*', '*sc ', '([{', 'rep from * ', 'join ', '20 (24, 28) ', 'draw through ', '1 ', 'in next ', '— ', ')', 'x6', 'ch 1 (counts as ', 'A 1 ', ', 6 sts. ', '(26 sts) ', '{sc} 2 times ', 'with A ', 'until ', 'for 2 ', 'twenty-', 'one hundred and ', 'sc across (', 'sc across, 3 sc in each corner ', 'inc 1 at ', '3 open meshes ', 'before picot ', 'keep on (', '2 sc with 1 sc ', 'dc across and dc in each sp ', 'magic ring, ch 3 '])('stays linear over a long text of “%s”', (piece) => {
    const time = (length: number) => {
      const text = piece.repeat(Math.ceil(length / piece.length));
      const from = cpuMs();
      readRow(text, { terms: 'us', sizes: 3 });
      return cpuMs() - from;
    };
    time(20_000);
    // A quadratic reader would take 64 times as long for 8 times the text; the bound leaves room for a busy machine.
    const [short, long] = [Math.max(time(25_000), 4), time(200_000)];
    expect(long).toBeLessThan(short * 40 + 200);
  });

  it('refuses more than two million characters and says so', () => {
    const { body, findings } = readRow('a'.repeat(LONGEST_TEXT + 1), us);
    expect(body.map(({ kind }) => kind)).toEqual(['unread']);
    expect(findings.map(({ rule, found, expected }) => [rule, found, expected])).toEqual([['tooLong', LONGEST_TEXT + 1, LONGEST_TEXT]]);
  });
});
