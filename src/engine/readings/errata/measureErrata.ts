import { doubledSections } from '../../6-drawing/schematic/doubledSections.ts';
import { finishedMeasures } from '../../6-drawing/schematic/finishedMeasures.ts';
import { lengthWords } from '../../6-drawing/schematic/lengthWords.ts';
import { rowMeasures } from '../../6-drawing/schematic/rowMeasures.ts';
import { sectionMeasures } from '../../6-drawing/schematic/sectionMeasures.ts';
import type { Erratum } from './errata.ts';
import type { Editions, WorkedEdition } from './workedEditions.ts';

const WORDS: Readonly<Record<string, string>> = {
  footLength: 'Length of the foot', footGirth: 'Girth of the foot', calf: 'Girth at the top of the leg', opening: 'Narrowest girth of the leg', legLength: 'Length of the leg', width: 'Width', topWidth: 'Width at the far edge',
  height: 'Height', girth: 'Girth', endGirth: 'Girth at the far end', across: 'Width across', length: 'Length',
};

/** What the finished piece measures otherwise, by as much as print shows. */
export function measureErrata({ sizes }: Editions): readonly Erratum[] {
  const found = new Map<string, { readonly erratum: Erratum; readonly sizes: string[] }>();
  for (const { name, before, after } of sizes) {
    const [was, now] = [measured(before), measured(after)];
    for (const key of new Set([...was.keys(), ...now.keys()])) {
      const [a, b] = [was.get(key) ?? null, now.get(key) ?? null];
      if (a === b) continue;
      const word = WORDS[key.split(' ')[0]!] ?? key;
      const erratum = { place: `Finished measurements, ${word.charAt(0).toLowerCase()}${word.slice(1)}`, section: null, sizes: [], now: b, was: a };
      const same = JSON.stringify([key, a, b]);
      const known = found.get(same);
      if (known) known.sizes.push(name);
      else found.set(same, { erratum, sizes: [name] });
    }
  }
  return [...found.values()].map(({ erratum, sizes: named }) => ({ ...erratum, sizes: named.length === sizes.length ? [] : named }));
}

function measured({ pattern, fabric, yarnOf }: WorkedEdition): ReadonlyMap<string, string> {
  const sections = sectionMeasures(fabric, rowMeasures(fabric, { gauge: pattern.gauge, swatches: pattern.piece?.swatches ?? [], yarn: yarnOf }));
  return new Map(finishedMeasures(fabric, sections, doubledSections(pattern)).map(({ name, piece, cm }) => [`${name} ${piece}`, lengthWords(cm)]));
}
