import type { MadeFile } from '../../publish/archive.ts';
import type { Progress, PublishOrder } from '../../publish/publishOrder.ts';
import type { ResourceAddresses } from '../../publish/fonts/resourcesAt.ts';
import type { FromPublishWorker, ToPublishWorker } from '../../publish/publishWorkerProtocol.ts';

/** How a job ended. A job that was stopped, or overtaken by a newer one, is `stopped`. */
export type Ended = { readonly kind: 'made'; readonly files: readonly MadeFile[] } | { readonly kind: 'refused'; readonly says: string } | { readonly kind: 'stopped' };

/** One thread that publishes: a new job ends the one before. */
export interface PublishClient {
  run(order: PublishOrder, progress: (progress: Progress) => void): Promise<Ended>;
  stop(): void;
  close(): void;
}

/** The part of a worker that is used here. */
export type Thread = Pick<Worker, 'postMessage' | 'addEventListener' | 'terminate'>;

/** Talks to a publishing worker, which is started with the first job and told where fonts and drawer are. */
export function publishClient(start: () => Thread, resources: ResourceAddresses): PublishClient {
  let thread: Thread | null = null;
  let job = 0;
  let current: { readonly job: number; readonly progress: (progress: Progress) => void; readonly end: (ended: Ended) => void } | null = null;

  function end(ended: Ended): void {
    const { end: tell } = current!;
    current = null;
    tell(ended);
  }

  function started(): Thread {
    const made = start();
    made.addEventListener('message', (event) => {
      const message = (event as MessageEvent<FromPublishWorker>).data;
      if (!current || message.job !== current.job) return;
      switch (message.kind) {
        case 'progress': return current.progress(message.progress);
        case 'made': return end({ kind: 'made', files: message.files });
        case 'refused': return end({ kind: 'refused', says: message.says });
        case 'cancelled': return end({ kind: 'stopped' });
      }
    });
    made.addEventListener('error', () => {
      thread = null;
      if (current) end({ kind: 'refused', says: 'The part of the app that makes the sheets could not be started. Load the page again; if it stays so, the app was not loaded whole.' });
    });
    return made;
  }

  function stop(): void {
    if (!current) return;
    thread?.postMessage({ kind: 'cancel', job: current.job } satisfies ToPublishWorker);
    end({ kind: 'stopped' });
  }

  return {
    run(order, progress) {
      stop();
      thread ??= started();
      job++;
      const ended = new Promise<Ended>((resolve) => (current = { job, progress, end: resolve }));
      thread.postMessage({ kind: 'publish', job, order, resources } satisfies ToPublishWorker);
      return ended;
    },
    stop,
    close() {
      stop();
      thread?.terminate();
      thread = null;
    },
  };
}
