import type { Gauge, Pattern } from '../../1-pattern/pattern.ts';
import { patternFromText } from '../../1-pattern/patternFromText.ts';
import { bootSock } from './bootSock.ts';
import { discOrCap, flatPanel, legWarmer } from './simplePieces.ts';

/** Constructions that a pattern can be started from. */
export type Construction = 'bootSock' | 'legWarmer' | 'flatPanel' | 'disc' | 'empty';

/** What to start with. Measurements in cm; girth is the width of a flat panel, the diameter of a disc. */
export interface StartSettings {
  readonly title: string;
  readonly gauge: Gauge;
  readonly hookMm: number | null;
  readonly sizes: readonly { readonly name: string; readonly girthCm: number; readonly heightCm: number; readonly footCm: number }[];
  readonly yarns: Pattern['yarns'];
}

/**
 * A workable pattern of a construction, by way of its written text. The id is the caller's to set. Refuses settings without
 * a size, a yarn or a gauge above 0, which are a programmer's slip: the form checks them first.
 */
export function startPattern(construction: Construction, settings: StartSettings): Pattern {
  const { gauge } = settings;
  const sizes = construction === 'disc' ? settings.sizes.slice(0, 1) : settings.sizes;
  if (sizes.length < 1) throw new RangeError('0 sizes given, at least 1 is needed');
  if (settings.yarns.length < 1) throw new RangeError('0 yarns given, at least 1 is needed');
  if (!(gauge.stitches > 0 && gauge.rows > 0 && gauge.overCm > 0)) throw new RangeError(`gauge ${gauge.stitches} × ${gauge.rows} over ${gauge.overCm} cm, above 0 expected`);
  // Names are the designer's own words; they are put in afterwards, so that none can be read as part of a row.
  const header = [
    'New pattern', 'Terms: US',
    ...(sizes.length > 1 ? [`Sizes: 1 (${sizes.slice(1).map((_, i) => i + 2).join(', ')})`] : []),
    ...settings.yarns.map((yarn) => `Yarn ${yarn.letter}: yarn`),
  ].join('\n');
  const { pattern } = patternFromText([header, ...sectionsOf(construction, { ...settings, sizes })].join('\n\n'));
  if (!pattern) throw new RangeError(`the recipe ${construction} gave no pattern`);
  return { ...pattern, title: settings.title, gauge, hookMm: settings.hookMm, sizes: sizes.map((size) => size.name), yarns: settings.yarns };
}

function sectionsOf(construction: Construction, { gauge, sizes }: StartSettings): string[] {
  const pieces = sizes.map((size) => ({ name: size.name, widthCm: size.girthCm, heightCm: size.heightCm }));
  switch (construction) {
    case 'bootSock':
      return bootSock(gauge, sizes.map((size) => ({ name: size.name, girthCm: size.girthCm, legCm: size.heightCm, footCm: size.footCm })));
    case 'legWarmer':
      return legWarmer(gauge, pieces);
    case 'flatPanel':
      return flatPanel(gauge, pieces);
    case 'disc':
      return discOrCap(gauge, pieces[0]!);
    case 'empty':
      return ['PIECE\nFoundation: with A, ch 21.\nRow 1 (RS): sc in 2nd ch from hook and in each ch across. (20 sc)'];
  }
}
