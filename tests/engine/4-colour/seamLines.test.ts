import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../../src/engine/1-pattern/patternFromText.ts';
import type { Pattern, Placement } from '../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../src/engine/4-colour/colour.ts';
import { colourGrid } from '../../../src/engine/4-colour/colourGrid.ts';
import { seamLines } from '../../../src/engine/4-colour/seamLines.ts';
import { handPlacement } from './handFabric.ts';
import { picture } from './picture.ts';

const SOCK = `Sock
Yarn A: slate #4b5a6b
Yarn B: chalk #f2efe6

CUFF (worked flat)
Foundation: with A, ch 17.
Row 1 (RS): sc in 2nd ch from hook and in each ch across. (16 sc)

LEG (worked flat, then seamed)
Rows 1-2: ch 1, turn, sc in each st across. (16 sc)
Fasten off.
Seam the side edges.

HEEL (turned in short rows)
Join A with a sl st in the 4th st before the seam.
Row 1 (RS): ch 1, sc in same st, sc in next 3 sts, skip the seam, sc in next 4 sts. Leave the rest unworked. (8 sc)
Row 2: ch 1, turn, sc in next 6 sts. Leave 2 unworked. (6 sc)
Row 3: ch 1, turn, sc in next 4 sts. Leave 2 unworked. (4 sc)
Rows 4-7: ch 1, turn, sc in each st across, sc in next unworked st. (1 st more in each row, ending with 8 sc)

FOOT (worked in a spiral over instep and heel)
Rnd 1: sc in each st around. (16 sc)
Rnd 2: (sc2tog, sc in next 4 sts, sc2tog) 2 times. (12 sts)
`;

const PATTERN = patternFromText(SOCK).pattern!;
const FABRIC = work(construct(PATTERN, 0));
const GRID = colourGrid(FABRIC);

function placed(section: string, more: Partial<Placement>): readonly string[] {
  const found = PATTERN.sections.find((one) => one.name === section)!;
  const line = found.lines.find((one) => one.kind === 'row')!;
  const pattern: Pattern = { ...PATTERN, motifs: [{ id: 'm', name: '', cells: ['BB'] }], placements: [handPlacement({ section: found.id, row: { line: line.id, nth: 0 }, ...more })] };
  const fabric = FABRIC.sections.find((one) => one.id === found.id)!;
  const first = FABRIC.rows.findIndex((row, r) => r >= fabric.firstRow && (row.word === 'row' || row.word === 'round'));
  return [...picture(pattern, FABRIC, colour(pattern, FABRIC, 0, GRID))].reverse().slice(first, first + 1);
}

describe('the seam, row by row', () => {
  it('is followed from the leg through the turned heel into the foot', () => {
    const lines = seamLines(GRID);
    expect(FABRIC.rows.map((row, r) => [row.word, row.made, lines[r]]).filter(([word]) => word === 'row' || word === 'round')).toEqual([
      ['row', 16, 0], // cuff: sewn up with the leg
      ['row', 16, 0],
      ['row', 16, 0],
      ['row', 8, 4], // heel, centred on the seam
      ['row', 6, 4],
      ['row', 4, 2],
      ['row', 5, 2],
      ['row', 6, 3],
      ['row', 7, 3],
      ['row', 8, 4],
      ['round', 16, 4], // foot: the heel's stitches first, as seen from the left
      ['round', 12, 3],
    ]);
  });

  it('is where a motif can be centred, on both edges of a panel that will be sewn up', () => {
    expect(placed('LEG', { anchor: 'seam', align: 'centre' })).toEqual(['BAAAAAAAAAAAAAAB']);
    expect(placed('LEG', { anchor: 'seam', align: 'left' })).toEqual(['BBAAAAAAAAAAAAAA']);
    expect(placed('LEG', { anchor: 'front', align: 'centre' })).toEqual(['AAAAAAABBAAAAAAA']);
    expect(placed('LEG', { anchor: 'front', align: 'left', offset: 1 })).toEqual(['AAAAAAAAABBAAAAA']);
  });

  it('and the centre front are found in the foot, wherever its rounds begin', () => {
    expect(placed('FOOT', { anchor: 'seam', align: 'centre' })).toEqual(['AAABBAAAAAAAAAAA']);
    expect(placed('FOOT', { anchor: 'front', align: 'centre' })).toEqual(['AAAAAAAAAAABBAAA']);
    // Repeats all round from the front: the one stitch left over widens the gap at the seam (column 4).
    expect(placed('FOOT', { anchor: 'front', align: 'centre', across: 'fill', gap: 3 })).toEqual(['BBAAAABBAAABBAAA']);
  });

  it('is in the middle of a heel row', () => {
    expect(placed('HEEL', { anchor: 'seam', align: 'centre' })).toEqual(['AAABBAAA']);
  });
});
