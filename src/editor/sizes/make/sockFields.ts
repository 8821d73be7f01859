import type { HeelSettings, SockSettings, ToeSettings } from '../../../engine/2-construct/recipes/settings.ts';
import { edgeFields } from './edgeFields.ts';
import { fringeFields, loopFields } from './finishFields.ts';
import { choice, inKind, type MakeChange, type MakeField, type MakePart } from './makeField.ts';

const HEEL = ['heel', 'flap', 'turn', 'gusset'];
/** Sections that hang on how the leg ends. */
const BELOW = ['cuff', 'leg', ...HEEL, 'foot'];

const sock = (change: (settings: SockSettings) => SockSettings): MakeChange => inKind('sock', change);

/** What can be changed about a sock after it was begun, part by part. `sizes`: how many there are. */
export function sockFields(settings: SockSettings, sizes: number): readonly MakePart[] {
  const { cuff, leg, foot, loop, fringe } = settings;
  return [
    { id: 'cuff', title: 'Cuff', fields: edgeFields('cuff', 'cuff', cuff, (next) => sock((all) => ({ ...all, cuff: next }))) },
    {
      id: 'leg', title: 'Leg',
      fields: [
        choice({ id: 'leg.way', label: 'Way the leg is worked', before: '', after: ',', sections: BELOW }, leg.way, { flat: 'flat, then seamed', rounds: 'in rounds' }, (way) => sock((all) => ({ ...all, leg: { ...all.leg, way } }))),
        { kind: 'yarn', id: 'leg.yarn', label: 'Yarn of the leg', before: 'in', after: '', sections: ['leg'], letter: leg.yarn, set: (yarn) => sock((all) => ({ ...all, leg: { ...all.leg, yarn } })) },
      ],
    },
    { id: 'heel', title: 'Heel', fields: heelFields(settings.heel) },
    { id: 'foot', title: 'Foot', fields: [{ kind: 'yarn', id: 'foot.yarn', label: 'Yarn of the foot', before: 'in rounds, in', after: '', sections: ['foot', 'gusset'], letter: foot.yarn, set: (yarn) => sock((all) => ({ ...all, foot: { yarn } })) }] },
    { id: 'toe', title: 'Toe', fields: toeFields(settings.toe, sizes) },
    { id: 'loop', title: 'Loop', fields: loopFields(loop, cuff.yarn, (next) => sock((all) => ({ ...all, loop: next }))) },
    { id: 'fringe', title: 'Fringe', fields: fringeFields(fringe, cuff.yarn, (next) => sock((all) => ({ ...all, fringe: next }))) },
  ];
}

function heelFields(heel: HeelSettings): readonly MakeField[] {
  const set = (more: Partial<HeelSettings>) => sock((all) => ({ ...all, heel: { ...all.heel, ...more } }));
  const own: MakeField[] = [];
  if (heel.kind === 'shortRows') {
    const turn = heel.turn === 'atOnce' ? 'atOnce' : heel.step === 1 ? 'one' : 'two';
    own.push(
      choice({ id: 'heel.turn', label: 'Stitches left open in the heel', before: '', after: ',', sections: HEEL }, turn, { atOnce: 'both sides left open at once', one: 'one stitch fewer in each row, then one more', two: 'two stitches fewer in each row, then two more' }, (way) =>
        set(way === 'atOnce' ? { turn: 'atOnce' } : { turn: 'stepped', step: way === 'one' ? 1 : 2 })),
      choice({ id: 'heel.corners', label: 'Corners of the heel', before: 'its corners', after: ',', sections: [...HEEL, 'foot'] }, heel.corners ? 'tied' : 'free', { free: 'as they are', tied: 'tied to the leg' }, (corners) => set({ corners: corners === 'tied' })),
    );
  }
  if (heel.kind === 'flap') own.push(choice({ id: 'heel.gusset', label: 'Decreases of the gusset', before: 'the gusset decreased in', after: ',', sections: HEEL }, heel.gusset, { every: 'every round', second: 'every second round' }, (gusset) => set({ gusset })));
  return [
    choice({ id: 'heel.kind', label: 'Kind of the heel', before: '', after: '', sections: BELOW.slice(2) }, heel.kind, { shortRows: 'turned in short rows', flap: 'a flap with its gusset', afterthought: 'set in afterwards' }, (kind) => set({ kind })),
    { kind: 'count', id: 'heel.share', label: 'Part of the round that the heel takes, percent', before: 'on', after: '% of the round,', sections: BELOW.slice(2), value: Math.round(heel.share * 100), least: 20, most: 75, set: (percent) => set({ share: percent / 100 }) },
    ...own,
    { kind: 'yarn', id: 'heel.yarn', label: 'Yarn of the heel', before: 'in', after: '', sections: HEEL, letter: heel.yarn, set: (yarn) => set({ yarn }) },
  ];
}

function toeFields(toe: ToeSettings, sizes: number): readonly MakeField[] {
  const set = (more: Partial<ToeSettings>) => sock((all) => ({ ...all, toe: { ...all.toe, ...more } }));
  const sections = ['toe'];
  return [
    choice({ id: 'toe.pace', label: 'Pace of the toe', before: 'decreased in', after: ',', sections }, toe.pace, { every: 'every round', second: 'every second round', half: 'every second round, then in every', graduated: 'every fourth round, then ever more often' }, (pace) => set({ pace })),
    ...(sizes > 1 ? [choice({ id: 'toe.inStep', label: 'Rounds of the toe in all sizes', before: '', after: ',', sections }, toe.inStep ? 'same' : 'own', { same: 'all sizes in the same rounds', own: 'each size in its own rounds' }, (rounds) => set({ inStep: rounds === 'same' }))] : []),
    { kind: 'pin', id: 'toe.stop', label: 'Stitches left at the end of the toe', before: 'down to', after: 'stitches,', sections, key: 'toe.stop' },
    choice({ id: 'toe.close', label: 'Closing of the toe', before: '', after: ',', sections }, toe.close, { drawn: 'drawn together', seam: 'closed with slip stitches' }, (close) => set({ close })),
    { kind: 'yarn', id: 'toe.yarn', label: 'Yarn of the toe', before: 'in', after: '', sections, letter: toe.yarn, set: (yarn) => set({ yarn }) },
  ];
}
