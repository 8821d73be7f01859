import type { Pattern } from '../../1-pattern/pattern.ts';
import { stitchWord, TERM_WORDS } from '../../craft/terms.ts';
import type { Erratum } from './errata.ts';

/** What has changed above the rows: title, designer, gauge, hook, yarns, sizes, notes, and how turning chains count. */
export function headerErrata(before: Pattern, after: Pattern): readonly Erratum[] {
  const changes: Erratum[] = [];
  const compare = (place: string, was: string | null, now: string | null): void => {
    if (was !== now) changes.push({ place, section: null, sizes: [], now, was });
  };
  const gauge = ({ gauge: { stitches, rows, overCm, stitch } }: Pattern): string => `${stitches} sts and ${rows} rows = ${overCm} cm in ${stitchWord(stitch, after.terms)}`;
  compare('Title', before.title, after.title);
  compare('Designer', before.designer, after.designer);
  compare(TERM_WORDS[after.terms].gauge, gauge(before), gauge(after));
  compare('Hook', before.hookMm === null ? null : `${before.hookMm} mm`, after.hookMm === null ? null : `${after.hookMm} mm`);
  compare('Sizes', before.sizes.join(', '), after.sizes.join(', '));
  compareLists(before.yarns, after.yarns, ({ letter }) => `Yarn ${letter}`, ({ name, colour }) => [name, colour].filter((part) => part !== '').join(' '), compare);
  const supply = ({ weight, ballGrams, ballMetres }: NonNullable<NonNullable<Pattern['piece']>['supplies']>[number]): string => [weight === null ? '' : `weight ${weight}`, ballGrams === null ? '' : `${ballGrams} g a ball`, ballMetres === null ? '' : `${ballMetres} m a ball`].filter((part) => part !== '').join(', ');
  compareLists(before.piece?.supplies ?? [], after.piece?.supplies ?? [], ({ letter }) => `Yarn ${letter}, as sold`, supply, compare);
  compare('Turning chains', chains(before, after), chains(after, after));
  compareLists(before.notes, after.notes, ({ word }) => word || 'Note', ({ value }) => value, compare);
  return changes;
}

function chains({ hdcTurningChainCounts }: Pattern, { terms }: Pattern): string {
  return `ch 2 before ${stitchWord('hdc', terms)} ${hdcTurningChainCounts ? 'counts' : 'does not count'} as a st`;
}

/** Compares lists by what their entries are called; entries of one name in their order. */
function compareLists<T>(before: readonly T[], after: readonly T[], placeOf: (one: T) => string, says: (one: T) => string, compare: (place: string, was: string | null, now: string | null) => void): void {
  const grouped = (list: readonly T[]): Map<string, string[]> => {
    const groups = new Map<string, string[]>();
    for (const one of list) groups.set(placeOf(one), [...(groups.get(placeOf(one)) ?? []), says(one)]);
    return groups;
  };
  const [was, now] = [grouped(before), grouped(after)];
  for (const place of new Set([...was.keys(), ...now.keys()])) {
    const [a, b] = [was.get(place) ?? [], now.get(place) ?? []];
    for (let i = 0; i < Math.max(a.length, b.length); i++) compare(place, a[i] ?? null, b[i] ?? null);
  }
}
