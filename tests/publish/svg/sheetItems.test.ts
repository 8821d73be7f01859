import { describe, expect, it } from 'vitest';
import { readTransform } from '../../../src/publish/svg/matrix.ts';
import { sheetItems, type SheetItem } from '../../../src/publish/svg/sheetItems.ts';
import { smallSheet } from '../sheetOf.ts';

const items = (body: string): readonly SheetItem[] => sheetItems(smallSheet(body).svg).items;
const path = (item: SheetItem | undefined) => (item?.kind === 'path' ? item : (() => { throw new RangeError('no path'); })());
const words = (item: SheetItem | undefined) => (item?.kind === 'text' ? item.chunks : (() => { throw new RangeError('no text'); })());

describe('transforms', () => {
  // Worked by hand from SVG 2, 8.5 “The transform property”.
  it.each([
    ['translate(3)', [1, 0, 0, 1, 3, 0]], ['translate(3 4)', [1, 0, 0, 1, 3, 4]], ['scale(2)', [2, 0, 0, 2, 0, 0]], ['scale(2,3)', [2, 0, 0, 3, 0, 0]], ['rotate(90)', [0, 1, -1, 0, 0, 0]],
    ['rotate(90 10 20)', [0, 1, -1, 0, 30, 10]], ['matrix(1 2 3 4 5 6)', [1, 2, 3, 4, 5, 6]], ['translate(10 0) scale(2)', [2, 0, 0, 2, 10, 0]], ['scale(2), translate(10 0)', [2, 0, 0, 2, 20, 0]], ['', [1, 0, 0, 1, 0, 0]],
  ])('%s', (text, expected) => {
    readTransform(text).forEach((value, index) => expect(value).toBeCloseTo(expected[index]!, 12));
  });
});

describe('what a sheet draws', () => {
  it('is in mm whatever its viewBox', () => {
    const { items: [rect], widthMm } = sheetItems('<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="20mm" viewBox="-10 0 100 40"><rect width="4" height="4"/></svg>');
    expect(widthMm).toBe(50);
    expect(path(rect).matrix).toEqual([0.5, 0, 0, 0.5, 5, 0]);
  });

  it('takes fill, stroke and face from the elements around, nearest first, style before attribute', () => {
    const [a, b] = items('<g fill="red" stroke-width="2"><g fill="blue" stroke="#123456"><rect width="1" height="1"/></g><rect style="fill:#0f0; stroke-width: 3" fill="pink" width="1" height="1"/></g>').map(path);
    expect([a!.pen.fill, a!.pen.stroke, a!.pen.strokeWidth]).toEqual(['blue', '#123456', 2]);
    expect([b!.pen.fill, b!.pen.strokeWidth]).toEqual(['#0f0', 3]);
  });

  it('multiplies the opacities around', () => {
    expect(path(items('<g opacity="0.5"><rect opacity="50%" width="1" height="1"/></g>')[0]).pen.opacity).toBe(0.25);
  });

  it('draws what is used where it is used, in the pen of the use, with href or xlink:href', () => {
    const body = (name: string) => `<defs><g id="s"><path d="M0 0L1 1"/></g></defs><g stroke="red"><use ${name}="#s" x="3" y="4" transform="scale(2)"/></g>`;
    for (const name of ['href', 'xlink:href']) {
      const one = path(sheetItems(smallSheet(body(name)).svg.replace('<svg ', '<svg xmlns:xlink="http://www.w3.org/1999/xlink" ')).items[0]);
      expect(one.matrix).toEqual([2, 0, 0, 2, 6, 8]);
      expect(one.pen.stroke).toBe('red');
    }
  });

  it('draws a symbol and a drawing inside a drawing scaled into their boxes and cut to them', () => {
    for (const body of ['<symbol id="s" viewBox="0 0 10 10"><rect width="10" height="10"/></symbol><use href="#s" x="5" y="5" width="20" height="20"/>', '<svg x="5" y="5" width="20" height="20" viewBox="0 0 10 10"><rect width="10" height="10"/></svg>']) {
      const one = path(items(body)[0]);
      expect(one.matrix).toEqual([2, 0, 0, 2, 5, 5]);
      expect(one.clips).toHaveLength(1);
    }
  });

  it('keeps clips in the units of what they cut, one inside another', () => {
    const [one] = items('<clipPath id="c"><rect width="5" height="5"/></clipPath><g transform="translate(10 0)" clip-path="url(#c)"><g clip-path="url(#c)"><rect width="50" height="50"/></g></g>').map(path);
    expect(one!.clips.map((clip) => clip.matrix)).toEqual([[1, 0, 0, 1, 10, 0], [1, 0, 0, 1, 10, 0]]);
  });

  it.each([
    ['<line x1="1" y1="2" x2="3" y2="4"/>', 'M1 2L3 4'], ['<polyline points="0,0 1,0 1,1"/>', 'M0 0L1 0L1 1'], ['<polygon points="0 0 1 0 1 1"/>', 'M0 0L1 0L1 1Z'], ['<rect x="1" y="2" width="3" height="4"/>', 'M1 2H4V6H1Z'],
    ['<rect width="10" height="6" rx="2"/>', 'M2 0H8A2 2 0 0 1 10 2V4A2 2 0 0 1 8 6H2A2 2 0 0 1 0 4V2A2 2 0 0 1 2 0Z'], ['<circle cx="5" cy="5" r="2"/>', 'M7 5A2 2 0 0 1 3 5A2 2 0 0 1 7 5Z'], ['<ellipse rx="2" ry="1"/>', 'M2 0A2 1 0 0 1 -2 0A2 1 0 0 1 2 0Z'],
  ])('%s is a path', (body, d) => {
    expect(path(items(body)[0]).d).toBe(d);
  });

  it.each(['<rect width="0" height="5"/>', '<circle r="0"/>', '<g display="none"><rect width="1" height="1"/></g>', '<rect visibility="hidden" width="1" height="1"/>', '<defs><rect width="1" height="1"/></defs>', '<metadata><anything/></metadata>', '<text x="1"> </text>'])('%s draws nothing', (body) => {
    expect(items(body)).toEqual([]);
  });
});

describe('texts', () => {
  it('put spaces together as SVG says', () => {
    expect(words(items('<text x="1" y="2">\n  a <tspan font-style="italic"> b</tspan>\n c </text>')[0])[0]!.runs.map((run) => run.text)).toEqual(['a ', 'b', ' c']);
    expect(words(items('<text xml:space="preserve">  a  b</text>')[0])[0]!.runs[0]!.text).toBe('  a  b');
  });

  it('begin anew at each tspan with a place, and go on at others', () => {
    const chunks = words(items('<text x="1" y="2">a<tspan dx="3" font-weight="700">b</tspan><tspan x="9">c</tspan><tspan x="1" y="8">d</tspan></text>')[0]);
    expect(chunks.map(({ x, y, runs }) => [x, y, runs.map((run) => run.text).join('')])).toEqual([[1, 2, 'ab'], [9, 2, 'c'], [1, 8, 'd']]);
    expect(chunks[0]!.runs[1]).toMatchObject({ dx: 3, pen: { bold: true } });
  });

  it('have what is written, though it looks like markup', () => {
    expect(words(items('<text>&lt;b&gt; &amp;amp; &#39;x&#39; <![CDATA[<i>]]></text>')[0])[0]!.runs.map((run) => run.text).join('')).toBe('<b> &amp; \'x\' <i>');
  });
});
