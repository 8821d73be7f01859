import fc from 'fast-check';
import { canonicalCells } from '../../../src/engine/1-pattern/canonicalCells.ts';
import type { Edit } from '../../../src/engine/1-pattern/edit.ts';
import type { PieceFacts } from '../../../src/engine/1-pattern/pieceFacts.ts';
import type { ColourLimits, Ground, Imprint, Line, Motif, Pattern, Placement, PrintMark, Section, SectionColour, SectionVersion, Version, Wording, Yarn } from '../../../src/engine/1-pattern/pattern.ts';

/** Numbers from which a pattern or an edit is made; shrinks well and needs no knowledge of the pattern. */
type Draw = () => number;

function drawer(numbers: readonly number[]): Draw {
  let i = 0;
  return () => numbers[i++ % Math.max(numbers.length, 1)] ?? 0;
}

const pick = <T>(draw: Draw, list: readonly T[]): T => list[draw() % list.length]!;

const MARKS: readonly PrintMark[] = ['none', 'dot', 'slash', 'cross', 'bars', 'ring', 'solid', 'wedge'];
const TEXTS = ['ch 1, turn, sc in each st across. (20 sts)', 'sc in next 6 sts', 'sl st in next st', 'with B, sc in each st across', ''];

function yarns(draw: Draw, least: number): readonly Yarn[] {
  return 'ABCDEF'
    .slice(0, least + (draw() % 3))
    .split('')
    .map((letter) => ({ letter, name: `yarn ${draw() % 9}`, colour: `#4b5a6${draw() % 10}`, mark: pick(draw, MARKS) }));
}

function line(draw: Draw, id: string, sizes: number): Line {
  const text = pick(draw, TEXTS);
  const kind = draw() % 10;
  if (kind === 0) return { kind: 'note', id, text };
  if (kind === 1) return { kind: 'step', id, text };
  const rows = draw() % 3 === 0 ? Array.from({ length: sizes }, () => draw() % 7) : 1 + (draw() % 6);
  return { kind: 'row', id, text, label: { word: pick(draw, ['row', 'round', 'next'] as const), rows, start: draw() % 3 === 0 ? 1 + (draw() % 9) : null, side: pick(draw, ['RS', 'WS', null] as const) } };
}

function section(draw: Draw, id: string, sizes: number): Section {
  const lines: Line[] = [];
  for (let i = 0; i < draw() % 7; i++) {
    const before = lines.at(-1);
    const drawn = line(draw, `${id}-${i}`, sizes);
    // Now and then a line that reads as the one before it, so that there is something to join.
    const isLike = before?.kind === 'row' && drawn.kind === 'row' && draw() % 2 === 0;
    lines.push(isLike ? { ...before, id: drawn.id, label: { ...before.label, rows: drawn.label.rows, start: null, side: null } } : drawn);
  }
  const settings = { rows: 10 + (draw() % 9), stitches: Array.from({ length: sizes }, () => draw() % 60), plain: draw() % 2 === 0, edge: 'picot' };
  return { id, name: pick(draw, ['LEG', 'HEEL', 'FOOT', '']), remark: '', lines, recipe: draw() % 2 ? { name: 'legPanel', settings } : null };
}

function motif(draw: Draw, id: string, letters: readonly string[]): Motif {
  const width = 1 + (draw() % 4);
  const cells = Array.from({ length: 1 + (draw() % 4) }, () => Array.from({ length: width }, () => pick(draw, [...letters, '.'])).join(''));
  const stitches = cells.map((row) => Array.from(row, () => pick(draw, ['b', 'o', 'k', '.'])).join(''));
  return { id, name: `motif ${draw() % 5}`, cells, ...(draw() % 3 === 0 ? { stitches } : {}) };
}

function ground(draw: Draw, letters: readonly string[]): Ground {
  const letter = () => pick(draw, letters);
  switch (draw() % 3) {
    case 0: return { kind: 'rows' };
    case 1: return { kind: 'replace', yarns: [{ from: letters[0]!, to: letter() }] };
    default: return { kind: 'stripes', stripes: Array.from({ length: 1 + (draw() % 3) }, () => ({ letter: letter(), rows: 1 + (draw() % 3) })) };
  }
}

function sectionColour(draw: Draw, letters: readonly string[]): SectionColour {
  return {
    ...(draw() % 2 ? { technique: pick(draw, ['carried', 'stranded', 'intarsia', 'stripes'] as const) } : {}),
    ...(draw() % 2 ? { ground: ground(draw, letters) } : {}),
  };
}

function colourLimits(draw: Draw): ColourLimits {
  return { ...(draw() % 2 ? { longestCarry: pick(draw, [null, 5]) } : {}), ...(draw() % 2 ? { mostYarns: 2, leastContrast: 1.5 } : {}) };
}

function wording(draw: Draw): Wording {
  return { ...(draw() % 2 ? { runs: pick(draw, ['long', 'short'] as const) } : {}), ...(draw() % 2 ? { repeats: 'bracket' as const, terms: pick(draw, ['us', 'uk'] as const) } : {}), ...(draw() % 2 ? { count: 'dash' as const } : {}) };
}

function imprint(draw: Draw): Imprint {
  return { ...(draw() % 2 ? { about: `about ${draw() % 9}` } : {}), ...(draw() % 2 ? { licence: 'for use at home', date: '2024-05-01' } : {}), ...(draw() % 2 ? { editions: [{ name: 'first', date: '2023', errata: `row ${draw() % 9}` }] } : {}) };
}

function piece(draw: Draw, sizes: number): PieceFacts {
  const perSize = (from: number) => Array.from({ length: sizes }, () => (draw() % 5 === 0 ? null : from + (draw() % 9) / 2));
  return {
    ...(draw() % 2 ? { swatches: [{ id: `w${draw() % 3}`, stitch: 'sc', technique: pick(draw, ['plain', 'posts', 'carried'] as const), washed: draw() % 2 === 0, stitches: 20, widthCm: 11.5, rows: 24, heightCm: 12, hookMm: pick(draw, [4, null]), weight: pick(draw, [3, null]), stretchedCm: null, yarn: 'A', grams: 6.5, metres: null }] } : {}),
    ...(draw() % 2 ? { measures: [{ name: 'footGirth', cm: perSize(20), easePercent: 4 - (draw() % 9), easeCm: 0 }] } : {}),
    ...(draw() % 3 ? {} : { pins: { 'heel.left': perSize(5), around: perSize(40) } }),
    ...(draw() % 3 ? {} : { supplies: [{ letter: 'B', weight: 1, ballGrams: 50, ballMetres: 210, price: 7.5 }], currency: 'EUR', marginPercent: draw() % 20, wearer: 'adult' }),
  };
}

function version(draw: Draw, id: string, pattern: Pattern): Version {
  const letters = pattern.yarns.map((one) => one.letter);
  const named = pattern.sections.filter(() => draw() % 2 === 0);
  return {
    id,
    name: `version ${draw() % 5}`,
    sections: named.map((one): SectionVersion => ({
      section: one.id,
      ...(draw() % 2 ? { placements: pattern.placements.filter((placed) => placed.section === one.id && draw() % 2 === 0).map((placed) => placed.id) } : {}),
      ...(draw() % 2 ? { cells: draw() % 2 === 0 } : {}),
      ...(draw() % 2 ? { ground: ground(draw, letters) } : {}),
    })),
  };
}

function rowsOf(pattern: Pick<Pattern, 'sections'>) {
  return pattern.sections.flatMap((one) => one.lines.filter((l) => l.kind === 'row').map((l) => ({ section: one.id, line: l.id })));
}

function placement(draw: Draw, id: string, pattern: Pattern): Placement | null {
  const rows = rowsOf(pattern);
  if (rows.length === 0 || pattern.motifs.length === 0) return null;
  const row = pick(draw, rows);
  return {
    id,
    section: row.section,
    motif: pick(draw, pattern.motifs).id,
    row: { line: row.line, nth: draw() % 6 },
    align: pick(draw, ['left', 'centre', 'right'] as const),
    offset: (draw() % 9) - 4,
    across: draw() % 2 ? 'fill' : 1 + (draw() % 5),
    up: 1 + (draw() % 3),
    gap: draw() % 3,
    mirror: draw() % 2 === 0,
    ...(draw() % 2 ? { gapUp: draw() % 3, flip: draw() % 2 === 0, anchor: pick(draw, ['row', 'seam', 'front'] as const) } : {}),
    ...(draw() % 3 ? {} : { stagger: { kind: pick(draw, ['halfDrop', 'brick'] as const), by: pick(draw, ['half', 1, 3] as const), closed: draw() % 2 === 0 } }),
    ...(draw() % 3 ? {} : { fill: pick(draw, ['whole', 'spread', 'edges'] as const), follow: pick(draw, ['left', 'centre', 'right'] as const) }),
    // Now and then one entry too many, for the transaction to refuse.
    ...(draw() % 3 ? {} : { bySize: Array.from({ length: pattern.sizes.length + (draw() % 8 === 0 ? 1 : 0) }, () => pick(draw, [null, { up: 2 }, { leftOut: true }, { rowsUp: -1, across: 'fill' as const }])) }),
    ...(draw() % 4 ? {} : { hidden: true }),
    ...(draw() % 4 ? {} : { locked: true }),
  };
}

function cells(draw: Draw, letters: readonly string[]) {
  return Array.from({ length: draw() % 4 }, () => ({ from: draw() % 20, letters: Array.from({ length: 1 + (draw() % 4) }, () => pick(draw, [...letters, '.'])).join('') }));
}

function patternFrom(numbers: readonly number[]): Pattern {
  const draw = drawer(numbers);
  const sizes = ['S', 'M', 'L'].slice(0, 1 + (draw() % 3));
  const base: Pattern = {
    id: 'pattern',
    title: 'Puffin Quay',
    designer: '',
    terms: pick(draw, ['us', 'uk'] as const),
    gauge: { stitches: 16 + (draw() % 4) / 2, rows: 18, overCm: 10, stitch: 'sc' },
    hookMm: pick(draw, [4.5, null]),
    yarns: yarns(draw, 2),
    sizes,
    hdcTurningChainCounts: draw() % 2 === 0,
    notes: draw() % 2 ? [{ word: 'Care', value: 'by hand' }] : [],
    sections: Array.from({ length: 1 + (draw() % 3) }, (_, i) => section(draw, `s${i}`, sizes.length)),
    motifs: [],
    placements: [],
    cells: [],
  };
  const letters = base.yarns.map((one) => one.letter);
  const withMotifs: Pattern = { ...base, motifs: Array.from({ length: draw() % 3 }, (_, i) => motif(draw, `m${i}`, letters)) };
  const placements = Array.from({ length: draw() % 4 }, (_, i) => placement(draw, `p${i}`, withMotifs))
    .filter((one) => one !== null)
    .map((one) => (one.bySize ? { ...one, bySize: one.bySize.slice(0, sizes.length) } : one));
  const rows = rowsOf(base);
  const loose = rows.length === 0 ? [] : Array.from({ length: draw() % 5 }, () => ({ ...pick(draw, rows), nth: draw() % 6, size: draw() % sizes.length, runs: cells(draw, letters) }));
  const coloured = withMotifs.sections.map((one) => (draw() % 3 === 0 ? { ...one, colour: sectionColour(draw, letters) } : one));
  const placed: Pattern = { ...withMotifs, sections: coloured, placements, ...(draw() % 3 === 0 ? { colourLimits: colourLimits(draw) } : {}), ...(draw() % 3 === 0 ? { piece: piece(draw, sizes.length) } : {}), ...(draw() % 3 === 0 ? { wording: wording(draw) } : {}), ...(draw() % 3 === 0 ? { imprint: imprint(draw) } : {}) };
  const versions = Array.from({ length: draw() % 3 }, (_, i) => version(draw, `v${i}`, placed));
  return { ...placed, ...(versions.length > 0 ? { versions } : {}), cells: canonicalCells(loose.flatMap((l) => l.runs.map((run) => ({ section: l.section, row: { line: l.line, nth: l.nth }, size: l.size, ...run })))) };
}

/** Sound patterns, small, of one to three sizes. */
export const arbitraryPattern: fc.Arbitrary<Pattern> = fc.array(fc.nat(999), { minLength: 20, maxLength: 80 }).map(patternFrom);

/** Numbers that `editFrom` makes an edit of. */
export const arbitraryEditNumbers = fc.array(fc.nat(999), { minLength: 8, maxLength: 24 });

/** An edit of any kind: most aim at something that is there, some at nothing or at what must be refused. */
export function editFrom(pattern: Pattern, numbers: readonly number[]): Edit {
  const draw = drawer(numbers);
  const letters = pattern.yarns.map((one) => one.letter);
  const oneSection = pattern.sections.length > 0 && draw() % 9 > 0 ? pick(draw, pattern.sections) : section(draw, 'nowhere', pattern.sizes.length);
  const rows = oneSection.lines.filter((l) => l.kind === 'row');
  const oneLine = rows.length > 0 && draw() % 4 > 0 ? pick(draw, rows) : oneSection.lines.length > 0 ? pick(draw, oneSection.lines) : line(draw, 'none', pattern.sizes.length);
  const fresh = `n${draw() % 50}`;
  const oneMotif = pattern.motifs.length > 0 ? pick(draw, pattern.motifs).id : 'none';
  const onePlacement = pattern.placements.length > 0 ? pick(draw, pattern.placements).id : 'none';
  const place = draw() % 4;
  const oneVersion = pattern.versions?.length ? pick(draw, pattern.versions).id : 'none';
  switch (draw() % 34) {
    case 0: return { kind: 'set', field: 'title', value: fresh };
    case 1: return { kind: 'set', field: 'gauge', value: { ...pattern.gauge, rows: draw() % 30 } };
    case 2: return { kind: 'set', field: 'yarns', value: yarns(draw, draw() % 4) };
    case 3: return { kind: 'set', field: 'sizes', value: ['S', 'M', 'L', 'XL'].slice(0, draw() % 5) };
    case 4: return { kind: 'set', field: 'terms', value: pick(draw, ['us', 'uk'] as const) };
    case 5: return { kind: 'set', field: 'notes', value: [{ word: fresh, value: 'x' }] };
    case 6: return { kind: 'insertSection', at: place, section: section(draw, pick(draw, [fresh, 's0']), pattern.sizes.length) };
    case 7: return { kind: 'removeSection', section: oneSection.id };
    case 8: return { kind: 'setSection', section: oneSection.id, name: fresh, remark: 'worked flat', recipe: null };
    case 9: return { kind: 'setLine', section: oneSection.id, line: line(draw, oneLine.id, pattern.sizes.length) };
    case 10: return { kind: 'insertLines', section: oneSection.id, at: place, lines: [line(draw, fresh, pattern.sizes.length), line(draw, `${fresh}x`, pattern.sizes.length)] };
    case 11: {
      const from = oneSection.lines.indexOf(oneLine);
      return { kind: 'removeLines', section: oneSection.id, lines: oneSection.lines.slice(Math.max(from, 0), from + 1 + (draw() % 3)).map((l) => l.id) };
    }
    case 12: case 13: case 14: return { kind: 'splitLine', section: oneSection.id, line: oneLine.id, at: draw() % 6, newId: fresh };
    case 15: case 16: return { kind: 'joinLines', section: oneSection.id, line: oneLine.id };
    case 17: return { kind: 'insertMotif', at: place, motif: motif(draw, fresh, pick(draw, [letters, ['Z']])) };
    case 18: return { kind: 'setMotif', motif: motif(draw, oneMotif, letters) };
    case 19: return { kind: 'removeMotif', motif: oneMotif };
    case 20: return { kind: 'insertPlacement', at: place, placement: placement(draw, fresh, pattern) ?? badPlacement(fresh) };
    case 21: return { kind: 'setPlacement', placement: placement(draw, onePlacement, pattern) ?? badPlacement(onePlacement) };
    case 22: return { kind: 'removePlacement', placement: onePlacement };
    case 23: return { kind: 'movePlacement', placement: onePlacement, to: draw() % 5 };
    case 24: return { kind: 'setSectionColour', section: oneSection.id, colour: draw() % 4 ? sectionColour(draw, pick(draw, [letters, ['Z']])) : null };
    case 25: return { kind: 'setColourLimits', limits: draw() % 3 ? colourLimits(draw) : null };
    case 26: return { kind: 'insertVersion', at: place, version: version(draw, pick(draw, [fresh, 'v0']), pattern) };
    case 27: return { kind: 'setVersion', version: version(draw, oneVersion, pattern) };
    case 28: return { kind: 'removeVersion', version: oneVersion };
    case 29: {
      // Only locked or unlocked, as the lock allows.
      const { locked, ...one } = pattern.placements.find((placed) => placed.id === onePlacement) ?? badPlacement(onePlacement);
      return { kind: 'setPlacement', placement: locked ? one : { ...one, locked: true } };
    }
    // Now and then one number too many, for the transaction to refuse.
    case 30: return { kind: 'setPiece', piece: draw() % 4 ? piece(draw, pattern.sizes.length + (draw() % 8 === 0 ? 1 : 0)) : null };
    case 31: return { kind: 'setWording', wording: draw() % 3 ? wording(draw) : null };
    case 32: return { kind: 'setImprint', imprint: draw() % 3 ? imprint(draw) : null };
    default: return { kind: 'setCells', section: oneSection.id, row: { line: oneLine.id, nth: draw() % 6 }, size: draw() % (pattern.sizes.length + 1), runs: cells(draw, letters) };
  }
}

function badPlacement(id: string): Placement {
  return { id, section: 's0', motif: 'none', row: { line: 's0-0', nth: 0 }, align: 'left', offset: 0, across: 1, up: 1, gap: 0, mirror: false };
}
