import type { Origin } from '../../engine/2-construct/recipes/origin.ts';
import type { SectionYarn } from '../../engine/readings/yarn/yarnBySection.ts';
import type { YarnNeed, YarnTotal } from '../../engine/readings/yarn/yarnNeed.ts';
import type { YarnUse, YarnUseKind } from '../../engine/readings/yarn/yarnUses.ts';

const KINDS: readonly { readonly kind: YarnUseKind; readonly says: string; readonly from: (source: string) => string }[] = [
  { kind: 'stitches', says: 'in stitches', from: (source) => source },
  { kind: 'carried', says: 'carried along', from: () => 'width of the stitches it is carried over, a little slack' },
  { kind: 'ends', says: 'in ends', from: () => 'two tails for each length that is joined' },
  { kind: 'seams', says: 'in seams', from: () => 'three times their length' },
  { kind: 'fringe', says: 'in fringe', from: () => 'strands as cut' },
];

/** Where the length of a yarn in a size comes from: what it goes into, kind by kind. Keys begin with `yarn.`, values are cm. */
export function yarnOrigin(need: YarnNeed, yarn: number): Origin {
  const total: YarnTotal = need.yarns[yarn]!;
  const all = need.uses.filter((use) => use.yarn === yarn);
  return sumOfKinds(`yarn.${total.letter}`, saysYarn(total), total, total.metres.estimate * 100, (kind) => sumOf(all.filter((use) => use.kind === kind)));
}

/** The same for one section. `name` is the section's. */
export function sectionYarnOrigin(need: YarnNeed, { section, yarn, cm, sumCm }: SectionYarn, name: string): Origin {
  const total = need.yarns[yarn]!;
  return sumOfKinds(`yarn.${total.letter}.section${section}`, `${saysYarn(total)} in the ${name.toLowerCase()}`, total, sumCm, (kind) => cm[kind]);
}

function saysYarn({ letter, name }: YarnTotal): string {
  return `yarn ${`${letter} ${name}`.trim()}`;
}

function sumOfKinds(key: string, says: string, { source }: YarnTotal, value: number, cmOf: (kind: YarnUseKind) => number): Origin {
  const inputs = KINDS.flatMap(({ kind, says: what, from }): Origin[] => (cmOf(kind) > 0 ? [{ key: `${key}.${kind}`, says: what, unit: 'cm', value: cmOf(kind), from: { kind: 'given', source: from(source) } }] : []));
  return { key, says, unit: 'cm', value, from: { kind: 'formula', formula: inputs.map((input) => input.says).join(' + '), inputs, exact: value, rounding: null } };
}

function sumOf(uses: readonly YarnUse[]): number {
  return uses.reduce((sum, { cm }) => sum + cm, 0);
}
