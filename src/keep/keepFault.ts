/** Why something could not be kept on the device. */
export interface KeepFault {
  readonly kind: 'full' | 'blocked' | 'broken';
  /** A sentence for the maker: what is the matter and what to do. */
  readonly words: string;
}

const WORDS = {
  full: 'The storage of this device is full, so the last changes are not kept. Make room, or save the pattern as a file.',
  blocked: 'This browser does not let pages keep anything (a private window, or storage switched off). Save the pattern as a file before you close the page.',
} as const;

/** Reads the error of a store. The names are those of the Indexed Database and Storage standards (W3C, WHATWG). */
export function keepFault(error: unknown): KeepFault {
  const name = error instanceof Error ? error.name : '';
  const message = error instanceof Error ? error.message : String(error);
  if (name === 'QuotaExceededError' || /quota|full disk|disk (is )?full/i.test(message)) return { kind: 'full', words: WORDS.full };
  // A private window may refuse with InvalidStateError or a message about mutations, or have no indexedDB at all.
  if (name === 'SecurityError' || name === 'InvalidStateError' || /did not allow mutations|indexedDB is (not defined|null)/i.test(message)) return { kind: 'blocked', words: WORDS.blocked };
  return { kind: 'broken', words: `The last changes could not be kept (${message || 'no reason given'}). They are tried again; save the pattern as a file to be safe.` };
}
