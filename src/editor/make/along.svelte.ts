import type { Pattern } from '../../engine/1-pattern/pattern.ts';
import { patternInVersion } from '../../engine/1-pattern/patternInVersion.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import { colourGrid } from '../../engine/4-colour/colourGrid.ts';
import { fabricWithStitches, setStitches } from '../../engine/4-colour/setStitches.ts';
import { layOut } from '../../engine/5-layout/layOutSection.ts';
import { draw } from '../../engine/6-drawing/draw.ts';
import type { Terms } from '../../engine/craft/terms.ts';
import { writeRowWords } from '../../engine/readings/words/writeRowWords.ts';
import type { AlongEntry, AlongPlaces } from '../../keep/alongPlaces.ts';
import type { ChartHighlight } from '../chart/chartData.ts';
import { describeStitch } from '../stitch/describeStitch.ts';
import { basesOf } from '../stitch/workedInto.ts';
import { alongDrawing } from './alongDrawing.ts';
import { alongRows } from './alongRows.ts';
import { lengthOf, nextStitch, placeAgain, rowBack, rowIsMade, rowOn, runBack, runOn, START, stitchBack, stitchOn, type Place } from './place.ts';
import { tally } from './tally.ts';
import { whatNext } from './whatNext.ts';

/** How far one move goes. */
export type Stride = 'stitch' | 'run' | 'row';

/** A pattern being made: where the maker is, and what that place looks like. Nothing here changes the pattern. */
export class Along {
  readonly #places: AlongPlaces;
  readonly #now: () => number;

  pattern = $state.raw<Pattern>({} as Pattern);
  size = $state.raw(0);
  version = $state.raw<string | null>(null);
  hand = $state.raw<'right' | 'left'>('right');
  terms = $state.raw<Terms>('us');
  place = $state.raw<Place>(START);
  /** Rows that are ticked, as `line nth`. */
  ticks = $state.raw<ReadonlySet<string>>(new Set());
  /** Why the place can't be kept, or null. */
  trouble = $state.raw<string | null>(null);

  readonly worn = $derived(this.pattern.versions?.some((each) => each.id === this.version) ? patternInVersion(this.pattern, this.version!) : this.pattern);
  readonly program = $derived(construct(this.worn, this.size));
  readonly plain = $derived(work(this.program));
  readonly grid = $derived(colourGrid(this.plain));
  readonly colours = $derived(colour(this.worn, this.plain, this.size, this.grid));
  readonly fabric = $derived(fabricWithStitches(this.plain, setStitches(this.worn, this.grid, this.size)));
  readonly rows = $derived(alongRows(this.worn, this.plain));
  readonly here = $derived(this.rows[this.place.at]);
  readonly section = $derived(this.here?.section ?? 0);
  readonly layout = $derived(layOut(this.plain, this.section, this.worn.gauge, { hand: this.hand }));
  readonly sectionDrawing = $derived(draw(this.fabric, this.layout, { symbols: 'all', numbers: true, grid: false }));
  readonly #row = $derived(this.here?.row ?? -1);
  readonly drawing = $derived(alongDrawing(this.sectionDrawing, this.#row));
  readonly next = $derived(nextStitch(this.rows, this.place));
  readonly isRowMade = $derived(rowIsMade(this.rows, this.place));
  readonly isDone = $derived(this.isRowMade && this.place.at === this.rows.length - 1);
  readonly highlight = $derived.by((): ChartHighlight => ({ row: this.#row, stitch: this.next, bases: this.next === null ? [] : basesOf(this.fabric, this.next), above: [] }));
  /** The stitches of the row in hand that are made. */
  readonly made = $derived(Array.from({ length: this.here ? Math.min(this.place.done, lengthOf(this.rows, this.place.at)) : 0 }, (_, n) => this.here!.first + n));
  readonly counts = $derived(this.here ? tally(this.fabric, this.#row, this.made.length, this.hand) : null);
  readonly words = $derived(this.here ? writeRowWords({ program: this.program, fabric: this.fabric, colours: this.colours }, this.#row, this.terms, this.pattern.wording) : '');
  readonly does = $derived(this.next === null ? null : whatNext({ pattern: this.worn, program: this.program, fabric: this.fabric, yarn: this.colours.yarn }, this.next, this.terms));

  constructor(pattern: Pattern, places: AlongPlaces, now: () => number) {
    this.pattern = pattern;
    this.#places = places;
    this.#now = now;
    this.terms = pattern.wording?.terms ?? pattern.terms;
  }

  get sizeName(): string {
    return this.pattern.sizes[this.size] ?? '';
  }

  describe(stitch: number): string {
    return describeStitch(this.worn, this.fabric, this.colours.yarn, stitch);
  }

  tickOf(at: number): string {
    const { line, nth } = this.rows[at]!.key;
    return `${line} ${nth}`;
  }

  /** Takes up the place that was kept for this size and version, or begins. */
  async resume(): Promise<void> {
    const [size, version] = [this.size, this.version];
    let kept: AlongEntry | null = null;
    try {
      kept = await this.#places.get(this.pattern.id, this.sizeName, version);
    } catch {
      this.trouble = 'This device keeps nothing for this page, so the place is lost when it is closed.';
    }
    if (size !== this.size || version !== this.version) return;
    this.place = (kept && placeAgain(this.rows, kept)) ?? START;
    this.ticks = new Set(kept?.ticks ?? []);
  }

  /** Goes to the size and version that an address names, else to those made last. */
  async begin(asked: { readonly size: number | null; readonly version: string | null }): Promise<void> {
    try {
      this.hand = await this.#places.hand();
      const last = asked.size === null ? await this.#places.last(this.pattern.id) : null;
      this.size = Math.max(0, asked.size ?? this.pattern.sizes.indexOf(last?.size ?? ''));
      this.version = asked.version ?? last?.version ?? null;
    } catch {
      this.size = asked.size ?? 0;
    }
    await this.resume();
  }

  async choose(size: number, version: string | null): Promise<void> {
    this.size = size;
    this.version = version;
    this.place = START;
    await this.resume();
    await this.#try(() => this.#places.setLast(this.pattern.id, this.sizeName, version));
  }

  on(stride: Stride): void {
    const { rows, place } = this;
    const next = stride === 'stitch' ? stitchOn(rows, place) : stride === 'run' ? runOn(rows, this.fabric, this.colours.yarn, place) : rowOn(rows, place);
    if (next.at !== place.at || rowIsMade(rows, next)) this.ticks = new Set(this.ticks).add(this.tickOf(place.at));
    this.#goTo(next);
  }

  back(stride: Stride): void {
    const { rows, place } = this;
    const before = stride === 'stitch' ? stitchBack(rows, place) : stride === 'run' ? runBack(rows, this.fabric, this.colours.yarn, place) : rowBack(place);
    if (!rowIsMade(rows, before)) this.#untick(before.at);
    this.#goTo(before);
  }

  /** To the beginning of a row. */
  goTo(at: number): void {
    this.#goTo({ at, done: 0 });
  }

  /** To just before one stitch of the row in hand, or of another row. */
  goToStitch(stitch: number): void {
    const at = this.rows.findIndex((row) => stitch >= row.first && stitch < row.end);
    if (at >= 0) this.#goTo({ at, done: stitch - this.rows[at]!.first });
  }

  tick(at: number, isMade: boolean): void {
    if (isMade) this.ticks = new Set(this.ticks).add(this.tickOf(at));
    else this.#untick(at);
    void this.#keep();
  }

  async setHand(hand: 'right' | 'left'): Promise<void> {
    this.hand = hand;
    await this.#try(() => this.#places.setHand(hand));
  }

  #untick(at: number): void {
    const ticks = new Set(this.ticks);
    ticks.delete(this.tickOf(at));
    this.ticks = ticks;
  }

  #goTo(place: Place): void {
    this.place = place;
    void this.#keep();
  }

  async #keep(): Promise<void> {
    const here = this.here;
    if (!here) return;
    const entry = { line: here.key.line, nth: here.key.nth, done: this.place.done, ticks: [...this.ticks], keptAt: this.#now() };
    await this.#try(() => this.#places.put(this.pattern.id, this.sizeName, this.version, entry));
  }

  async #try(act: () => Promise<void>): Promise<void> {
    try {
      await act();
      this.trouble = null;
    } catch {
      this.trouble = 'Your place could not be kept on this device just now. Note the row before you close the page.';
    }
  }
}
