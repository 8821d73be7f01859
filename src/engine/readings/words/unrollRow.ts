import { FLAG } from '../../3-fabric/fabric.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { stitchCode, stitchOfCode } from '../../craft/stitches.ts';
import { amountFor } from '../../notation/instruction.ts';
import type { Instruction, Into, StitchCall } from '../../notation/instruction.ts';
import { countBody, countPlaces, countStitches } from './countStitches.ts';

/** One step of a worked row: a clause that can't be split further, and the yarn of its stitches (null: it makes none). */
export interface Step {
  readonly node: Instruction;
  readonly yarn: number | null;
  /** The yarn it ends in, where a group changes yarn inside; else `yarn`. */
  readonly endsIn: number | null;
}

const NO_RANGE = [0, 0] as const;
const MADE = new Set<Instruction['kind']>(['work', 'group', 'repeat', 'ring', 'join', 'joinRing']);

/**
 * A row's clauses taken apart stitch by stitch, in working order, each with the yarn it is worked in; repeats are written
 * out, `across` becomes single stitches. Stitches that a motif set are told as it has them. Yarn clauses are left out, but
 * for those after the last stitch. Null when the row was not worked as its words say (a row with findings).
 */
export function unrollRow(body: readonly Instruction[], size: number, fabric: Fabric, rowIndex: number, yarns: Uint8Array, letters: readonly string[]): readonly Step[] | null {
  const row = fabric.rows[rowIndex]!;
  let first = row.first;
  // Chains that an earlier row made for this one stand at its start; they are that row's words.
  const making = body.findIndex(({ kind }) => MADE.has(kind));
  const own = body.slice(0, making < 0 ? body.length : making).reduce((sum, node) => sum + (node.kind === 'chain' ? amountFor(node.count, size) : 0), 0);
  let chains = 0;
  while (first + chains < row.end && fabric.kind[first + chains] === stitchCode('ch')) chains++;
  const foreign = making >= 0 && chains > own && body[making]!.kind !== 'group' && body[making]!.kind !== 'repeat' ? chains - own : 0;
  first += foreign;
  const counts = new Array<number>(body.length).fill(0);
  for (let stitch = first; stitch < row.end; stitch++) {
    const index = fabric.instruction[stitch]!;
    if (index >= counts.length) return null;
    counts[index]!++;
  }
  const unroller = new Unroller(size, fabric, yarns, letters, first);
  const lastMaking = body.findLastIndex((node, index) => counts[index]! > 0 || MADE.has(node.kind));
  const fits = body.every((node, index) => {
    if (node.kind === 'yarn' && index < lastMaking) return true;
    return unroller.step(node, counts[index]!);
  });
  return fits && unroller.stitch === row.end ? unroller.steps : null;
}

/** A clause with the numbers of one size, where it is kept as it is. */
function inSize(node: Instruction, size: number): Instruction {
  switch (node.kind) {
    case 'chain':
    case 'skip':
      return { ...node, count: amountFor(node.count, size) };
    case 'leave':
      return node.count === 'rest' ? node : { ...node, count: amountFor(node.count, size) };
    case 'joinAt':
      return { ...node, nth: amountFor(node.nth, size) };
    default:
      return node;
  }
}

/** One of the places that a clause goes into. */
function onePlace(into: Into): Into {
  if (into.at === 'across') return { at: 'next', count: 1, what: into.what };
  return 'count' in into ? { ...into, count: 1 } : into;
}

class Unroller {
  readonly steps: Step[] = [];
  private readonly wholes = new Map<Instruction, Extract<Instruction, { kind: 'work' }>>();

  constructor(
    private readonly size: number,
    private readonly fabric: Fabric,
    private readonly yarns: Uint8Array,
    private readonly letters: readonly string[],
    /** Next stitch of the fabric. */
    public stitch: number,
  ) {}

  /** Adds the steps of a clause that made `made` stitches; false when it can't have made so many. */
  step(node: Instruction, made: number): boolean {
    switch (node.kind) {
      case 'work':
        return this.work(node, made);
      case 'group':
        return this.group(node, made);
      case 'repeat': {
        const inside = countBody(node.body, this.size);
        if (inside === null) return node.times.kind === 'times' && amountFor(node.times.times, this.size) === 1 && node.body.length === 1 && this.step(node.body[0]!, made);
        const times = node.times.kind === 'times' ? amountFor(node.times.times, this.size) : inside === 0 ? 0 : made / inside;
        if (times * inside !== made) return false;
        for (let time = 0; time < times; time++) if (!node.body.every((part) => part.kind === 'yarn' || this.step(part, countStitches(part, this.size)!))) return false;
        return true;
      }
      default:
        if (node.kind !== 'chain' && made > 1) return false;
        this.push(node, made);
        return true;
    }
  }

  private push(node: Instruction, made: number): void {
    const yarn = made > 0 ? this.yarns[this.stitch]! : null;
    this.stitch += made;
    this.steps.push({ node: inSize(node, this.size), yarn, endsIn: made > 0 ? this.yarns[this.stitch - 1]! : null });
  }

  private work(node: Extract<Instruction, { kind: 'work' }>, made: number): boolean {
    const each = amountFor(node.each, this.size);
    const places = countPlaces(node, this.size) ?? made / each;
    if (each === 0 || places * each !== made) return false;
    // Steps alike share one clause, so that they are told alike at a glance.
    const whole = this.wholes.get(node) ?? { ...node, each, into: onePlace(node.into) };
    this.wholes.set(node, whole);
    for (let place = 0; place < places; place++) {
      const end = this.stitch + each;
      if (!this.changes(this.stitch, end)) {
        this.push(this.asSet(whole), each);
        continue;
      }
      // Stitches of several yarns in one place: the further ones go into the same one.
      for (let into: Into = whole.into; this.stitch < end; into = { at: 'same' }) {
        let run = 1;
        while (this.stitch + run < end && this.yarns[this.stitch + run] === this.yarns[this.stitch]) run++;
        this.push({ ...node, each: run, into }, run);
      }
    }
    return true;
  }

  /** A clause of one stitch as a motif set it; the clause itself where none did. */
  private asSet(node: Extract<Instruction, { kind: 'work' }>): Extract<Instruction, { kind: 'work' }> {
    const flags = this.fabric.flags[this.stitch]!;
    if (!(flags & FLAG.setByMotif)) return node;
    const kind = stitchOfCode(this.fabric.kind[this.stitch]!).kind;
    const loop = flags & FLAG.frontLoop ? 'front' : flags & FLAG.backLoop ? 'back' : 'both';
    const post = flags & FLAG.frontPost ? 'front' : flags & FLAG.backPost ? 'back' : 'none';
    const stitch: StitchCall = { ...node.stitch, kind, legs: this.fabric.legs[this.stitch]!, loop, post };
    return { ...node, stitch };
  }

  /** Whether the yarn changes among stitches [from, end). */
  private changes(from: number, end: number): boolean {
    for (let stitch = from + 1; stitch < end; stitch++) if (this.yarns[stitch] !== this.yarns[from]) return true;
    return false;
  }

  /** A group is one step a place; its yarn changes stay inside. */
  private group(node: Extract<Instruction, { kind: 'group' }>, made: number): boolean {
    const inside = countBody(node.body, this.size);
    if (inside === null || inside === 0) return false;
    const places = countPlaces(node, this.size) ?? made / inside;
    if (places * inside !== made) return false;
    const single = onePlace(node.into);
    for (let place = 0; place < places; place++) {
      const body = this.groupBody(node.body, this.stitch);
      if (!body) return false;
      this.push({ ...node, body, into: single }, inside);
    }
    return true;
  }

  /** The clauses of a group whose first stitch is `first`, with a yarn clause wherever the yarn changes inside it. Null for clauses that a group can't hold. */
  private groupBody(body: readonly Instruction[], first: number): Instruction[] | null {
    const nodes: Instruction[] = [];
    let at = first;
    let now = this.yarns[first];
    const change = () => {
      if (this.yarns[at] === now) return;
      now = this.yarns[at];
      nodes.push({ kind: 'yarn', letter: this.letters[now!]!, word: 'with', range: NO_RANGE });
    };
    for (const node of body) {
      if (node.kind === 'yarn') continue;
      const made = countStitches(node, this.size);
      if (made === null) return null;
      const end = at + made;
      if (node.kind === 'work' && node.into.at === 'same') {
        while (at < end) {
          change();
          let run = 1;
          while (at + run < end && this.yarns[at + run] === now) run++;
          nodes.push({ ...node, each: run });
          at += run;
        }
        continue;
      }
      if (made > 0) change();
      if (this.yarns.subarray(at, end).some((yarn) => yarn !== now)) return null;
      nodes.push(node);
      at = end;
    }
    return nodes;
  }
}
