import { describe, expect, it } from 'vitest';
import { applyEdit, type Pattern } from '../../../src/engine/index.ts';
import { editionErrata, nextImprint } from '../../../src/engine/publish/editionErrata.ts';
import { defaultChoices } from '../../../src/engine/publish/publishChoices.ts';
import { publishPattern } from '../../../src/engine/publish/publishPattern.ts';
import { errataText } from '../../../src/engine/readings/errata/errataText.ts';
import { BAND } from './demoPattern.ts';

const first: Pattern = { ...BAND, imprint: { edition: 'First edition', date: '2023-11-02' } };
const longer: Pattern = { ...first, sections: first.sections.map((section) => ({ ...section, lines: section.lines.map((line) => (line.kind === 'row' && line.label.rows === 5 ? { ...line, label: { ...line.label, rows: 25 } } : line)) })) };

describe('a new edition', () => {
  it('that changes nothing has no errata', () => {
    expect(editionErrata(first, first)).toEqual([]);
  });

  it('names the yarn that it needs more of, size by size', () => {
    const text = errataText(editionErrata(first, longer));
    expect(text).toMatch(/^Yarn needed, A \(size S\): \d+ m, was \d+ m\.$/m);
    expect(text).toMatch(/^Band, rows 7–26 \(size S\): new: ch 1, turn, sc in each st across\. 10 sts\.$/m);
  });

  it('keeps what has changed with the pattern, and prints it', () => {
    const imprint = nextImprint(first, longer, 'Second edition', '2024-05-01');
    expect(imprint.editions).toHaveLength(1);
    expect(imprint.editions![0]!.name).toBe('First edition');
    const applied = applyEdit(longer, { kind: 'setImprint', imprint });
    if (!applied.ok) throw new Error(applied.reason);
    const { sheets, files } = publishPattern(applied.pattern, defaultChoices(applied.pattern));
    expect(sheets.some(({ svg }) => svg.includes('Since First edition, 2023-11-02:'))).toBe(true);
    expect(files.find(({ name }) => name === 'band-errata.txt')!.text).toContain('Yarn needed, A');
    const third = nextImprint(applied.pattern, applied.pattern, 'Third edition', '2025-01-01');
    expect(third.editions!.map(({ name }) => name)).toEqual(['Second edition', 'First edition']);
  });
});
