import type { Edition, Imprint, Pattern } from '../1-pattern/pattern.ts';
import { construct } from '../2-construct/construct.ts';
import { work } from '../3-fabric/work.ts';
import { colour } from '../4-colour/colour.ts';
import { errata, type Erratum } from '../readings/errata/errata.ts';
import { errataText } from '../readings/errata/errataText.ts';
import { matchingSize } from '../readings/errata/workedEditions.ts';
import { yarnNeed } from '../readings/yarn/yarnNeed.ts';

/** All that a new edition changes for its readers: `errata`, and the yarn that sizes need where that is another amount as it is printed. */
export function editionErrata(before: Pattern, after: Pattern): readonly Erratum[] {
  const found = new Map<string, { readonly erratum: Erratum; readonly sizes: string[] }>();
  const pairs = after.sizes.flatMap((name, size) => {
    const other = matchingSize(before.sizes, after.sizes, size);
    return other === null ? [] : [{ name: name || `size ${size + 1}`, was: needs(before, other), now: needs(after, size) }];
  });
  for (const { name, was, now } of pairs) {
    for (const letter of new Set([...was.keys(), ...now.keys()])) {
      const [a, b] = [was.get(letter) ?? null, now.get(letter) ?? null];
      if (a === b) continue;
      const key = `${letter} ${a} ${b}`;
      const known = found.get(key);
      if (known) known.sizes.push(name);
      else found.set(key, { erratum: { place: `Yarn needed, ${letter}`, section: null, sizes: [], now: b, was: a }, sizes: [name] });
    }
  }
  return [...errata(before, after), ...[...found.values()].map(({ erratum, sizes }) => ({ ...erratum, sizes: sizes.length === pairs.length ? [] : sizes }))];
}

/** Metres to the next 5, with whole balls where they are known, by yarn letter. */
function needs(pattern: Pattern, size: number): ReadonlyMap<string, string> {
  const fabric = work(construct(pattern, size));
  const { yarns } = yarnNeed(pattern, fabric, colour(pattern, fabric, size));
  return new Map(yarns.flatMap(({ letter, metres, balls }) => (metres.estimate > 0 ? [[letter, `${Math.ceil(metres.estimate / 5 - 1e-9) * 5} m${balls === null ? '' : `, ${balls} ${balls === 1 ? 'ball' : 'balls'}`}`] as const] : [])));
}

/**
 * The imprint of a pattern that goes into a new edition: the edition before is put first among the earlier ones, under its own name and
 * date, with what has changed since then in words. Set it with the edit `setImprint`.
 */
export function nextImprint(before: Pattern, after: Pattern, edition: string, date: string): Imprint {
  const { edition: name = '', date: was = '', editions = [] } = before.imprint ?? {};
  const earlier: Edition = { name, date: was, errata: errataText(editionErrata(before, after)).trimEnd() };
  return { ...after.imprint, edition, date, editions: [earlier, ...editions] };
}
