import type { MadeFile } from './archive.ts';
import type { ResourceAddresses } from './fonts/resourcesAt.ts';
import type { Progress, PublishOrder } from './publishOrder.ts';

/** What the page says to the worker. `job` is any number that the page gives; one job runs at a time, a new one ends the one before. */
export type ToPublishWorker =
  | { readonly kind: 'publish'; readonly job: number; readonly order: PublishOrder; readonly resources: ResourceAddresses }
  | { readonly kind: 'cancel'; readonly job: number };

/** What the worker says back. Every job ends with exactly one of `made`, `refused`, `cancelled`. */
export type FromPublishWorker =
  | { readonly kind: 'progress'; readonly job: number; readonly progress: Progress }
  | { readonly kind: 'made'; readonly job: number; readonly files: readonly MadeFile[] }
  | { readonly kind: 'refused'; readonly job: number; readonly says: string }
  | { readonly kind: 'cancelled'; readonly job: number };
