import { POINT_MM } from '../../6-drawing/textSize.ts';
import type { Face, Measure } from './face.ts';

/** A stretch of text in one face. */
export interface Run {
  readonly text: string;
  readonly face: Face;
  /** Grey instead of black. */
  readonly soft?: boolean;
}

/** A stretch of a line that was set; `xMm` from the line's start. */
export interface SetRun extends Run {
  readonly xMm: number;
  readonly widthMm: number;
}

interface Piece extends Run {
  readonly widthMm: number;
  /** Space before it, where it does not begin a line. */
  readonly spaceMm: number;
}

/** How much worse a last line of a single short word is than a ragged edge: as this share of the line left white in another. */
const SHORT_LAST = 0.35;

/**
 * Sets a paragraph in lines of at most `widthMm`, ragged right: of all ways to break it between words, the one whose lines (but
 * the last) leave the least sum of squares white, so that the edge is calm (Knuth and Plass 1981, without stretching or
 * hyphens). Words longer than a line are cut between characters. The first line may be shorter by `firstInsetMm`. Runs of one word in
 * several faces hold together. Quadratic only in the words of a line.
 */
export function breakLines(runs: readonly Run[], sizePt: number, widthMm: number, measure: Measure, firstInsetMm = 0): readonly (readonly SetRun[])[] {
  const words = wordsOf(runs, sizePt, Math.max(1, widthMm - firstInsetMm), measure);
  if (words.length === 0) return [];
  const best: number[] = [0];
  const from: number[] = [0];
  for (let end = 1; end <= words.length; end++) {
    best[end] = Infinity;
    from[end] = end - 1;
    let wide = 0;
    for (let start = end - 1; start >= 0; start--) {
      const word = words[start]!;
      wide += word.widthMm + (start === end - 1 ? 0 : words[start + 1]!.spaceMm);
      const room = start === 0 ? widthMm - firstInsetMm : widthMm;
      if (wide > room + 1e-9 && start < end - 1) break;
      const white = Math.max(0, room - wide) / room;
      const last = end === words.length;
      const cost = best[start]! + (last ? (start === end - 1 && words.length > 1 && wide < 0.15 * room ? SHORT_LAST ** 2 : 0) : white * white) + 1e-6;
      if (cost < best[end]!) {
        best[end] = cost;
        from[end] = start;
      }
    }
  }
  const lines: (readonly SetRun[])[] = [];
  for (let end = words.length; end > 0; end = from[end]!) lines.unshift(setLine(words.slice(from[end]!, end), sizePt, measure));
  return lines;
}

/** A word: pieces that hold together. */
interface Word {
  readonly pieces: readonly Piece[];
  readonly widthMm: number;
  readonly spaceMm: number;
}

function wordsOf(runs: readonly Run[], sizePt: number, most: number, measure: Measure): Word[] {
  const words: Word[] = [];
  let pieces: Piece[] = [];
  let spaceMm = 0;
  const close = (): void => {
    if (pieces.length > 0) words.push({ pieces, widthMm: pieces.reduce((sum, piece) => sum + piece.widthMm, 0), spaceMm });
    pieces = [];
  };
  for (const run of runs) {
    for (const part of run.text.split(/( +)/)) {
      if (part === '') continue;
      if (part.startsWith(' ')) {
        close();
        spaceMm = measure(' ', run.face, sizePt);
        continue;
      }
      const wide = measure(part, run.face, sizePt);
      const held = pieces.reduce((sum, piece) => sum + piece.widthMm, 0);
      if (held + wide <= most) {
        pieces.push({ ...run, text: part, widthMm: wide, spaceMm: 0 });
        continue;
      }
      if (held > 0) {
        close();
        spaceMm = 0;
      }
      cutWord(part, run.face, sizePt, most, measure).forEach((cut, nth) => {
        close();
        if (nth > 0) spaceMm = 0;
        pieces.push({ ...run, text: cut, widthMm: measure(cut, run.face, sizePt), spaceMm: 0 });
      });
    }
  }
  close();
  return words;
}

/** A word longer than a line in parts that fit, cut between characters and never before a mark that belongs to the one before. */
function cutWord(word: string, face: Face, sizePt: number, most: number, measure: Measure): string[] {
  const parts: string[] = [];
  let part = '';
  let wide = 0;
  for (const cluster of clusters(word)) {
    const one = measure(cluster, face, sizePt);
    if (part !== '' && wide + one > most) {
      parts.push(part);
      part = '';
      wide = 0;
    }
    part += cluster;
    wide += one;
  }
  if (part !== '') parts.push(part);
  return parts;
}

/** Characters with the marks, joiners and signs that belong to them; a cluster of more than 16 is cut (nothing that is read has as many). */
function clusters(text: string): string[] {
  return text.match(/\P{M}(?:[\p{M}\u200d\ufe0f]|(?<=\u200d)\p{Extended_Pictographic}){0,16}|\p{M}{1,16}/gu) ?? [];
}

function setLine(words: readonly Word[], sizePt: number, measure: Measure): SetRun[] {
  const line: SetRun[] = [];
  let x = 0;
  words.forEach((word, index) => {
    if (index > 0) x += word.spaceMm;
    word.pieces.forEach((piece, nth) => {
      const before = line.at(-1);
      const { spaceMm: _, ...run } = piece;
      // Words of one face are one run, so that text copied from the page has its spaces.
      if (before && before.face === run.face && before.soft === run.soft) {
        const text = `${before.text}${nth === 0 && index > 0 && word.spaceMm > 0 ? ' ' : ''}${run.text}`;
        line[line.length - 1] = { ...before, text, widthMm: measure(text, run.face, sizePt) };
        x = before.xMm + line.at(-1)!.widthMm;
        return;
      }
      line.push({ ...run, xMm: x });
      x += piece.widthMm;
    });
  });
  return line;
}

/** A text on one line of at most `widthMm`, its end cut off with … where it is longer. */
export function cutToWidth(text: string, face: Face, sizePt: number, widthMm: number, measure: Measure): string {
  if (measure(text, face, sizePt) <= widthMm) return text;
  let kept = '';
  let wide = measure('…', face, sizePt);
  for (const cluster of clusters(text)) {
    wide += measure(cluster, face, sizePt);
    if (wide > widthMm) break;
    kept += cluster;
  }
  return `${kept.trimEnd()}…`;
}

/** From one line to the next, mm, for text of a size: open enough to find the line again with the eyes off the page. */
export function leadingMm(sizePt: number, share = 1.38): number {
  return sizePt * share * POINT_MM;
}
