import { otherTerms, stitchWord } from '../craft/terms.ts';
import type { Terms } from '../craft/terms.ts';
import type { StitchKind } from '../craft/stitches.ts';
import { finding } from './finding.ts';
import type { Degree, Finding, Rule } from './finding.ts';
import type { Instruction, StitchCall, TextRange } from './instruction.ts';
import type { SpecialStitch } from './specialStitches.ts';
import type { StitchMatch } from './stitchReading.ts';
import { tokenize } from './tokens.ts';
import type { Token } from './tokens.ts';

/** What a written row is read with. */
export interface ReadOptions {
  readonly terms: Terms;
  /** Number of sizes of the pattern, at least 1. */
  readonly sizes: number;
  /** Letters of the pattern's yarns; without them any capital letter may be a yarn. */
  readonly letters?: readonly string[];
  /** Stitches that the pattern explains itself; they win over the catalogue. */
  readonly special?: readonly SpecialStitch[];
  /** Names of the sizes, by which "Sizes S and L: …" is read; without them such words stay unread. */
  readonly sizeNames?: readonly string[];
}

/** A stitch call whose kind is not fixed yet: `inc` and `dec` take the stitch of their row. */
export type OpenCall = { -readonly [K in keyof StitchCall]: StitchCall[K] };

const END: Token = { kind: 'mark', word: '', value: 0, from: 0, to: 0, glued: false, capital: false, close: -1 };

/**
 * A place in the tokens of one row, with what has been found so far. Clause readers look at `token()`, move `at` forward
 * and return null, with `at` where it was, when the words are not theirs.
 */
export class RowReader {
  readonly tokens: readonly Token[];
  readonly findings: Finding[] = [];
  at = 0;
  /** Tokens from here on belong to an outer bracket. */
  end: number;
  depth = 0;
  /** Set while the row (or the rest of it) is worked in one loop: "Working in back loops only, …". */
  loop: StitchCall['loop'] = 'both';
  /** What `matchStitch` found at each token, and where the reader's tokens ended then. */
  readonly stitches = new Map<number, { readonly end: number; readonly match: StitchMatch | null }>();
  private readonly mentioned = new Map<ReadonlySet<string>, boolean>();
  private plainKind: StitchKind | null = null;
  private waiting: OpenCall[] = [];

  constructor(
    readonly text: string,
    readonly options: ReadOptions,
  ) {
    this.tokens = tokenize(text);
    this.end = this.tokens.length;
  }

  /** The token `ahead` places on, or an empty mark beyond the end. */
  token(ahead = 0): Token {
    const index = this.at + ahead;
    return index < this.end ? this.tokens[index]! : END;
  }

  /** Whether the token there is one of these words or marks. */
  is(words: ReadonlySet<string> | string, ahead = 0): boolean {
    const { word } = this.token(ahead);
    return typeof words === 'string' ? word === words : words.has(word);
  }

  /** Whether one of these words is anywhere in the row: a clause that needs one is not looked for in rows without. */
  mentions(words: ReadonlySet<string>): boolean {
    const known = this.mentioned.get(words) ?? this.tokens.some(({ word }) => words.has(word));
    this.mentioned.set(words, known);
    return known;
  }

  /** Moves past the token if it is one of these words or marks. */
  take(words: ReadonlySet<string> | string): boolean {
    if (!this.is(words)) return false;
    this.at++;
    return true;
  }

  /** Moves past several words in a row, or past none of them. */
  takeAll(...words: readonly (ReadonlySet<string> | string)[]): boolean {
    if (!words.every((word, ahead) => this.is(word, ahead))) return false;
    this.at += words.length;
    return true;
  }

  /** Moves past articles: the, a, an. A capital A is left, as it may be a yarn. */
  takeArticles(): void {
    while ((this.is('the') || this.is('a') || this.is('an')) && !this.token().capital) this.at++;
  }

  /** What `read` gives; where it gives null, nothing has been moved and nothing found. */
  attempt<T>(read: () => T | null): T | null {
    const { at } = this;
    const found = this.findings.length;
    const result = read();
    if (result === null) {
      this.at = at;
      this.findings.length = found;
    }
    return result;
  }

  /** Characters from token `from` to the token before `to`. */
  range(from: number, to = this.at): TextRange {
    if (to <= from) return [0, 0];
    return [this.tokens[from]!.from, this.tokens[to - 1]!.to];
  }

  slice(from: number, to = this.at): string {
    const [start, end] = this.range(from, to);
    return this.text.slice(start, end);
  }

  find(degree: Degree, rule: Rule, range: TextRange, more: Parameters<typeof finding>[3] = {}): void {
    this.findings.push(finding(degree, rule, { text: range }, more));
  }

  /** Keeps the words from token `from` up to `at` as they are and says so. */
  unread(from: number): Instruction {
    const range = this.range(from);
    const text = this.text.slice(range[0], range[1]);
    this.find('wrong', 'unread', range, { found: text });
    return { kind: 'unread', text, range };
  }

  /** Says that a stitch word is of the other set of terms. */
  foreign(from: number, kind: StitchKind): void {
    const range = this.range(from);
    const { terms } = this.options;
    this.find('wrong', 'otherTerms', range, {
      found: this.text.slice(range[0], range[1]),
      expected: stitchWord(kind, terms),
      params: { terms, other: otherTerms(terms) },
    });
  }

  /** Remembers a stitch that `inc` and `dec` beside it stand for, and settles those before it. */
  sawPlain(kind: StitchKind): void {
    this.plainKind = kind;
    for (const call of this.waiting) call.kind = kind;
    this.waiting = [];
  }

  /** Gives an `inc` or `dec` the row's stitch: the one before it, else the one after it, else single crochet. */
  settle(call: OpenCall): void {
    if (this.plainKind) call.kind = this.plainKind;
    else this.waiting.push(call);
  }
}
