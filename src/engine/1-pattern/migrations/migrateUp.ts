import type { Migration } from './migration.ts';
import { TO_002 } from './to002.ts';
import { TO_003 } from './to003.ts';

/** Every migration, from version 1 on without a gap; one file each, `to002.ts` and so on. */
export const MIGRATIONS: readonly Migration[] = [TO_002, TO_003];

/** The version that files are written in: one more than the last migration starts from. */
export const FILE_VERSION = MIGRATIONS.length + 1;

/** Brings the plain JSON of a pattern from version `from` up to the newest. Refuses a version that is not among those known. */
export function migrateUp(pattern: unknown, from: number, migrations: readonly Migration[] = MIGRATIONS): unknown {
  if (!Number.isInteger(from) || from < 1 || from > migrations.length + 1) throw new RangeError(`version ${from} is outside 1 to ${migrations.length + 1}`);
  return migrations.slice(from - 1).reduce((value, migration) => migration.up(value), pattern);
}

/** Whether edits that were kept beside a file of version `from` can still be made on the pattern that is read from it. */
export function editsStandFrom(from: number, migrations: readonly Migration[] = MIGRATIONS): boolean {
  return !migrations.slice(from - 1).some((migration) => migration.breaksEdits);
}
