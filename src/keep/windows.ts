/** What windows of this tool tell one another. */
export type WindowNews =
  | { readonly kind: 'kept'; readonly id: string; readonly revision: number }
  | { readonly kind: 'removed'; readonly id: string }
  /** A window wants to write on a pattern; the one that does is asked to let it. */
  | { readonly kind: 'wanted'; readonly id: string; readonly by: string };

/** A line to the other windows on this device. What one tells, it does not hear itself. */
export interface Windows {
  tell(news: WindowNews): void;
  /** Calls `hear` for news of other windows until the returned function is called. */
  listen(hear: (news: WindowNews) => void): () => void;
  close(): void;
}

/** The line of this browser; one that stays silent where the browser has none. */
export function otherWindows(name = 'turnwork'): Windows {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => undefined, listen: () => () => undefined, close: () => undefined };
  const channel = new BroadcastChannel(name);
  return {
    tell: (news) => channel.postMessage(news),
    listen: (hear) => {
      const onMessage = ({ data }: MessageEvent<unknown>) => {
        const news = newsOf(data);
        if (news) hear(news);
      };
      channel.addEventListener('message', onMessage);
      return () => channel.removeEventListener('message', onMessage);
    },
    close: () => channel.close(),
  };
}

function newsOf(data: unknown): WindowNews | null {
  if (typeof data !== 'object' || data === null) return null;
  const { kind, id, revision, by } = data as Readonly<Record<string, unknown>>;
  if (typeof id !== 'string') return null;
  if (kind === 'removed') return { kind, id };
  if (kind === 'wanted') return typeof by === 'string' ? { kind, id, by } : null;
  return kind === 'kept' && typeof revision === 'number' ? { kind, id, revision } : null;
}
