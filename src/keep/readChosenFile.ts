import { describeOpened } from '../engine/1-pattern/describeOpened.ts';
import { openPatternFile } from '../engine/1-pattern/file.ts';
import { LIMITS } from '../engine/1-pattern/limits.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import { rowsFault } from '../engine/1-pattern/rowsFault.ts';

/** What a file turned out to be. A written pattern is text that is still to be read. */
export type ChosenFile =
  | { readonly kind: 'pattern'; readonly pattern: Pattern; readonly from: number }
  | { readonly kind: 'written'; readonly text: string }
  | { readonly kind: 'refused'; readonly reason: string };

/** The most bytes of a written pattern; the longest book of patterns is a tenth of it. */
export const WRITTEN_BYTES = 4_000_000;

/**
 * Looks at a file that was chosen or dropped: a pattern file, a written pattern, or neither, with the reason in words.
 * Text may be UTF-8 or UTF-16 with its mark; any other is taken for Windows-1252, as older word processors write it.
 */
export async function readChosenFile(file: Pick<File, 'name' | 'size' | 'arrayBuffer'>): Promise<ChosenFile> {
  const refused = (reason: string): ChosenFile => ({ kind: 'refused', reason: `${file.name || 'The file'}: ${reason}` });
  // A file of the longest text that opens has at most three bytes a character.
  if (file.size > 3 * LIMITS.fileLength) return refused(`it is too large (${megabytes(file.size)} MB; ${megabytes(3 * LIMITS.fileLength)} MB is the most).`);
  if (file.size === 0) return refused('it is empty.');
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch (error) {
    return refused(`it could not be read (${error instanceof Error ? error.message : String(error)}).`);
  }
  const text = decoded(bytes);
  if (text === null) return refused('it is no text. A pattern file ends in .json, a written pattern in .txt; of a PDF or a word processor file, copy the text and paste it.');
  if (/^\s*[[{]/.test(text) && (/\.json$/i.test(file.name) || isJson(text))) {
    const opened = openPatternFile(text);
    if (opened.kind !== 'ok') return refused(describeOpened(opened));
    const rows = rowsFault(opened.pattern);
    return rows ? refused(`it asks for more work than any device does: ${rows.path} has ${rows.found}, expected ${rows.expected}.`) : { kind: 'pattern', pattern: opened.pattern, from: opened.from };
  }
  if (/\.json$/i.test(file.name)) return refused('it is no pattern file.');
  if (text.trim() === '') return refused('it is empty.');
  if (bytes.length > WRITTEN_BYTES) return refused(`it is too large for a written pattern (${megabytes(bytes.length)} MB; ${megabytes(WRITTEN_BYTES)} MB is the most).`);
  return { kind: 'written', text };
}

function decoded(bytes: Uint8Array): string | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  // A NUL, or the marks of PDF and ZIP (word processors), never begin or stand in plain text.
  if (bytes.includes(0) || startsWith(bytes, '%PDF-') || startsWith(bytes, 'PK\u0003\u0004') || startsWith(bytes, '{\\rtf')) return null;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function startsWith(bytes: Uint8Array, mark: string): boolean {
  return [...mark].every((letter, i) => bytes[i] === letter.charCodeAt(0));
}

function isJson(text: string): boolean {
  return /^\s*\{\s*"/.test(text);
}

function megabytes(bytes: number): string {
  return (bytes / 1_000_000).toFixed(1).replace(/\.0$/, '');
}

/** A name for a file of a pattern: its title in plain letters, at most 60 of them. `ending` with its dot. */
export function fileName(title: string, ending: string): string {
  const plain = title
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '')
    .toLowerCase();
  return `${plain || 'pattern'}${ending}`;
}

/** The ending of pattern files. */
export const PATTERN_ENDING = '.turnwork.json';
