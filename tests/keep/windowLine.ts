import type { WindowNews, Windows } from '../../src/keep/windows.ts';

/** Windows that hear one another, all in this process: each call of what it gives is one more window. */
export function windowLine(): () => Windows {
  const ears = new Set<{ readonly owner: object; readonly hear: (news: WindowNews) => void }>();
  return () => {
    const owner = {};
    return {
      tell: (news) => [...ears].filter((ear) => ear.owner !== owner).forEach((ear) => ear.hear(news)),
      listen: (hear) => {
        const ear = { owner, hear };
        ears.add(ear);
        return () => ears.delete(ear);
      },
      close: () => undefined,
    };
  };
}
