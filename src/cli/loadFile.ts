import { readFileSync, statSync } from 'node:fs';
import { describeFinding, describeOpened, openPatternFile, patternFromText, type Finding, type Pattern, type TextRange } from '../engine/index.ts';

/** A pattern with what reading its text found; `offset` places a line's text in the file (null in pattern files). */
export interface Loaded {
  readonly pattern: Pattern;
  readonly findings: readonly Finding[];
  readonly offset: (line: string) => { readonly from: number; readonly lineNumber: number } | null;
}

const MOST_BYTES = 20_000_000;

/** Opens a pattern file or reads a written pattern; says in words why it can't. */
export function loadFile(path: string): Loaded | { readonly problem: string } {
  let text: string;
  try {
    const { size } = statSync(path);
    if (size > MOST_BYTES) return { problem: `${path} has ${size} bytes; at most ${MOST_BYTES} are read.` };
    text = readFileSync(path, 'utf8').replace(/^\uFEFF/, '');
  } catch (error) {
    return { problem: `${path} can't be opened: ${(error as Error).message}` };
  }
  if (/^\s*[{[]/.test(text)) {
    const opened = openPatternFile(text);
    if (opened.kind !== 'ok') return { problem: `${path}: ${describeOpened(opened)}` };
    return { pattern: opened.pattern, findings: [], offset: () => null };
  }
  const read = patternFromText(text);
  if (!read.pattern) return { problem: `${path}: ${read.findings.map(describeFinding).join(' ') || 'no pattern was found in this text.'}` };
  const place = (range: TextRange | undefined, lineNumber: number | undefined) => (range ? { from: range[0], lineNumber: lineNumber ?? 0 } : null);
  return { pattern: read.pattern, findings: read.findings, offset: (line) => place(read.lines.get(line)?.range, read.lines.get(line)?.lineNumber) };
}
