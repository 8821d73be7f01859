import { svgHead } from '../../6-drawing/svgHead.ts';
import { attributes, escapeXml, num } from '../../6-drawing/svgText.ts';
import { POINT_MM } from '../../6-drawing/textSize.ts';
import { heading } from '../booklet/setBlocks.ts';
import { block, type Block, type Strip } from '../page/block.ts';
import type { Format } from '../page/format.ts';
import { setText, sideBySide } from '../page/setText.ts';
import type { PublishedFile } from '../publication.ts';
import type { PublishChoices } from '../publishChoices.ts';
import { FACES, setPt } from '../type/face.ts';
import { printable } from '../type/printable.ts';
import type { WorkedPattern } from '../workedSizes.ts';
import { stepFigures, steppedSize, type StepFigure } from './stepFigures.ts';

const GAP_MM = 8;

/** Width of the words of one step on the page: two beside each other, one in large print. */
function stepWidthMm({ widthMm, large }: Format): number {
  return large ? widthMm : (widthMm - GAP_MM) / 2;
}

/** Width of its picture: in large print so that two steps stand on a page. */
function pictureWidthMm(format: Format): number {
  return format.large ? format.widthMm * 0.6 : stepWidthMm(format);
}

/** The steps in order, two beside each other, each with its picture above its words; none is parted by a page. */
export function stepBlocks(worked: WorkedPattern, choices: PublishChoices, format: Format): readonly Block[] {
  const width = stepWidthMm(format);
  const figures = stepFigures(worked, choices, pictureWidthMm(format));
  if (figures.length === 0) return [];
  const many = format.large ? 1 : 2;
  const { name } = steppedSize(worked, choices);
  const shown = `The picture shows what is done before the step: the last stitch made stands in a thick frame, the ring with the arrow is where the hook goes next, broken outlines are what the step makes.${worked.sizes.length > 1 ? ` Shown for size ${printable(name)}; the other sizes go the same way with their own numbers.` : ''}`;
  const rows: StepFigure[][] = [];
  for (const figure of figures) {
    const row = rows.at(-1);
    // A row of the pattern begins a row of pictures.
    if (row && row.length < many && row[0]!.step.row === figure.step.row) row.push(figure);
    else rows.push([figure]);
  }
  return [
    heading('Step by step', 2, format),
    block(setText({ runs: [{ text: shown, face: 'italic' }], sizePt: format.bodyPt, xMm: format.labelMm, widthMm: format.widthMm - format.labelMm }, format.measure), 0, { whole: false }),
    ...rows.map((row) => block(row.map((figure, i) => stepStrips(figure, i * (width + GAP_MM), width, Math.max(...row.map(({ picture }) => picture.heightMm)), format)).reduce((all, one) => sideBySide(all, one), [] as Strip[]), 7)),
  ];
}

function stepStrips({ number, picture, words }: StepFigure, xMm: number, widthMm: number, tallMm: number, format: Format): Strip[] {
  const { measure, bodyPt, smallPt } = format;
  const line = (text: string, face: 'bold' | 'text' | 'italic', sizePt: number): Strip[] => setText({ runs: [{ text: printable(text), face }], sizePt, xMm, widthMm, leading: 1.3 }, measure);
  const says = `${words.label}: ${words.does} ${words.open}`.trim();
  const drawn: Strip = { heightMm: tallMm + 1.5, texts: [], rules: [], pictures: [{ xMm: xMm + (format.large ? 0 : (widthMm - picture.widthMm) / 2), yMm: tallMm - picture.heightMm, widthMm: picture.widthMm, heightMm: picture.heightMm, svg: picture.svg, says }] };
  return [drawn, ...line(`${number}. ${words.label}`, 'bold', bodyPt), ...line(words.does, 'text', bodyPt), ...(words.open === '' ? [] : line(words.open, 'italic', format.large ? bodyPt : Math.max(smallPt, 9)))];
}

/** Every step as an SVG file of its own, with its words under the picture. */
export function stepFiles(worked: WorkedPattern, choices: PublishChoices, format: Format, name: string): readonly PublishedFile[] {
  const width = stepWidthMm(format);
  const figures = stepFigures(worked, choices, pictureWidthMm(format));
  const digits = String(figures.length).length;
  return figures.map(({ number, picture, words, section }) => {
    const lines = [words.label, words.does, words.open].filter((text) => text !== '').flatMap((text, i) => setText({ runs: [{ text: printable(text), face: i === 0 ? 'bold' : 'text' }], sizePt: format.bodyPt, xMm: 0, widthMm: width, leading: 1.3 }, format.measure));
    let y = picture.heightMm + 2;
    const texts = lines.map(({ heightMm, texts: [text] }) => {
      const line = text ? `<text${attributes({ x: text.xMm, y: y + text.yMm, 'font-family': FACES[text.face].family, 'font-weight': FACES[text.face].weight === 400 ? null : FACES[text.face].weight, 'font-size': setPt(text.face, text.sizePt) * POINT_MM, fill: '#1a1a1a' })}>${escapeXml(text.text)}</text>` : '';
      y += heightMm;
      return line;
    });
    const title = `${printable(worked.pattern.title) || 'Untitled'}: ${printable(section)} step ${number}`;
    const head = svgHead({ x: -3, y: -3, width: width + 6, height: y + 5 }, { title, desc: `${words.label}: ${words.does} ${words.open}`.trim(), creator: printable(worked.pattern.designer) });
    return { name: `${name}-step-${String(number).padStart(digits, '0')}.svg`, text: `${head}\n<rect id="paper" x="-3" y="-3" width="${num(width + 6)}" height="${num(y + 5)}" fill="#ffffff"/>\n<g transform="translate(${num((width - picture.widthMm) / 2)} 0)">${picture.svg}</g>\n<g id="words">${texts.join('')}</g>\n</svg>\n` };
  });
}
