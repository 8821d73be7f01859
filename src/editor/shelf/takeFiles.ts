import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { readBackup } from '../../keep/readBackup.ts';
import { readChosenFile } from '../../keep/readChosenFile.ts';
import { restoredWords, type Restored } from '../../keep/restoreBackup.ts';
import { BACKUP_LIMITS, type Backup } from '../../keep/backup.ts';

/** What files that were chosen or dropped came to. */
export interface TakenFiles {
  readonly patterns: readonly Pattern[];
  /** The text of a written pattern that is still to be read; the last one where there are several. */
  readonly written: string | null;
  /** What was brought back from backups, in sentences. */
  readonly restored: readonly string[];
  /** What was refused and why, in sentences. */
  readonly refused: readonly string[];
}

/** Looks at files one after another; backups are brought back by `restore`, everything else is for the caller to put on the shelf. */
export async function takeFiles(files: readonly File[], restore: (backup: Backup) => Promise<Restored>): Promise<TakenFiles> {
  const patterns: Pattern[] = [];
  const restored: string[] = [];
  const refused: string[] = [];
  let written: string | null = null;
  for (const file of files) {
    const backup = await backupIn(file);
    if (backup?.kind === 'refused') refused.push(`${file.name}: ${backup.reason}`);
    if (backup?.kind === 'ok') {
      restored.push(restoredWords(await restore(backup)));
      refused.push(...backup.faults.map((fault) => `${file.name}: ${fault}`));
    }
    if (backup) continue;
    const chosen = await readChosenFile(file);
    if (chosen.kind === 'pattern') patterns.push(chosen.pattern);
    if (chosen.kind === 'written') written = chosen.text;
    if (chosen.kind === 'refused') refused.push(chosen.reason);
  }
  return { patterns, written, restored, refused };
}

/** The backup in a file; `null` if it is another kind of file. */
async function backupIn(file: File): Promise<Exclude<ReturnType<typeof readBackup>, { kind: 'noBackup' }> | null> {
  const mark = new TextDecoder('latin1').decode(await file.slice(0, 4).arrayBuffer().catch(() => new ArrayBuffer(0)));
  if (mark !== 'PK\u0003\u0004') return null;
  if (file.size > BACKUP_LIMITS.bytes) return { kind: 'refused', reason: `it is too large (${Math.round(file.size / 1e6)} MB; ${BACKUP_LIMITS.bytes / 1e6} MB is the most).` };
  const read = readBackup(new Uint8Array(await file.arrayBuffer()));
  return read.kind === 'noBackup' ? null : read;
}
