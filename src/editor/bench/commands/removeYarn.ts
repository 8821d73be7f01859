import { removal } from '../../../engine/1-pattern/removal.ts';
import type { Command } from '../benchState.ts';

/**
 * Takes a yarn out; motifs, loose cells and grounds are drawn in `to` instead. None for the last yarn, and where rows name
 * the yarn: their words would say a yarn that is not there.
 */
export function removeYarn(letter: string, to: string): Command {
  return ({ pattern, fabric, at }) => {
    const index = pattern.yarns.findIndex((yarn) => yarn.letter === letter);
    if (index < 0 || letter === to || !pattern.yarns.some((yarn) => yarn.letter === to)) return null;
    if (fabric.yarn.includes(index)) return null;
    const name = pattern.yarns[index]!.name;
    return { label: `Take out ${letter}${name === '' ? '' : ` ${name}`}`, at, edits: removal(pattern, { kind: 'yarn', letter, to }) };
  };
}
