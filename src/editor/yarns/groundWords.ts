import type { Ground } from '../../engine/1-pattern/pattern.ts';

/** Stripes as they are typed: "A 2, B 1"; a letter alone is plain. */
export function stripesText(ground: Ground | undefined): string {
  if (ground?.kind !== 'stripes') return '';
  const { stripes } = ground;
  return stripes.length === 1 ? stripes[0]!.letter : stripes.map(({ letter, rows }) => `${letter} ${rows}`).join(', ');
}

/** Reads stripes as typed; null where a letter is no yarn of the pattern or a number is missing. */
export function readStripes(text: string, letters: readonly string[]): Extract<Ground, { kind: 'stripes' }> | null {
  const parts = text.split(/[,;]/).map((part) => part.trim()).filter((part) => part !== '');
  const stripes = parts.flatMap((part) => {
    const found = /^([a-z])\s*(\d{1,4})?$/i.exec(part);
    const letter = found?.[1]?.toUpperCase();
    const rows = Number(found?.[2] ?? (parts.length === 1 ? 1 : Number.NaN));
    return letter && letters.includes(letter) && rows >= 1 ? [{ letter, rows }] : [];
  });
  return parts.length > 0 && stripes.length === parts.length ? { kind: 'stripes', stripes } : null;
}
