import type { Section } from '../../1-pattern/pattern.ts';
import type { Terms } from '../../craft/terms.ts';
import { ball } from './ball.ts';
import { disc } from './disc.ts';
import { fingerprint } from './fingerprint.ts';
import { inHand } from './inHand.ts';
import { joinSizes } from './joinSizes.ts';
import type { MadeParts } from './madeSection.ts';
import type { Origin } from './origin.ts';
import { oval } from './oval.ts';
import { panel } from './panel.ts';
import type { PinProblem } from './reckoning.ts';
import type { PieceRequest } from './settings.ts';
import { sock } from './sock.ts';
import { tube } from './tube.ts';

/** A piece made from gauge and measurements. */
export interface MadePiece {
  /** Sections with their rows written for all sizes; each keeps its recipe. */
  readonly sections: readonly Section[];
  /** For each size its numbers by key, each with what it comes from. */
  readonly numbers: readonly ReadonlyMap<string, Origin>[];
  /** Numbers set by hand that could not be used. */
  readonly problems: readonly PinProblem[];
}

/**
 * Makes a piece: sections of real written rows in the terms asked for, with numbers for every size. Section ids are roles
 * (`leg`), line ids `leg.rows`; the same request gives the same ids, so that what is laid on a row finds it again in a piece
 * made anew. Refuses requests without sizes, gauges that are not above 0, and sizes that lack a measurement the piece needs.
 */
export function makePiece(request: PieceRequest, terms: Terms = 'us'): MadePiece {
  if (request.sizes.length < 1) throw new RangeError('0 sizes given, at least 1 is needed');
  const { stitches, rows, overCm } = request.gauge;
  if (!(stitches > 0 && rows > 0 && overCm > 0)) throw new RangeError(`gauge ${stitches} × ${rows} over ${overCm} cm, above 0 expected`);
  const { sections, reckonings } = partsOf(request);
  return {
    sections: inHand(sections).map(({ role, name, remark, perSize, settings }): Section => {
      const lines = joinSizes(role, perSize, terms);
      return { id: role, name, remark, lines, recipe: { name: `${request.settings.kind}.${role}`, settings: { ...settings, remark, written: fingerprint(lines) } } };
    }),
    numbers: reckonings.map(({ origins }) => origins),
    problems: reckonings.flatMap(({ problems }) => problems),
  };
}

function partsOf(request: PieceRequest): MadeParts {
  const { settings } = request;
  switch (settings.kind) {
    case 'sock':
      return sock(request, settings);
    case 'panel':
      return panel(request, settings);
    case 'tube':
      return tube(request, settings);
    case 'disc':
      return disc(request, settings);
    case 'oval':
      return oval(request, settings);
    case 'ball':
      return ball(request, settings);
  }
}
