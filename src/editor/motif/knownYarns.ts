import type { Motif, Yarn } from '../../engine/1-pattern/pattern.ts';
import { colourDifference, labOf } from '../../engine/craft/colourDifference.ts';

/**
 * A motif drawn with the yarns that a pattern has: letters that it hasn't become the yarn nearest in colour where their
 * colour is known, else its last one. The same motif where every letter is there.
 */
export function inKnownYarns(motif: Motif, yarns: readonly Yarn[], colours: Readonly<Record<string, string>> = {}): Motif {
  const foreign = new Set([...motif.cells.join('')].filter((letter) => letter !== '.' && !yarns.some((yarn) => yarn.letter === letter)));
  if (foreign.size === 0) return motif;
  const become = new Map([...foreign].map((letter) => [letter, nearest(yarns, colours[letter]) ?? '.']));
  return { ...motif, cells: motif.cells.map((row) => Array.from(row, (letter) => become.get(letter) ?? letter).join('')) };
}

function nearest(yarns: readonly Yarn[], colour: string | undefined): string | undefined {
  if (colour === undefined) return yarns.at(-1)?.letter;
  const lab = labOf(colour);
  return [...yarns].sort((a, b) => colourDifference(lab, labOf(a.colour)) - colourDifference(lab, labOf(b.colour)))[0]?.letter;
}
