import type { Applied } from '../edit.ts';
import { LIMITS } from '../limits.ts';
import type { Motif, Pattern } from '../pattern.ts';
import { unknownLetter } from '../references.ts';
import { motifSchema } from '../schema.ts';
import { done, motifName, placeFault, refuse, spliced, valueFault, type EditOf } from './outcome.ts';

/** Puts a motif in. Refuses an id that is taken and letters that no yarn has. */
export function applyInsertMotif(pattern: Pattern, { at, motif }: EditOf<'insertMotif'>): Applied {
  const fault = motifFault(pattern, motif) ?? placeFault('A motif', at, pattern.motifs.length, LIMITS.motifs);
  if (fault) return refuse(fault);
  if (pattern.motifs.some((one) => one.id === motif.id)) return refuse(`There is a motif "${motif.id}" already.`);
  return done({ ...pattern, motifs: spliced(pattern.motifs, at, 0, motif) }, { kind: 'removeMotif', motif: motif.id });
}

/** Replaces the motif of the same id, wherever it is placed. Refuses letters that no yarn has. */
export function applySetMotif(pattern: Pattern, { motif }: EditOf<'setMotif'>): Applied {
  const at = pattern.motifs.findIndex((one) => one.id === motif.id);
  const before = pattern.motifs[at];
  if (!before) return refuse(`There is no motif "${motif.id}".`);
  const fault = motifFault(pattern, motif);
  if (fault) return refuse(fault);
  return done({ ...pattern, motifs: spliced(pattern.motifs, at, 1, motif) }, { kind: 'setMotif', motif: before });
}

/** Takes a motif out. Refuses while it is placed anywhere. */
export function applyRemoveMotif(pattern: Pattern, { motif: id }: EditOf<'removeMotif'>): Applied {
  const at = pattern.motifs.findIndex((one) => one.id === id);
  const motif = pattern.motifs[at];
  if (!motif) return refuse(`There is no motif "${id}".`);
  const used = pattern.placements.filter((one) => one.motif === id).length;
  if (used > 0) return refuse(`Motif ${motifName(pattern, id)} is placed ${used === 1 ? 'once' : `${used} times`}; take that off first.`);
  return done({ ...pattern, motifs: spliced(pattern.motifs, at, 1) }, { kind: 'insertMotif', at, motif });
}

function motifFault(pattern: Pattern, motif: Motif): string | null {
  const fault = valueFault('The motif', motifSchema, motif);
  if (fault) return fault;
  const letter = unknownLetter(pattern, motif.cells.join(''));
  return letter ? `The motif is drawn with yarn ${letter}, but the pattern has no such yarn.` : null;
}
