import { describe, expect, it } from 'vitest';
import { publishClient, type Thread } from '../../../src/editor/publish/publishClient.ts';
import { seenSheet } from '../../../src/editor/publish/seenSheet.ts';
import type { FromPublishWorker, ToPublishWorker } from '../../../src/publish/publishWorkerProtocol.ts';
import type { ResourceAddresses } from '../../../src/publish/fonts/resourcesAt.ts';
import type { PublishOrder } from '../../../src/publish/publishOrder.ts';

/** A thread that does nothing by itself. */
function fakeThread() {
  const heard: ToPublishWorker[] = [];
  const listeners = new Map<string, (event: unknown) => void>();
  const thread = {
    postMessage: (message: ToPublishWorker) => void heard.push(message),
    addEventListener: (kind: string, listener: (event: unknown) => void) => void listeners.set(kind, listener),
    terminate: () => undefined,
  } as unknown as Thread;
  return { thread, heard, say: (data: FromPublishWorker) => listeners.get('message')!({ data }), fail: () => listeners.get('error')!({}) };
}

const NOWHERE = { fonts: {}, resvg: '' } as unknown as ResourceAddresses;
const ORDER = { outputs: ['svg'], pngDpi: 300, zip: false } as unknown as PublishOrder;

describe('a publishing thread', () => {
  it('hands over what was made, and tells how far it is', async () => {
    const fake = fakeThread();
    const client = publishClient(() => fake.thread, NOWHERE);
    const told: number[] = [];
    const ended = client.run(ORDER, (progress) => told.push(progress.done));
    fake.say({ kind: 'progress', job: 1, progress: { done: 3, of: 9, making: 'svg' } });
    fake.say({ kind: 'made', job: 1, files: [] });
    expect(await ended).toEqual({ kind: 'made', files: [] });
    expect(told).toEqual([3]);
  });

  it('ends the job before with a new one, and heeds nothing more that it says', async () => {
    const fake = fakeThread();
    const client = publishClient(() => fake.thread, NOWHERE);
    const first = client.run(ORDER, () => undefined);
    const second = client.run(ORDER, () => undefined);
    expect(await first).toEqual({ kind: 'stopped' });
    fake.say({ kind: 'made', job: 1, files: [{ name: 'old.svg', bytes: new Uint8Array() }] });
    fake.say({ kind: 'refused', job: 2, says: 'no yarn' });
    expect(await second).toEqual({ kind: 'refused', says: 'no yarn' });
    expect(fake.heard.map(({ kind }) => kind)).toEqual(['publish', 'cancel', 'publish']);
  });

  it('stops when asked, and says so where the thread breaks', async () => {
    const fake = fakeThread();
    const client = publishClient(() => fake.thread, NOWHERE);
    const stopped = client.run(ORDER, () => undefined);
    client.stop();
    expect(await stopped).toEqual({ kind: 'stopped' });
    const broken = client.run(ORDER, () => undefined);
    fake.fail();
    expect(await broken).toMatchObject({ kind: 'refused' });
  });
});

describe('a sheet that is seen', () => {
  const sheet = (svg: string) => ({ name: 'leg.svg', bytes: new TextEncoder().encode(svg) });

  it('has the title and the size that its SVG says', () => {
    expect(seenSheet(sheet('<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="297mm"><title id="title">Waves &amp; &lt;sails&gt;</title></svg>'))).toMatchObject({ title: 'Waves & <sails>', widthMm: 210, heightMm: 297 });
  });

  it('is refused without a size', () => {
    expect(() => seenSheet(sheet('<svg/>'))).toThrow(RangeError);
  });
});
