import type { Line, Pattern } from '../../engine/1-pattern/pattern.ts';
import type { Program } from '../../engine/2-construct/program.ts';
import { readLine } from '../../engine/2-construct/readLine.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import { clauseSpans, type ClauseSpan } from './clauseSpans.ts';

/** The piece in one size, and a row of it by its index. */
export interface RowShown {
  readonly pattern: Pattern;
  readonly program: Program;
  readonly fabric: Fabric;
  readonly row: number;
}

/** The clauses of a row's words with their stitches: `written`, the words of one size in some terms, or where that is null the line's own text. */
export function clausesOfRow({ pattern, program, fabric, row }: RowShown, line: Line, written: { readonly text: string; readonly terms: Terms } | null): readonly ClauseSpan[] {
  const worked = fabric.rows[row];
  const from = program.rows[row];
  if (!worked || !from) return [];
  const { body } = written ? readLine({ ...line, text: written.text }, { terms: written.terms, sizes: [''], yarns: pattern.yarns, notes: pattern.notes }) : readLine(line, pattern);
  return clauseSpans(body, written ? 0 : program.size, { first: worked.first, end: worked.end, instruction: fabric.instruction, worked: from.body });
}
