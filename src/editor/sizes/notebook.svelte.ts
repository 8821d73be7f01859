import { dequal } from 'dequal/lite';
import type { MeasureName, PieceFacts, YarnSupply } from '../../engine/1-pattern/pieceFacts.ts';
import { construct } from '../../engine/2-construct/construct.ts';
import type { Origin } from '../../engine/2-construct/recipes/origin.ts';
import { settingsOf } from '../../engine/2-construct/recipes/settingsOf.ts';
import { work } from '../../engine/3-fabric/work.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import { sizeChecks } from '../../engine/readings/sizes/sizeChecks.ts';
import { sizeReport } from '../../engine/readings/sizes/sizeReport.ts';
import { yarnNeed } from '../../engine/readings/yarn/yarnNeed.ts';
import { sectionsByHand } from '../../engine/2-construct/recipes/gradePattern.ts';
import type { Session } from '../bench/session.svelte.ts';
import { changeMake } from './commands/changeMake.ts';
import { setFacts } from './commands/setFacts.ts';
import { withMeasure, withPin, type FactChange } from './factChanges.ts';
import { gradedPiece } from './gradedPiece.ts';
import type { LengthUnit } from './lengths.ts';
import { draftedPins, draftedSettings, NO_DRAFT, withChange, withDraftPin, type MakeDraft } from './make/makeDraft.ts';
import type { MakeChange } from './make/makeField.ts';
import { makeParts } from './make/makeParts.ts';
import { neededMeasures, type Needs } from './neededMeasures.ts';

/** A number that was touched: where it comes from, in which size. */
export interface Asked {
  readonly origin: Origin;
  readonly size: number;
  /** Whether it can be set by hand. */
  readonly pinnable: boolean;
}

/** The unit that was chosen stays chosen while the window is open, from page to page. */
const lengths = $state<{ unit: LengthUnit }>({ unit: 'cm' });

/** The page of sizes: what is known of the piece and everything that follows from it. */
export class Notebook {
  readonly session: Session;
  #asked = $state.raw<{ readonly key: string; readonly size: number; readonly origin: Origin; readonly pinnable: boolean } | null>(null);

  readonly pattern = $derived.by(() => this.session.pattern);
  readonly facts = $derived<PieceFacts>(this.pattern.piece ?? {});
  #draft = $state.raw<MakeDraft>(NO_DRAFT);
  readonly #made = $derived(settingsOf(this.pattern));
  /** The make of the piece, with what is tried of another one. */
  readonly settings = $derived(this.#made && draftedSettings(this.#made, this.#draft));
  readonly #pins = $derived(draftedPins(this.facts.pins ?? {}, this.#draft, this.pattern.sizes.length));
  /** Whether another make is tried that is not done yet. */
  readonly tries = $derived(!dequal(this.settings, this.#made) || !dequal(this.#pins, this.facts.pins ?? {}));
  readonly makes = $derived(this.settings ? makeParts(this.settings, this.pattern.sizes.length) : []);
  readonly byHand = $derived(this.#made ? sectionsByHand(this.pattern, this.#made.kind) : []);
  readonly piece = $derived(gradedPiece(this.pattern, this.settings, this.#pins));
  readonly numbers = $derived(this.piece.kind === 'graded' ? this.piece.graded.piece.numbers : []);
  /** The pattern that the page shows: made anew where that can be, else as it is. */
  readonly shown = $derived(this.piece.kind === 'graded' ? this.piece.pattern : this.pattern);
  readonly worked = $derived(this.shown.sizes.map((_, size) => {
    const fabric = work(construct(this.shown, size));
    return { size, fabric, colours: colour(this.shown, fabric, size) };
  }));
  readonly reports = $derived(this.worked.map(({ size, fabric, colours }) => sizeReport(this.shown, fabric, colours, size, { swatches: this.facts.swatches ?? [], measures: this.facts.measures ?? [], ...(this.numbers[size] ? { numbers: this.numbers[size] } : {}) })));
  readonly findings = $derived(sizeChecks(this.shown, this.reports, this.facts.measures ?? [], this.facts.swatches ?? []));
  readonly yarn = $derived(this.worked.map(({ fabric, colours }) => yarnNeed(this.shown, fabric, colours, this.facts)));
  /** Numbers set by hand that can't be. */
  readonly problems = $derived([...(this.piece.kind === 'graded' ? this.piece.graded.piece.problems : []), ...this.yarn.flatMap(({ problems }) => problems)]);
  /** The measurements that the page asks for: those that the recipe needs or heeds, else those that the finished piece has. */
  readonly needs = $derived.by((): Needs => {
    const known = (this.facts.measures ?? []).map((one) => one.name);
    if (this.settings) {
      const needs = neededMeasures(this.settings, this.facts.measures ?? []);
      return { needed: needs.needed, heeded: [...needs.heeded, ...known.filter((name) => !needs.needed.includes(name) && !needs.heeded.includes(name))] };
    }
    const found = this.reports.flatMap((report) => report.finished.filter((one) => one.piece === 0).map((one) => one.name)).filter((name) => name !== 'opening');
    const sock = found.includes('footLength') ? (['heelDiagonal'] as const) : [];
    return { needed: [], heeded: [...new Set<MeasureName>([...found, ...sock, ...known])] };
  });
  /** What was touched last, with its numbers as they are now. */
  readonly asked = $derived.by((): Asked | null => {
    const asked = this.#asked;
    if (!asked) return null;
    if (!asked.pinnable) return asked;
    const origin = this.numbers[asked.size]?.get(asked.key) ?? this.yarn[asked.size]?.numbers.get(asked.key);
    return origin ? { ...asked, origin } : null;
  });

  constructor(session: Session) {
    this.session = session;
  }

  get unit(): LengthUnit {
    return lengths.unit;
  }

  set unit(unit: LengthUnit) {
    lengths.unit = unit;
  }

  ask(origin: Origin, size: number, pinnable = false): void {
    this.#asked = { key: origin.key, size, origin, pinnable };
  }

  dismiss(): void {
    this.#asked = null;
  }

  change(change: FactChange, label: string): void {
    this.session.commit(setFacts(change, label));
  }

  /** Tries another make: nothing changes until it is done. */
  tryMake(id: string, change: MakeChange): void {
    this.#draft = withChange(this.#draft, id, change);
  }

  /** Tries another number set by hand (null: reckoned). */
  tryPin(key: string, size: number, value: number | null): void {
    this.#draft = withDraftPin(this.#draft, key, size, value);
  }

  /** Leaves the piece as it is. */
  dropMake(): void {
    this.#draft = NO_DRAFT;
  }

  /** Makes the piece in the make that was tried, as one step. */
  doMake(): void {
    if (this.piece.kind !== 'graded') return;
    const tried = [...this.#draft.changes.keys(), ...this.#draft.pins.keys()].map((id) => id.split('.')[0]);
    const parts = this.makes.filter(({ id }) => tried.includes(id)).map(({ title }) => title.toLowerCase());
    if (this.session.commit(changeMake(this.piece.graded, this.#pins, `Make with another ${parts.join(' and ')}`))) this.dropMake();
  }

  /** Sets a number by hand, or gives it back to be reckoned. */
  pin(key: string, size: number, value: number | null, says: string): void {
    this.change(withPin(key, size, value, this.pattern.sizes.length), value === null ? `Reckon the ${says}` : `Set the ${says} by hand`);
  }

  /** Writes down what the piece measures now where nothing was measured. */
  takeMeasured(): void {
    const sizes = this.pattern.sizes.length;
    this.change((facts) => this.reports.reduce((all, report) => report.finished.reduce((so, one) => {
      if (one.piece !== 0 || one.name === 'opening' || !this.needs.needed.includes(one.name)) return so;
      const has = so.measures?.find((measure) => measure.name === one.name)?.cm[report.size] ?? null;
      return has === null ? withMeasure(one.name, report.size, Number(one.cm.toFixed(1)), sizes)(so) : so;
    }, all), facts), 'Write down what the piece measures');
  }

  supply(letter: string): YarnSupply {
    return this.facts.supplies?.find((one) => one.letter === letter) ?? { letter, weight: null, ballGrams: null, ballMetres: null, price: null };
  }

  /** A size as it is called where there are several. */
  sizeName(size: number): string {
    return this.pattern.sizes[size] || (this.pattern.sizes.length === 1 ? 'one size' : `${size + 1}`);
  }
}
