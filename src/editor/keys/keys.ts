/** What a key asks of the bench. */
export type KeyAct =
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }
  | { readonly kind: 'keys' }
  | { readonly kind: 'point' }
  | { readonly kind: 'yarn'; readonly letter: string };

/** The keys and what they do, as the list of keys shows them. */
export const KEYS: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: '← →', does: 'along the row, as it is drawn' },
  { keys: '↑ ↓', does: 'to the stitch worked into this one, to its base stitch' },
  { keys: 'A, B, C …', does: 'lay that yarn on the stitch in hand' },
  { keys: 'Enter', does: 'do what is chosen, on the stitch in hand' },
  { keys: 'Esc', does: 'choose nothing, only point' },
  { keys: 'Ctrl + Z', does: 'undo' },
  { keys: 'Ctrl + Shift + Z', does: 'redo' },
  { keys: '?', does: 'this list' },
];

/** The act of a key press outside text fields, or null. `letters` are the pattern's yarns. */
export function keyAct(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>, letters: readonly string[]): KeyAct | null {
  const key = event.key.length === 1 ? event.key.toUpperCase() : event.key;
  if (event.ctrlKey || event.metaKey) {
    if (key === 'Z') return { kind: event.shiftKey ? 'redo' : 'undo' };
    return key === 'Y' ? { kind: 'redo' } : null;
  }
  if (event.altKey) return null;
  if (key === '?') return { kind: 'keys' };
  if (key === 'Escape') return { kind: 'point' };
  return letters.includes(key) ? { kind: 'yarn', letter: key } : null;
}

/** Whether a key press belongs to a field that takes text. */
export function inField(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));
}
