import { describe, expect, it } from 'vitest';
import { applyTransaction } from '../../../src/engine/1-pattern/applyTransaction.ts';
import type { Pattern } from '../../../src/engine/1-pattern/pattern.ts';
import { construct } from '../../../src/engine/2-construct/construct.ts';
import { sectionsByHand } from '../../../src/engine/2-construct/recipes/gradePattern.ts';
import type { PieceSettings } from '../../../src/engine/2-construct/recipes/settings.ts';
import { settingsOf } from '../../../src/engine/2-construct/recipes/settingsOf.ts';
import { work } from '../../../src/engine/3-fabric/work.ts';
import { changeMake } from '../../../src/editor/sizes/commands/changeMake.ts';
import { gradedPiece } from '../../../src/editor/sizes/gradedPiece.ts';
import { draftedPins, draftedSettings, NO_DRAFT, withChange, withDraftPin, type MakeDraft } from '../../../src/editor/sizes/make/makeDraft.ts';
import type { MakeChange, MakeField } from '../../../src/editor/sizes/make/makeField.ts';
import { makeParts } from '../../../src/editor/sizes/make/makeParts.ts';
import { makeWords } from '../../../src/editor/sizes/make/makeWords.ts';
import { CONSTRUCTIONS } from '../../../src/editor/shelf/constructions.ts';
import { pieceOf, requestOf, measure } from '../../engine/2-construct/recipes/pieceOf.ts';
import { after } from './bookPiece.ts';

const OFFERS = CONSTRUCTIONS.filter((offer) => offer.settings !== null);

/** A piece as the shelf starts it, in two sizes, the larger a tenth larger. */
function begun(id: string): Pattern {
  const offer = OFFERS.find((one) => one.id === id)!;
  const measures = offer.measures.map(({ name, cm }) => measure(name, cm, cm * 1.1));
  const { pattern } = pieceOf(requestOf(offer.settings!, measures));
  return { ...pattern, piece: { measures } };
}

const fieldsOf = (settings: PieceSettings) => makeParts(settings, 2).flatMap(({ fields }) => fields);

/** Everything that a field can be changed to, a few numbers of those that are typed. */
function changesOf(field: MakeField): readonly MakeChange[] {
  switch (field.kind) {
    case 'choice':
      return field.options.filter(({ value }) => value !== field.value).map(({ value }) => field.set(value));
    case 'cm':
      return [field.set(field.cm / 2), field.set(field.cm * 2)];
    case 'count':
      return [field.set(field.least), field.set(field.most)];
    case 'yarn':
      return ['A', 'B'].filter((letter) => letter !== field.letter).map((letter) => field.set(letter));
    case 'pin':
      return [];
  }
}

/** The pattern made in another make, and what that would do in words. */
function madeSo(pattern: Pattern, draft: MakeDraft) {
  const piece = gradedPiece(pattern, draftedSettings(settingsOf(pattern)!, draft), draftedPins(pattern.piece?.pins ?? {}, draft, 2));
  if (piece.kind !== 'graded') throw new Error(`${piece.kind}${piece.kind === 'refused' ? `: ${piece.reason}` : ''}`);
  const done = after(pattern, changeMake(piece.graded, draftedPins(pattern.piece?.pins ?? {}, draft, 2), 'Make with another heel'));
  return { ...done, words: makeWords(piece.graded, pattern.placements.length) };
}

const wrong = (pattern: Pattern) => pattern.sizes.flatMap((_, size) => work(construct(pattern, size)).findings.filter(({ degree }) => degree === 'wrong'));

describe('the make of a piece, changed after it was begun', () => {
  it.each(OFFERS.map(({ id }) => [id]))('has no choice that gives a wrong row, keeps what was chosen, and goes back in one step: %s', (id) => {
    const pattern = begun(id);
    const settings = settingsOf(pattern)!;
    for (const field of fieldsOf(settings)) {
      for (const change of changesOf(field)) {
        const { pattern: made, inverse } = madeSo(pattern, withChange(NO_DRAFT, field.id, change));
        expect(wrong(made), field.id).toEqual([]);
        expect(settingsOf(made), field.id).toEqual(change(settings));
        expect(sectionsByHand(made, settings.kind), field.id).toEqual([]);
        const back = applyTransaction(made, inverse);
        expect(back.ok && back.pattern).toEqual(pattern);
      }
    }
  });

  const sock = (): Pattern => {
    const pattern = begun('bootSock');
    return {
      ...pattern, motifs: [{ id: 'dot', name: 'Dots', cells: ['BA'] }],
      placements: [{ id: 'dots', section: 'leg', motif: 'dot', row: { line: 'leg.rows', nth: 6 }, align: 'centre', offset: 0, across: 'fill', up: 2, gap: 0, mirror: false }],
    };
  };
  const heel = (settings: PieceSettings, kind: string): MakeChange => {
    const field = fieldsOf(settings).find(({ id }) => id === 'heel.kind')!;
    return changesOf(field)[field.kind === 'choice' ? field.options.filter(({ value }) => value !== field.value).findIndex(({ value }) => value === kind) : 0]!;
  };

  it('says which sections come, go, are written anew and stay, and leaves motifs on their rows', () => {
    const pattern = sock();
    const { pattern: made, words } = madeSo(pattern, withChange(NO_DRAFT, 'heel.kind', heel(settingsOf(pattern)!, 'flap')));
    expect(words).toEqual([
      { what: 'New', words: 'Heel flap, Heel turn and Gusset' },
      { what: 'Written anew', words: 'Foot' },
      { what: 'Taken out', words: 'Heel' },
      { what: 'As it is', words: 'Cuff, Leg and Toe' },
      { what: 'Motifs and colours', words: '1 motif stays on its row' },
    ]);
    expect(made.sections.map(({ id }) => id)).toEqual(['cuff', 'leg', 'flap', 'turn', 'gusset', 'foot', 'toe']);
    expect(made.placements).toEqual(pattern.placements);
  });

  it('leaves a toe that was changed by hand, and says so', () => {
    const pattern = sock();
    const byHand: Pattern = { ...pattern, sections: pattern.sections.map((section) => (section.id === 'toe' ? { ...section, lines: [...section.lines, { kind: 'note', id: 'mine', text: 'Mind the toe.' }] } : section)) };
    const { pattern: made, words } = madeSo(byHand, withChange(NO_DRAFT, 'heel.kind', heel(settingsOf(pattern)!, 'flap')));
    expect(words).toContainEqual({ what: 'Left alone, changed by hand', words: 'Toe' });
    expect(made.sections.find(({ id }) => id === 'toe')).toEqual(byHand.sections.find(({ id }) => id === 'toe'));
  });

  it('says anew how a section is worked, unless the maker’s words stand there', () => {
    const pattern = sock();
    const way = changesOf(fieldsOf(settingsOf(pattern)!).find(({ id }) => id === 'leg.way')!)[0]!;
    const rounds = madeSo(pattern, withChange(NO_DRAFT, 'leg.way', way)).pattern;
    expect(rounds.sections.slice(0, 2).map(({ remark }) => remark)).toEqual(['worked in a spiral', 'worked in a spiral, from the right side of the heel']);
    const said: Pattern = { ...pattern, sections: pattern.sections.map((section) => (section.id === 'leg' ? { ...section, remark: 'my own way' } : section)) };
    expect(madeSo(said, withChange(NO_DRAFT, 'leg.way', way)).pattern.sections[1]!.remark).toBe('my own way');
  });

  it('stops a toe where it is set by hand, in one step with the rest', () => {
    const pattern = sock();
    const pace = changesOf(fieldsOf(settingsOf(pattern)!).find(({ id }) => id === 'toe.pace')!)[0]!;
    const { pattern: made, inverse } = madeSo(pattern, withDraftPin(withChange(NO_DRAFT, 'toe.pace', pace), 'toe.stop', 1, 6));
    const last = made.sizes.map((_, size) => work(construct(made, size)).rows.filter((row) => row.word === 'round').at(-1)!.made);
    // 25 and 27.5 cm at 1.8 stitches a cm are 45 and 49.5: 46 and 50 stitches; a quarter of 46 is nearest to 10 in steps of 4.
    expect(last).toEqual([10, 6]);
    expect(made.piece?.pins).toEqual({ 'toe.stop': [null, 6] });
    const back = applyTransaction(made, inverse);
    expect(back.ok && back.pattern).toEqual(pattern);
  });
});
