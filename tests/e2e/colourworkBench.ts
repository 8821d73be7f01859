import { crc32, deflateSync } from 'node:zlib';
import type { CDPSession, Locator, Page } from '@playwright/test';

/** What both hands of colourwork's journeys need: places on the page, strokes of a finger, pictures. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The undo of the heading; the motif's sheet has another one on a phone. What it takes back is its title. */
export const undo = (page: Page): Locator => page.getByRole('button', { name: /^Undo/ }).first();
export const foot = (page: Page): Locator => page.getByRole('region', { name: 'What the next touch of the chart does' });
export const sheet = (page: Page, name: string | RegExp): Locator => page.getByRole('region', { name, exact: typeof name === 'string' });

/** The middle of a cell of the motif on the sheet, column from the left and row from the top. */
export async function cell(grid: Locator, x: number, y: number, across: number, up: number): Promise<Point> {
  const box = await lyingStill(grid.locator('svg'));
  return { x: box.x + ((x + 0.5) / across) * box.width, y: box.y + ((y + 0.5) / up) * box.height };
}

/** The box of an element once it stays where it is: a page that was scrolled or has grown settles a little later. */
async function lyingStill(element: Locator): Promise<{ readonly x: number; readonly y: number; readonly width: number; readonly height: number }> {
  return element.evaluate(
    (one) =>
      new Promise((done) => {
        let last = '';
        const look = (): void => {
          const { x, y, width, height } = one.getBoundingClientRect();
          const now = JSON.stringify([x, y, width, height]);
          if (now === last) return done({ x, y, width, height });
          last = now;
          setTimeout(look, 60);
        };
        look();
      }),
  );
}

/** How many cells of a motif are drawn, as its picture in the list of motifs has them. */
export function drawnCells(page: Page, motif: string): Promise<number> {
  const paths = foot(page).getByRole('button', { name: motif }).locator('path');
  return paths.evaluateAll((all) => all.flatMap((path) => [...(path.getAttribute('d') ?? '').matchAll(/h(\d+)v/g)]).reduce((sum, [, run]) => sum + Number(run), 0));
}

/** A point of an element, in parts of its width and height. */
export async function within(element: Locator, x: number, y: number): Promise<Point> {
  const box = await lyingStill(element);
  return { x: box.x + box.width * x, y: box.y + box.height * y };
}

/** Drags the mouse from point to point; a key may be held. */
export async function mouseDrag(page: Page, points: readonly Point[], key?: 'Shift' | 'Control'): Promise<void> {
  const [first, ...rest] = points;
  if (key) await page.keyboard.down(key);
  await page.mouse.move(first!.x, first!.y);
  await page.mouse.down();
  for (const point of rest) await page.mouse.move(point.x, point.y, { steps: 4 });
  await page.mouse.up();
  if (key) await page.keyboard.up(key);
}

const HANDS = new WeakMap<Page, Promise<CDPSession>>();

/** The one hand of a page: two would each wait for the other's fingers to lift. */
function handOf(page: Page): Promise<CDPSession> {
  const known = HANDS.get(page) ?? page.context().newCDPSession(page);
  HANDS.set(page, known);
  return known;
}

/** Draws a finger over the page, from point to point; `holdMs` lets it rest where it came down. */
export async function fingerDrag(page: Page, points: readonly Point[], holdMs = 0): Promise<void> {
  const hand = await handOf(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: readonly Point[]) => hand.send('Input.dispatchTouchEvent', { type, touchPoints: at.map(({ x, y }) => ({ x, y })) });
  const [first, ...rest] = points;
  await send('touchStart', [first!]);
  if (holdMs > 0) await page.waitForTimeout(holdMs);
  let from = first!;
  for (const to of rest) {
    for (let i = 1; i <= 5; i++) await send('touchMove', [{ x: from.x + ((to.x - from.x) * i) / 5, y: from.y + ((to.y - from.y) * i) / 5 }]);
    from = to;
  }
  // A finger that stops before it lifts: one that is still on its way flings, and the browser takes the next tap for the end of that.
  if (rest.length > 0) await page.waitForTimeout(120);
  if (rest.length > 0) await send('touchMove', [from]);
  await send('touchEnd', []);
}

/** Moves two fingers at once, each from one point to another: a pinch, or a push. */
export async function fingersMove(page: Page, from: readonly [Point, Point], to: readonly [Point, Point]): Promise<void> {
  const hand = await handOf(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', at: readonly Point[]) => hand.send('Input.dispatchTouchEvent', { type, touchPoints: at.map(({ x, y }, id) => ({ x, y, id })) });
  await send('touchStart', from);
  for (let i = 1; i <= 6; i++) await send('touchMove', from.map(({ x, y }, finger) => ({ x: x + ((to[finger]!.x - x) * i) / 6, y: y + ((to[finger]!.y - y) * i) / 6 })));
  await page.waitForTimeout(120);
  await send('touchEnd', []);
}

/** Taps twice at one place, so fast as only a finger does: all four events are on their way before the first is answered. */
export async function fingerDoubleTap(page: Page, { x, y }: Point): Promise<void> {
  const hand = await handOf(page);
  const down = () => hand.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
  const up = () => hand.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await Promise.all([down(), up(), down(), up()]);
}

/** Taps the middle of an element. */
export async function fingerTap(page: Page, element: Locator): Promise<void> {
  await element.scrollIntoViewIfNeeded();
  await fingerDrag(page, [await within(element, 0.5, 0.5)]);
}

/** A PNG of chalk above and slate below. */
export function halves(width: number, height: number): Buffer {
  const row = (rgb: readonly number[]) => Buffer.from([0, ...Array.from({ length: width }, () => rgb).flat()]);
  return png(width, height, [8, 2], Buffer.concat(Array.from({ length: height }, (_, y) => row(y < height / 2 ? [242, 239, 230] : [75, 90, 107]))));
}

/** A black PNG of one bit a pixel: small to send, long to decode. */
export function large(width: number, height: number): Buffer {
  return png(width, height, [1, 0], Buffer.alloc((Math.ceil(width / 8) + 1) * height));
}

function png(width: number, height: number, [bits, kind]: readonly [number, number], raw: Buffer): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    const out = Buffer.alloc(8);
    out.writeUInt32BE(data.length);
    out.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([out.subarray(0, 4), body, out.subarray(4)]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width);
  head.writeUInt32BE(height, 4);
  head.set([bits, kind, 0, 0, 0], 8);
  return Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), chunk('IHDR', head), chunk('IDAT', deflateSync(raw)), chunk('IEND', Buffer.alloc(0))]);
}
