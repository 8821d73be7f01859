import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../src/engine/1-pattern/applyEdit.ts';
import { openPatternFile, writePatternFile } from '../../../src/engine/1-pattern/file.ts';
import type { Imprint } from '../../../src/engine/1-pattern/pattern.ts';
import { SMALL } from './smallPattern.ts';

const IMPRINT: Imprint = { about: 'Boots for the house.', licence: 'For use at home.', credits: 'Tested by three.', edition: 'second', date: '2024-05-01', editions: [{ name: 'first', date: '2023-11-02', errata: 'Heel, row 12: 18 sts, was 17.' }] };

describe('the imprint of a pattern', () => {
  it('is said whole and taken back, and leaves nothing behind', () => {
    const said = applyEdit(SMALL, { kind: 'setImprint', imprint: IMPRINT });
    expect(said.ok && said.pattern.imprint).toEqual(IMPRINT);
    const back = said.ok && applyEdit(said.pattern, said.inverse);
    expect(back && back.ok && back.pattern).toStrictEqual(SMALL);
  });

  it('is kept in files, and files without it are as they were', () => {
    const opened = openPatternFile(writePatternFile({ ...SMALL, imprint: IMPRINT }));
    expect(opened.kind === 'ok' && opened.pattern.imprint).toEqual(IMPRINT);
    expect(writePatternFile(SMALL)).not.toContain('imprint');
  });

  it('refuses what is no text, saying where', () => {
    const applied = applyEdit(SMALL, { kind: 'setImprint', imprint: { licence: 7 as unknown as string } });
    expect(applied.ok ? '' : applied.reason).toBe('What is said where it is published, licence: found 7, expected text.');
  });
});
