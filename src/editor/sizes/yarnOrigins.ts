import type { Origin } from '../../engine/2-construct/recipes/origin.ts';
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
  const inputs = KINDS.flatMap(({ kind, says, from }): Origin[] => {
    const cm = sumOf(need.uses.filter((use) => use.yarn === yarn && use.kind === kind));
    return cm > 0 ? [{ key: `yarn.${total.letter}.${kind}`, says, unit: 'cm', value: cm, from: { kind: 'given', source: from(total.source) } }] : [];
  });
  const value = total.metres.estimate * 100;
  return {
    key: `yarn.${total.letter}`, says: `yarn ${`${total.letter} ${total.name}`.trim()}`, unit: 'cm', value,
    from: { kind: 'formula', formula: inputs.map(({ says }) => says).join(' + '), inputs, exact: value, rounding: null },
  };
}

function sumOf(uses: readonly YarnUse[]): number {
  return uses.reduce((sum, { cm }) => sum + cm, 0);
}
