import * as v from 'valibot';

/** What the shelf says of a pattern: small, and written with every change. */
export const headSchema = v.object({
  id: v.string(),
  title: v.string(),
  sizes: v.array(v.string()),
  /** Counts the moves; 0 is a pattern that was never kept. */
  revision: v.number(),
  /** Milliseconds since 1970. */
  createdAt: v.number(),
  keptAt: v.number(),
  /** The window that kept it. */
  writer: v.string(),
  /** Revision of the newest whole. */
  whole: v.number(),
  /** When it was put away; null if it stands on the shelf. */
  putAwayAt: v.nullable(v.number()),
});
export type Head = v.InferOutput<typeof headSchema>;

/** The whole of a pattern as of a revision; `file` and the pieces named are sealed each for itself. */
export const wholeSchema = v.object({ revision: v.number(), at: v.number(), file: v.unknown(), pieces: v.array(v.string()), done: v.number() });
export type Whole = v.InferOutput<typeof wholeSchema>;

/** Moves that were made one after another, the first of which leads to the revision `first`. */
export const batchSchema = v.object({ first: v.number(), last: v.number(), at: v.number(), moves: v.unknown() });
export type Batch = v.InferOutput<typeof batchSchema>;

/** A pattern as the first shelves kept it: head, picture and whole in one. */
export const firstEntrySchema = v.object({
  id: v.string(), title: v.string(), sizes: v.array(v.string()), revision: v.number(), createdAt: v.number(), keptAt: v.number(), pictureSvg: v.string(),
  writer: v.string(), file: v.string(), pieces: v.array(v.string()), done: v.number(),
});

/** The head of a value under a head's key, whichever shelf wrote it; `null` if it is none. */
export function headOf(value: unknown): Head | null {
  const head = v.safeParse(headSchema, value);
  if (head.success) return head.output;
  const first = v.safeParse(firstEntrySchema, value);
  if (!first.success) return null;
  const { id, title, sizes, revision, createdAt, keptAt, writer } = first.output;
  return { id, title, sizes, revision, createdAt, keptAt, writer, whole: revision, putAwayAt: null };
}
