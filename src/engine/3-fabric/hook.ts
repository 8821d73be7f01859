import { stitchCode, type StitchKind } from '../craft/stitches.ts';
import { isCornerWord, type PlaceWord, type StitchCall } from '../notation/instruction.ts';
import { Edge, NONE, PLACE } from './edge.ts';
import { FLAG } from './fabric.ts';
import { rowEndsAhead, takeRowEnd } from './rowEnds.ts';
import { StitchStore } from './stitchStore.ts';

/** One piece of fabric: its ring on the edge. */
export interface Piece {
  /** The mark of its ring. */
  readonly mark: number;
  /** What the mark is now: the end of a flat edge, a seam, or the start of rounds. */
  markKind: number;
  /** Whether the ring is closed: seamed, or worked in the round. */
  closed: boolean;
  /** Stitch that stands for the middle of a ring, NONE when there is none. */
  centre: number;
  /** Chains [first, end) of its foundation. */
  foundation: readonly [number, number];
}

/** A slit in a ring: chains over stitches of the round below that were skipped under them. */
export interface Opening {
  /** In the order they were made. */
  readonly chains: readonly number[];
  readonly skipped: readonly number[];
}

/** Where the hook is, as plain values, so that it can be kept at each row's start. */
export interface HookState {
  piece: number;
  /** The place behind the hook; the one ahead is its neighbour in `direction`. */
  behind: number;
  /** 1: along the ring's order, -1 against it. */
  direction: number;
  /** 1: the right side faces the worker, -1 the wrong side. */
  facing: number;
  yarn: number;
  /** The stitch made last in this run of yarn. */
  thread: number;
  /** Nothing hangs on the hook: at the start, and after the yarn was fastened off. */
  cut: boolean;
  /** Chains made but not yet known to be a turning chain, a space or a foundation: the last `pending` stitches. */
  pending: number;
  pendingCounts: 'stitch' | 'no' | 'each' | null;
  /** Whether the fabric was turned since the last stitch that is no chain. */
  turned: boolean;
  /** Whether the pending chains began before any stitch of their row. */
  pendingAtStart: boolean;
  /** `in same st` means the place ahead: just joined. */
  sameIsAhead: boolean;
  sameBases: readonly number[];
  /** Place of the marker, NONE when there is none. */
  marker: number;
  /** Whether the last row ended in a stitch that ties it to an earlier row: its end there is closed. */
  tied: boolean;
  /** Openings that work has gone into, by their number. */
  entered: readonly number[];
}

/** The hook on the edge: the few moves that every instruction is made of. */
export class Hook {
  edge = new Edge();
  stitches = new StitchStore();
  pieces: Piece[] = [];
  seams: { row: number; before: number; after: number }[] = [];
  closings: { row: number; pairs: readonly (readonly [number, number])[] }[] = [];
  openings: Opening[] = [];
  state: HookState = {
    piece: NONE, behind: NONE, direction: 1, facing: -1, yarn: 0, thread: NONE, cut: true, pending: 0, pendingCounts: null,
    turned: false, pendingAtStart: false, sameIsAhead: false, sameBases: [], marker: NONE, tied: false, entered: [],
  };
  /** The row being worked. */
  row = 0;
  instruction = 0;
  /** Row below, fixed by the first place taken since the row's start or the last turn; NONE before. */
  below = NONE;
  /** Worked in the round: everything on the ring is in reach. */
  round = false;
  used = 0;
  placed = 0;
  /** Places that count as stitches, and chain spaces, taken in this row: repeats watch them. */
  takenStitches = 0;
  takenSpaces = 0;
  private lastSpace = NONE;
  /** Place behind the first one of this row. */
  startBehind = NONE;
  /** Facing and direction of this row's first stitch, and the place put last: a turn at the row's end changes none of them. */
  rowFacing = 0;
  rowDirection = 0;
  lastPut = NONE;
  /** Whether a round passed over places before its first stitch. */
  passedAtStart = false;
  /** Whether the row turned between its stitches: it has no two ends then. */
  bent = false;
  /** Chains laid one by one as stitches and put last: what is skipped after them lies under them. */
  laid: readonly number[] = [];
  /** Meshes of filet made in this row, and the picot of the row below passed last. */
  meshes = 0;
  picot = NONE;

  /** Gets ready for row `row`. */
  beginRow(row: number, round: boolean): void {
    Object.assign(this, { row, round, instruction: 0, below: NONE, used: 0, placed: 0, takenStitches: 0, takenSpaces: 0, lastSpace: NONE, startBehind: NONE, rowFacing: 0, rowDirection: 0, lastPut: NONE, passedAtStart: false, bent: false, laid: [], meshes: 0, picot: NONE });
  }

  get piece(): Piece | undefined {
    return this.pieces[this.state.piece];
  }

  /** The place ahead, marks and row ends passed over; NONE at the end of a flat edge or of an empty ring. */
  ahead(from = this.state.behind): number {
    if (from === NONE) return NONE;
    let place = from;
    for (let marks = 0; marks < 2; ) {
      place = this.edge.beside(place, this.state.direction);
      if (this.edge.isRowEnd(place)) continue;
      if (!this.edge.isMark(place)) return place;
      if (this.edge.what.at(place) === PLACE.end) return NONE;
      marks++;
    }
    return NONE;
  }

  /** Starts a new piece with an empty ring and puts the hook on it. */
  startPiece(round: boolean): Piece {
    const markKind = round ? PLACE.roundStart : PLACE.end;
    const mark = this.edge.newRing(markKind);
    const piece: Piece = { mark, markKind, closed: round, centre: NONE, foundation: [this.stitches.count, this.stitches.count] };
    this.state.piece = this.pieces.push(piece) - 1;
    Object.assign(this.state, { behind: mark, direction: 1, facing: round ? 1 : -1, cut: false, pending: 0, turned: false, sameBases: [], sameIsAhead: false, thread: NONE });
    this.below = NONE;
    return piece;
  }

  /** Closes a flat edge to a ring; its end becomes a seam or the start of rounds. */
  close(piece: Piece, markKind: number): void {
    piece.closed = true;
    piece.markKind = markKind;
    this.edge.setMark(piece.mark, markKind);
  }

  turn(): void {
    const state = this.state;
    // Over a mark that may be passed the hook may stand on either side of it; what lies ahead is the same.
    if (state.behind !== NONE) state.behind = this.edge.beside(state.behind, state.direction);
    state.direction = -state.direction;
    state.facing = -state.facing;
    state.turned = true;
    state.sameIsAhead = false;
    this.below = NONE;
  }

  /** Whether a place is a stitch in the sense of "next st": not a chain space, not a slip stitch that doesn't count. */
  isStitch(place: number): boolean {
    if (this.edge.isRowEnd(place)) return false;
    const stitch = this.edge.stitch.at(place);
    if (this.edge.what.at(place) === PLACE.bottom || this.stitches.has(stitch, FLAG.counts | FLAG.foundation)) return true;
    const code = this.stitches.code(stitch);
    return code !== stitchCode('ch') && code !== stitchCode('slst');
  }

  isSlip(place: number): boolean {
    return this.stitches.code(this.edge.stitch.at(place)) === stitchCode('slst') && !this.isStitch(place);
  }

  /** Whether a place answers a word of the pattern. */
  answers(place: number, what: PlaceWord): boolean {
    if (what === 'rowEnd') return this.edge.isRowEnd(place);
    // Corners are known from the whole row below: see `corners.ts`.
    if (isCornerWord(what)) return false;
    const stitch = this.edge.stitch.at(place);
    if (what === 'st') return this.isStitch(place);
    if (what === 'sp') return this.edge.run.at(place) !== NONE;
    if (what === 'ch') return this.stitches.code(stitch) === stitchCode('ch');
    if (this.stitches.code(stitch) === stitchCode(what)) return true;
    return this.stitches.has(stitch, FLAG.turning) && this.stitches.has(stitch, FLAG.counts);
  }

  /** Whether a place can be reached without further words: of the row below, or anywhere on the ring in rounds. */
  inReach(place: number): boolean {
    if (place === NONE) return false;
    const row = this.edge.row.at(place);
    if (row === this.row && !this.stitches.has(this.edge.stitch.at(place), FLAG.foundation)) return false;
    if (this.round) return true;
    if (this.below === NONE) this.below = row;
    return row === this.below;
  }

  /** Counts the places in reach that answer a word; chain spaces count once. Linear in what is in reach. */
  reachCount(what: PlaceWord): number {
    if (what === 'rowEnd') return rowEndsAhead(this);
    let count = 0;
    let lastRun = NONE;
    const first = this.ahead();
    for (let place = first; this.inReach(place); ) {
      if (this.answers(place, what)) {
        const run = this.edge.run.at(place);
        if (what !== 'sp' || run !== lastRun) count++;
        lastRun = run;
      }
      place = this.ahead(place);
      if (place === first) break;
    }
    return count;
  }

  /** Takes a place off the edge and returns its stitch. */
  take(place: number): number {
    const run = this.edge.run.at(place);
    if (this.isStitch(place)) this.takenStitches++;
    if (run !== NONE && run !== this.lastSpace) this.takenSpaces++;
    if (run !== NONE) this.lastSpace = run;
    if (this.round && this.below === NONE) this.below = this.edge.row.at(place);
    const direction = this.state.direction;
    if (place === this.state.behind) this.state.behind = this.edge.beside(place, -direction);
    if (place === this.startBehind) this.startBehind = this.edge.beside(place, -direction);
    this.edge.remove(place);
    this.used++;
    return this.edge.stitch.at(place);
  }

  /** Stands just before `place`, which lies ahead. Row ends between are worked past and close. */
  standBefore(place: number): void {
    const { direction } = this.state;
    for (let end = this.edge.beside(place, -direction); end !== this.state.behind && this.edge.isRowEnd(end); end = this.edge.beside(place, -direction)) this.dropRowEnd(end);
    this.state.behind = this.edge.beside(place, -direction);
  }

  /** Takes a row end off the edge without working into it. */
  dropRowEnd(place: number): void {
    const before = this.edge.beside(place, -this.state.direction);
    if (place === this.state.behind) this.state.behind = before;
    if (place === this.startBehind) this.startBehind = before;
    this.edge.remove(place);
  }

  /** Takes the next place in reach that answers `what`, passing over others; null when there is none (nothing taken then). */
  takeNext(what: PlaceWord): { stitches: readonly number[]; place: number } | null {
    if (what === 'rowEnd') return takeRowEnd(this);
    let place = this.ahead();
    const first = place;
    while (this.inReach(place) && !this.answers(place, what)) {
      place = this.ahead(place);
      if (place === first) return null;
    }
    if (!this.inReach(place)) return null;
    // What a round passes over before its first stitch can still be reached at its end.
    if (this.round && this.placed === 0 && place !== first) this.passedAtStart = true;
    else for (let passed = first; passed !== place; passed = this.ahead()) this.take(passed);
    // A mark between hook and place is passed now, so that what is made next lies beyond it.
    this.standBefore(place);
    return { place, stitches: what === 'sp' ? this.takeRun(place) : [this.take(place)] };
  }

  /** Takes a whole chain space; returns its chains. */
  takeRun(place: number): number[] {
    const run = this.edge.run.at(place);
    const chains: number[] = [];
    for (let next = place; next !== NONE && this.edge.run.at(next) === run; next = this.ahead()) chains.push(this.take(next));
    return chains;
  }

  /** Makes a stitch; no place yet. */
  make(call: StitchCall | StitchKind, bases: readonly number[], flags: number): number {
    const plain = typeof call === 'string';
    const kind = plain ? call : call.kind;
    const bits = plain ? 0
      : (call.loop === 'front' ? FLAG.frontLoop : call.loop === 'back' ? FLAG.backLoop : 0)
      | (call.post === 'front' ? FLAG.frontPost : call.post === 'back' ? FLAG.backPost : 0)
      | (call.spike > 0 ? FLAG.spike : 0);
    const stitch = this.stitches.add({
      kind, yarn: this.state.yarn, flags: flags | bits, legs: plain ? 0 : Math.min(255, call.legs), legKind: plain ? undefined : call.legKind, row: this.row,
      previous: this.state.thread, instruction: Math.min(65535, this.instruction), bases,
    });
    this.state.thread = stitch;
    return stitch;
  }

  /** Puts a stitch's top on the edge behind the hook. */
  put(stitch: number, what: number = PLACE.top, run: number = NONE): number {
    const place = this.edge.add(stitch, this.row, what, run);
    const { behind, direction } = this.state;
    if (this.startBehind === NONE) {
      this.startBehind = behind;
      this.rowFacing = this.state.facing;
      this.rowDirection = direction;
    }
    this.bent ||= direction !== this.rowDirection;
    this.edge.insert(place, behind, direction);
    this.state.behind = this.lastPut = place;
    this.placed++;
    return place;
  }

  /** Puts a place just ahead of the hook (the other side of a foundation chain, chains worked back along). */
  putAhead(stitch: number, what: number, row: number): number {
    const place = this.edge.add(stitch, row, what, NONE);
    this.edge.insert(place, this.state.behind, this.state.direction);
    this.placed++;
    return place;
  }
}
