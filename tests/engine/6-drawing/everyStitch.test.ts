import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { layOut } from '../../../src/engine/5-layout/layOutSection.ts';
import { draw } from '../../../src/engine/6-drawing/draw.ts';
import { STITCHES, stitchOfCode } from '../../../src/engine/craft/stitches.ts';
import { writeRow } from '../../../src/engine/notation/writeRow.ts';
import { readRow } from '../../../src/engine/notation/readRow.ts';

const PLAIN = STITCHES.filter(({ kind, legs }) => legs === 0 && kind !== 'ring' && kind !== 'ch');

describe.each(PLAIN.map((row) => [row.kind, row] as const))('%s', (kind, { us, uk, usName, ukName }) => {
  it.each([['us', us, usName], ['uk', uk, ukName]] as const)('is read by its %s abbreviation and name, written back and drawn with its own symbol', (terms, short, name) => {
    for (const word of [short, name]) {
      const { pattern } = patternFromText(`Terms: ${terms.toUpperCase()}\n\nPIECE\nFoundation: ch 9.\nRow 1: ${terms === 'us' ? 'sc' : 'dc'} in 2nd ch from hook and in each ch across.\nRow 2: ch 1, turn, ${word} in next 8 sts.`, terms);
      const fabric = work(construct(pattern!, 0));
      expect(fabric.findings.filter(({ degree }) => degree === 'wrong')).toEqual([]);
      const { first, end } = fabric.rows.at(-1)!;
      const made = Array.from({ length: end - first }, (_, i) => stitchOfCode(fabric.kind[first + i]!).kind).filter((each) => each !== 'ch');
      expect(made).toEqual(Array.from({ length: 8 }, () => kind));
      const drawing = draw(fabric, layOut(fabric, 0, pattern!.gauge), { symbols: 'us', numbers: false, grid: false });
      expect(drawing.glyphs.map((glyph) => glyph.name)).toContain(us);
    }
    const { body } = readRow(`${short} in next 8 sts`, { terms, sizes: 1 });
    expect(readRow(writeRow(body, null, { terms }), { terms, sizes: 1 })).toMatchObject({ findings: [], body: [{ kind: 'work', stitch: { kind } }] });
  });
});
