import { stitchRow, type StitchKind } from '../../craft/stitches.ts';
import type { Instruction } from '../../notation/instruction.ts';
import { across, chain, inRing, joinRound, plain, withYarn } from './clauses.ts';
import { edgeRows, type MadeEdge } from './edgeRows.ts';
import { evenRow } from './evenRow.ts';
import { flatCount, flatMore } from './flatCount.ts';
import { gaugeNumbers } from './gaugeBook.ts';
import { foundation, rounds, step, type MadeRow } from './madeRow.ts';
import type { MadeParts, MadeSection } from './madeSection.ts';
import { nearest, type Origin } from './origin.ts';
import { Reckoning } from './reckoning.ts';
import type { DiscSettings, PieceRequest } from './settings.ts';
import { wanted } from './wanted.ts';

interface DiscNumbers {
  readonly r: Reckoning;
  /** Stitches of each round of the crown. */
  readonly counts: readonly number[];
  readonly sides: Origin;
  readonly brim: MadeEdge;
}

/**
 * A flat disc from a magic ring, by its width or, as a cap, by its girth; where a height is asked for that is more than its
 * radius, with even sides, and with a brim. Single crochet in a spiral, taller stitches in joined rounds whose turning chain
 * doesn't count. Refuses sizes that have neither width nor girth.
 */
export function disc(request: PieceRequest, settings: DiscSettings): MadeParts {
  const numbers = request.sizes.map((_, size) => discNumbers(request, settings, size));
  const remark = settings.stitch === 'sc' ? 'worked in a spiral' : 'worked in joined rounds';
  const sided = numbers.some((n) => n.sides.value > 0);
  const fasten = step('fasten', plain('fastenOff'));
  const brimmed = settings.brim.edge !== 'none';
  const crown: MadeSection = {
    role: 'crown', name: 'CROWN', remark, perSize: numbers.map((n) => [...crownRows(settings, n.counts), ...(sided || brimmed ? [] : [fasten])]),
    settings: { stitch: settings.stitch, more: settings.more, changes: settings.changes, yarn: settings.yarn },
  };
  const sides: MadeSection = { role: 'sides', name: 'SIDES', remark, perSize: numbers.map((n) => [...sideRows(settings, n), ...(brimmed ? [] : [fasten])]), settings: {} };
  const brim: MadeSection = { role: 'brim', name: 'BRIM', remark: 'worked in a spiral', perSize: numbers.map((n) => [...n.brim.rows, fasten]), settings: { ...settings.brim } };
  return { reckonings: numbers.map(({ r }) => r), sections: [crown, ...(sided ? [sides] : []), ...(brimmed ? [brim] : [])] };
}

function discNumbers(request: PieceRequest, settings: DiscSettings, size: number): DiscNumbers {
  const r = new Reckoning(size, request.pins);
  const gauge = gaugeNumbers(r, request.gauge, request.swatches, settings.stitch, 'plain');
  const ratio = r.reckon({ key: 'heightToWidth', says: 'height of a stitch to its width', unit: 'share', formula: 'stitches in 1 cm ÷ rows in 1 cm', inputs: [gauge.stitches, gauge.rows], exact: gauge.stitches.value / gauge.rows.value });
  const more = r.reckon({ key: 'more', says: 'stitches more in each round that lie flat', unit: 'sts', formula: '2π × height ÷ width of a stitch', inputs: [ratio], exact: flatMore(ratio.value), rounding: nearest(3) });
  const girth = wanted(r, request.measures, 'girth');
  const counts = girth ? capCounts(r, settings, girth, gauge.stitches, ratio, more) : discCounts(r, request, settings, gauge.rows, ratio, more);
  const end = r.given('edge.stitches', 'stitches at the edge', 'sts', counts.at(-1)!, 'last round of the crown');
  const brim = edgeRows(r, request, settings.brim, { key: 'brim', way: 'rounds', begins: false, stitches: end });
  const height = wanted(r, request.measures, 'height');
  const crown = r.given('crown.rounds', 'rounds of the crown', 'rows', counts.length, 'as above');
  const sides = height
    ? r.reckon({ key: 'sides', says: 'rounds of the sides', unit: 'rows', formula: '(height − brim) × rows in 1 cm − rounds of the crown', inputs: [height, brim.heightCm, gauge.rows, crown], exact: (height.value - brim.heightCm.value) * gauge.rows.value - counts.length, rounding: nearest(0) })
    : r.given('sides', 'rounds of the sides', 'rows', 0, 'no height asked for');
  return { r, counts, sides, brim };
}

function discCounts(r: Reckoning, request: PieceRequest, settings: DiscSettings, perCm: Origin, ratio: Origin, more: Origin): readonly number[] {
  const wide = wanted(r, request.measures, 'across');
  if (!wide) throw new RangeError(`size ${r.size} has no measurement across or girth`);
  const count = r.reckon({ key: 'rounds', says: 'rounds of the disc', unit: 'rows', formula: 'half of the width × rows in 1 cm', inputs: [wide, perCm], exact: (wide.value / 2) * perCm.value, rounding: nearest(2) });
  return roundCounts(settings, count.value, ratio.value, more.value);
}

function roundCounts({ more: way }: DiscSettings, count: number, ratio: number, more: number): readonly number[] {
  return Array.from({ length: count }, (_, i) => (way === 'constant' ? more * (i + 1) : flatCount(i + 1, ratio)));
}

/** A cap's crown grows until it has the stitches of the girth; its last round takes what is missing, half a round more or less at most. */
function capCounts(r: Reckoning, settings: DiscSettings, girth: Origin, perCm: Origin, ratio: Origin, more: Origin): readonly number[] {
  const least = 2 * Math.ceil((more.value + 1) / 2);
  const around = r.reckon({
    key: 'around', says: 'stitches round the head', unit: 'sts', formula: 'girth × stitches in 1 cm, even', inputs: [girth, perCm],
    exact: girth.value * perCm.value, rounding: nearest(least, 2), allows: (pinned) => (pinned % 2 === 0 ? null : 'an even number'),
  });
  const each = settings.more === 'constant' ? more.value : flatMore(ratio.value);
  const count = r.reckon({ key: 'rounds', says: 'rounds of the crown', unit: 'rows', formula: 'stitches round the head ÷ stitches more in each round', inputs: [around, more, ratio], exact: around.value / each, rounding: nearest(2) });
  return [...roundCounts(settings, count.value - 1, ratio.value, more.value), around.value];
}

/** The start of a round and its end: nothing in a spiral, a chain and a join in rounds of taller stitches. */
function inRound(stitch: StitchKind, body: readonly Instruction[]): readonly Instruction[] {
  if (stitch === 'sc') return body;
  return [chain(stitchRow(stitch).turningChains, 'no'), ...body, joinRound()];
}

function crownRows({ stitch, yarn, changes }: DiscSettings, counts: readonly number[]): readonly MadeRow[] {
  const unit = stitchRow(stitch).us;
  return [
    foundation([withYarn(yarn), plain('ring')]),
    ...counts.map((count, i) => {
      const place = changes === 'staggered' && i % 2 === 1 ? 'staggered' : 'stacked';
      const body = i === 0 ? [inRing(stitch, count)] : evenRow(stitch, counts[i - 1]!, count, place);
      return rounds(`round${i + 1}`, 1, inRound(stitch, body), count, unit);
    }),
  ];
}

function sideRows({ stitch }: DiscSettings, { counts, sides }: DiscNumbers): readonly MadeRow[] {
  return [rounds('rounds', sides.value, inRound(stitch, [across(stitch, 'around')]), counts.at(-1)!, stitchRow(stitch).us)];
}
