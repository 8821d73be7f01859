import { pathBytes, type PathBytes } from './pathBytes.ts';

/** Path data of one kind; what `key` means (a yarn, an ink) is for its maker to say. */
export interface KeyedPath {
  readonly key: number;
  readonly d: string;
}

/** Paths that are written side by side, one a key. */
export interface KeyedPaths {
  /** The path of a key, a small whole number. */
  of(key: number): PathBytes;
  /** All paths written since the last time, in the order of their keys. */
  take(): KeyedPath[];
}

/** Makes a set of paths. Kept and used again it needs no new buffers. */
export function keyedPaths(): KeyedPaths {
  const paths: PathBytes[] = [];
  const used: number[] = [];
  return {
    of(key) {
      const path = (paths[key] ??= pathBytes());
      if (!used.includes(key)) {
        used.push(key);
        path.start();
      }
      return path;
    },
    take() {
      used.sort((a, b) => a - b);
      return used.splice(0).map((key) => ({ key, d: paths[key]!.text() }));
    },
  };
}
