import { describe, expect, it } from 'vitest';
import type { Pattern, Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { sidesMeet } from '../../../src/engine/4-colour/sidesMeet.ts';
import { handPlacement } from './handFabric.ts';
import { picture } from './picture.ts';

const LEG = `Sample
Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6

LEG (worked flat, then seamed)
Foundation: with A, ch 13.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (12 sc)
Rows 2-4: ch 1, turn, sc in each st across. (12 sc)
`;

function coloured(text: string, cells: readonly string[], place: Partial<Placement>) {
  const read = patternFromText(text).pattern!;
  const lines = read.sections[0]!.lines;
  const pattern: Pattern = { ...read, motifs: [{ id: 'm', name: '', cells }], placements: [handPlacement({ section: 's1', row: { line: lines[1]!.id, nth: 0 }, ...place })] };
  const fabric = work(construct(pattern, 0));
  const colours = colour(pattern, fabric, 0);
  return { pattern, fabric, colours, fit: colours.fits[0]!, lines: picture(pattern, fabric, colours).filter((line) => line !== '') };
}

describe('colour on worked fabrics', () => {
  it('goes up through rows worked to and fro, right side out', () => {
    expect(coloured(LEG, ['BB.', 'B..'], { up: 2 }).lines).toEqual(['BBAAAAAAAAAA', 'BAAAAAAAAAAA', 'BBAAAAAAAAAA', 'BAAAAAAAAAAA']);
  });

  it('knows that the sides of a seamed leg meet, and those of an open one do not', () => {
    const open = coloured(LEG, ['BBBBB'], { across: 3 });
    expect(open.fit).toMatchObject({ across: 2, leftOver: { right: -3 }, cellsCut: 3, cutAtSeam: false });
    const seamed = coloured(`${LEG}Seam the side edges.\n\nFOOT\nRnd 1: sc in each st around.\n`, ['BBBBB'], { across: 3 });
    expect(seamed.fit.cutAtSeam).toBe(true);
    const meets = sidesMeet(seamed.fabric);
    expect(seamed.fabric.rows.map((row, r) => [row.word, meets[r]])).toEqual([
      ['foundation', true],
      ['row', true],
      ['row', true],
      ['row', true],
      ['row', true],
      ['step', false],
      ['round', true],
    ]);
  });

  it('keeps to the centre while a panel narrows on both sides', () => {
    const narrowing = `${LEG}Row 5: ch 1, turn, sc2tog, sc in each st to last 2 sts, sc2tog. (10 sc)\nRow 6: ch 1, turn, sc2tog, sc in each st to last 2 sts, sc2tog. (8 sc)\n`;
    const { lines } = coloured(narrowing, ['BB'], { align: 'centre', up: 6 });
    expect(lines.slice(0, 3)).toEqual(['AAABBAAA', 'AAAABBAAAA', 'AAAAABBAAAAA']);
  });

  it('takes the turning chain along and leaves the foundation in its yarn', () => {
    const { fabric, colours } = coloured(LEG, ['B'], { align: 'right', up: 4 });
    const row3 = fabric.rows.find((row) => row.number === 3)!;
    // Row 3 is a right-side row: its turning chain stands before the first stitch, at the right.
    expect([colours.yarn[row3.first], colours.yarn[row3.first + 1], colours.yarn[row3.first + 2]]).toEqual([1, 1, 0]);
    expect(new Set(colours.yarn.slice(fabric.rows[0]!.first, fabric.rows[0]!.end))).toEqual(new Set([0]));
  });
});
