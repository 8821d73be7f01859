import { unzipSync } from 'fflate';
import * as v from 'valibot';
import { describeOpened } from '../engine/1-pattern/describeOpened.ts';
import { faultOfIssue } from '../engine/1-pattern/fault.ts';
import { openPatternFile } from '../engine/1-pattern/file.ts';
import type { History } from '../engine/1-pattern/history.ts';
import { LIMITS } from '../engine/1-pattern/limits.ts';
import { editsStandFrom } from '../engine/1-pattern/migrations/migrateUp.ts';
import { nestingFault } from '../engine/1-pattern/plainJson.ts';
import { rowsFault } from '../engine/1-pattern/rowsFault.ts';
import { readSteps } from '../engine/1-pattern/stepsText.ts';
import { BACKUP_LIMITS, CONTENTS, SHELF_FORMAT, SHELF_VERSION, textOf, type Backup, type BackupPattern } from './backup.ts';
import { readOwnMotif } from './ownMotifs.ts';
import { sealed } from './sealed.ts';

/** What reading a backup gives. `faults` names what in it can't be read, in words; the rest can be brought back. */
export type ReadBackup = ({ readonly kind: 'ok'; readonly faults: readonly string[] } & Backup) | { readonly kind: 'noBackup' } | { readonly kind: 'refused'; readonly reason: string };

const fileSchema = v.object({ file: v.string(), sum: v.number() });
const patternSchema = v.object({
  ...fileSchema.entries,
  title: v.string(),
  createdAt: v.number(),
  keptAt: v.number(),
  putAwayAt: v.nullable(v.number()),
  history: v.nullable(v.object({ ...fileSchema.entries, done: v.pipe(v.number(), v.integer(), v.minValue(0)) })),
  /** Not in the first backups. */
  earlier: v.optional(v.array(v.object({ ...fileSchema.entries, at: v.pipe(v.number(), v.integer(), v.minValue(0)), name: v.nullable(v.pipe(v.string(), v.maxLength(LIMITS.fileLength))) })), []),
});
const contentsSchema = v.object({
  patterns: v.pipe(v.array(patternSchema), v.maxLength(BACKUP_LIMITS.files)),
  motifs: v.nullable(fileSchema),
});

/** Reads the bytes of a backup. Never throws, whatever they are; nothing is unpacked before its size is known to be sound. */
export function readBackup(bytes: Uint8Array): ReadBackup {
  if (bytes.length > BACKUP_LIMITS.bytes) return { kind: 'refused', reason: `it is too large (${megabytes(bytes.length)} MB; ${megabytes(BACKUP_LIMITS.bytes)} MB is the most).` };
  let files: Readonly<Record<string, Uint8Array>>;
  try {
    files = unpacked(bytes);
  } catch (error) {
    return { kind: 'refused', reason: error instanceof RangeError && error.message.startsWith('it ') ? error.message : 'it is no sound archive: it is cut off or damaged.' };
  }
  const text = files[CONTENTS] && textOf(files[CONTENTS]);
  if (!text) return { kind: 'noBackup' };
  const contents = contentsOf(text);
  if (typeof contents === 'string') return { kind: 'refused', reason: contents };

  const faults: string[] = [];
  const checked = ({ file, sum }: v.InferOutput<typeof fileSchema>): string | null => {
    const found = Object.hasOwn(files, file) ? textOf(files[file]!) : null;
    if (found === null) faults.push(`${file} is not in the archive.`);
    else if (sealed(found).sum !== sum) faults.push(`${file} is damaged: it is not what its checksum says.`);
    else return found;
    return null;
  };
  const patterns = contents.patterns.flatMap(({ title, history: steps, earlier: versions, createdAt, keptAt, putAwayAt, ...file }): BackupPattern[] => {
    const whole = checked(file);
    const opened = whole === null ? null : openPatternFile(whole);
    if (opened && opened.kind !== 'ok') faults.push(`${file.file} (${title || 'untitled'}): ${describeOpened(opened)}`);
    if (opened?.kind !== 'ok') return [];
    const rows = rowsFault(opened.pattern);
    if (rows) faults.push(`${file.file} (${title || 'untitled'}): ${rows.path} has ${rows.found}, expected ${rows.expected}.`);
    if (rows) return [];
    const stepsText = steps && editsStandFrom(opened.from) ? checked(steps) : null;
    const read = stepsText === null ? null : readSteps(stepsText);
    if (stepsText !== null && (!read || steps!.done > read.length)) faults.push(`${steps!.file}: the steps of ${title || 'a pattern'} can’t be read; the pattern comes back without them.`);
    const history: History | null = read && steps!.done <= read.length ? { past: read.slice(0, steps!.done), future: read.slice(steps!.done) } : null;
    const earlier = versions.flatMap(({ at, name, ...version }) => {
      const text = checked(version);
      return text === null ? [] : [{ at, name, text }];
    });
    return [{ pattern: opened.pattern, history, createdAt, keptAt, putAwayAt, earlier: earlier.sort((a, b) => b.at - a.at) }];
  });
  return { kind: 'ok', patterns, motifs: motifsOf(contents.motifs && checked(contents.motifs), faults), faults };
}

/** Unpacks an archive. What it says of its sizes is looked at first, and nothing larger than it says is unpacked. */
function unpacked(bytes: Uint8Array): Readonly<Record<string, Uint8Array>> {
  let files = 0;
  let sum = 0;
  return unzipSync(bytes, {
    filter({ name, originalSize }) {
      sum += originalSize;
      if (++files > BACKUP_LIMITS.files) throw new RangeError(`it holds more than ${BACKUP_LIMITS.files} files.`);
      if (originalSize > BACKUP_LIMITS.fileBytes) throw new RangeError(`it is too large unpacked (${name}: ${megabytes(originalSize)} MB; ${megabytes(BACKUP_LIMITS.fileBytes)} MB is the most).`);
      if (sum > BACKUP_LIMITS.unpackedBytes) throw new RangeError(`it is too large unpacked (over ${megabytes(BACKUP_LIMITS.unpackedBytes)} MB).`);
      return name === CONTENTS || name === 'motifs.json' || /^(patterns|history|earlier)\//.test(name);
    },
  });
}

function contentsOf(text: string): v.InferOutput<typeof contentsSchema> | string {
  const deep = nestingFault(text, LIMITS.fileDepth);
  if (deep) return `${CONTENTS}: found ${deep.found}, expected ${deep.expected}.`;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return `${CONTENTS} is not JSON (${error instanceof Error ? error.message : String(error)}).`;
  }
  const { format, version } = (typeof value === 'object' && value !== null ? value : {}) as Readonly<Record<string, unknown>>;
  if (format !== SHELF_FORMAT) return `it is an archive of something else (${CONTENTS} has another format).`;
  if (typeof version === 'number' && version > SHELF_VERSION) return `it was written by a newer Turnwork (version ${version} of backups; this one knows up to ${SHELF_VERSION}). Update, then open it again.`;
  const parsed = v.safeParse(contentsSchema, value, { abortEarly: true });
  if (parsed.success) return parsed.output;
  const fault = faultOfIssue(parsed.issues[0]);
  return `${CONTENTS} is damaged at ${fault.path}: found ${fault.found}, expected ${fault.expected}.`;
}

function motifsOf(text: string | null, faults: string[]): Backup['motifs'] {
  if (text === null) return [];
  let list: unknown;
  try {
    list = JSON.parse(text);
  } catch {
    list = null;
  }
  if (!Array.isArray(list)) {
    faults.push('motifs.json: it is no list of motifs.');
    return [];
  }
  return list.flatMap((value: unknown, i) => {
    const motif = readOwnMotif(value);
    if (!motif) faults.push(`motifs.json at ${i}: it is no motif.`);
    return motif ?? [];
  });
}

function megabytes(bytes: number): string {
  return (bytes / 1_000_000).toFixed(1).replace(/\.0$/, '');
}
