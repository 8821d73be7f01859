import * as v from 'valibot';
import { canonicalCells } from './canonicalCells.ts';
import { describeValue, faultOfIssue, type Fault } from './fault.ts';
import { LIMITS } from './limits.ts';
import { FILE_VERSION, migrateUp } from './migrations/migrateUp.ts';
import type { Pattern } from './pattern.ts';
import { plainJsonFault, nestingFault } from './plainJson.ts';
import { referenceFault } from './references.ts';
import { patternSchema } from './schema.ts';

/** What opening a pattern file gives. */
export type Opened =
  /** A sound pattern, frozen. `from` is the version that the file was written in. */
  | { readonly kind: 'ok'; readonly pattern: Pattern; readonly from: number }
  | { readonly kind: 'notJson'; readonly reason: string }
  /** JSON, but of something else. */
  | { readonly kind: 'notAPattern'; readonly found: string }
  /** Written by a newer Turnwork. */
  | { readonly kind: 'newer'; readonly version: number; readonly known: number }
  /** A pattern file with a fault: the path within the file, what is there, what should be. */
  | ({ readonly kind: 'damaged' } & Fault);

const FORMAT = 'turnwork-pattern';

/**
 * The text of a pattern file: JSON with one order of keys, so the same pattern always gives the same text. Loose cells
 * are put in their one form (`canonicalCells`).
 */
export function writePatternFile(pattern: Pattern): string {
  const file = { format: FORMAT, version: FILE_VERSION, pattern: { ...pattern, cells: canonicalCells(pattern.cells) } };
  return `${JSON.stringify(file, inOrder, 1)}\n`;
}

/**
 * A pattern file in one line, in whatever order its fields were made: the same to open, and some thirty times faster to write
 * than `writePatternFile`, for keeping large patterns while somebody works on them.
 */
export function packPatternFile(pattern: Pattern): string {
  return JSON.stringify({ format: FORMAT, version: FILE_VERSION, pattern });
}

// Keys in the order a reader looks for them; any others after these, by the alphabet.
const KEYS = [
  'format', 'version', 'pattern', 'kind', 'id', 'word', 'letter', 'name', 'colour', 'title', 'designer', 'terms', 'gauge', 'hookMm', 'yarns', 'sizes', 'hdcTurningChainCounts',
  'notes', 'value', 'stitches', 'rows', 'overCm', 'stitch', 'start', 'side', 'mark', 'sections', 'remark', 'recipe', 'settings', 'lines', 'label', 'text', 'motifs', 'placements',
  'cells', 'section', 'motif', 'row', 'line', 'nth', 'align', 'offset', 'across', 'up', 'gap', 'mirror', 'size', 'from', 'letters',
  'technique', 'ground', 'gapUp', 'fill', 'anchor', 'follow', 'stagger', 'flip', 'bySize', 'hidden', 'locked', 'versions', 'colourLimits', 'piece', 'wording', 'imprint',
];
const RANK = new Map(KEYS.map((key, rank) => [key, rank]));

function inOrder(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  const rank = (key: string) => RANK.get(key) ?? KEYS.length;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1)));
}

/**
 * Opens the text of a pattern file: parse, look at the envelope, refuse a newer version, migrate an older one up,
 * validate shape, limits and references, freeze. Never throws, whatever the text.
 */
export function openPatternFile(text: string): Opened {
  if (text.length > LIMITS.fileLength) return { kind: 'damaged', path: '', found: `${text.length} characters`, expected: `at most ${LIMITS.fileLength} characters` };
  const deep = nestingFault(text, LIMITS.fileDepth);
  if (deep) return { kind: 'damaged', ...deep };
  let file: unknown;
  try {
    file = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text);
  } catch (error) {
    return { kind: 'notJson', reason: error instanceof Error ? error.message : String(error) };
  }
  if (!isRecord(file) || file['format'] !== FORMAT) return { kind: 'notAPattern', found: isRecord(file) ? `format ${describeValue(file['format'])}` : describeValue(file) };
  const version = file['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) return { kind: 'damaged', path: 'version', found: describeValue(version), expected: 'a whole number from 1 on' };
  if (version > FILE_VERSION) return { kind: 'newer', version, known: FILE_VERSION };
  const unsafe = plainJsonFault(file);
  if (unsafe) return { kind: 'damaged', ...unsafe };
  return openPlain(migrateUp(file['pattern'], version), version);
}

/** What is wrong with a pattern by the rules of a file: shape, limits, references. `null` if a file of it would open. */
export function patternFault(pattern: unknown): Fault | null {
  const checked = openPlain(pattern, FILE_VERSION);
  return checked.kind === 'damaged' ? { path: checked.path, found: checked.found, expected: checked.expected } : null;
}

function openPlain(value: unknown, from: number): Opened {
  const result = v.safeParse(patternSchema, value, { abortEarly: true });
  const fault = result.success ? referenceFault(result.output) : faultOfIssue(result.issues[0]);
  if (fault || !result.success) return { kind: 'damaged', ...(fault ?? { found: '', expected: '' }), path: ['pattern', fault?.path].filter(Boolean).join('.') };
  return { kind: 'ok', pattern: deepFreeze({ ...result.output, cells: canonicalCells(result.output.cells) }), from };
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFreeze);
  }
  return value;
}
