import { dequal } from 'dequal/lite';
import type { Measure, Pins, Swatch } from '../../1-pattern/pieceFacts.ts';
import { applyTransaction } from '../../1-pattern/applyTransaction.ts';
import type { Edit } from '../../1-pattern/edit.ts';
import type { Gauge, Line, Pattern, RowKey, Section } from '../../1-pattern/pattern.ts';
import { removal } from '../../1-pattern/removal.ts';
import { resize, type NewSize } from '../../1-pattern/resize.ts';
import { fingerprint } from './fingerprint.ts';
import { makePiece, type MadePiece } from './makePiece.ts';
import type { PieceSettings } from './settings.ts';
import { settingsOf } from './settingsOf.ts';

/** What a piece is to be graded to. */
export interface Grading {
  readonly sizes: readonly NewSize[];
  readonly measures: readonly Measure[];
  readonly pins: Pins;
  readonly swatches: readonly Swatch[];
  /** Another gauge, or null for the pattern's own. */
  readonly gauge: Gauge | null;
  /** Other settings, or null for those that the sections keep. */
  readonly settings: PieceSettings | null;
  /** This section alone is made anew, even where it was changed by hand; all others stay. */
  readonly only?: string;
}

/** What becomes of a section: `kept` was written or changed by hand and stays, `anew` gets other rows, `same` has them already. */
export interface SectionChange {
  readonly section: string;
  readonly name: string;
  readonly change: 'new' | 'gone' | 'anew' | 'same' | 'kept';
}

/** A graded piece as edits of one transaction, what becomes of each section, and what could not follow. */
export interface Graded {
  readonly edits: readonly Edit[];
  readonly piece: MadePiece;
  /** Sections of the piece in its new order, then those that go. */
  readonly changes: readonly SectionChange[];
  /** Sections written or changed by hand: their numbers were carried over from the sizes they were taken from, not reckoned anew. */
  readonly kept: readonly string[];
  /** Placements whose line is gone, moved to the nearest row left; loose cells of gone lines are dropped, so many runs. */
  readonly moved: readonly string[];
  readonly droppedRuns: number;
  /** Placements of sections that the piece has no more, or has elsewhere in its order: taken off. */
  readonly lost: readonly string[];
}

/**
 * Makes the same piece to other measurements, without drawing again: sections of recipes get the rows that the new numbers
 * ask for, motifs stay on the rows they were laid on. Null for a pattern that no recipe made, and where the piece has no such
 * section as is asked for alone. Refuses what `makePiece` and `resize` refuse.
 */
export function gradePattern(pattern: Pattern, grading: Grading): Graded | null {
  const settings = grading.settings ?? settingsOf(pattern);
  if (!settings) return null;
  const gauge = grading.gauge ?? pattern.gauge;
  const piece = makePiece({ settings, gauge, swatches: grading.swatches, sizes: grading.sizes.map((size) => size.name), measures: grading.measures, pins: grading.pins }, pattern.terms);
  const { only } = grading;
  if (only !== undefined && !(pattern.sections.some(({ id, recipe }) => id === only && recipe?.name === `${settings.kind}.${only}`) && piece.sections.some(({ id }) => id === only))) return null;
  const byHand = new Set(only === undefined ? sectionsByHand(pattern, settings.kind) : pattern.sections.map(({ id }) => id).filter((id) => id !== only));
  const edits: Edit[] = only === undefined ? [...resize(pattern, grading.sizes)] : [];
  if (!dequal(gauge, pattern.gauge)) edits.push({ kind: 'set', field: 'gauge', value: gauge });
  const sized = applied(pattern, edits);
  const leaving = only === undefined ? sectionsThatLeave(sized, piece, byHand) : [];
  const gone = leaving.flatMap((section) => removal(sized, { kind: 'section', section }));
  edits.push(...gone);
  const resized = applied(sized, gone);
  const lost = sized.placements.filter((placement) => leaving.includes(placement.section)).map(({ id }) => id);
  const moved: string[] = [];
  let droppedRuns = sized.cells.filter((run) => leaving.includes(run.section)).length;
  for (const section of resized.sections) {
    if (byHand.has(section.id)) continue;
    const made = piece.sections.find((one) => one.id === section.id);
    if (!made) continue;
    const without = cleared(resized, section, made);
    const change = replaced(section, made);
    // New lines first, since placements may move to them; then what lies on lines that go, then those lines.
    edits.push(...change.put, ...without.edits, ...change.taken);
    moved.push(...without.moved);
    droppedRuns += without.droppedRuns;
  }
  if (only === undefined) edits.push(...newSections(resized, piece));
  return { edits, piece, changes: changesOf(pattern, sized, piece, byHand), kept: [...byHand], moved, droppedRuns, lost };
}

/** `sized` is the pattern in the new sizes, before its sections change. */
function changesOf(pattern: Pattern, sized: Pattern, piece: MadePiece, byHand: ReadonlySet<string>): readonly SectionChange[] {
  const before = new Map(sized.sections.map((section) => [section.id, section]));
  const made = piece.sections.map(({ id: section, name, lines }): SectionChange => {
    const old = before.get(section);
    return { section, name: old?.name ?? name, change: !old ? 'new' : byHand.has(section) ? 'kept' : dequal(old.lines, lines) ? 'same' : 'anew' };
  });
  const others = pattern.sections.filter(({ id }) => !piece.sections.some((one) => one.id === id));
  return [...made, ...others.map(({ id: section, name }): SectionChange => ({ section, name, change: byHand.has(section) ? 'kept' : 'gone' }))];
}

/** Sections that were written or changed by hand since a recipe of this kind of piece made them: grading leaves them. */
export function sectionsByHand(pattern: Pick<Pattern, 'sections'>, kind: PieceSettings['kind']): readonly string[] {
  return pattern.sections.filter((section) => !isRecipes(section, kind)).map((section) => section.id);
}

/** Whether a recipe of this kind of piece made a section, and its lines are as it made them. */
function isRecipes({ recipe, lines }: Section, kind: string): boolean {
  return recipe !== null && recipe.name.startsWith(`${kind}.`) && recipe.settings['written'] === fingerprint(lines);
}

/** Sections of recipes that the piece has no more, and those that come at another place in its order (they are put in anew). */
function sectionsThatLeave(pattern: Pattern, piece: MadePiece, byHand: ReadonlySet<string>): readonly string[] {
  const order = piece.sections.map((section) => section.id);
  let last = -1;
  return pattern.sections.flatMap((section) => {
    const at = order.indexOf(section.id);
    if (byHand.has(section.id)) return [];
    // What comes before something that stands before it already has to be put in further on.
    if (at >= 0 && at > last && !pattern.sections.slice(pattern.sections.indexOf(section) + 1).some((later) => order.indexOf(later.id) >= 0 && order.indexOf(later.id) < at)) {
      last = at;
      return [];
    }
    return [section.id];
  });
}

function applied(pattern: Pattern, edits: readonly Edit[]): Pattern {
  const done = applyTransaction(pattern, { label: '', at: 0, edits });
  if (!done.ok) throw new RangeError(`the piece could not be changed: ${done.reason}`);
  return done.pattern;
}

/** Sections that the piece has now and the pattern had not, each after the one that it follows in the piece. */
function newSections(pattern: Pattern, piece: MadePiece): Edit[] {
  const ids = pattern.sections.map((section) => section.id);
  const edits: Edit[] = [];
  piece.sections.forEach((section, i) => {
    if (ids.includes(section.id)) return;
    const before = piece.sections.slice(0, i).findLast((one) => ids.includes(one.id));
    const at = before ? ids.indexOf(before.id) + 1 : 0;
    ids.splice(at, 0, section.id);
    edits.push({ kind: 'insertSection', at, section });
  });
  return edits;
}

/**
 * Takes placements of lines that go away to the nearest row left, and loose cells off them. What lies beyond the last row of a
 * line that stays waits there for the line to grow again.
 */
function cleared(pattern: Pattern, section: Section, made: Section): { readonly edits: Edit[]; readonly moved: readonly string[]; readonly droppedRuns: number } {
  const edits: Edit[] = [];
  const moved: string[] = [];
  const left = new Set(made.lines.filter((line) => line.kind === 'row').map((line) => line.id));
  for (const placement of pattern.placements) {
    if (placement.section !== section.id || left.has(placement.row.line)) continue;
    const row = nearestRow(placement.row, section, made);
    if (!row) continue;
    moved.push(placement.id);
    const { locked, ...free } = placement;
    if (locked) edits.push({ kind: 'setPlacement', placement: free });
    edits.push({ kind: 'setPlacement', placement: { ...free, row } });
    if (locked) edits.push({ kind: 'setPlacement', placement: { ...free, row, locked } });
  }
  const gone = pattern.cells.filter((run) => run.section === section.id && !left.has(run.row.line));
  const rows = new Map(gone.map(({ row, size }) => [`${row.line} ${row.nth} ${size}`, { row, size }]));
  for (const { row, size } of rows.values()) edits.push({ kind: 'setCells', section: section.id, row, size, runs: [] });
  return { edits, moved, droppedRuns: gone.length };
}

/** The last row of the nearest row line before the one that goes, else the first row of the section. */
function nearestRow(key: RowKey, section: Section, made: Section): RowKey | null {
  const now = new Map(made.lines.flatMap((line) => (line.kind === 'row' && line.label.word !== 'foundation' ? [[line.id, line] as const] : [])));
  const before = section.lines.slice(0, Math.max(0, section.lines.findIndex((line) => line.id === key.line))).findLast((line) => now.has(line.id));
  if (before) return { line: before.id, nth: Math.max(0, mostRows(now.get(before.id)!) - 1) };
  const first = now.keys().next();
  return first.done ? null : { line: first.value, nth: 0 };
}

function mostRows({ label }: Extract<Line, { kind: 'row' }>): number {
  return typeof label.rows === 'number' ? label.rows : Math.max(...label.rows);
}

/** Edits that turn a section's lines into the new ones: those that stay keep what lies on them. */
function replaced(section: Section, made: Section): { readonly put: Edit[]; readonly taken: Edit[] } {
  const id = section.id;
  const put: Edit[] = [];
  const known = new Map(section.lines.map((line) => [line.id, line]));
  const order = section.lines.map((line) => line.id);
  let at = 0;
  for (const line of made.lines) {
    const old = known.get(line.id);
    if (old) at = order.indexOf(line.id) + 1;
    else {
      put.push({ kind: 'insertLines', section: id, at, lines: [line] });
      order.splice(at, 0, line.id);
      at++;
    }
    if (old && !dequal(old, line)) put.push({ kind: 'setLine', section: id, line });
  }
  const wanted = new Set(made.lines.map((line) => line.id));
  const taken = section.lines.filter((line) => !wanted.has(line.id)).map((line): Edit => ({ kind: 'removeLines', section: id, lines: [line.id] }));
  // Words that the maker put in the place of the recipe's stay.
  const remark = section.remark === section.recipe?.settings['remark'] ? made.remark : section.remark;
  return { put, taken: [...taken, { kind: 'setSection', section: id, name: section.name, remark, recipe: made.recipe }] };
}
