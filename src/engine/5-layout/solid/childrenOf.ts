import { STANDS } from './standing.ts';
import type { Web } from './web.ts';

/** The stitches that stand on the top of each head, left to right. */
export function childrenOf({ count, baseStart, bases, left, stands }: Web): number[][] {
  const children = Array.from({ length: count }, (): number[] => []);
  for (let i = 0; i < count; i++) {
    if (stands[i] !== STANDS.top) continue;
    for (let k = baseStart[i]!; k < baseStart[i + 1]!; k++) children[bases[k]!]!.push(i);
  }
  for (const own of children) {
    if (own.length < 2) continue;
    const start = own.findIndex((child) => !own.includes(left[child]!));
    if (start > 0) own.push(...own.splice(0, start));
  }
  return children;
}
