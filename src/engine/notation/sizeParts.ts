import type { TextRange } from './instruction.ts';

/** A stretch of a row's text, for all sizes (null) or for some, by index. */
export interface SizePart {
  readonly range: TextRange;
  readonly sizes: readonly number[] | null;
}

/** More parts than this are not written by people. */
const MOST_PARTS = 60;

/**
 * Cuts a row at words that name sizes: "Sizes S and L: …", "Size M: …", "(sizes M and L only: …)", "All sizes: …". What
 * stands in parentheses ends with them; otherwise a part goes on to the next one. Null where no such words are.
 */
export function sizeParts(text: string, names: readonly string[]): readonly SizePart[] | null {
  const known = names.filter((name) => name !== '');
  if (known.length < 2 || !/sizes?\s/i.test(text)) return null;
  const name = `(?:${known.map(escaped).sort((a, b) => b.length - a.length).join('|')})`;
  const words = new RegExp(`(\\()?\\b(?:(all)\\s+sizes|(?:for\\s+)?sizes?\\s+(${name}(?:\\s*,\\s*(?:and\\s+)?${name}|\\s+and\\s+${name})*)(?:\\s+only)?)\\s*:\\s*`, 'gi');
  const parts: SizePart[] = [];
  let from = 0;
  let sizes: readonly number[] | null = null;
  const close = (to: number) => {
    if (text.slice(from, to).trim() !== '') parts.push({ range: [from, to], sizes });
  };
  for (let match = words.exec(text); match; match = words.exec(text)) {
    if (parts.length >= MOST_PARTS) return null;
    close(match.index);
    from = match.index + match[0].length;
    sizes = match[2] ? null : indicesOf(match[3]!, names);
    if (match[1]) {
      const end = closing(text, from);
      close(end);
      from = Math.min(text.length, end + 1);
      sizes = null;
      words.lastIndex = from;
    }
  }
  close(text.length);
  return parts.some((part) => part.sizes !== null) ? parts : null;
}

/** "S, M and L". */
export function listOfNames(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;
}

function indicesOf(list: string, names: readonly string[]): number[] {
  const said = list.toLowerCase().split(/\s*,\s*(?:and\s+)?|\s+and\s+/);
  return names.flatMap((name, index) => (said.includes(name.toLowerCase()) ? [index] : []));
}

function closing(text: string, from: number): number {
  let depth = 1;
  for (let at = from; at < text.length; at++) {
    if (text[at] === '(') depth++;
    else if (text[at] === ')' && --depth === 0) return at;
  }
  return text.length;
}

function escaped(name: string): string {
  return name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');
}
