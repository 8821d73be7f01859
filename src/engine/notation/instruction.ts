import type { StitchKind } from '../craft/stitches.ts';

/** Where a node was read: characters `[from, to)` of the line's own text. `[0, 0]` for nodes made by the tool. */
export type TextRange = readonly [from: number, to: number];

/** A number, or one number per size in the pattern's order of sizes. */
export type Amount = number | readonly number[];

/** The number that holds for one size (0-based). A vector that is too short is a programmer's slip: reading refuses it first. */
export function amountFor(amount: Amount, size: number): number {
  if (typeof amount === 'number') return amount;
  const value = amount[size];
  if (value === undefined) throw new RangeError(`size ${size} asked of a vector of ${amount.length} sizes`);
  return value;
}

/** A corner of the round below: its chain space or its middle stitch, whichever it has, or the one that the words name. */
export type CornerWord = 'corner' | 'cornerSt' | 'cornerSp';

/** Which places a target means; `'st'` is any stitch top (not a chain space), `'rowEnd'` the side of a flat row, a kind is that stitch only. */
export type PlaceWord = 'st' | 'ch' | 'sp' | 'rowEnd' | CornerWord | StitchKind;

/** How far a run goes: to the end in one of its words, to the marker, to the next corner, to the next chain space. */
export type ExtentWord = 'across' | 'around' | 'end' | 'marker' | 'corner' | 'space';

/** Whether a run goes to the end of the row below. */
export function isEnd(word: ExtentWord): word is 'across' | 'around' | 'end' {
  return word === 'across' || word === 'around' || word === 'end';
}

/** Whether a place is told as a corner of the round below. */
export function isCornerWord(what: PlaceWord): what is CornerWord {
  return what === 'corner' || what === 'cornerSt' || what === 'cornerSp';
}

/** The stitch to make: kind, how many places it draws together, legs of a bobble and its like, and where the hook enters. */
export interface StitchCall {
  readonly kind: StitchKind;
  /** Places drawn together into one top: 1 for a plain stitch, 2 for sc2tog. */
  readonly together: number;
  /** Legs of a bobble, puff, popcorn, cluster or shell, chains of a picot; 0 for plain stitches. */
  readonly legs: number;
  /** Loop of the base stitch as the worker faces it. */
  readonly loop: 'both' | 'front' | 'back';
  /** Around the post of the base stitch instead of into its top. */
  readonly post: 'none' | 'front' | 'back';
  /** Rows below for a spike stitch; 0 for the usual place. */
  readonly spike: number;
  /** Stitch of the legs where it is not the catalogue's own: `3-tr bobble`. */
  readonly legKind?: StitchKind;
}

/** Where a stitch goes. */
export type Into =
  /** The next `count` places of the row below (or round); for a call that draws k places together, `count` such stitches (sc2tog over next 2 sts: 1). */
  | { readonly at: 'next'; readonly count: Amount; readonly what: PlaceWord; readonly loops?: number }
  /** Each place to the end of the row below, leaving the last `except`. `loops`: chains of the corner spaces that are meant. */
  | { readonly at: 'across'; readonly except: Amount; readonly what: PlaceWord; readonly word: ExtentWord; readonly loops?: number }
  /** Between two stitches of the row below, before or after the next stitch of a kind that hangs there: before picot. Takes no place. */
  | { readonly at: 'beside'; readonly side: 'before' | 'after'; readonly what: StitchKind }
  /** The stitch just worked into, again. */
  | { readonly at: 'same' }
  /** Next open places beyond the end of the row below: next unworked stitch, next stitch of the row below. */
  | { readonly at: 'open'; readonly count: Amount; readonly word: 'unworked' | 'rowBelow' }
  /** The next place, which belongs to an earlier section (corner slip stitch). */
  | { readonly at: 'section'; readonly name: string; readonly count: Amount }
  /** The first, last place of the row below. */
  | { readonly at: 'first' | 'last'; readonly what: PlaceWord }
  /** The nth chain from the hook, of chains just made. */
  | { readonly at: 'fromHook'; readonly nth: number }
  | { readonly at: 'ring' }
  | { readonly at: 'marker' }
  /** The top of the stitch just made (a picot closed with a slip stitch, fringe). */
  | { readonly at: 'top' };

/** How often a repeat is worked. */
export type Times =
  | { readonly kind: 'times'; readonly times: Amount }
  /** Until the row below has only `except` places left. */
  | { readonly kind: 'toEnd'; readonly except: Amount; readonly word: 'across' | 'around' | 'end' };

/**
 * How the numbers of a repeated row move, each time once more: `by` stitches more (or fewer) in its runs, a run being a
 * clause such as `sc in next 6 sts`. Runs are counted from 1 in the order of the words; `'between'` is every run of a row
 * that increases or decreases (a round of nothing but increases gets its first run).
 */
export interface RunChange {
  readonly runs: readonly number[] | 'each' | 'between' | 'last';
  readonly by: Amount;
}

interface Node {
  readonly range: TextRange;
}

/** One clause of a written row. Closed on `kind`; switch exhaustively. */
export type Instruction = Node &
  (
    | { readonly kind: 'work'; readonly stitch: StitchCall; /** Stitches made in each place. */ readonly each: Amount; readonly into: Into }
    /** Several stitches in one place. */
    | { readonly kind: 'group'; readonly body: readonly Instruction[]; readonly into: Into }
    | { readonly kind: 'chain'; readonly count: Amount; /** What the pattern says; null: the rule of the height. */ readonly counts: 'stitch' | 'no' | 'each' | null }
    | { readonly kind: 'skip'; readonly count: Amount; readonly what: PlaceWord }
    | { readonly kind: 'skipSeam' }
    | { readonly kind: 'turn' }
    | { readonly kind: 'leave'; readonly count: Amount | 'rest'; /** What is counted, where it is not stitches: 31 picots. */ readonly what?: StitchKind }
    | { readonly kind: 'repeat'; readonly body: readonly Instruction[]; readonly times: Times; readonly style: 'star' | 'paren' | 'bracket' }
    /** Magic ring. */
    | { readonly kind: 'ring' }
    /** Close the chains just made to a ring, or the round in its first stitch. */
    | { readonly kind: 'joinRing' }
    | { readonly kind: 'join'; readonly at: 'first' }
    | { readonly kind: 'noJoin' }
    /** New yarn joined at the nth place before or after the seam (or at the same/first place, or of an opening left in a round), counting no stitch. */
    | { readonly kind: 'joinAt'; readonly nth: Amount; readonly from: 'beforeSeam' | 'afterSeam' | 'start' | 'opening'; readonly yarn: string | null }
    | { readonly kind: 'yarn'; readonly letter: string; readonly word: 'with' | 'change' }
    | { readonly kind: 'marker' }
    | { readonly kind: 'otherSide' }
    /** The side edges sewn together; with `closes`, a ring laid flat and closed: what is closed, and how. */
    | { readonly kind: 'seam'; readonly closes?: { readonly name: string; readonly by: 'sewn' | 'slst' } }
    | { readonly kind: 'fastenOff' }
    /** Draw the yarn through the stitches that are left and close. */
    | { readonly kind: 'drawThrough' }
    /**
     * Work this row as earlier rows of the section (numbers inclusive; several are cycled). `rows` names rows that are no
     * range; `last` the so many rows before this line (from and to are 0 then); `changes` how their numbers move.
     */
    | { readonly kind: 'asRows'; readonly from: number; readonly to: number; readonly rows?: readonly number[]; readonly last?: number; readonly changes?: readonly RunChange[] }
    /**
     * Go on in the stitch pattern of the row below: on each stitch the kind that the last row in plain stitches set upon its
     * like. `even`: "work even", a whole row with the turning chain or the join of the row before.
     */
    | { readonly kind: 'inPattern'; readonly into: Extract<Into, { at: 'next' | 'across' }>; readonly even: boolean }
    /** One stitch in each stitch of the row below with `by` increases (decreases if negative) spread evenly. */
    | { readonly kind: 'spread'; readonly stitch: StitchCall; readonly word: 'across' | 'around' | 'end'; readonly by: Amount }
    /**
     * So many stitches spread evenly over the row ends that come next, or over the stitches of the row below. `count` null, along
     * row ends only: as many as the rows are high.
     */
    | { readonly kind: 'evenly'; readonly stitch: StitchCall; readonly count: Amount | null; readonly along: 'rowEnds' | 'across' | 'around' | 'end' }
    /**
     * Filet: meshes of three places each. An open one is ch 2, skip 2, dc; a solid one 3 dc (*common practice*, for the common
     * mesh of double crochet and two chains).
     */
    | { readonly kind: 'mesh'; readonly mesh: 'open' | 'solid'; readonly count: Amount }
    /** Worked in some sizes only, "Sizes S and L: …": size indices and the clauses for them. Resolved before the row is worked. */
    | { readonly kind: 'forSizes'; readonly sizes: readonly number[]; readonly body: readonly Instruction[] }
    /** Kept words that change nothing. */
    | { readonly kind: 'remark'; readonly text: string }
    /** Words that could not be read, kept as they are. */
    | { readonly kind: 'unread'; readonly text: string }
  );

/** The count a row says it has. */
export interface Stated {
  readonly count: Amount;
  /** The word after the number: sts, sc, … in US terms; '' if none. */
  readonly unit: string;
  /** `'last'`: the count of the last row of a range whose counts move. */
  readonly of: 'row' | 'last';
  /** For `'last'`: stitches more (or fewer) in each row; null when not said. */
  readonly step: Amount | null;
  /** For `'last'`: the count of each row in turn, where they are listed. */
  readonly list?: readonly Amount[];
  /** Further counts of the same row: `24 dc, 6 ch-1 sps`. */
  readonly also?: readonly { readonly count: Amount; readonly unit: string }[];
  readonly range: TextRange;
}

/** A plain stitch call: one place, both loops. */
export function plainCall(kind: StitchKind, legs = 0): StitchCall {
  return { kind, together: 1, legs, loop: 'both', post: 'none', spike: 0 };
}
