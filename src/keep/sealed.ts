import { str } from 'crc-32';

/** A text with its checksum, as it is kept: what comes back changed or cut off is known. */
export interface Sealed {
  readonly text: string;
  /** CRC-32 (ISO 3309) of the text as UTF-8. */
  readonly sum: number;
}

/** Seals a text. */
export function sealed(text: string): Sealed {
  return { text, sum: str(text) };
}

/** The text of what was sealed; `null` if it is not what was sealed. */
export function unsealed(value: unknown): string | null {
  if (typeof value !== 'object' || value === null) return null;
  const { text, sum } = value as Readonly<Record<string, unknown>>;
  return typeof text === 'string' && str(text) === sum ? text : null;
}
