import { resourcesAt, type ResourceAddresses } from '$publish/fonts/resourcesAt.ts';
import { publishJob } from '$publish/publishJob.ts';
import type { PublishOrder } from '$publish/publishOrder.ts';
import type { Pattern } from '$engine/1-pattern/pattern.ts';
import type { FromPublishWorker, ToPublishWorker } from '$publish/publishWorkerProtocol.ts';
import { publishSteps } from '$engine/publish/publishPattern.ts';

/** The job whose steps are taken; a job that is no longer it takes no further step. */
let current: number | null = null;

/** The pattern of the last job with its text: the same one again comes as another object, and what was worked for it hangs on the object. */
let last: { readonly text: string; readonly pattern: Pattern } | null = null;

function known(pattern: Pattern): Pattern {
  const text = JSON.stringify(pattern);
  if (last?.text !== text) last = { text, pattern };
  return last.pattern;
}

const tell = (message: FromPublishWorker, transfer: Transferable[] = []): void => self.postMessage(message, { transfer });

/** Lets messages that wait (such as cancel) be heard between two steps. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

async function publish(job: number, order: PublishOrder, resources: ResourceAddresses): Promise<void> {
  const steps = publishJob({ ...order, pattern: known(order.pattern) }, resourcesAt(resources), publishSteps);
  let step = await steps.next();
  while (!step.done) {
    tell({ kind: 'progress', job, progress: step.value });
    await breath();
    if (current !== job) return tell({ kind: 'cancelled', job });
    step = await steps.next();
  }
  if (current !== job) return tell({ kind: 'cancelled', job });
  current = null;
  const files = step.value;
  tell({ kind: 'made', job, files }, [...new Set(files.map(({ bytes }) => bytes.buffer))]);
}

self.addEventListener('message', ({ data }: MessageEvent<ToPublishWorker>) => {
  if (data.kind === 'cancel') {
    if (current === data.job) current = null;
    return;
  }
  current = data.job;
  publish(data.job, data.order, data.resources).catch((error: unknown) => {
    if (current === data.job) current = null;
    tell({ kind: 'refused', job: data.job, says: error instanceof Error ? error.message : String(error) });
  });
});
