import { MOTIF_SHELF } from '../../src/engine/4-colour/motifShelf.ts';
import { flipMotif, mirrorMotif, replaceYarn } from '../../src/engine/4-colour/motifs.ts';
import { colour, construct, patternFromText, work, writePatternFile, type Motif, type Pattern, type Placement } from '../../src/engine/index.ts';
import { wordsToText } from '../../src/engine/readings/words/wordsToText.ts';
import { writeWords } from '../../src/engine/readings/words/writeWords.ts';

/** Puffin Quay: the structure as written rows, the leg's motifs laid over it, and both files that are shipped of it. */
export function makeDemo(structure: string): { pattern: Pattern; file: string; text: string } {
  const { pattern: plain } = patternFromText(structure);
  if (!plain) throw new Error('the structure of Puffin Quay gave no pattern');
  const leg = plain.sections.find((section) => section.name.toLowerCase() === 'leg')!;
  const rows = leg.lines.filter((line) => line.kind === 'row');
  const shelf = (id: string): Motif => {
    const found = MOTIF_SHELF.find((motif) => motif.id === id)!;
    return { id: found.id, name: found.name, cells: found.cells };
  };
  // The leg is worked from the cuff down: what is to stand upright on the leg lies turned in the chart.
  const onItsHead = (motif: Motif): Motif => flipMotif(mirrorMotif(motif));
  const waves = onItsHead(shelf('waves'));
  const motifs: Motif[] = [
    { ...waves, id: 'surf', name: 'Surf' },
    { ...onItsHead(shelf('puffin')), id: 'puffins', name: 'Puffins' },
    { ...replaceYarn(waves, 'B', 'A'), id: 'sea', name: 'Sea' },
  ];
  const place = (id: string, motif: string, line: number, nth: number, more: Partial<Placement>): Placement => ({
    id, section: leg.id, motif, row: { line: rows[line]!.id, nth }, align: 'centre', offset: 0, across: 'fill', up: 1, gap: 0, mirror: false, ...more,
  });
  const pattern: Pattern = {
    ...plain,
    motifs,
    placements: [
      // Rows 5-11, 14-27 and 29-35.
      place('surf-1', 'surf', 1, 3, {}),
      place('puffins-1', 'puffins', 2, 2, { gap: 3 }),
      place('sea-1', 'sea', 2, 17, {}),
    ],
  };
  const sizes = pattern.sizes.map((_, size) => {
    const fabric = work(construct(pattern, size));
    return { size, fabric, colours: colour(pattern, fabric, size) };
  });
  return { pattern, file: writePatternFile(pattern), text: wordsToText(writeWords({ pattern, sizes, terms: 'us' })) };
}
