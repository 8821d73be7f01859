import type { Pattern, Yarn } from '../../1-pattern/pattern.ts';
import type { Fabric } from '../../3-fabric/fabric.ts';
import { shapeSolid } from '../../5-layout/solid/shapeSolid.ts';
import type { Solid } from '../../5-layout/solid/solid.ts';
import { SOLID_CAPTION, solidSvg } from '../../6-drawing/solidSvg.ts';
import { block, strip, type Block } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { insideOf, shrunk } from '../page/insideOf.ts';
import { setText } from '../page/setText.ts';
import type { PublishChoices } from '../publishChoices.ts';
import { printable } from '../type/printable.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import { paragraphs } from './setBlocks.ts';

/** How the piece is seen on the first page: turned a little and from a little above. */
const VIEW = { yawRad: -0.5, pitchRad: 0.18 };
/** Larger pieces have so many points that their picture would outweigh the booklet. */
const MOST_STITCHES = 12_000;
/** A title longer than this is no title: the rest is cut off with …, and stands whole in the document's own title. */
const LONGEST_TITLE = 300;

/** The first page: title, designer, sizes and terms, the piece as it will be, a few words about it. */
export function titlePart(worked: WorkedPattern, choices: PublishChoices, format: Format): readonly Block[] {
  const { pattern, version, sizes } = worked;
  const { measure, widthMm, titlePt, bodyPt } = format;
  const title = printable(pattern.title) || 'Untitled';
  const letters = [...title];
  const set = letters.length > LONGEST_TITLE ? `${letters.slice(0, LONGEST_TITLE).join('')}…` : title;
  const lines = setText({ runs: [{ text: set, face: 'text' }], sizePt: titlePt, xMm: 0, widthMm, leading: 1.12 }, measure);
  const names = sizes.map(({ name }) => printable(name)).filter((name) => name !== '');
  const facts = [printable(version), names.length > 1 ? `sizes ${names.join(', ')}` : names.length === 1 ? `size ${names[0]!}` : '', `${choices.terms.toUpperCase()} terms`, choices.hand === 'left' ? 'left-handed' : '', imprintWords(worked)];
  const under = setText({ runs: [{ text: facts.filter((fact) => fact !== '').join(' · '), face: 'label', soft: true }], sizePt: bodyPt, xMm: 0, widthMm }, measure);
  const designer = printable(pattern.designer);
  const by = designer === '' ? [] : setText({ runs: [{ text: designer, face: 'italic' }], sizePt: bodyPt * 1.35, xMm: 0, widthMm }, measure);
  const head = block([strip(6), ...lines, strip(2), ...by, strip(1.5), ...under], 0, { whole: false, heading: { title: set, level: 1 } });
  const about = paragraphs(pattern.imprint?.about ?? '', format).map((one, i) => (i === 0 ? { ...one, beforeMm: 6 } : one));
  return [head, ...picture(worked, choices, format), ...about];
}

function imprintWords({ pattern }: WorkedPattern): string {
  return [pattern.imprint?.edition ?? '', pattern.imprint?.date ?? ''].map(printable).filter((part) => part !== '').join(', ');
}

/** The piece as it comes out, of the middle size; none where there is too little or too much of it. */
function picture({ pattern, sizes }: WorkedPattern, { mono }: PublishChoices, format: Format): readonly Block[] {
  const { fabric, colours } = sizes[Math.floor(sizes.length / 2)]!;
  if (fabric.count === 0 || fabric.count > MOST_STITCHES) return [];
  const yarns = mono ? pattern.yarns.map(grey) : pattern.yarns;
  const drawn = insideOf(solidSvg(shapeOf(fabric, pattern.gauge), colours.yarn, yarns, VIEW, { title: '', desc: '' }, { strands: false }));
  const { svg, widthMm, heightMm } = shrunk(drawn, { widthMm: format.widthMm, heightMm: format.heightMm * (format.large ? 0.38 : 0.46) }, 1.2);
  const x = (format.widthMm - widthMm) / 2;
  const caption = setText({ runs: [{ text: SOLID_CAPTION, face: 'italic', soft: true }], sizePt: format.smallPt, xMm: 0, widthMm: format.widthMm, anchor: 'middle' }, format.measure);
  return [block([strip(heightMm + 3, { pictures: [{ xMm: x, yMm: 0, widthMm, heightMm, svg, says: 'The finished piece' }] }), ...caption], 8)];
}

/** Shapes by fabric, which takes half of the time of a booklet: another paper or another look shapes nothing anew. */
const SHAPES = new WeakMap<Fabric, Solid>();

function shapeOf(fabric: Fabric, gauge: Pattern['gauge']): Solid {
  const known = SHAPES.get(fabric) ?? shapeSolid(fabric, gauge);
  SHAPES.set(fabric, known);
  return known;
}

/** A yarn in the grey that is as light (ITU-R BT.709 luma). */
function grey(yarn: Yarn): Yarn {
  const [r, g, b] = [1, 3, 5].map((at) => parseInt(yarn.colour.slice(at, at + 2), 16)) as [number, number, number];
  const level = Math.round(0.2126 * r + 0.7152 * g + 0.0722 * b).toString(16).padStart(2, '0');
  return { ...yarn, colour: `#${level}${level}${level}` };
}
