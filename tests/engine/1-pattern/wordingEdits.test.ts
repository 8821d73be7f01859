import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../src/engine/1-pattern/applyEdit.ts';
import { openPatternFile, writePatternFile } from '../../../src/engine/1-pattern/file.ts';
import type { Wording } from '../../../src/engine/1-pattern/pattern.ts';
import { SMALL } from './smallPattern.ts';

const WORDING: Wording = { runs: 'short', repeats: 'bracket', count: 'dash', terms: 'uk' };

describe('the wording of a pattern', () => {
  it('is said whole and taken back, and leaves nothing behind', () => {
    const said = applyEdit(SMALL, { kind: 'setWording', wording: WORDING });
    expect(said.ok && said.pattern.wording).toEqual(WORDING);
    const back = said.ok && applyEdit(said.pattern, said.inverse);
    expect(back && back.ok && back.pattern).toStrictEqual(SMALL);
  });

  it('is kept in files, and files without it are as they were', () => {
    const opened = openPatternFile(writePatternFile({ ...SMALL, wording: WORDING }));
    expect(opened.kind === 'ok' && opened.pattern.wording).toEqual(WORDING);
    expect(writePatternFile(SMALL)).not.toContain('wording');
  });

  it('refuses a word that is none, saying which are', () => {
    const applied = applyEdit(SMALL, { kind: 'setWording', wording: { runs: 'middling' as 'short' } });
    expect(applied.ok ? '' : applied.reason).toBe('The wording, runs: found "middling", expected "long" or "short".');
  });
});
