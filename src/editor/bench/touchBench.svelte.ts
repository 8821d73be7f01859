import { applyTransaction } from '../../engine/1-pattern/applyTransaction.ts';
import type { Motif, Placement } from '../../engine/1-pattern/pattern.ts';
import type { Fabric } from '../../engine/3-fabric/fabric.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import type { GhostCell } from '../chart/chartData.ts';
import type { ChartPointer, StrokePhase } from '../chart/touches.ts';
import { changeLayer } from './commands/changeLayer.ts';
import { placeMotif } from './commands/placeMotif.ts';
import { layYarn } from './commands/layYarn.ts';
import { setStitchOr } from './commands/setStitch.ts';
import type { StitchChange } from './commands/stitchChange.ts';
import { turnHere } from './commands/turnHere.ts';
import type { Choice, LaidHow } from '../touch/choice.ts';
import type { BenchState } from './benchState.ts';
import type { Session } from './session.svelte.ts';
import { placingSentence } from '../motif/placingSentence.ts';
import { floodYarn } from './floodYarn.ts';
import { runOfYarn, straightRun } from './strokeStitches.ts';

/** What touches of the chart do to a session, and what is shown over the chart while they are on their way. */
export class ChartTouch {
  readonly #session: Session;
  readonly #motifs: () => readonly Motif[];
  /** Stitches of the stroke that is being drawn. */
  stroke = $state.raw<readonly number[]>([]);
  /** First and last stitch of the way that a placed motif is dragged. */
  drag = $state.raw<{ readonly from: number; readonly to: number } | null>(null);
  /** The placed motif that was taken up by the keyboard: what was chosen then, and from which stitch. */
  #held = $state.raw<{ readonly choice: Choice; readonly from: number } | null>(null);
  /** The stitch that was pressed last, the yarns before that, and whether it took another one. */
  #pressed: { readonly stitch: number; readonly yarn: Uint8Array; readonly fabric: Fabric; readonly isLaid: boolean } | null = null;
  /** Where the keyboard laid a yarn last. */
  #laidLast: number | null = null;
  /** Whether yarns are laid in every size. */
  everySize = $state(false);
  /** How a yarn is laid: where the stroke goes, in a straight line along the row, or on all that hangs together in one yarn. */
  laid = $state<LaidHow>('free');

  constructor(session: Session, motifs: () => readonly Motif[]) {
    this.#session = session;
    this.#motifs = motifs;
  }

  /** What commands look at while something is on its way: the other sizes are not worked for it. */
  readonly #here = $derived.by((): BenchState => {
    const { pattern, size, shown, fabric, colours, grid } = this.#session;
    return { pattern, size, section: shown, fabric, colours, grids: Object.assign([], { [size]: grid }), at: 0 };
  });

  /** Whether the sides of a placement's bottom row meet at a seam. */
  #meets({ section, row }: Placement): boolean {
    const { grid } = this.#session;
    return grid.meets[grid.rows.indexOf(section, row)] ?? false;
  }

  /** The motif on its way over the chart: its cells and how its repeats come out. */
  readonly #motifGhost = $derived.by((): { cells: readonly GhostCell[]; says: string } | null => {
    const { choice, stitchInHand, worn, fabric, size, colours } = this.#session;
    if (choice.kind !== 'motif' || stitchInHand === null) return null;
    const motif = this.#motifs().find((each) => each.id === choice.motif);
    const transaction = motif && placeMotif(motif, stitchInHand, choice.lie, choice.mirror)(this.#here);
    if (!motif || !transaction) return motif ? { cells: [], says: `${motif.name} does not go into this row.` } : null;
    const tried = applyTransaction(worn, transaction);
    if (!tried.ok) return { cells: [], says: tried.reason };
    const laid = colour(tried.pattern, fabric, size, this.#session.grid);
    const cells: GhostCell[] = [];
    const mark = tried.pattern.placements.length;
    for (let i = 0; i < fabric.count; i++) if (laid.placement[i] === mark && laid.yarn[i] !== colours.yarn[i]) cells.push({ stitch: i, yarn: laid.yarn[i]! });
    const placement = tried.pattern.placements[mark - 1]!;
    return { cells, says: placingSentence(motif, placement, laid.fits.at(-1)!, this.#meets(placement)) };
  });

  readonly #strokeGhost = $derived.by((): readonly GhostCell[] | null => {
    const { choice, pattern } = this.#session;
    if (choice.kind !== 'yarn' || this.stroke.length === 0) return null;
    const yarn = pattern.yarns.findIndex((each) => each.letter === choice.letter);
    return yarn < 0 ? null : this.stroke.map((stitch) => ({ stitch, yarn }));
  });

  /** The way from where a placed motif was taken up to where it would be put down. */
  readonly #way = $derived.by(() => {
    const { choice, stitchInHand } = this.#session;
    return this.drag ?? (this.#held?.choice === choice && stitchInHand !== null ? { from: this.#held.from, to: stitchInHand } : null);
  });

  /** How a placed motif would move by the drag. */
  readonly #dragged = $derived.by(() => {
    const { choice, grid, fabric } = this.#session;
    if (choice.kind !== 'move' || !this.#way) return null;
    const placed = this.#session.pattern.placements.find((each) => each.id === choice.placement);
    const rows = placed ? grid.rows.of(placed.section) : [];
    const { from, to } = this.#way;
    const rowsUp = rows.indexOf(fabric.row[to] ?? -1) - rows.indexOf(fabric.row[from] ?? -1);
    const stitchesRight = (grid.columns.columnOf[to] ?? -1) - (grid.columns.columnOf[from] ?? -1);
    return changeLayer(choice.placement, { kind: 'move', rowsUp, stitchesRight });
  });

  readonly #dragGhost = $derived.by((): { cells: readonly GhostCell[]; says: string | null } | null => {
    const { worn, fabric, size, grid, colours, choice } = this.#session;
    const step = this.#dragged?.(this.#here);
    if (!step || choice.kind !== 'move') return null;
    const tried = applyTransaction(worn, step);
    if (!tried.ok) return { cells: [], says: tried.reason };
    const laid = colour(tried.pattern, fabric, size, grid);
    const cells: GhostCell[] = [];
    for (let i = 0; i < fabric.count; i++) if (laid.yarn[i] !== colours.yarn[i]) cells.push({ stitch: i, yarn: laid.yarn[i]! });
    const placed = tried.pattern.placements.find((each) => each.id === choice.placement);
    const motif = tried.pattern.motifs.find((each) => each.id === placed?.motif);
    const fit = laid.fits.find((each) => each.placement === choice.placement);
    return { cells, says: placed && motif && fit ? placingSentence(motif, placed, fit, this.#meets(placed)) : null };
  });

  readonly ghost = $derived(this.#strokeGhost ?? this.#dragGhost?.cells ?? this.#motifGhost?.cells ?? null);
  readonly says = $derived(this.#dragGhost?.says ?? this.#motifGhost?.says ?? null);

  onstroke = (phase: StrokePhase, stitches: readonly number[], info: ChartPointer): void => {
    const session = this.#session;
    const last = stitches.at(-1);
    if (last !== undefined && phase !== 'cancel') session.pointAt(last, 'chart');
    if (session.choice.kind === 'move') return this.#dragTo(phase, last ?? null);
    if (session.choice.kind === 'block' && last !== undefined && phase !== 'cancel') session.block = { from: phase === 'start' ? last : (session.block?.from ?? last), to: last, fabric: session.fabric };
    if (session.choice.kind !== 'yarn') return;
    if (phase === 'start') this.stroke = this.laid === 'fill' && stitches[0] !== undefined ? this.#flood(stitches[0]) : stitches;
    else if (phase === 'move') this.stroke = this.laid === 'fill' ? this.stroke : info.shift || this.laid === 'straight' ? straightRun(session.fabric, [...this.stroke, ...stitches]) : [...new Set([...this.stroke, ...stitches])];
    else if (phase === 'cancel') this.stroke = [];
    else {
      const laid = this.stroke;
      this.stroke = [];
      if (this.laid === 'fill') session.commit(layYarn(laid, session.choice.letter, this.everySize));
      else this.#layStroke(laid, session.choice.letter, info.presses > 1);
    }
  };

  /** Lays a yarn where a stroke went. A double press fills what was of one yarn before its first press laid a stitch there: one step in all. */
  #layStroke(laid: readonly number[], letter: string, isDouble: boolean): void {
    const session = this.#session;
    const [only] = laid;
    const pressed = this.#pressed;
    const before = isDouble && pressed && pressed.stitch === only && pressed.fabric === session.fabric ? pressed : null;
    if (before?.isLaid) session.undo();
    const { yarn } = before ?? session.colours;
    const fill = isDouble && only !== undefined && laid.length === 1 ? runOfYarn(session.fabric, yarn, only) : laid;
    const { fabric } = session;
    const isLaid = session.commit(layYarn(fill, letter, this.everySize));
    this.#pressed = laid.length === 1 && !isDouble ? { stitch: only!, yarn, fabric, isLaid } : null;
  }

  /** Drops a motif that was dragged from its list onto the stitch that is pointed at. */
  drop(): void {
    const { choice, stitchInHand } = this.#session;
    const motif = choice.kind === 'motif' ? this.#motifs().find((each) => each.id === choice.motif) : undefined;
    if (motif && choice.kind === 'motif' && stitchInHand !== null && this.#session.commit(placeMotif(motif, stitchInHand, choice.lie, choice.mirror))) this.#session.choice = { kind: 'point' };
  }

  #dragTo(phase: StrokePhase, stitch: number | null): void {
    if (phase === 'start') this.drag = stitch === null ? null : { from: stitch, to: stitch };
    else if (phase === 'move' && stitch !== null && this.drag) this.drag = { ...this.drag, to: stitch };
    else if (phase === 'end' || phase === 'cancel') {
      const move = this.#dragged;
      this.drag = null;
      if (phase === 'end' && move) this.#session.commit(move);
    }
  }

  #flood(stitch: number): readonly number[] {
    const { fabric, above, colours } = this.#session;
    return floodYarn(fabric, above, colours.yarn, stitch);
  }

  /** Lays a yarn on a stitch by key; with Shift along the row from where it was laid last, with Control on what is of one yarn there in the row, with both in all rows. */
  layByKey(stitch: number, letter: string, info: Pick<ChartPointer, 'shift' | 'control'> = { shift: false, control: false }): void {
    const { fabric, colours } = this.#session;
    const from = this.#laidLast;
    const fills = this.laid === 'fill' || (info.shift && info.control);
    const isStraight = info.shift && from !== null && fabric.row[from] === fabric.row[stitch];
    this.#laidLast = stitch;
    const laid = fills ? this.#flood(stitch) : isStraight ? straightRun(fabric, [from, stitch]) : info.control ? runOfYarn(fabric, colours.yarn, stitch) : [stitch];
    this.#session.commit(layYarn(laid, letter, this.everySize));
  }

  /** Enter takes a placed motif up, arrows carry it, Enter puts it down. */
  #moveByKey(stitch: number): void {
    const { choice } = this.#session;
    const isHeld = this.#held?.choice === choice;
    const move = isHeld ? this.#dragged : null;
    this.#held = isHeld ? null : { choice, from: stitch };
    if (move) this.#session.commit(move);
  }

  /** Changes a stitch, or says why it can't be changed. */
  #set(stitch: number, change: StitchChange): void {
    const step = setStitchOr(stitch, change, this.#session.state);
    if ('reason' in step) this.#session.refusal = step.reason;
    else this.#session.commit(() => step);
  }

  ontap = (stitch: number, info: ChartPointer): void => {
    const session = this.#session;
    const { choice } = session;
    session.pointAt(stitch, 'chart');
    if (choice.kind === 'yarn' && info.pointer === 'keyboard') this.layByKey(stitch, choice.letter, info);
    if (choice.kind === 'move' && info.pointer === 'keyboard') this.#moveByKey(stitch);
    if (choice.kind === 'pickUp') {
      const letter = session.pattern.yarns[session.colours.yarn[stitch]!]?.letter;
      if (letter) session.choice = { kind: 'yarn', letter };
    }
    if (choice.kind === 'motif') {
      const motif = this.#motifs().find((each) => each.id === choice.motif);
      if (motif && session.commit(placeMotif(motif, stitch, choice.lie, choice.mirror))) session.choice = { kind: 'point' };
    }
    if (choice.kind === 'stitch') this.#set(stitch, choice.change);
    if (choice.kind === 'turn' && session.commit(turnHere(stitch))) session.choice = { kind: 'point' };
  };
}
