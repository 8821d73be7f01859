import type { Pattern, Section } from '../../1-pattern/pattern.ts';
import { DISC, NO_EDGE, PANEL, SOCK, TUBE } from './defaults.ts';
import type { BobbleSettings, EdgeSettings, FringeSettings, HeelSettings, LoopSettings, MotifMultiple, PieceSettings } from './settings.ts';

type Kept = NonNullable<Section['recipe']>['settings'];

/** Reads settings that a section keeps; what is missing or unusable falls back to the given value. */
class Reader {
  constructor(private readonly kept: Kept) {}

  number(name: string, fallback: number): number {
    const value = this.kept[name];
    return typeof value === 'number' && Number.isFinite(value) ? value : fallback;
  }

  flag(name: string, fallback: boolean): boolean {
    const value = this.kept[name];
    return typeof value === 'boolean' ? value : fallback;
  }

  text(name: string, fallback: string): string {
    const value = this.kept[name];
    return typeof value === 'string' && value !== '' ? value : fallback;
  }

  oneOf<T extends string | number>(name: string, choices: readonly T[], fallback: T): T {
    const value = this.kept[name];
    return choices.find((choice) => choice === value) ?? fallback;
  }
}

/**
 * The settings of the piece that a pattern's sections were made by, put together from what each keeps; null for a pattern
 * that no recipe made. Sections that were taken out, or written by hand since, leave their part at the usual make.
 */
export function settingsOf(pattern: Pick<Pattern, 'sections'>): PieceSettings | null {
  const kept = new Map<string, Kept>();
  let kind: string | null = null;
  for (const { recipe } of pattern.sections) {
    const match = recipe && /^([a-z]+)\.([a-z]+)$/.exec(recipe.name);
    if (!match || (kind !== null && match[1] !== kind)) continue;
    kind = match[1]!;
    kept.set(match[2]!, recipe.settings);
  }
  const of = (role: string) => new Reader(kept.get(role) ?? {});
  const loop = kept.has('loop') ? loopOf(of('loop')) : null;
  const fringe = kept.has('fringe') ? fringeOf(of('fringe')) : null;
  switch (kind) {
    case 'sock':
      return sockOf(of, loop, fringe);
    case 'panel': {
      const panel = of('panel');
      return { kind, stitch: stitchOf(panel), yarn: panel.text('yarn', PANEL.yarn), motif: motifOf(panel), bobbles: bobblesOf(panel), loop, fringe };
    }
    case 'tube': {
      const tube = of('tube');
      return { kind, start: edgeOf(of('start'), NO_EDGE), end: edgeOf(of('end'), NO_EDGE), yarn: tube.text('yarn', TUBE.yarn), motif: motifOf(tube), changes: changesOf(tube, TUBE.changes), loop };
    }
    case 'disc': {
      const crown = of('crown');
      return { kind, stitch: stitchOf(crown), more: crown.oneOf('more', ['constant', 'byGauge'], DISC.more), changes: changesOf(crown, DISC.changes), yarn: crown.text('yarn', DISC.yarn), brim: edgeOf(of('brim'), NO_EDGE) };
    }
    case 'oval':
      return { kind, yarn: of('oval').text('yarn', 'A') };
    case 'ball':
      return { kind, yarn: of('ball').text('yarn', 'A') };
    default:
      return null;
  }
}

function sockOf(of: (role: string) => Reader, loop: LoopSettings | null, fringe: FringeSettings | null): PieceSettings {
  const [leg, toe, foot] = [of('leg'), of('toe'), of('foot')];
  const heel = of('heel').text('kind', '') === '' ? of('flap') : of('heel');
  const evens = toe.number('evens', -1);
  return {
    kind: 'sock',
    cuff: edgeOf(of('cuff'), SOCK.cuff),
    leg: { way: leg.oneOf('way', ['flat', 'rounds'], SOCK.leg.way), calf: leg.flag('calf', SOCK.leg.calf), yarn: leg.text('yarn', SOCK.leg.yarn), motif: motifOf(leg) },
    heel: heelOf(heel),
    foot: { yarn: foot.text('yarn', SOCK.foot.yarn) },
    toe: {
      pace: toe.oneOf('pace', ['every', 'second', 'half', 'graduated'], SOCK.toe.pace), evens: evens < 0 ? null : evens, inStep: toe.flag('inStep', SOCK.toe.inStep),
      close: toe.oneOf('close', ['drawn', 'seam'], SOCK.toe.close), yarn: toe.text('yarn', SOCK.toe.yarn),
    },
    loop,
    fringe,
  };
}

function heelOf(heel: Reader): HeelSettings {
  const usual = SOCK.heel;
  return {
    kind: heel.oneOf('kind', ['shortRows', 'flap', 'afterthought'], usual.kind), share: heel.number('share', usual.share), turn: heel.oneOf('turn', ['atOnce', 'stepped'], usual.turn),
    step: heel.oneOf('step', [1, 2], usual.step), corners: heel.flag('corners', usual.corners), gusset: heel.oneOf('gusset', ['every', 'second'], usual.gusset), yarn: heel.text('yarn', usual.yarn),
  };
}

function edgeOf(edge: Reader, usual: EdgeSettings): EdgeSettings {
  return { edge: edge.oneOf('edge', ['none', 'plain', 'backLoops', 'posts', 'folded', 'picot'], usual.edge), heightCm: edge.number('heightCm', usual.heightCm), yarn: edge.text('yarn', usual.yarn) };
}

function motifOf(section: Reader): MotifMultiple {
  return { repeat: section.number('repeat', 0), edge: section.number('edge', 0) };
}

function stitchOf(section: Reader): 'sc' | 'hdc' | 'dc' {
  return section.oneOf('stitch', ['sc', 'hdc', 'dc'], 'sc');
}

function changesOf(section: Reader, usual: 'stacked' | 'staggered'): 'stacked' | 'staggered' {
  return section.oneOf('changes', ['stacked', 'staggered'], usual);
}

function bobblesOf(section: Reader): BobbleSettings | null {
  const every = section.number('bobblesEvery', 0);
  return every > 0 ? { every, at: section.number('bobblesAt', 0.5) } : null;
}

function loopOf(section: Reader): LoopSettings {
  return { cm: section.number('cm', 8), yarn: section.text('yarn', 'A') };
}

function fringeOf(section: Reader): FringeSettings {
  return { every: section.number('every', 1), strands: section.number('strands', 1), cm: section.number('cm', 20), yarn: section.text('yarn', 'A') };
}
