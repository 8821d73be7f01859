/** What a key asks of the bench. */
export type KeyAct =
  | { readonly kind: 'undo' }
  | { readonly kind: 'redo' }
  | { readonly kind: 'keys' }
  | { readonly kind: 'point' }
  | { readonly kind: 'find' }
  | { readonly kind: 'copy' }
  | { readonly kind: 'put' }
  | { readonly kind: 'yarn'; readonly letter: string };

/** Keys of one place and what they do there. */
export interface KeyGroup {
  readonly place: string;
  readonly keys: readonly { readonly keys: string; readonly does: string }[];
}

/** The keys and what they do, as the list of keys shows them. */
export const KEYS: readonly KeyGroup[] = [
  {
    place: 'Everywhere',
    keys: [
      { keys: 'Ctrl + Z', does: 'undo' },
      { keys: 'Ctrl + Shift + Z', does: 'redo' },
      { keys: 'Esc', does: 'close the sheet; on the chart choose nothing, only point' },
      { keys: '/, Ctrl + F', does: 'find a row, a stitch, words, a finding' },
      { keys: '?', does: 'this list' },
    ],
  },
  {
    place: 'On the chart',
    keys: [
      { keys: '← →', does: 'along the row, as it is drawn' },
      { keys: '↑ ↓', does: 'to the stitch worked into this one, to its base stitch' },
      { keys: 'Home, End', does: 'to the ends of the row' },
      { keys: 'A, B, C …', does: 'lay that yarn on the stitch in hand' },
      { keys: 'Enter', does: 'do what is chosen, on the stitch in hand: lay a yarn, set a stitch, place a motif, take up a placed motif and put it down' },
      { keys: 'Shift + Enter', does: 'lay the yarn along the row, from where it was laid last' },
      { keys: 'Ctrl + Enter', does: 'lay the yarn on all that is of one yarn here, along the row' },
      { keys: 'Ctrl + Shift + Enter', does: 'fill: lay the yarn on all that hangs together in one yarn here, row over row' },
      { keys: 'Shift + arrows', does: 'choose a block of stitches from here' },
      { keys: 'Ctrl + C, Ctrl + V', does: 'copy the block or the rows that are chosen, or the row in hand; put them here' },
      { keys: 'Menu, Shift + F10', does: 'what can be done with the row: more rows, fewer, another count, the yarn on all of it' },
      { keys: '+ − 0', does: 'nearer, further, the whole' },
      { keys: 'Space', does: 'held down, to move the chart by pointer' },
    ],
  },
  {
    place: 'On the cells of a motif',
    keys: [
      { keys: '← → ↑ ↓', does: 'from cell to cell' },
      { keys: 'A, B, C …', does: 'lay that yarn on the cell, or on the part that is chosen' },
      { keys: 'Space, Delete', does: 'clear the cell; Delete the part that is chosen' },
      { keys: '1 2 3 4 5', does: 'pencil, line, rectangle, fill, choose a part' },
      { keys: 'Enter', does: 'draw or fill here; begin a line, a rectangle or a part here, and end it' },
      { keys: 'Esc', does: 'call off what was begun, then leave the part, then close the sheet' },
      { keys: 'Shift + arrows', does: 'choose a part from here' },
      { keys: 'Alt + arrows', does: 'move what is chosen; with Ctrl a copy of it' },
      { keys: 'Ctrl + C, Ctrl + V', does: 'copy what is chosen, lay the copy here' },
    ],
  },
];

/** The act of a key press outside text fields, or null. `letters` are the pattern's yarns. */
export function keyAct(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>, letters: readonly string[]): KeyAct | null {
  const key = event.key.length === 1 ? event.key.toUpperCase() : event.key;
  if (event.ctrlKey || event.metaKey) {
    if (key === 'F') return { kind: 'find' };
    if (key === 'C') return { kind: 'copy' };
    if (key === 'V') return { kind: 'put' };
    if (key === 'Z') return { kind: event.shiftKey ? 'redo' : 'undo' };
    return key === 'Y' ? { kind: 'redo' } : null;
  }
  if (event.altKey) return null;
  if (key === '?') return { kind: 'keys' };
  if (key === '/') return { kind: 'find' };
  if (key === 'Escape') return { kind: 'point' };
  return letters.includes(key) ? { kind: 'yarn', letter: key } : null;
}

/** Whether a key press belongs to a field that takes text. */
export function inField(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));
}
