import { patternFromText } from '../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../src/engine/2-construct/construct.ts';
import type { Fabric, WorkedRow } from '../../src/engine/3-fabric/fabric.ts';
import { work } from '../../src/engine/3-fabric/work.ts';
import type { Finding } from '../../src/engine/notation/finding.ts';

/** A written pattern, read and worked in one size. A text without a title or header is given one. */
export function workText(text: string, size = 0): { fabric: Fabric; rows: readonly WorkedRow[]; findings: readonly Finding[] } {
  const whole = /^\s*PIECE/m.test(text) || /^[^\n]+\n[\s\S]*^[A-Z][A-Z' -]+$/m.test(text) ? text : `Sample\n\nPIECE\n${text}`;
  const { pattern, findings } = patternFromText(whole);
  if (!pattern) throw new Error(`no pattern: ${JSON.stringify(findings)}`);
  const fabric = work(construct(pattern, size));
  return { fabric, rows: fabric.rows.filter((row) => row.word !== 'step'), findings: [...findings, ...fabric.findings] };
}

/** What each row made, foundation included. */
export function made(text: string, size = 0): number[] {
  return workText(text, size).rows.map((row) => row.made);
}

/** `wrong statedCount`, in order: short enough for a table. */
export function rules(findings: readonly Finding[]): string[] {
  return findings.map((found) => `${found.degree} ${found.rule}`);
}
