import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { openPatternFile } from '../../src/engine/1-pattern/file.ts';
import type { Pattern } from '../../src/engine/1-pattern/pattern.ts';
import type { Publication } from '../../src/engine/publish/publication.ts';
import { defaultChoices, type PublishChoices } from '../../src/engine/publish/publishChoices.ts';
import { publishPattern } from '../../src/engine/publish/publishPattern.ts';

/** The demo pattern. */
export function demo(): Pattern {
  const opened = openPatternFile(readFileSync(join(resolve(import.meta.dirname, '../..'), 'static/puffin-quay.json'), 'utf8'));
  if (opened.kind !== 'ok') throw new RangeError('the demo does not open');
  return opened.pattern;
}

/** Published with the usual choices but these. */
export function published(pattern: Pattern, choices: Partial<PublishChoices> = {}): Publication {
  return publishPattern(pattern, { ...defaultChoices(pattern), ...choices });
}

/** Names that would be markup, would climb out of a folder, run from right to left, or have no letters in the fonts. */
export const HOSTILE = {
  title: '<script>alert(1)</script> & "Söckchen"',
  designer: '"><svg onload="x"> ]]> ../../etc/passwd',
  section: '<g onclick=\'y\'>\u202eשלום</g>',
  yarn: '木綿 🧶 &amp; مرحبا\u0301',
} as const;

/** The demo under hostile names. */
export function hostileDemo(): Pattern {
  const pattern = demo();
  return {
    ...pattern, title: HOSTILE.title, designer: HOSTILE.designer,
    sections: pattern.sections.map((section, index) => (index === 0 ? { ...section, name: HOSTILE.section } : section)),
    yarns: pattern.yarns.map((yarn, index) => (index === 0 ? { ...yarn, name: HOSTILE.yarn } : yarn)),
  };
}
