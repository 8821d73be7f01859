interface Waiting {
  readonly grant: () => void;
  readonly fail: (error: unknown) => void;
}

/** Locks as the Web Locks API has them, for one name: queue, `ifAvailable`, `steal` and signals. */
export function lockDesk(): Pick<LockManager, 'request'> & { readonly isHeld: () => boolean } {
  let holder: { readonly fail: (error: unknown) => void } | null = null;
  let queue: Waiting[] = [];

  function next(): void {
    if (holder) return;
    const first = queue.shift();
    first?.grant();
  }

  const request = (name: string, options: LockOptions, callback: (lock: Lock | null) => unknown): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const waiting: Waiting = {
        fail: reject,
        grant() {
          const mine = { fail: reject };
          holder = mine;
          void Promise.resolve(callback({ name, mode: 'exclusive' })).then((value) => {
            if (holder === mine) holder = null;
            resolve(value);
            setImmediate(next);
          }, reject);
        },
      };
      setImmediate(() => {
        if (options.steal) {
          holder?.fail(new DOMException('stolen', 'AbortError'));
          holder = null;
          waiting.grant();
        } else if (options.ifAvailable && (holder || queue.length > 0)) resolve(callback(null));
        else {
          options.signal?.addEventListener('abort', () => {
            if (!queue.includes(waiting)) return;
            queue = queue.filter((one) => one !== waiting);
            reject(new DOMException('called off', 'AbortError'));
          });
          if (options.signal?.aborted) return reject(new DOMException('called off', 'AbortError'));
          queue.push(waiting);
          next();
        }
      });
    });
  return { request: request as LockManager['request'], isHeld: () => holder !== null };
}
