import type { Instruction } from './instruction.ts';
import type { RowReader } from './rowReader.ts';
import { matchStitch } from './stitchReading.ts';

const SEW = new Set(['sew', 'seam', 'whipstitch', 'graft']);
const CLOSE = new Set(['close', 'closed', 'shut', 'together', 'up']);
const NAMES = new Set(['toe', 'tip', 'crown', 'top', 'bottom', 'opening', 'hole', 'heel', 'end', 'last', 'rnd', 'round']);
const MANNER_START = new Set(['with', 'by', 'through', 'using', 'across']);
const CLAUSE_END = new Set([',', ';', '.', '']);

/**
 * Reads the closing of a ring that is laid flat: `sl st the toe closed`, `sew the toe seam`, `close the toe with sl sts through
 * both layers`. Null, with nothing moved, for seams of side edges.
 */
export function readCloseUp(reader: RowReader): Instruction | null {
  const start = reader.at;
  const node = closeHere(reader, start);
  if (!node) reader.at = start;
  return node;
}

function closeHere(reader: RowReader, start: number): Instruction | null {
  let by: 'sewn' | 'slst' = 'sewn';
  const close = reader.take('close');
  if (!close && !reader.take(SEW)) {
    const match = matchStitch(reader);
    if (match?.kind !== 'slst') return null;
    reader.at += match.length;
    by = 'slst';
  }
  reader.takeArticles();
  const named = reader.at;
  while (reader.at < reader.end && reader.at - named < 3 && reader.is(NAMES)) reader.at++;
  if (reader.at === named) return null;
  const name = reader.tokens.slice(named, reader.at).map(({ word }) => word).join(' ');
  const seam = by === 'sewn' && reader.take('seam');
  const shut = reader.take(CLOSE);
  if (!close && !seam && !shut) return null;
  if (reader.is(MANNER_START)) {
    for (let words = 0; words < 12 && reader.at < reader.end && !reader.is(CLAUSE_END) && reader.token().close < 0; words++) {
      const match = matchStitch(reader);
      if (match?.kind === 'slst') by = 'slst';
      reader.at += match?.length ?? 1;
    }
  }
  return { kind: 'seam', closes: { name, by }, range: reader.range(start) };
}
