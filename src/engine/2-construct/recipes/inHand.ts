import type { Instruction } from '../../notation/instruction.ts';
import type { MadeRow } from './madeRow.ts';
import type { MadeSection } from './madeSection.ts';

/**
 * Sections whose rows name a yarn only where it changes: recipes name it in every row, here it is left out while that yarn is
 * in hand. A line of several rows that begins with another yarn is cut in two, since only its first row changes.
 */
export function inHand(sections: readonly MadeSection[]): readonly MadeSection[] {
  const sizes = sections[0]?.perSize.length ?? 0;
  const hands: (string | null)[] = Array.from({ length: sizes }, () => null);
  return sections.map((section) => ({
    ...section,
    perSize: section.perSize.map((made, size) =>
      made.flatMap((row): readonly MadeRow[] => {
        if (row.kind === 'note' || (row.kind === 'row' && row.rows === 0)) return [row];
        const hand = hands[size]!;
        hands[size] = yarnAfter(row.body, hand);
        if (row.body[0]?.kind !== 'yarn') return [row];
        const rest = row.body.slice(1);
        if (row.body[0].letter === hand) return [{ ...row, body: rest }];
        if (row.kind === 'step' || row.rows === 1) return [row];
        return [{ ...row, role: `${row.role}First`, rows: 1 }, { ...row, rows: row.rows - 1, side: null, body: rest }];
      }),
    ),
  }));
}

function yarnAfter(body: readonly Instruction[], hand: string | null): string | null {
  return body.reduce((yarn: string | null, clause) => {
    if (clause.kind === 'yarn') return clause.letter;
    if (clause.kind === 'joinAt') return clause.yarn ?? yarn;
    return clause.kind === 'fastenOff' ? null : yarn;
  }, hand);
}
