import { STITCHES, stitchRow } from '../craft/stitches.ts';
import { STITCH_PHRASES } from '../craft/terms.ts';
import type { Terms } from '../craft/terms.ts';
import type { Instruction, StitchCall } from './instruction.ts';
import { plainCall } from './instruction.ts';
import { readRow } from './readRow.ts';

/** A stitch that the pattern itself explains: its words, and the stitch that it is or what is worked in one place. */
export interface SpecialStitch {
  /** Name and abbreviation in lower-case words without hyphens. */
  readonly phrases: readonly (readonly string[])[];
  readonly call: StitchCall | null;
  readonly body: readonly Instruction[] | null;
}

const HEADING = /^special (stitch(es)?|sts?)$|^stitches( used)?$|^stitch (guide|glossary)$/i;
const NAMED = /^([\p{L}][\p{L} \d-]{0,40}?)\s*[([]([\p{L}][\p{L}\d -]{0,15})[)\]]$/u;
const LEGS = /(\d{1,2})[- ]?(hdc|dtr|ttr|htr|sc|dc|tr)\b/i;
/** A pattern explains no more than this. */
const MOST = 60;

/**
 * Stitches explained in a pattern's header: `Special stitches: Cluster (cl): dc3tog in same st`, or on lines of their own,
 * `Shell (sh): 5 dc in same st`. What is explained by the movements of the hook alone is told by its name and the number of
 * times. Explanations that give neither are left out.
 */
export function specialStitches(notes: readonly { readonly word: string; readonly value: string }[], terms: Terms): readonly SpecialStitch[] {
  const found: SpecialStitch[] = [];
  let under = false;
  for (const { word, value } of notes) {
    if (found.length >= MOST) break;
    if (HEADING.test(word)) {
      under = true;
      for (const part of value.split(/;\s*|\.\s+(?=[\p{Lu}])/u)) {
        const match = /^\s*([^:=]{1,60}?)\s*[:=]\s*(.+)$/su.exec(part);
        const special = match && specialOf(match[1]!, match[2]!, terms, 'listed');
        if (special) found.push(special);
      }
      continue;
    }
    const special = specialOf(word, value, terms, under ? 'under' : 'elsewhere');
    if (special) found.push(special);
    else under = false;
  }
  return found;
}

function specialOf(name: string, definition: string, terms: Terms, stands: 'listed' | 'under' | 'elsewhere'): SpecialStitch | null {
  const named = NAMED.exec(name.trim());
  const kind = kindOf(named ? named[1]! : name, terms) ?? (named ? kindOf(named[2]!, terms) : null);
  // Right after the heading any name is a stitch's; on lines of their own only what looks like one.
  if ((!named && stands !== 'listed' && !(stands === 'under' && kind)) || definition.trim() === '' || definition.length > 2000) return null;
  const phrases = [named ? named[1]! : name, ...(named ? [named[2]!] : [])].map(wordsOf).filter((words) => words.length > 0);
  const read = readRow(definition.trim(), { terms, sizes: 1 });
  const body = read.body.filter(({ kind: of }) => of !== 'remark');
  if (read.findings.length === 0 && body.length > 0 && kind !== 'picot') {
    const [only] = body;
    if (body.length === 1 && only?.kind === 'group') return { phrases, call: null, body: only.body };
    if (body.length === 1 && only?.kind === 'work') {
      if (only.stitch.together > 1 && kind) return { phrases, call: legged(kind, only.stitch.together, only.stitch.kind), body: null };
      if (only.stitch.together === 1 && typeof only.each === 'number' && only.each > 1) return { phrases, call: null, body: [{ ...only, into: { at: 'same' } }] };
      if (only.each === 1 && only.into.at === 'next' && only.into.count === 1) return { phrases, call: only.stitch, body: null };
    }
  }
  if (!kind) return null;
  // `Ch 4, sl st in first ch`: its chains.
  const [chains] = body;
  if (kind === 'picot') return { phrases, call: plainCall('picot', chains?.kind === 'chain' && typeof chains.count === 'number' && chains.count <= 30 ? chains.count : stitchRow('picot').legs), body: null };
  const times = /(\d{1,2})(?:[ ]more)? times\b/i.exec(definition);
  const legs = LEGS.exec(definition);
  const own = stitchRow(kind);
  const legKind = legs ? kindOf(legs[2]!, terms) : own.legKind;
  const count = legs ? Number(legs[1]) : times ? Number(times[1]) + (/more times/i.test(definition) ? 1 : 0) : own.legs;
  return count > 0 && count <= 30 && own.legKind !== null ? { phrases, call: legged(kind, count, legKind ?? own.legKind), body: null } : null;
}

function legged(kind: StitchCall['kind'], legs: number, legKind: StitchCall['kind']): StitchCall {
  const own = stitchRow(kind).legKind;
  return { ...plainCall(kind, legs), ...(own !== null && own !== legKind ? { legKind } : {}) };
}

function kindOf(name: string, terms: Terms): StitchCall['kind'] | null {
  const words = wordsOf(name).join(' ').replace(/s$/, '');
  const phrase = STITCH_PHRASES[terms].find((one) => one.words.join(' ') === words);
  if (phrase) return phrase.kind;
  return STITCHES.find(({ kind, legKind }) => legKind !== null && words.split(' ').includes(kind))?.kind ?? null;
}

function wordsOf(name: string): readonly string[] {
  return name.toLowerCase().split(/[\s-]+/).filter((word) => word !== '');
}
