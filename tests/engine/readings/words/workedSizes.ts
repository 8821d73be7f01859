import { patternFromText } from '../../../../src/engine/1-pattern/patternFromText.ts';
import type { CellRun, Pattern } from '../../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../../src/engine/2-construct/construct.ts';
import { work } from '../../../../src/engine/3-fabric/work.ts';
import { colour } from '../../../../src/engine/4-colour/colour.ts';
import { FLAG } from '../../../../src/engine/3-fabric/fabric.ts';
import type { Fabric } from '../../../../src/engine/3-fabric/fabric.ts';
import { writeWords } from '../../../../src/engine/readings/words/writeWords.ts';
import { wordsToText } from '../../../../src/engine/readings/words/wordsToText.ts';

/** A pattern read from text, with loose cells laid on it: `[line, nth, from, letters]`, in the first size. */
export function patternOf(text: string, cells: readonly (readonly [line: string, nth: number, from: number, letters: string, size?: number])[] = []): Pattern {
  const { pattern, findings } = patternFromText(text);
  if (!pattern) throw new Error(JSON.stringify(findings));
  const sectionOf = new Map(pattern.sections.flatMap((section) => section.lines.map((line) => [line.id, section.id] as const)));
  return { ...pattern, cells: cells.map(([line, nth, from, letters, size = 0]): CellRun => ({ section: sectionOf.get(line)!, row: { line, nth }, size, from, letters })) };
}

/** One size of a pattern, worked and coloured. */
export function workedSize(pattern: Pattern, size: number) {
  const program = construct(pattern, size);
  const fabric = work(program);
  return { size, program, fabric, colours: colour(pattern, fabric, size) };
}

/** The pattern in words, in the sizes asked for (all of them if none are). */
export function wordsOf(pattern: Pattern, terms: 'us' | 'uk' = 'us', sizes = pattern.sizes.map((_, size) => size)): string {
  return wordsToText(writeWords({ pattern, sizes: sizes.map((size) => workedSize(pattern, size)), terms }));
}

/** What makes two fabrics the same: stitches, what they go into, and the yarns of those that count, by letter. (A chain that an earlier row's words made may follow the colour of a stitch laid beside it.) */
export function fabricFacts(pattern: Pattern, { fabric, colours }: { readonly fabric: Fabric; readonly colours: { readonly yarn: Uint8Array } }) {
  return {
    kind: [...fabric.kind], baseStart: [...fabric.baseStart], bases: [...fabric.bases], flags: [...fabric.flags], legs: [...fabric.legs],
    yarn: Array.from(colours.yarn, (yarn, stitch) => (fabric.flags[stitch]! & FLAG.counts ? pattern.yarns[yarn]!.letter : '.')).join(''),
    made: fabric.rows.map((row) => row.made),
  };
}

/** The rows of a section of the text, without header and names. */
export function rowsIn(text: string): string[] {
  return text.split('\n').filter((line) => /^(Row|Rnd|Foundation|Next|Set-up|Size)/.test(line) && !/^Sizes?: /.test(line));
}
