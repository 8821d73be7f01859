import type { Pins } from '../../../engine/1-pattern/pieceFacts.ts';
import type { PieceSettings } from '../../../engine/2-construct/recipes/settings.ts';
import type { MakeChange } from './makeField.ts';

/** What is tried of another make before it is done: changes of settings by field, and numbers set by hand. */
export interface MakeDraft {
  readonly changes: ReadonlyMap<string, MakeChange>;
  readonly pins: ReadonlyMap<string, ReadonlyMap<number, number | null>>;
}

export const NO_DRAFT: MakeDraft = { changes: new Map(), pins: new Map() };

/** With another change of a field; it comes after the others, since fields can hang on one another. */
export function withChange(draft: MakeDraft, id: string, change: MakeChange): MakeDraft {
  return { ...draft, changes: new Map([...[...draft.changes].filter(([other]) => other !== id), [id, change]]) };
}

/** With a number of one size set by hand (null: reckoned). */
export function withDraftPin(draft: MakeDraft, key: string, size: number, value: number | null): MakeDraft {
  return { ...draft, pins: new Map([...draft.pins, [key, new Map([...(draft.pins.get(key) ?? []), [size, value]])]]) };
}

/** The settings as they would be. */
export function draftedSettings(settings: PieceSettings, draft: MakeDraft): PieceSettings {
  return [...draft.changes.values()].reduce((so, change) => change(so), settings);
}

/** The numbers set by hand as they would be. */
export function draftedPins(pins: Pins, draft: MakeDraft, sizes: number): Pins {
  const next = new Map<string, readonly (number | null)[]>(Object.entries(pins));
  for (const [key, values] of draft.pins) {
    const all = Array.from({ length: sizes }, (_, size) => (values.has(size) ? values.get(size)! : (pins[key]?.[size] ?? null)));
    if (all.every((one) => one === null)) next.delete(key);
    else next.set(key, all);
  }
  return Object.fromEntries(next);
}
