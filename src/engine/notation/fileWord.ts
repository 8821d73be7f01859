/** A name as part of a file name: letters and digits, accents taken off, the rest as hyphens, at most 40 characters; `fallback` where nothing is left. */
export function fileWord(text: string, fallback = ''): string {
  const plain = text.normalize('NFKD').toLowerCase().replace(/\p{M}/gu, '').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '');
  return [...plain].slice(0, 40).join('').replace(/-+$/, '') || fallback;
}

/** Names made unique by a number behind the second of its kind: `leg`, `leg-2`. */
export function uniqueWords(): (word: string) => string {
  const taken = new Set<string>();
  return (word) => {
    let name = word;
    for (let n = 2; taken.has(name); n++) name = `${word}-${n}`;
    taken.add(name);
    return name;
  };
}
