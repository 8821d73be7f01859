import { cpuMs } from '../../setup/cpuMs.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { readLine } from '../../../src/engine/2-construct/readLine.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { guessTerms } from '../../../src/engine/notation/guessTerms.ts';
import { made } from '../workText.ts';
import { compactRow } from './compactRow.ts';
import { PHRASES } from './phrases.ts';

function rowsOf(text: string): string[] {
  const pattern = patternFromText(text).pattern!;
  return pattern.sections.flatMap((section) => section.lines.filter(({ kind }) => kind !== 'note').map((line) => compactRow(readLine(line, pattern).body)));
}

describe('text from print files and word processors', () => {
  const plain = 'T\nTerms: US\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, *sc in next 3 sts, 2 sc in next st, sc in next st; rep from * to end. (12 sts)\nRow 3: ch 1, turn, sc in each st across.\n';
  it.each([
    ['lines broken in the middle of rows', 'T\nTerms: US\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from\nhook and in each ch across.\nRow 2: ch 1, turn, *sc in next\n3 sts, 2 sc in next st, sc in\nnext st; rep from * to end.\n(12 sts)\nRow 3: ch 1, turn, sc in each st across.\n'],
    ['words hyphenated at the line\'s end', 'T\nTerms: US\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch ac-\nross.\nRow 2: ch 1, turn, *sc in next 3 sts, 2 sc in next st, sc in next st; re-\npeat from * to end. (12 sts)\nRow 3: ch 1, turn, sc in each st across.\n'],
    ['soft hyphens and non-breaking spaces', 'T\nTerms:\u00a0US\n\nPIECE\nFoun\u00addation: ch\u00a011.\nRow\u00a01: sc in 2nd ch from hook and in each ch a\u00adcross.\nRow 2: ch 1, turn, *sc in\u00a0next\u00a03\u00a0sts, 2\u202fsc in next st, sc in next st; rep\u00ad\neat from * to end. (12 sts)\nRow 3: ch 1, turn, sc in each st across.\n'],
    ['a page number between', 'T\nTerms: US\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, *sc in next 3 sts, 2 sc in next st,\n\n12\n\nsc in next st; rep from * to end. (12 sts)\nPage 3 of 9\nRow 3: ch 1, turn, sc in each st across.\n'],
  ])('%s change nothing', (_, text) => {
    expect(rowsOf(text)).toEqual(rowsOf(plain));
  });

  it('numbers the lines as the file has them, where words were broken', () => {
    const { lines } = patternFromText('T\nTerms: US\n\nPIECE\nFoundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch ac-\nross.\nRow 2: ch 1, turn, sc in each st across.\n');
    expect([...lines.values()].map(({ lineNumber }) => lineNumber)).toEqual([5, 6, 8]);
  });
});

describe('special stitches', () => {
  it.each([
    ['Special stitches: Cluster (cl): dc3tog in same st', 'cl in next st', "cluster'3@next1"],
    ['Cluster (cl): (yo, insert hook in st, draw up a loop, yo, draw through 2 loops) 4 times, yo and draw through all loops', 'cl in next 2 sts', "cluster'4@next2"],
    ['Shell (sh): 5 dc in same st', 'sh in next st, skip next 2 sts', '<5×dc@same>@next1 skip2'],
    ['Fan (fan): (2 dc, ch 1, 2 dc) in next st', 'fan in next ch-1 sp', '<2×dc@same ch1 2×dc@same>@next1:sp*1'],
    ['Bobble (bo): 6 tr worked together in one st', 'bo in next st', "bobble'6tr@next1"],
  ])('%s', (note, row, tree) => {
    const pattern = patternFromText(`T\nTerms: US\n${note}\n\nPIECE\nFoundation: ch 11.\nRow 1: ${row}\n`).pattern!;
    expect(compactRow(readLine(pattern.sections[0]!.lines[1]!, pattern).body)).toBe(tree);
  });
});

describe('terms that are not said', () => {
  // Words of one set of terms: the reference lists of the trade; heights of turning chains: published lessons of a crochet guild (1997).
  it.each([
    ['sc in each st, hdc in next st', 'us', 'words'],
    ['htr in each st, dc in next st', 'uk', 'words'],
    ['sc in next st, htr in next st, sc2tog', 'us', 'mixed'],
    ['Row 2: ch 3, turn, dc in each st.', 'us', 'chains'],
    ['Row 2: ch 1, turn, dc in each st.', 'uk', 'chains'],
    ['Row 2: ch 3, turn, tr in each st.', 'uk', 'chains'],
    ['Row 2: ch 4, turn, tr in each st.', 'us', 'chains'],
    ['Row 2: dc in each st.', 'us', 'nothing'],
  ] as const)('%s: %s by %s', (text, terms, by) => {
    expect(guessTerms(text)).toMatchObject({ terms, by });
  });

  it('says so where it is no more than a guess, and takes the terms that are set', () => {
    const text = 'T\n\nPIECE\nFoundation: ch 11.\nRow 1: dc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, dc in each st across.\n';
    expect(patternFromText(text).findings.map(({ rule, expected }) => [rule, expected])).toEqual([['termsGuessed', 'uk']]);
    expect(patternFromText(text, 'us').pattern!.terms).toBe('us');
    expect(patternFromText(text, 'us').findings).toEqual([]);
  });
});

describe('rows by reference', () => {
  const BEGIN = 'Foundation: ch 11.\nRow 1: sc in 2nd ch from hook and in each ch across.\n';
  it.each([
    ['rep last 2 rows', `${BEGIN}Row 2: ch 1, turn, 2 sc in next st, sc in each st across.\nRow 3: ch 1, turn, sc in each st across.\nRep last 2 rows twice.`, [11, 10, 11, 11, 12, 12, 13, 13]],
    ['rows 2 and 4', `${BEGIN}Row 2: ch 1, turn, 2 sc in next st, sc in each st across.\nRow 3: ch 1, turn, sc in each st across.\nRow 4: ch 1, turn, sc2tog, sc in each st across.\nRows 5-6: rep rows 2 and 4.`, [11, 10, 11, 11, 10, 11, 10]],
    ['work even for rows', `${BEGIN}Row 2: ch 1, turn, 2 sc in next st, sc in each st across.\nWork even for 3 rows.`, [11, 10, 11, 11, 11, 11]],
    ['one more between increases in one sentence', 'Rnd 1: magic ring, 6 sc in ring.\nRnd 2: 2 sc in each st around.\nRnds 3-6: continue, having 1 more st between incs in each rnd.', [6, 12, 18, 24, 30, 36]],
    ['in pattern: sc upon dc and dc upon sc', `Foundation: ch 11.\nRow 1: sc in 2nd ch from hook, dc in next ch, (sc in next ch, dc in next ch) 4 times.\nRow 2: ch 1, turn, (sc in next st, dc in next st) 5 times.\nRow 3: ch 1, turn, sc2tog, work in pattern over next 6 sts, sc2tog.`, [11, 10, 10, 8]],
    ['increases spread evenly', 'Rnd 1: magic ring, 12 sc in ring.\nRnd 2: sc in each st around, increasing 4 evenly.\nRnd 3: dec 6 sts evenly around.', [12, 16, 10]],
    ['every other stitch', 'Rnd 1: magic ring, 12 sc in ring.\nRnd 2: 2 sc in every other st around.', [12, 18]],
    ['a double star', `Foundation: ch 14.\nRow 1: sc in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, *sc in next 3 sts, **2 sc in next st, sc in next st; rep from * across, ending last rep at **.`, [14, 13, 15]],
  ] as const)('%s', (_, rows, counts) => {
    expect(made(rows)).toEqual(counts);
  });

  it('goes on in pattern stitch by stitch', () => {
    const pattern = patternFromText('T\nTerms: US\n\nPIECE\nFoundation: ch 7.\nRow 1: sc in 2nd ch from hook, dc in next ch, (sc in next ch, dc in next ch) 2 times.\nRow 2: ch 1, turn, (sc in next st, dc in next st) 3 times.\nRow 3: ch 1, turn, work in pattern across.').pattern!;
    const fabric = work(construct(pattern, 0));
    const last = fabric.rows.at(-1)!;
    const row = fabric.rows.at(-2)!;
    const kinds = (from: number, to: number) => [...fabric.kind.subarray(from, to)].slice(1);
    expect(kinds(last.first, last.end)).toEqual(kinds(row.first, row.end));
  });
});

describe('any text', () => {
  const words = PHRASES.flatMap(({ rows }) => rows.map(([phrase]) => phrase));
  const piece = fc.oneof(
    { weight: 6, arbitrary: fc.constantFrom(...words) },
    { weight: 3, arbitrary: fc.constantFrom('Row 1:', 'Rnds 2-9:', 'Rep last 2 rows 9 times.', 'Rows 3-40: work as rows 1 and 2, with 3 fewer sts in each run', 'PIECE', 'Sizes: S (M, L)', 'Terms: UK', 'Special stitches: Cl (cl): (((', '\n', '\n\n', '12', '* ** *', ')(', '\u00ad\n', 'counts 1, 2, … 9', 'Work even for 12 rows.', 'MC', 'Size M:') },
    { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 20 }) },
  );

  // 20,000 runs of this were made once when it was written, none slower than a second; the suite makes 4,000.
  it('is read and worked without a crash, each in less than a second', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(piece, fc.constantFrom(' ', ', ', '\n', '. ')), { maxLength: 10 }), (parts) => {
        const text = parts.map((part) => part.join('')).join('');
        const begun = cpuMs();
        const { pattern } = patternFromText(text);
        if (pattern) for (const size of pattern.sizes.keys()) work(construct(pattern, size));
        expect(cpuMs() - begun, JSON.stringify(text)).toBeLessThan(1000);
      }),
      { numRuns: Number(process.env['TURNWORK_FUZZ'] ?? 4000), seed: 77 },
    );
  }, 600_000);

  it('that stops at a marker nobody placed ends at the round\'s own beginning', () => {
    expect(made('Rnd 1: magic ring, 6 sc in ring.\nRnd 2: sc in each st to 3 sts before marker.').slice(0, 1)).toEqual([6]);
  });

  it('of 10,000 rows is read in time that grows with its length', () => {
    const rows = (count: number) => `T\nTerms: US\n\nPIECE\nFoundation: ch 21.\nRow 1: sc in 2nd ch from hook and in each ch across. (20 sc)\n${Array.from({ length: count }, (_, i) => `Row ${i + 2}: ch 1, turn, *sc in next 3 sts, 2 sc in next st, sc2tog, sc in next st; rep from * to last 6 sts, sc in next 6 sts. (20 sc)`).join('\n')}`;
    const timed = (count: number) => {
      const begun = cpuMs();
      const { pattern } = patternFromText(rows(count));
      for (const line of pattern!.sections[0]!.lines) readLine(line, pattern!);
      return cpuMs() - begun;
    };
    timed(500);
    const small = timed(2500);
    const large = timed(10_000);
    expect(large).toBeLessThan(10_000);
    // Four times the rows; eight leaves room for other work on the machine, sixteen would be quadratic.
    expect(large / small).toBeLessThan(10);
  }, 60_000);
});
