import { strFromU8, strToU8, zipSync, type Zippable } from 'fflate';
import type { History } from '../engine/1-pattern/history.ts';
import { writePatternFile } from '../engine/1-pattern/file.ts';
import { LIMITS } from '../engine/1-pattern/limits.ts';
import type { Pattern } from '../engine/1-pattern/pattern.ts';
import { writeSteps } from '../engine/1-pattern/stepsText.ts';
import type { EarlierText } from './earlier.ts';
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
  /** How it was at earlier times, newest first. */
  readonly earlier: readonly EarlierText[];
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

/** The most that a backup may hold: far above any shelf, low enough that an archive made to burst is refused before it is unpacked. */
export const BACKUP_LIMITS = { bytes: 200_000_000, files: 20_000, fileBytes: 3 * LIMITS.fileLength, unpackedBytes: 600_000_000 } as const;

/** A backup that was written. */
export interface WrittenBackup {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Earlier versions that it had no room for. */
  readonly leftOut: number;
}

/**
 * A backup as one archive (ZIP): `shelf.json` says what is in it with a checksum of each text; every pattern is a pattern
 * file of its own, so that it can be opened without the others, and so is every earlier version. `at` is when it is made,
 * milliseconds. Earlier versions fill no more than two thirds of what a backup may hold (`most`): those with a name come
 * first, then the newest.
 */
export function writeBackup({ patterns, motifs }: Backup, at: number, most: Readonly<Record<'files' | 'fileBytes' | 'unpackedBytes', number>> = BACKUP_LIMITS): WrittenBackup {
  const files: Zippable = {};
  let [count, unpackedBytes] = [0, 0];
  const put = (name: string, text: string, bytes = strToU8(text)) => {
    files[name] = bytes;
    count++;
    unpackedBytes += bytes.length;
    return { file: name, sum: sealed(text).sum };
  };
  const numberOf = (i: number) => String(i + 1).padStart(3, '0');
  const contents = {
    format: SHELF_FORMAT, version: SHELF_VERSION, at,
    patterns: patterns.map(({ pattern, history, createdAt, keptAt, putAwayAt }, i) => {
      const number = numberOf(i);
      const whole = put(`patterns/${number}-${fileName(pattern.title, PATTERN_ENDING)}`, writePatternFile(pattern));
      const steps = history && history.past.length + history.future.length > 0 ? { ...put(`history/${number}.json`, writeSteps([...history.past, ...history.future])), done: history.past.length } : null;
      return { ...whole, title: pattern.title, createdAt, keptAt, putAwayAt, history: steps, earlier: [] as { file: string; sum: number; at: number; name: string | null }[] };
    }),
    motifs: motifs.length > 0 ? put('motifs.json', JSON.stringify(motifs, null, 1)) : null,
  };
  const versions = patterns.flatMap(({ earlier }, i) => earlier.map((version) => ({ i, version })));
  versions.sort((a, b) => Number(a.version.name === null) - Number(b.version.name === null) || b.version.at - a.version.at);
  let leftOut = 0;
  for (const { i, version } of versions) {
    const bytes = strToU8(version.text);
    const hasRoom = count + 2 <= most.files && bytes.length <= most.fileBytes && unpackedBytes + bytes.length <= (most.unpackedBytes * 2) / 3;
    if (hasRoom) contents.patterns[i]!.earlier.push({ ...put(`earlier/${numberOf(i)}/${version.at}.json`, version.text, bytes), at: version.at, name: version.name });
    else leftOut++;
  }
  put(CONTENTS, JSON.stringify(contents, null, 1));
  // The time in the archive is one for all, so that the same shelf gives the same bytes.
  return { bytes: new Uint8Array(zipSync(files, { level: 6, mtime: at })), leftOut };
}

/** The text of a file in an archive. */
export function textOf(bytes: Uint8Array): string {
  return strFromU8(bytes);
}
