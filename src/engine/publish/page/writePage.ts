import { svgHead } from '../../6-drawing/svgHead.ts';
import { attributes, escapeXml, num } from '../../6-drawing/svgText.ts';
import { POINT_MM } from '../../6-drawing/textSize.ts';
import { cutToWidth } from '../type/breakLines.ts';
import { FACES, setPt } from '../type/face.ts';
import type { PlacedPicture, PlacedRule, PlacedText } from './block.ts';
import type { Format } from './format.ts';
import type { Page } from './paginate.ts';
import { baseline, oneLine } from './setText.ts';

/** What stands around the text of a page. */
export interface PageFrame {
  /** From 1; odd pages are right-hand ones. */
  readonly number: number;
  readonly pages: number;
  /** The pattern's title, and the part that the page belongs to; nothing on the first page. */
  readonly head: { readonly title: string; readonly part: string } | null;
  readonly title: string;
  readonly creator: string;
  readonly rights: string;
  readonly date: string;
}

const INK = '#1a1a1a';
/** Contrast with white above 7 : 1 (WCAG 2.2, 1.4.6). */
const SOFT = '#545454';

/** Left edge of what is set on a page: the binding is left of right-hand pages and right of left-hand ones. */
export function leftMm(format: Format, number: number): number {
  return number % 2 === 1 ? format.innerMm : format.outerMm;
}

/** A page as one SVG document in mm: running head, strips in reading order, page number. */
export function writePage(page: Page, format: Format, frame: PageFrame): string {
  const { paper } = format;
  const left = leftMm(format, frame.number);
  let pictures = 0;
  const body = page.strips.map(({ strip, yMm }) => {
    const y = format.topMm + yMm;
    return [
      ...strip.rules.map((rule) => ruleSvg(rule, left, y)),
      ...strip.pictures.map((picture) => pictureSvg(picture, left, y, `p${(pictures += 1)}-`)),
      textsSvg(strip.texts, left, y),
    ].filter((one) => one !== '').join('\n');
  });
  const words = page.strips.flatMap(({ strip }) => strip.texts.map(({ text }) => text)).join(' ');
  const head = { title: `${frame.title}, page ${frame.number} of ${frame.pages}`, desc: words.length > 400 ? `${words.slice(0, 399)}…` : words, creator: frame.creator, rights: frame.rights, date: frame.date };
  return `${svgHead({ x: 0, y: 0, width: paper.widthMm, height: paper.heightMm }, head)}
<rect id="paper" x="0" y="0" width="${num(paper.widthMm)}" height="${num(paper.heightMm)}" fill="#ffffff"/>
<g id="running-head">${textsSvg(runningHead(format, frame), left, 0)}</g>
<g id="page">
${body.filter((one) => one !== '').join('\n')}
</g>
<g id="page-number">${textsSvg([folio(format, frame)], left, 0)}</g>
</svg>
`;
}

/** Title on the binding side and part on the outside, each within half the width. */
export function runningHead(format: Format, { head, number }: Pick<PageFrame, 'head' | 'number'>): readonly PlacedText[] {
  if (!head) return [];
  const { measure, smallPt, widthMm } = format;
  const y = format.topMm - 9;
  const half = widthMm / 2 - 4;
  const title = cutToWidth(head.title, 'italic', smallPt, half, measure);
  const part = cutToWidth(head.part, 'label', smallPt, half, measure);
  const right = number % 2 === 1;
  return [
    oneLine(title, 'italic', smallPt, right ? 0 : widthMm, y, measure, right ? 'start' : 'end', true),
    ...(part === '' ? [] : [oneLine(part, 'label', smallPt, right ? widthMm : 0, y, measure, right ? 'end' : 'start', true)]),
  ];
}

/** The page number at the foot, on the outside. */
export function folio(format: Format, { number }: Pick<PageFrame, 'number'>): PlacedText {
  const size = format.large ? format.smallPt : format.bodyPt;
  const y = format.paper.heightMm - format.bottomMm + 3 + baseline(6, size);
  const right = number % 2 === 1;
  return oneLine(String(number), 'label', size, right ? format.widthMm : 0, y, format.measure, right ? 'end' : 'start');
}

/** Texts as elements: those that go on with the one before stand inside it, so that a line is one text and closes up as its letters do. */
function textsSvg(texts: readonly PlacedText[], left: number, top: number): string {
  const lines: PlacedText[][] = [];
  for (const text of texts) {
    if (text.follows && lines.length > 0) lines.at(-1)!.push(text);
    else lines.push([text]);
  }
  return lines.map(([first, ...rest]) => {
    if (!first || (first.text === '' && rest.length === 0)) return '';
    const { xMm, yMm, anchor, cell } = first;
    const more = rest.map((run) => `<tspan${attributes(penOf(run))}>${run.follows === 'space' ? ' ' : ''}${escapeXml(run.text)}</tspan>`).join('');
    return `<text${attributes({ x: left + xMm, y: top + yMm, ...penOf(first), 'text-anchor': anchor === 'start' ? null : anchor, 'xml:space': more === '' ? null : 'preserve', 'data-cell': cell ? `${cell.row} ${cell.column} ${cell.headOf ?? 'none'}` : null })}>${escapeXml(first.text)}${more}</text>`;
  }).filter((line) => line !== '').join('\n');
}

function penOf({ face, sizePt, soft }: PlacedText): Readonly<Record<string, string | number | null>> {
  const { family, weight, style } = FACES[face];
  return { 'font-family': family, 'font-size': setPt(face, sizePt) * POINT_MM, 'font-weight': weight, 'font-style': style, fill: soft ? SOFT : INK };
}

function ruleSvg({ x0Mm, x1Mm, yMm, weightMm }: PlacedRule, left: number, top: number): string {
  return `<path${attributes({ d: `M${num(left + x0Mm)} ${num(top + yMm)}H${num(left + x1Mm)}`, stroke: INK, 'stroke-width': weightMm, fill: 'none' })}/>`;
}

function pictureSvg({ xMm, yMm, svg, says }: PlacedPicture, left: number, top: number, prefix: string): string {
  return `<g${attributes({ transform: `translate(${num(left + xMm)} ${num(top + yMm)})`, role: 'img', 'aria-label': says === '' ? null : says })}>${withPrefix(svg, prefix)}</g>`;
}

/** A drawing's ids and what refers to them, each with a prefix, so that several drawings can stand in one document. */
export function withPrefix(svg: string, prefix: string): string {
  return svg.replace(/ id="([^"]*)"/g, ` id="${prefix}$1"`).replace(/ (xlink:)?href="#([^"]*)"/g, (_, space: string | undefined, id: string) => ` ${space ?? ''}href="#${prefix}${id}"`).replace(/url\(#([^)]*)\)/g, `url(#${prefix}$1)`);
}
