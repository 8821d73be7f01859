import type { Applied } from '../edit.ts';
import type { Pattern } from '../pattern.ts';
import { pieceSchema } from '../pieceSchema.ts';
import { done, refuse, valueFault, type EditOf } from './outcome.ts';

/** Says what the piece is made to and of. Whether there is a measurement for each size is looked at when a transaction is made. */
export function applyPiece(pattern: Pattern, { piece }: EditOf<'setPiece'>): Applied {
  const fault = piece && valueFault('What the piece is made to', pieceSchema, piece);
  if (fault) return refuse(fault);
  const { piece: before, ...rest } = pattern;
  return done(piece ? { ...rest, piece } : rest, { kind: 'setPiece', piece: before ?? null });
}
