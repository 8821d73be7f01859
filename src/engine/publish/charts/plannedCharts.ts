import { stitchCode } from '../../craft/stitches.ts';
import { sectionShape } from '../../5-layout/layOutSection.ts';
import { FLAG } from '../../3-fabric/fabric.ts';
import type { ChartKind, PublishChoices } from '../publishChoices.ts';
import { fileWord, uniqueWords } from '../../notation/fileWord.ts';
import { shortName, type WorkedPattern, type WorkedSize } from '../workedSizes.ts';
import { figuresOf, type ChartAsked, type FigureAt } from './chartFigure.ts';
import { titled } from '../../notation/titled.ts';
import { sizesTogether } from './sizesTogether.ts';

/** A chart that goes out: what it is of, how it is called, and its word for file names. */
export interface PlannedChart extends ChartAsked {
  readonly title: string;
  /** Unique among the charts of a publication. */
  readonly word: string;
  /** Section id. */
  readonly id: string;
  /** Whether its rows are all alike, so that words say it all: left out of a booklet. */
  readonly plain: boolean;
  /** The chart at any scale; each is drawn once for pages and files. */
  readonly at: FigureAt;
}

/**
 * The charts of a pattern in its order: of each section, for each group of sizes that can share one, the kinds chosen. Where
 * colour and symbol charts are both chosen, a section of one yarn has no colour chart, and a straight colour panel of
 * plain stitches no symbol chart: those would show nothing.
 */
export function plannedCharts(worked: WorkedPattern, choices: PublishChoices): readonly PlannedChart[] {
  const unique = uniqueWords();
  return worked.pattern.sections.flatMap(({ id, name }) => {
    const shared = sizesTogether(worked.sizes, id, choices.sizeCharts === 'apart');
    return shared.flatMap((one) => {
      const { fabric } = one.drawn;
      const section = fabric.sections.findIndex((other) => other.id === id);
      const owner = fabric.sections[section];
      if (!owner || !fabric.rows.slice(owner.firstRow, owner.endRow).some((row) => row.end > row.first && row.word !== 'step')) return [];
      const facts = factsOf(one.drawn, section);
      const all = one.spans.length === worked.sizes.length;
      const sizes = all && worked.sizes.length > 1 ? 'all sizes' : one.spans.map(({ size }) => shortName(size.name)).filter((size) => size !== '').join(', ');
      const kinds = shownKinds(choices.charts, facts);
      return kinds.map((kind): PlannedChart => {
        const title = `${titled(shortName(name, LONGEST_TITLE)) || 'Chart'}${sizes === '' || (all && worked.sizes.length === 1) ? '' : sizes === 'all sizes' ? ', all sizes' : `, ${one.spans.length > 1 ? 'sizes' : 'size'} ${sizes}`}`;
        const word = unique([fileWord(name, 'chart'), all ? '' : fileWord(sizes), kinds.length > 1 ? kind : ''].filter((part) => part !== '').join('-'));
        const asked = { worked, section, shared: one, kind, choices };
        return { ...asked, title, word, id, plain: facts.alike && kind !== 'both', at: figuresOf(asked) };
      });
    });
  });
}

/** Characters of a section's name over its charts: two lines of a heading. */
const LONGEST_TITLE = 120;

interface SectionFacts {
  readonly yarns: number;
  /** Straight, and one plain stitch into each stitch. */
  readonly plainStitches: boolean;
  /** Straight, and every row of one stitch in one yarn. */
  readonly alike: boolean;
}

function factsOf({ fabric, dressed, colours }: WorkedSize, section: number): SectionFacts {
  const { firstRow, endRow } = fabric.sections[section]!;
  const rows = fabric.rows.slice(firstRow, endRow).filter((row) => row.end > row.first && row.word !== 'step' && row.word !== 'foundation');
  const yarns = new Set<number>();
  const kinds = new Set<number>();
  let uniform = true;
  for (const row of rows) {
    const [ownYarns, ownKinds] = [new Set<number>(), new Set<number>()];
    for (let stitch = row.first; stitch < row.end; stitch++) {
      yarns.add(colours.yarn[stitch]!);
      if (!(fabric.flags[stitch]! & FLAG.counts)) continue;
      ownYarns.add(colours.yarn[stitch]!);
      // The loop that is worked into is no other stitch, but it changes what the chart must show.
      ownKinds.add(dressed.kind[stitch]! * 65536 + (dressed.flags[stitch]! & (FLAG.frontLoop | FLAG.backLoop | FLAG.frontPost | FLAG.backPost | FLAG.spike | FLAG.sameBase | FLAG.setByMotif)));
    }
    uniform &&= ownYarns.size < 2 && ownKinds.size < 2;
    for (const kind of ownKinds) kinds.add(kind);
  }
  const shape = sectionShape(fabric, section);
  const straight = (shape === 'flat' || shape === 'tube') && rows.every((row) => row.made === rows[0]!.made);
  const plainStitches = straight && kinds.size === 1 && [...kinds].every((kind) => kind % 65536 === 0 && kind / 65536 !== stitchCode('ch'));
  return { yarns: yarns.size, plainStitches, alike: straight && uniform };
}

function shownKinds(kinds: readonly ChartKind[], { yarns, plainStitches }: SectionFacts): readonly ChartKind[] {
  if (!kinds.includes('colour') || !kinds.includes('symbol')) return kinds;
  return kinds.filter((kind) => (kind === 'colour' ? yarns > 1 : kind === 'symbol' ? yarns < 2 || !plainStitches : true));
}
