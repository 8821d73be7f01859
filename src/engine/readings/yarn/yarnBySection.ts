import type { YarnNeed } from './yarnNeed.ts';
import type { YarnUseKind } from './yarnUses.ts';

/** The yarn of one letter in one section, cm, by what it goes into. */
export interface SectionYarn {
  /** Section and yarn indices. */
  readonly section: number;
  readonly yarn: number;
  readonly cm: Readonly<Record<YarnUseKind, number>>;
  readonly sumCm: number;
}

/** The yarn of a size section by section, in their order and the yarns' order: the sums of each yarn are its totals. */
export function yarnBySection({ uses }: Pick<YarnNeed, 'uses'>): readonly SectionYarn[] {
  const found = new Map<string, { section: number; yarn: number; cm: Record<YarnUseKind, number>; sumCm: number }>();
  for (const { section, yarn, kind, cm } of uses) {
    const key = `${section} ${yarn}`;
    const own = found.get(key) ?? { section, yarn, cm: { stitches: 0, carried: 0, ends: 0, seams: 0, fringe: 0 }, sumCm: 0 };
    own.cm[kind] += cm;
    own.sumCm += cm;
    found.set(key, own);
  }
  return [...found.values()].sort((a, b) => a.section - b.section || a.yarn - b.yarn);
}
