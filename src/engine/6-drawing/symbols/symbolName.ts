import { stitchRow } from '../../craft/stitches.ts';
import type { Terms } from '../../craft/terms.ts';
import type { SymbolCall } from './symbolCall.ts';

/** The abbreviation of what a symbol shows, e.g. `sc2tog`, `5-dc bobble`, `FPdc`, `BLO sc`, in US or UK terms. */
export function symbolName(call: SymbolCall, terms: Terms): string {
  const row = stitchRow(call.kind);
  let name = terms === 'us' ? row.us : row.uk;
  const legKind = call.legKind ?? row.legKind;
  if (legKind !== null && call.legs > 0) name = `${call.legs}-${stitchRow(legKind)[terms]} ${name}`;
  if (call.together > 1 && row.legs === 0) name += `${call.together}tog`;
  if (call.post !== 'none') name = `${call.post === 'front' ? 'FP' : 'BP'}${name}`;
  if (call.loop !== 'both') name = `${call.loop === 'front' ? 'FLO' : 'BLO'} ${name}`;
  return call.spike ? `spike ${name}` : name;
}

/** The full name, e.g. `single crochet 2 together`, `front post double crochet`. */
export function symbolFullName(call: SymbolCall, terms: Terms): string {
  const row = stitchRow(call.kind);
  const words = (kind: typeof call.kind): string => stitchRow(kind)[terms === 'us' ? 'usName' : 'ukName'];
  let name = words(call.kind);
  if (call.turning && call.kind === 'ch') return 'turning chain';
  const legKind = call.legKind ?? row.legKind;
  if (legKind !== null && call.legs > 0) name += legKind === 'ch' ? ` of ${call.legs} chains` : ` of ${call.legs} ${words(legKind)}`;
  if (call.together > 1 && row.legs === 0) name += ` ${call.together} together`;
  if (call.post !== 'none') name = `${call.post} post ${name}`;
  if (call.loop !== 'both') name += ` in ${call.loop} loop only`;
  return call.spike ? `spike ${name}` : name;
}
