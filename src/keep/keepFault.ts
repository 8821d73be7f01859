/** Why something could not be kept on the device. */
export interface KeepFault {
  readonly kind: 'full' | 'blocked' | 'stopped' | 'slow' | 'broken';
  /** What is the matter, in a few words: "storage full". */
  readonly brief: string;
  /** A sentence for the maker: what is the matter and what to do. */
  readonly words: string;
}

const BRIEF = { full: 'storage full', blocked: 'storage blocked', stopped: 'storage stopped', slow: 'storage does not answer', broken: 'storage failed' } as const;

const WORDS = {
  full: 'The storage of this device is full. Make room, or save the pattern as a file.',
  blocked: 'This browser does not let the page keep anything (a private window, or storage switched off). Save the pattern as a file before you close the page.',
  stopped: 'The browser stopped the keeping midway. It is tried again; save the pattern as a file to be safe.',
  slow: 'The storage of this device does not answer. It may still; save the pattern as a file to be safe.',
} as const;

/** Reads the error of a store. The names are those of the Indexed Database and Storage standards (W3C, WHATWG). */
export function keepFault(error: unknown): KeepFault {
  const name = error instanceof Error ? error.name : '';
  const message = error instanceof Error ? error.message : error ? String(error) : '';
  if (name === 'QuotaExceededError' || /quota|full disk|disk (is )?full/i.test(message)) return said('full');
  // A private window may refuse with InvalidStateError or a message about mutations, or have no indexedDB at all.
  if (name === 'SecurityError' || name === 'InvalidStateError' || /did not allow mutations|indexedDB is (not defined|null)|access.*denied/i.test(message)) return said('blocked');
  if (name === 'AbortError') return said('stopped');
  return { kind: 'broken', brief: BRIEF.broken, words: `The device could not keep it (${message || 'no reason given'}). It is tried again; save the pattern as a file to be safe.` };
}

/** The fault of a device that has not answered for long. */
export const SLOW_FAULT: KeepFault = said('slow');

function said(kind: keyof typeof WORDS): KeepFault {
  return { kind, brief: BRIEF[kind], words: WORDS[kind] };
}
