import type { Opened } from './file.ts';

/** Why a file did not open, in sentences for the person who chose it. For `ok`, an empty text. */
export function describeOpened(opened: Opened): string {
  switch (opened.kind) {
    case 'ok':
      return '';
    case 'notJson':
      return `This is no pattern file: it is not JSON (${opened.reason}).`;
    case 'notAPattern':
      return `This is no pattern file: it is JSON of something else (${opened.found}).`;
    case 'newer':
      return `This file was written by a newer Turnwork (version ${opened.version} of the format; this one knows up to ${opened.known}). Update, then open it again.`;
    case 'damaged':
      return `This pattern file is damaged${opened.path && ` at ${opened.path}`}: found ${opened.found}, expected ${opened.expected}.`;
  }
}
