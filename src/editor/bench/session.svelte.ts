import { perform, redo, undo, type History, type Moved } from '../../engine/1-pattern/history.ts';
import { applyTransaction } from '../../engine/1-pattern/applyTransaction.ts';
import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { patternInVersion } from '../../engine/1-pattern/patternInVersion.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import { carryOf } from '../../engine/4-colour/carry.ts';
import { colourGrid, type ColourGrid } from '../../engine/4-colour/colourGrid.ts';
import { fabricWithStitches, setStitches } from '../../engine/4-colour/setStitches.ts';
import { gaugeCell } from '../../engine/5-layout/gaugeCell.ts';
import { layOut } from '../../engine/5-layout/layOutSection.ts';
import type { Layout } from '../../engine/5-layout/layout.ts';
import { sameStitches } from '../../engine/5-layout/sameStitches.ts';
import { draw } from '../../engine/6-drawing/draw.ts';
import type { Drawing } from '../../engine/6-drawing/drawing.ts';
import { viewPalette, type PaletteView } from '../../engine/craft/colourVision.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import type { Finding, Mend } from '../../engine/notation/finding.ts';
import { check } from '../../engine/readings/checks/check.ts';
import { describeFinding, placeOfFinding } from '../../engine/readings/checks/prose.ts';
import { yarnsOfRow } from '../../engine/readings/ledger/ledger.ts';
import { ledgerLines } from '../ledger/ledgerLines.ts';
import { sectionSize } from '../piece/sectionSize.ts';
import { silhouette } from '../piece/silhouette.ts';
import { drawnAs, laidAs, USUALLY_DRAWN, type DrawnHow } from '../chart/drawnHow.ts';
import type { ChartHighlight } from '../chart/chartData.ts';
import type { OpenSheet } from '../motif/openSheet.ts';
import { basesOf, stitchesAbove, workedInto } from '../stitch/workedInto.ts';
import type { Choice } from '../touch/choice.ts';
import { certainMend, mayBeMended } from '../../engine/readings/checks/certainMend.ts';
import { mendLine } from './commands/mendLine.ts';
import { blockBetween } from './commands/stitchBlock.ts';
import type { BenchState, Command } from './benchState.ts';
import { rowEntries, type RowEntry } from './rowEntries.ts';
import { sectionWords } from './sectionWords.ts';

/** What is pointed at, and in which reading. A row is always known, a stitch only from chart and keys. */
export interface Pointed {
  readonly row: number;
  readonly stitch: number | null;
  readonly from: 'chart' | 'rows' | 'checks';
}

/** What a session starts from and where it keeps each step. */
export interface SessionStart {
  readonly pattern: Pattern;
  readonly history: History;
  readonly keep: (pattern: Pattern, history: History) => void;
  /** Why nothing can be changed just now, in words; null if it can. */
  readonly mayNotChange?: () => string | null;
  readonly now: () => number;
  readonly drawn?: DrawnHow;
}

/** The document on the bench with everything that is worked out from it: one derived line a stage. */
export class Session {
  readonly #start: SessionStart;
  #previous: Fabric | null = null;
  /** The fabrics of the other sizes as they were worked last. */
  readonly #others: (Fabric | undefined)[] = [];
  #laid: Fabric | null = null;
  #dressedAs: Fabric | null = null;
  /** The last layout and drawing: what stands as it stood is kept from them. */
  #laidOut: Layout | null = null;
  #drawing: Drawing | null = null;

  pattern = $state.raw<Pattern>({} as Pattern);
  history = $state.raw<History>({ past: [], future: [] });
  size = $state.raw(0);
  section = $state.raw(0);
  /** Terms chosen here for the words that are shown; null: as the pattern is worded. They are edited in the pattern's own. */
  #terms = $state.raw<Terms | null>(null);
  /** How the charts are drawn on this device. */
  drawn = $state.raw<DrawnHow>(USUALLY_DRAWN);
  choice = $state.raw<Choice>({ kind: 'point' });
  pointed = $state.raw<Pointed | null>(null);
  /** Stitches of the words that are pointed at. */
  clause = $state.raw<readonly number[]>([]);
  /** The version of the pattern that is shown; null for the pattern as it stands. */
  version = $state.raw<string | null>(null);
  /** How the yarns are looked at: as they are, as others see them, or in black and white. */
  seen = $state.raw<PaletteView>('full');
  /** The sheet that is open beside the chart. */
  sheet = $state.raw<OpenSheet | null>(null);
  /** Corners of the block of stitches that is chosen, on the fabric that it was chosen on. */
  block = $state.raw<{ readonly from: number; readonly to: number; readonly fabric: Fabric } | null>(null);
  /** First and last row that are chosen, by row index, on the fabric that they were chosen on. */
  rowsChosen = $state.raw<{ readonly from: number; readonly to: number; readonly fabric: Fabric } | null>(null);
  /** Why the last step could not be made, in words. */
  refusal = $state.raw<string | null>(null);

  readonly shown = $derived(Math.min(this.section, Math.max(0, this.pattern.sections.length - 1)));
  /** The pattern as the version shown has it. */
  readonly worn = $derived(this.pattern.versions?.some((each) => each.id === this.version) ? patternInVersion(this.pattern, this.version!) : this.pattern);
  /** The yarns in the colours that they are looked at in. */
  readonly yarnsSeen = $derived.by(() => {
    const colours = viewPalette(this.pattern.yarns.map((yarn) => yarn.colour), this.seen);
    return this.seen === 'full' ? this.pattern.yarns : this.pattern.yarns.map((yarn, i) => ({ ...yarn, colour: colours[i]! }));
  });
  readonly program = $derived(construct(this.worn, Math.min(this.size, this.pattern.sizes.length - 1)));
  readonly fabric = $derived.by(() => (this.#previous = work(this.program, this.#previous)));
  readonly grid = $derived(colourGrid(this.fabric));
  readonly colours = $derived(colour(this.worn, this.fabric, this.size, this.grid));
  /** The fabric with the stitches that motifs set: what is drawn and described. */
  readonly dressed = $derived(fabricWithStitches(this.fabric, setStitches(this.worn, this.grid, this.size)));
  /** What every yarn does; worked out only when something asks for it. */
  readonly carry = $derived(carryOf(this.worn, this.grid, this.colours));
  /** By itself, so that an edit of colour alone lays nothing out again. */
  readonly #gauge = $derived(this.pattern.gauge);
  readonly cell = $derived(gaugeCell(this.#gauge));
  /** The fabric for the layout, and with what motifs set for the drawing: the very same objects as long as no stitch is another. */
  readonly #stitches = $derived.by(() => (this.#laid = this.#laid && sameStitches(this.#laid, this.fabric) ? this.#laid : this.fabric));
  readonly #looks = $derived.by(() => (this.#dressedAs = this.#dressedAs && sameStitches(this.#dressedAs, this.dressed) ? this.#dressedAs : this.dressed));
  readonly layout = $derived.by(() => (this.#laidOut = layOut(this.#stitches, this.shown, this.#gauge, laidAs(this.drawn), this.#laidOut)));
  readonly drawing = $derived.by(() => (this.#drawing = draw(this.#looks, this.layout, drawnAs(this.drawn), this.#drawing)));
  readonly findings = $derived(check(this.worn, this.fabric, this.colours));
  readonly ledger = $derived(ledgerLines(this.fabric, this.shown, this.#gauge));
  readonly #wording = $derived(this.pattern.wording);
  readonly terms = $derived(this.#terms ?? this.#wording?.terms ?? this.pattern.terms);
  readonly words = $derived(sectionWords({ program: this.program, fabric: this.fabric, colours: this.colours }, this.shown, this.terms, this.#wording));
  readonly entries = $derived(rowEntries(this.pattern, this.fabric, this.shown, this.size, this.findings));
  readonly piece = $derived(silhouette(this.fabric, this.colours.yarn, this.cell.widthMm, this.cell.heightMm));
  readonly sectionSizes = $derived(this.pattern.sections.map((_, i) => sectionSize(this.fabric, i, this.cell.widthMm, this.cell.heightMm)));
  readonly straight = $derived(this.layout.kind === 'flat' || (this.layout.kind === 'tube' && !this.drawn.spiral));
  readonly inHand = $derived(this.pointed && this.pointed.row < this.fabric.rows.length && (this.pointed.stitch ?? 0) < this.fabric.count ? this.pointed : null);
  readonly above = $derived(workedInto(this.fabric));
  readonly highlight = $derived.by((): ChartHighlight | null => {
    if (!this.inHand) return null;
    const { row, stitch } = this.inHand;
    return stitch === null ? { row, stitch, bases: [], above: [] } : { row, stitch, bases: basesOf(this.fabric, stitch), above: stitchesAbove(this.above, stitch) };
  });
  /** All sizes, worked only when something asks for them. */
  readonly #otherGrids = $derived(this.pattern.sizes.map((_, size) => (size === this.size ? null : colourGrid((this.#others[size] = work(construct(this.pattern, size), this.#others[size] ?? null))))));
  readonly stitchInHand = $derived(this.inHand?.stitch ?? null);
  readonly undoLabel = $derived(this.history.past.at(-1)?.done.label ?? null);
  readonly redoLabel = $derived(this.history.future[0]?.done.label ?? null);

  constructor(start: SessionStart) {
    this.#start = start;
    this.pattern = start.pattern;
    this.history = start.history;
    if (start.drawn) this.drawn = start.drawn;
    const most = this.sectionSizes.map(({ rows, stitches }) => rows * stitches);
    this.section = Math.max(0, most.indexOf(Math.max(...most)));
  }

  get grids(): readonly ColourGrid[] {
    return this.#otherGrids.map((grid) => grid ?? this.grid);
  }

  /** What commands look at, as it is now. */
  get state(): BenchState {
    const grids = () => this.grids;
    return {
      pattern: this.pattern, size: this.size, section: this.shown, fabric: this.fabric, colours: this.colours, at: this.#start.now(),
      get grids() {
        return grids();
      },
    };
  }

  /** The stitches of the block that is chosen. */
  readonly chosen = $derived(this.block?.fabric === this.fabric ? blockBetween(this.grid, this.block.from, this.block.to).flat() : []);
  /** The rows that are chosen, as they stand in the section shown, first row first. */
  readonly chosenRows = $derived.by((): readonly RowEntry[] => {
    const { rowsChosen } = this;
    if (rowsChosen?.fabric !== this.fabric) return [];
    const [low, high] = [Math.min(rowsChosen.from, rowsChosen.to), Math.max(rowsChosen.from, rowsChosen.to)];
    return this.entries.filter(({ row }) => row >= low && row <= high);
  });

  /** Points at a stitch; at none, the last one stays in hand. */
  pointAt(stitch: number | null, from: Pointed['from']): void {
    if (stitch === null) return;
    const row = this.fabric.row[stitch];
    if (row !== undefined && this.pointed?.stitch !== stitch) this.pointed = { row, stitch, from };
  }

  /** Does what a command says: applies, records, keeps. False where it can't be done. */
  commit(command: Command): boolean {
    const transaction = command(this.state);
    return transaction !== null && this.#take(perform(this, transaction));
  }

  /** Goes to a section; the row in hand is one of it or none. */
  /** Shows the words in other terms than the pattern is worded in, or in those again. */
  showTerms(terms: Terms): void {
    this.#terms = terms === (this.pattern.wording?.terms ?? this.pattern.terms) ? null : terms;
  }

  goTo(section: number): void {
    this.section = section;
    if (this.pointed && this.fabric.rows[this.pointed.row]?.section !== section) this.pointed = null;
  }

  /** Stitches of each yarn in a row, by yarn index. */
  yarnsOf(row: number): readonly number[] {
    return yarnsOfRow(this.fabric, row, this.colours.yarn, this.pattern.yarns.length);
  }

  /** Whether a finding has a certain mend. */
  canMend(finding: Finding): boolean {
    return mendLine(finding)(this.state) !== null;
  }

  /** What can be mended for certain in a row's words; no two of one place. */
  mendsOf(entry: RowEntry): readonly { readonly finding: Finding; readonly mend: Mend }[] {
    const fabrics = () => this.grids.map((grid) => grid.fabric);
    const mends = entry.findings.flatMap((finding) => {
      const mend = mayBeMended(finding) ? certainMend(this.pattern, fabrics(), finding) : null;
      return mend ? [{ finding, mend }] : [];
    });
    return [...new Map(mends.map((each) => [each.mend.range[0], each])).values()];
  }

  /** A finding as a sentence with its place. */
  describe(finding: Finding): string {
    const { line, nth } = finding.where;
    const row = line === null ? undefined : this.fabric.rows.find((each) => each.key.line === line && each.key.nth === (nth ?? 0));
    const place = placeOfFinding(finding, this.pattern, row?.number ?? null);
    return `${place}: ${describeFinding(finding)}`;
  }

  undo(): void {
    this.#take(undo(this));
  }

  redo(): void {
    this.#take(redo(this));
  }

  /** Goes back or on until so many steps are done. */
  standAt(steps: number): void {
    let isMoving = true;
    while (isMoving && this.history.past.length > steps) isMoving = this.#take(undo(this));
    while (isMoving && this.history.past.length < steps) isMoving = this.#take(redo(this));
  }

  /** What would be found in a line if its words were these, with the mends that are certain. */
  findingsIf(entry: RowEntry, command: Command): readonly Finding[] {
    const transaction = command(this.state);
    const tried = transaction && applyTransaction(this.pattern, transaction);
    if (!tried?.ok) return entry.findings;
    const fabric = work(construct(tried.pattern, this.size), this.fabric);
    const found = fabric.findings.filter((each) => each.where.line === entry.line.id && (each.where.nth === null || each.where.nth === entry.key.nth));
    if (!found.some((each) => mayBeMended(each))) return found;
    const fabrics = tried.pattern.sizes.map((_, size) => (size === this.size ? fabric : work(construct(tried.pattern, size))));
    return found.map((each) => ({ ...each, mend: certainMend(tried.pattern, fabrics, each) }));
  }

  #take(moved: Moved): boolean {
    this.refusal = this.#start.mayNotChange?.() ?? (moved.ok ? null : moved.reason);
    if (!moved.ok || this.refusal !== null) return false;
    this.pattern = moved.pattern;
    this.clause = [];
    this.history = moved.history;
    this.#start.keep(moved.pattern, moved.history);
    return true;
  }
}
