import { POINT_MM } from '../../6-drawing/textSize.ts';
import { setPt, type Face } from './face.ts';
import { FONT_WIDTHS } from './fontWidths.ts';

/** Characters that the faces don't have, in thousandths of the size: generous, because another face will stand in. */
const MARK = 0;
const EMOJI = 1400;
const WIDE = 1050;
const OTHER = 800;
const IS_MARK = /^[\p{M}\p{Cf}]$/u;
const IS_EMOJI = /^\p{Extended_Pictographic}$/u;
const IS_WIDE = /^[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\u{1b000}-\u{3fffd}]$/u;

/**
 * Width of a text in mm, from the advance widths of the shipped faces without kerning (which mostly draws letters together). The
 * only measure that app and command line use, so that both give the same bytes. Linear in the text.
 */
export function measureText(text: string, face: Face, sizePt: number): number {
  let thousandths = 0;
  for (const character of text) thousandths += widthOf(character, face);
  return (thousandths / 1000) * setPt(face, sizePt) * POINT_MM;
}

const TABLES = new Map<Face, Map<number, number>>();

function widthOf(character: string, face: Face): number {
  const table = TABLES.get(face) ?? readTable(face);
  return table.get(character.codePointAt(0)!) ?? (IS_MARK.test(character) ? MARK : IS_EMOJI.test(character) ? EMOJI : IS_WIDE.test(character) ? WIDE : OTHER);
}

function readTable(face: Face): ReadonlyMap<number, number> {
  const table = new Map<number, number>();
  for (const range of FONT_WIDTHS[face]) {
    const [start, widths] = range.split(' ') as [string, string];
    const first = parseInt(start, 16);
    for (let i = 0; i * 2 < widths.length; i++) {
      const digits = widths.slice(i * 2, i * 2 + 2);
      if (digits !== '--') table.set(first + i, parseInt(digits, 36));
    }
  }
  TABLES.set(face, table);
  return table;
}
