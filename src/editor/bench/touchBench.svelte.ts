import { applyTransaction } from '../../engine/1-pattern/applyTransaction.ts';
import type { Motif } from '../../engine/1-pattern/pattern.ts';
import { colour } from '../../engine/4-colour/colour.ts';
import type { GhostCell } from '../chart/chartData.ts';
import type { ChartPointer, StrokePhase } from '../chart/touches.ts';
import { placeMotif } from './commands/placeMotif.ts';
import { layYarn } from './commands/layYarn.ts';
import { setStitch } from './commands/setStitch.ts';
import { turnHere } from './commands/turnHere.ts';
import type { Session } from './session.svelte.ts';
import { fitSentence } from './fitSentence.ts';
import { runOfYarn, straightRun } from './strokeStitches.ts';

/** What touches of the chart do to a session, and what is shown over the chart while they are on their way. */
export class ChartTouch {
  readonly #session: Session;
  readonly #motifs: () => readonly Motif[];
  /** Stitches of the stroke that is being drawn. */
  stroke = $state.raw<readonly number[]>([]);
  /** Whether yarns are laid in every size. */
  everySize = $state(false);

  constructor(session: Session, motifs: () => readonly Motif[]) {
    this.#session = session;
    this.#motifs = motifs;
  }

  /** The motif on its way over the chart: its cells and how its repeats come out. */
  readonly #motifGhost = $derived.by((): { cells: readonly GhostCell[]; says: string } | null => {
    const { choice, stitchInHand, pattern, fabric, size, colours } = this.#session;
    if (choice.kind !== 'motif' || stitchInHand === null) return null;
    const motif = this.#motifs().find((each) => each.id === choice.motif);
    const transaction = motif && placeMotif(motif, stitchInHand, choice.lie, choice.mirror)(this.#session.state);
    if (!motif || !transaction) return motif ? { cells: [], says: `${motif.name} does not go into this row.` } : null;
    const tried = applyTransaction(pattern, transaction);
    if (!tried.ok) return { cells: [], says: tried.reason };
    const laid = colour(tried.pattern, fabric, size, this.#session.grids[size]!);
    const cells: GhostCell[] = [];
    const mark = tried.pattern.placements.length;
    for (let i = 0; i < fabric.count; i++) if (laid.placement[i] === mark && laid.yarn[i] !== colours.yarn[i]) cells.push({ stitch: i, yarn: laid.yarn[i]! });
    return { cells, says: fitSentence(motif, laid.fits.at(-1)!) };
  });

  readonly #strokeGhost = $derived.by((): readonly GhostCell[] | null => {
    const { choice, pattern } = this.#session;
    if (choice.kind !== 'yarn' || this.stroke.length === 0) return null;
    const yarn = pattern.yarns.findIndex((each) => each.letter === choice.letter);
    return yarn < 0 ? null : this.stroke.map((stitch) => ({ stitch, yarn }));
  });

  readonly ghost = $derived(this.#strokeGhost ?? this.#motifGhost?.cells ?? null);
  readonly says = $derived(this.#motifGhost?.says ?? null);

  onstroke = (phase: StrokePhase, stitches: readonly number[], info: ChartPointer): void => {
    const session = this.#session;
    const last = stitches.at(-1);
    if (last !== undefined && phase !== 'cancel') session.pointAt(last, 'chart');
    if (session.choice.kind !== 'yarn') return;
    if (phase === 'start') this.stroke = stitches;
    else if (phase === 'move') this.stroke = info.shift ? straightRun(session.fabric, [...this.stroke, ...stitches]) : [...new Set([...this.stroke, ...stitches])];
    else if (phase === 'cancel') this.stroke = [];
    else {
      const laid = this.stroke;
      this.stroke = [];
      const fill = info.presses > 1 && laid.length === 1 ? runOfYarn(session.fabric, session.colours.yarn, laid[0]!) : laid;
      session.commit(layYarn(fill, session.choice.letter, this.everySize));
    }
  };

  ontap = (stitch: number, info: ChartPointer): void => {
    const session = this.#session;
    const { choice } = session;
    session.pointAt(stitch, 'chart');
    if (choice.kind === 'yarn' && info.pointer === 'keyboard') session.commit(layYarn([stitch], choice.letter, this.everySize));
    if (choice.kind === 'pickUp') {
      const letter = session.pattern.yarns[session.colours.yarn[stitch]!]?.letter;
      if (letter) session.choice = { kind: 'yarn', letter };
    }
    if (choice.kind === 'motif') {
      const motif = this.#motifs().find((each) => each.id === choice.motif);
      if (motif && session.commit(placeMotif(motif, stitch, choice.lie, choice.mirror))) session.choice = { kind: 'point' };
    }
    if (choice.kind === 'stitch') session.commit(setStitch(stitch, choice.change));
    if (choice.kind === 'turn' && session.commit(turnHere(stitch))) session.choice = { kind: 'point' };
  };
}
