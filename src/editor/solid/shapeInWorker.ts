import type { ShapeAnswer, ShapeRequest } from './solidWorker.ts';

/**
 * Shapes a fabric in a worker of its own after `waitMs`, and tells the answers; returns what stops it. Stopped or done, the
 * worker is gone.
 */
export function shapeInWorker(request: ShapeRequest, waitMs: number, onanswer: (answer: ShapeAnswer) => void): () => void {
  let worker: Worker | null = null;
  const start = setTimeout(() => {
    worker = new Worker(new URL('./solidWorker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<ShapeAnswer>) => {
      if (data.kind !== 'share') stop();
      onanswer(data);
    };
    worker.onerror = (event) => {
      stop();
      onanswer({ kind: 'failed', why: event.message });
    };
    worker.postMessage(request);
  }, waitMs);
  const stop = (): void => {
    clearTimeout(start);
    worker?.terminate();
  };
  return stop;
}
