import type { PieceSettings } from '../../../engine/2-construct/recipes/settings.ts';

/** Changes the make of a piece; what is of another kind of piece stays as it is. */
export type MakeChange = (settings: PieceSettings) => PieceSettings;

interface Asked {
  /** Unique on the page, such as `heel.kind`. */
  readonly id: string;
  /** What it is, for those who only hear it. */
  readonly label: string;
  /** Words before the field in the sentence. */
  readonly before: string;
  /** Words after it. */
  readonly after: string;
  /** Sections that it writes: it can't be changed where one of them was changed by hand. */
  readonly sections: readonly string[];
}

/** One thing about the make of a piece that can be changed in place. */
export type MakeField =
  | (Asked & { readonly kind: 'choice'; readonly value: string; readonly options: readonly { readonly value: string; readonly words: string }[]; readonly set: (value: string) => MakeChange })
  | (Asked & { readonly kind: 'cm'; readonly cm: number; readonly set: (cm: number) => MakeChange })
  | (Asked & { readonly kind: 'count'; readonly value: number; readonly least: number; readonly most: number; readonly set: (count: number) => MakeChange })
  | (Asked & { readonly kind: 'yarn'; readonly letter: string; readonly set: (letter: string) => MakeChange })
  /** A number that rows are made of, one a size, set by hand. */
  | (Asked & { readonly kind: 'pin'; readonly key: string });

/** What is said of one part of the piece. */
export interface MakePart {
  readonly id: string;
  readonly title: string;
  readonly fields: readonly MakeField[];
}

type OfKind<K extends PieceSettings['kind']> = Extract<PieceSettings, { kind: K }>;

/** A change of the settings of one kind of piece. */
export function inKind<K extends PieceSettings['kind']>(kind: K, change: (settings: OfKind<K>) => PieceSettings): MakeChange {
  return (settings) => (settings.kind === kind ? change(settings as OfKind<K>) : settings);
}

/** A choice among words; values are those of the settings. */
export function choice<T extends string>(asked: Asked, value: T, words: Readonly<Record<T, string>>, set: (value: T) => MakeChange): MakeField {
  const values = Object.keys(words) as T[];
  return { ...asked, kind: 'choice', value, options: values.map((one) => ({ value: one, words: words[one] })), set: (chosen) => set(values.find((one) => one === chosen) ?? value) };
}
