import { strToU8, zipSync, type Zippable } from 'fflate';

/** A file that was made: a name without folder, and its bytes. */
export interface MadeFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The first day that a ZIP can say: files in an archive carry no clock. */
const NO_DAY = '1980-01-01T00:00:00';

/** Names that some systems keep for themselves. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
const LONGEST = 100;

/** All files in one ZIP, in the order given: safe names, none twice, the same bytes for the same files everywhere. */
export function archive(files: readonly MadeFile[]): Uint8Array {
  const entries: Zippable = {};
  const names = uniqueNames(files.map(({ name }) => name));
  // The format keeps local time; a time without zone is the same digits everywhere.
  files.forEach(({ bytes }, index) => { entries[names[index]!] = [bytes, { mtime: NO_DAY, level: /\.(png|pdf|zip)$/i.test(names[index]!) ? 0 : 6 }]; });
  return zipSync(entries);
}

/** Names made safe, and each but the first of its kind numbered: `leg.svg`, `leg-2.svg`. Case doesn't tell names apart. */
export function uniqueNames(names: readonly string[]): string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const safe = safeName(name);
    const dot = safe.lastIndexOf('.');
    const [stem, ending] = dot > 0 ? [safe.slice(0, dot), safe.slice(dot)] : [safe, ''];
    let made = safe;
    for (let nth = 2; taken.has(made.toLowerCase()); nth++) made = `${stem}-${nth}${ending}`;
    taken.add(made.toLowerCase());
    return made;
  });
}

/** A name that every system takes and nothing can climb out of a folder with: letters and digits of any script, `.`, `_` and `-`. */
export function safeName(name: string): string {
  const plain = name.normalize('NFC').replace(/[^\p{L}\p{N}._-]+/gu, '-').replace(/^[.-]+/, '').replace(/-*\.+-*(?=.)/g, '.').replace(/[.-]+$/, '');
  const dot = plain.lastIndexOf('.');
  const [stem, ending] = dot > 0 ? [plain.slice(0, dot), plain.slice(dot)] : [plain, ''];
  const short = [...stem].slice(0, LONGEST).join('');
  return `${short === '' ? 'file' : RESERVED.test(short) ? `${short}-file` : short}${ending}`;
}

/** Text as the bytes of a file. */
export function textBytes(text: string): Uint8Array {
  return strToU8(text);
}
