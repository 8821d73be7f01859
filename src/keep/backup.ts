import { strFromU8, strToU8, zipSync, type Zippable } from 'fflate';
import type { History } from '../engine/1-pattern/history.ts';
import { writePatternFile } from '../engine/1-pattern/file.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import { writeSteps } from '../engine/1-pattern/stepsText.ts';
import { sealed } from './sealed.ts';
import type { OwnMotif } from './ownMotifs.ts';
import { fileName, PATTERN_ENDING } from './readChosenFile.ts';

/** A pattern of a backup with all that goes with it. */
export interface BackupPattern {
  readonly pattern: Pattern;
  /** Null where it was left out. */
  readonly history: History | null;
  readonly createdAt: number;
  readonly keptAt: number;
  readonly putAwayAt: number | null;
}

/** A whole shelf: its patterns and the designer's own motifs. */
export interface Backup {
  readonly patterns: readonly BackupPattern[];
  readonly motifs: readonly OwnMotif[];
}

/** The name that tells a backup of a shelf, and its version. */
export const SHELF_FORMAT = 'turnwork-shelf';
export const SHELF_VERSION = 1;
/** The file of a backup that says what is in it. */
export const CONTENTS = 'shelf.json';

/**
 * A backup as one archive (ZIP): `shelf.json` says what is in it with a checksum of each text; every pattern is a pattern
 * file of its own, so that it can be opened without the others. `at` is when it is made, milliseconds.
 */
export function writeBackup({ patterns, motifs }: Backup, at: number): Uint8Array<ArrayBuffer> {
  const files: Zippable = {};
  const put = (name: string, text: string) => {
    files[name] = strToU8(text);
    return { file: name, sum: sealed(text).sum };
  };
  const contents = {
    format: SHELF_FORMAT, version: SHELF_VERSION, at,
    patterns: patterns.map(({ pattern, history, createdAt, keptAt, putAwayAt }, i) => {
      const number = String(i + 1).padStart(3, '0');
      const whole = put(`patterns/${number}-${fileName(pattern.title, PATTERN_ENDING)}`, writePatternFile(pattern));
      const steps = history && history.past.length + history.future.length > 0 ? { ...put(`history/${number}.json`, writeSteps([...history.past, ...history.future])), done: history.past.length } : null;
      return { ...whole, title: pattern.title, createdAt, keptAt, putAwayAt, history: steps };
    }),
    motifs: motifs.length > 0 ? put('motifs.json', JSON.stringify(motifs, null, 1)) : null,
  };
  put(CONTENTS, JSON.stringify(contents, null, 1));
  // The time in the archive is one for all, so that the same shelf gives the same bytes.
  return new Uint8Array(zipSync(files, { level: 6, mtime: at }));
}

/** The text of a file in an archive. */
export function textOf(bytes: Uint8Array): string {
  return strFromU8(bytes);
}
