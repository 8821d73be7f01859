import type { BobbleSettings, FringeSettings, LoopSettings } from '../../../engine/2-construct/recipes/settings.ts';
import { choice, type MakeChange, type MakeField } from './makeField.ts';

const usual = { loop: { cm: 8 }, fringe: { every: 2, strands: 2, cm: 15 }, bobbles: { every: 6, at: 0.5 } } as const;

/** What can be changed about a hanging loop. */
export function loopFields(loop: LoopSettings | null, yarn: string, set: (loop: LoopSettings | null) => MakeChange): readonly MakeField[] {
  const sections = ['loop'];
  const has = choice({ id: 'loop.has', label: 'Hanging loop', before: '', after: loop ? ',' : '', sections }, loop ? 'yes' : 'no', { no: 'none', yes: 'a strip folded and sewn on' }, (is) => set(is === 'yes' ? (loop ?? { ...usual.loop, yarn }) : null));
  if (!loop) return [has];
  return [
    has,
    { kind: 'cm', id: 'loop.cm', label: 'Length of the strip of the loop', before: '', after: 'long,', sections, cm: loop.cm, set: (cm) => set({ ...loop, cm }) },
    { kind: 'yarn', id: 'loop.yarn', label: 'Yarn of the loop', before: 'in', after: '', sections, letter: loop.yarn, set: (letter) => set({ ...loop, yarn: letter }) },
  ];
}

/** What can be changed about a fringe. */
export function fringeFields(fringe: FringeSettings | null, yarn: string, set: (fringe: FringeSettings | null) => MakeChange): readonly MakeField[] {
  const sections = ['fringe'];
  const has = choice({ id: 'fringe.has', label: 'Fringe', before: '', after: fringe ? ',' : '', sections }, fringe ? 'yes' : 'no', { no: 'none', yes: 'bunches of strands knotted on' }, (is) => set(is === 'yes' ? (fringe ?? { ...usual.fringe, yarn }) : null));
  if (!fringe) return [has];
  return [
    has,
    { kind: 'count', id: 'fringe.every', label: 'A bunch in every so many stitches', before: 'one in every', after: 'stitches (1: in each),', sections, value: fringe.every, least: 1, most: 99, set: (every) => set({ ...fringe, every }) },
    { kind: 'count', id: 'fringe.strands', label: 'Strands of a bunch', before: '', after: 'strands each,', sections, value: fringe.strands, least: 1, most: 99, set: (strands) => set({ ...fringe, strands }) },
    { kind: 'cm', id: 'fringe.cm', label: 'Length of a strand as cut', before: 'cut', after: 'long,', sections, cm: fringe.cm, set: (cm) => set({ ...fringe, cm }) },
    { kind: 'yarn', id: 'fringe.yarn', label: 'Yarn of the fringe', before: 'in', after: '', sections, letter: fringe.yarn, set: (letter) => set({ ...fringe, yarn: letter }) },
  ];
}

/** What can be changed about a row of bobbles on a panel. */
export function bobbleFields(bobbles: BobbleSettings | null, set: (bobbles: BobbleSettings | null) => MakeChange): readonly MakeField[] {
  const sections = ['panel'];
  const has = choice({ id: 'bobbles.has', label: 'Row of bobbles', before: '', after: bobbles ? ',' : '', sections }, bobbles ? 'yes' : 'no', { no: 'none', yes: 'a row of them' }, (is) => set(is === 'yes' ? (bobbles ?? usual.bobbles) : null));
  if (!bobbles) return [has];
  return [
    has,
    { kind: 'count', id: 'bobbles.every', label: 'Stitches from bobble to bobble, about', before: 'about', after: 'stitches apart,', sections, value: bobbles.every, least: 2, most: 99, set: (every) => set({ ...bobbles, every }) },
    { kind: 'count', id: 'bobbles.at', label: 'Height of the row of bobbles, percent of the panel', before: 'at', after: '% of the height', sections, value: Math.round(bobbles.at * 100), least: 1, most: 100, set: (percent) => set({ ...bobbles, at: percent / 100 }) },
  ];
}
