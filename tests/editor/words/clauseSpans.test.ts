import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { openPatternFile } from '../../../src/engine/1-pattern/file.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { readLine } from '../../../src/engine/2-construct/readLine.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { readRow } from '../../../src/engine/notation/readRow.ts';
import type { WordStyle } from '../../../src/engine/notation/writeWork.ts';
import { writeRowWords } from '../../../src/engine/readings/words/writeRowWords.ts';
import { clauseAt, clauseOf, clauseSpans } from '../../../src/editor/words/clauseSpans.ts';

const patternOf = (row: string): Pattern => patternFromText(`Mat\nTerms: US\nYarn A: a #000000\nYarn B: b #ffffff\n\nMAT\nFoundation: ch 13.\nRow 1: sc in 2nd ch from hook and in each ch across. (12 sc)\nRow 2: ${row}`).pattern!;

/** The words that each stitch of the last row lights, in working order. */
function lit(pattern: Pattern): string[] {
  const fabric = work(construct(pattern, 0));
  const program = construct(pattern, 0);
  const row = fabric.rows.at(-1)!;
  const line = pattern.sections[0]!.lines.at(-1)!;
  const spans = clauseSpans(readLine(line, pattern).body, 0, { ...row, instruction: fabric.instruction, worked: program.rows.at(-1)!.body });
  return Array.from({ length: row.end - row.first }, (_, i) => clauseOf(spans, row.first + i)).map((span) => (span ? line.text.slice(...span.range) : '-'));
}

const run = (words: string, count: number) => Array.from({ length: count }, () => words);

describe('the words that made a stitch', () => {
  it.each<[string, string, readonly string[]]>([
    ['runs', 'ch 1, turn, sc in next 3 sts, 2 sc in next st, sc in each st across.', ['ch 1', ...run('sc in next 3 sts', 3), ...run('2 sc in next st', 2), ...run('sc in each st across', 8)]],
    ['a repeat, by its own clauses', 'ch 1, turn, *sc in next st, sc2tog; rep from * to end.', ['ch 1', ...Array.from({ length: 4 }, () => ['sc in next st', 'sc2tog']).flat()]],
    ['a group, by its stitches', 'ch 1, turn, (sc, ch 2, sc) in next st, sc in each st across.', ['ch 1', 'sc', 'ch 2', 'ch 2', 'sc', ...run('sc in each st across', 11)]],
    ['colours, whose words make no stitch', 'ch 1, turn, with B sc in next 2 sts, with A sc in each st across.', ['ch 1', ...run('sc in next 2 sts', 2), ...run('sc in each st across', 10)]],
    ['the row that it is worked as', 'ch 1, turn, sc in each st across.\nRow 3: work as row 2.', run('work as row 2', 13)],
  ])('are the clause that it was worked from: %s', (_, row, words) => {
    const told = lit(patternOf(row));
    expect(told).toEqual(words);
  });

  it.each<[string, WordStyle]>([
    ['as usual', {}],
    ['in short runs', { runs: 'short' }],
    ['with repeats in brackets', { repeats: 'bracket' }],
    ['with counts after a dash', { count: 'dash' }],
    ['all of that', { runs: 'short', repeats: 'bracket', count: 'dash' }],
  ])('are found of every stitch of the demo, in its words as they stand beside the chart, worded %s', (_, style) => {
    const opened = openPatternFile(readFileSync(new URL('../../../static/puffin-quay.json', import.meta.url), 'utf8'));
    if (opened.kind !== 'ok') throw new Error(opened.kind);
    const { pattern } = opened;
    const program = construct(pattern, 1);
    const fabric = work(program);
    const worked = { program, fabric, colours: colour(pattern, fabric, 1) };
    let unknown = 0;
    fabric.rows.forEach((row, index) => {
      const text = writeRowWords(worked, index, 'uk', style);
      const { body } = readRow(text, { terms: 'uk', sizes: 1, letters: [...program.letters] });
      const spans = clauseSpans(body, 0, { ...row, instruction: fabric.instruction, worked: program.rows[index]!.body });
      for (let stitch = row.first; stitch < row.end; stitch++) {
        const span = clauseOf(spans, stitch);
        if (!span) unknown++;
        // Both ways: the middle of the clause that made it is that clause.
        else expect(clauseAt(spans, Math.max(span.range[0], span.range[1] - 1))!.stitches).toContain(stitch);
      }
    });
    expect(fabric.count).toBeGreaterThan(3000);
    expect(unknown).toBe(0);
  });

  it('are none where the words don\'t come out even with what was made', () => {
    const spans = clauseSpans(readRow('sc in next 5 sts', { terms: 'us', sizes: 1 }).body, 0, { first: 0, end: 3, instruction: [1, 1, 1], worked: [{ kind: 'turn', range: [0, 0] }, { kind: 'turn', range: [0, 0] }] });
    expect(spans).toEqual([]);
  });
});
