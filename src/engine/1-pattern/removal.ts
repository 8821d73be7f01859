import { compareRows } from './canonicalCells.ts';
import type { Edit } from './edit.ts';
import type { CellRun, Ground, Line, Pattern, RowKey, SectionVersion } from './pattern.ts';
import { groundLetters } from './references.ts';

/** Something to take out of a pattern with all that hangs on it. */
export type Removable =
  /** Lines of one section that stand one after another. */
  | { readonly kind: 'lines'; readonly section: string; readonly lines: readonly string[] }
  | { readonly kind: 'section'; readonly section: string }
  /** The motif and every place where it is laid. */
  | { readonly kind: 'motif'; readonly motif: string }
  /** A placement, out of the versions that lay it too. */
  | { readonly kind: 'placement'; readonly placement: string }
  /** A yarn; motifs, loose cells and grounds take the yarn `to` in its stead. Rows that name it are left for their findings to say. */
  | { readonly kind: 'yarn'; readonly letter: string; readonly to: string };

/**
 * The edits that take something out and first clear what would stop it: loose cells go with their rows, a placement whose
 * bottom row goes moves to the next row that stays (the last one before if there is none after), and goes if no row stays;
 * versions forget what goes. What is locked stays locked: the edits are refused then, with the reason.
 */
export function removal(pattern: Pattern, what: Removable): readonly Edit[] {
  switch (what.kind) {
    case 'lines':
      return [...clearedRows(pattern, what.section, new Set(what.lines)), { kind: 'removeLines', section: what.section, lines: what.lines }];
    case 'section': {
      const lines = pattern.sections.find((section) => section.id === what.section)?.lines ?? [];
      const placed = pattern.placements.filter((placement) => placement.section === what.section);
      return [
        ...versionEdits(pattern, (sections) => (sections.some((one) => one.section === what.section) ? sections.filter((one) => one.section !== what.section) : sections)),
        ...clearedCells(pattern, what.section, new Set(lines.map((line) => line.id))),
        ...placed.map(({ id }): Edit => ({ kind: 'removePlacement', placement: id })),
        { kind: 'removeSection', section: what.section },
      ];
    }
    case 'motif': {
      const placed = pattern.placements.filter((placement) => placement.motif === what.motif);
      return [...placementsOut(pattern, placed.map(({ id }) => id)), { kind: 'removeMotif', motif: what.motif }];
    }
    case 'placement':
      return placementsOut(pattern, [what.placement]);
    case 'yarn': {
      const replaced = (letters: string) => letters.replaceAll(what.letter, what.to);
      const motifs = pattern.motifs.filter((motif) => motif.cells.some((row) => row.includes(what.letter)));
      return [
        ...motifs.map((motif): Edit => ({ kind: 'setMotif', motif: { ...motif, cells: motif.cells.map(replaced) } })),
        ...cellRows(pattern.cells, (run) => run.letters.includes(what.letter)).map(
          (runs): Edit => ({ kind: 'setCells', ...placeOf(runs[0]!), runs: runs.map(({ from, letters }) => ({ from, letters: replaced(letters) })) }),
        ),
        ...pattern.sections.flatMap((section): readonly Edit[] => {
          const ground = section.colour?.ground;
          if (!ground || !groundLetters(ground).includes(what.letter)) return [];
          return [{ kind: 'setSectionColour', section: section.id, colour: { ...section.colour, ground: replacedGround(ground, what.letter, what.to) } }];
        }),
        ...versionEdits(pattern, (sections) =>
          sections.map((one) => (one.ground && groundLetters(one.ground).includes(what.letter) ? { ...one, ground: replacedGround(one.ground, what.letter, what.to) } : one)),
        ),
        { kind: 'set', field: 'yarns', value: pattern.yarns.filter((yarn) => yarn.letter !== what.letter) },
      ];
    }
  }
}

function placementsOut(pattern: Pattern, ids: readonly string[]): readonly Edit[] {
  const keep = (one: SectionVersion): SectionVersion => (one.placements?.some((id) => ids.includes(id)) ? { ...one, placements: one.placements.filter((id) => !ids.includes(id)) } : one);
  return [...versionEdits(pattern, (sections) => sections.map(keep)), ...ids.map((id): Edit => ({ kind: 'removePlacement', placement: id }))];
}

/** Edits of the versions whose sections a change leaves otherwise; a change that leaves all as they are must give the same objects. */
function versionEdits(pattern: Pattern, change: (sections: readonly SectionVersion[]) => readonly SectionVersion[]): readonly Edit[] {
  return (pattern.versions ?? []).flatMap((version): readonly Edit[] => {
    const sections = change(version.sections);
    const isSame = sections.length === version.sections.length && sections.every((one, i) => one === version.sections[i]);
    return isSame ? [] : [{ kind: 'setVersion', version: { ...version, sections } }];
  });
}

/** A ground without a yarn. What was replaced by itself then is not said any more; if nothing is left, the rows say all. */
function replacedGround(ground: Ground, letter: string, to: string): Ground {
  switch (ground.kind) {
    case 'rows':
      return ground;
    case 'stripes':
      return { ...ground, stripes: ground.stripes.map((stripe) => (stripe.letter === letter ? { ...stripe, letter: to } : stripe)) };
    case 'replace': {
      const yarns = ground.yarns.filter(({ from }) => from !== letter).map((one) => (one.to === letter ? { ...one, to } : one)).filter((one) => one.from !== one.to);
      return yarns.length > 0 ? { ...ground, yarns } : { kind: 'rows' };
    }
  }
}

function clearedCells(pattern: Pattern, section: string, lines: ReadonlySet<string>): readonly Edit[] {
  return cellRows(pattern.cells, (one) => one.section === section && lines.has(one.row.line)).map((runs): Edit => ({ kind: 'setCells', ...placeOf(runs[0]!), runs: [] }));
}

function clearedRows(pattern: Pattern, section: string, lines: ReadonlySet<string>): readonly Edit[] {
  const next = rowThatStays(pattern.sections.find((one) => one.id === section)?.lines ?? [], lines);
  const going = pattern.placements.filter((one) => one.section === section && lines.has(one.row.line));
  return [
    ...clearedCells(pattern, section, lines),
    ...(next ? going.map((placement): Edit => ({ kind: 'setPlacement', placement: { ...placement, row: next } })) : placementsOut(pattern, going.map(({ id }) => id))),
  ];
}

function rowThatStays(lines: readonly Line[], going: ReadonlySet<string>): RowKey | null {
  const last = lines.findLastIndex((line) => going.has(line.id));
  const carries = (line: Line): line is Extract<Line, { kind: 'row' }> => line.kind === 'row' && line.label.word !== 'foundation' && !going.has(line.id);
  const after = lines.slice(last + 1).find(carries);
  if (after) return { line: after.id, nth: 0 };
  const before = lines.slice(0, last).findLast(carries);
  if (!before) return null;
  const { rows } = before.label;
  return { line: before.id, nth: Math.max((typeof rows === 'number' ? rows : Math.max(...rows)) - 1, 0) };
}

/** The runs of every row and size that has one of the wanted, row by row. */
function cellRows(cells: readonly CellRun[], isWanted: (run: CellRun) => boolean): readonly (readonly CellRun[])[] {
  const rows: CellRun[][] = [];
  for (const run of [...cells].sort(compareRows)) {
    if (rows.length > 0 && compareRows(rows.at(-1)![0]!, run) === 0) rows.at(-1)!.push(run);
    else rows.push([run]);
  }
  return rows.filter((row) => row.some(isWanted));
}

function placeOf({ section, row, size }: CellRun): { readonly section: string; readonly row: RowKey; readonly size: number } {
  return { section, row, size };
}
