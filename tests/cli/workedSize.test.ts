import { describe, expect, it } from 'vitest';
import { patternFromText } from '../../src/engine/1-pattern/patternFromText.ts';
import { exitCodeOf, FINE, WRONG } from '../../src/cli/exitCode.ts';
import { readReport } from '../../src/cli/readReport.ts';
import { workedSize } from '../../src/cli/workedSize.ts';

const loaded = (rows: string) => {
  const { pattern, findings } = patternFromText(`T\nTerms: US\nSizes: S (M)\n\nPIECE\nFoundation: ch 11 (13).\n${rows}`);
  return { pattern: pattern!, findings, offset: () => null };
};

describe('a size worked for a command', () => {
  it('is worked once for what is printed and for the exit code', () => {
    const one = loaded('Row 1: sc in 2nd ch from hook and in each ch across. (10 (12) sc)\n');
    const worked = workedSize(one.pattern, 1);
    expect(exitCodeOf(one, [0, 1])).toBe(FINE);
    expect(workedSize(one.pattern, 1)).toBe(worked);
    expect(workedSize(one.pattern, 0)).not.toBe(worked);
  });

  it('still makes a wrong count in the second size a wrong exit', () => {
    expect(exitCodeOf(loaded('Row 1: sc in 2nd ch from hook and in each ch across. (10 (11) sc)\n'), [0, 1])).toBe(WRONG);
  });

  it('reports a label out of order once', () => {
    const { findings } = readReport(loaded('Row 1: sc in 2nd ch from hook and in each ch across.\nRow 4: ch 1, turn, sc in each st across.\n'), 0);
    expect(findings.filter(({ rule }) => rule === 'labelOrder')).toHaveLength(1);
  });
});
