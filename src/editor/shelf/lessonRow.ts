import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import { layOut } from '../../engine/5-layout/layOutSection.ts';
import { draw } from '../../engine/6-drawing/draw.ts';
import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { ledger } from '../../engine/readings/ledger/ledger.ts';
import { sectionWords } from '../bench/sectionWords.ts';

/** One row in its three readings. */
export interface LessonRow {
  readonly drawing: Drawing;
  readonly yarn: Uint8Array;
  /** Row index in the fabric. */
  readonly row: number;
  readonly number: number;
  readonly side: 'RS' | 'WS';
  readonly startsAt: 'left' | 'right';
  readonly ledger: readonly { readonly label: string; readonly value: string }[];
  readonly words: string;
}

/** Works a pattern and tells row `number` of its first section in all three readings. */
export function lessonRow(pattern: Pattern, number = 4): LessonRow {
  const program = construct(pattern, 0);
  const fabric = work(program);
  const colours = colour(pattern, fabric, 0);
  const layout = layOut(fabric, 0, pattern.gauge);
  const told = ledger(fabric, 0).find((each) => each.number === number);
  if (!told) throw new RangeError(`the lesson has no row ${number}`);
  const { made, used, change, side } = told;
  const words = sectionWords({ program, fabric, colours }, 0, pattern.terms).get(told.row);
  return {
    drawing: draw(fabric, layout, { symbols: 'all', numbers: true, grid: true }),
    yarn: colours.yarn,
    row: told.row,
    number,
    side,
    startsAt: layout.rows.find((each) => each.row === told.row)?.startsAt ?? 'right',
    ledger: [
      { label: 'Made', value: String(made) },
      { label: 'Used of the row below', value: String(used) },
      { label: 'Change', value: change === null || change === 0 ? '0' : change > 0 ? `+${change}` : `−${-change}` },
      { label: 'Left open', value: told.left.ahead + told.left.behind === 0 ? 'none' : `${told.left.behind} | ${told.left.ahead}` },
    ],
    words: words ?? pattern.sections[0]!.lines.find((line) => line.id === told.key.line)?.text ?? '',
  };
}
