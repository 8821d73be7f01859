import type { DiscSettings, PanelSettings, PieceSettings, TubeSettings } from '../../../engine/2-construct/recipes/settings.ts';
import { edgeFields } from './edgeFields.ts';
import { bobbleFields, fringeFields, loopFields } from './finishFields.ts';
import { choice, inKind, type MakeChange, type MakeField, type MakePart } from './makeField.ts';
import { sockFields } from './sockFields.ts';

/** What can be changed about the make of a piece after it was begun, part by part. */
export function makeParts(settings: PieceSettings, sizes: number): readonly MakePart[] {
  switch (settings.kind) {
    case 'sock':
      return sockFields(settings, sizes);
    case 'panel':
      return panelFields(settings);
    case 'tube':
      return tubeFields(settings);
    case 'disc':
      return discFields(settings);
    case 'oval':
      return [{ id: 'oval', title: 'Oval', fields: [yarnOf('oval', settings.yarn, (yarn) => inKind('oval', (all) => ({ ...all, yarn })))] }];
    case 'ball':
      return [{ id: 'ball', title: 'Ball', fields: [yarnOf('ball', settings.yarn, (yarn) => inKind('ball', (all) => ({ ...all, yarn })))] }];
  }
}

function yarnOf(id: string, letter: string, set: (letter: string) => MakeChange, alsoWrites: readonly string[] = []): MakeField {
  return { kind: 'yarn', id: `${id}.yarn`, label: `Yarn of the ${id}`, before: 'in', after: '', sections: [id, ...alsoWrites], letter, set };
}

const STITCHES = { sc: 'single crochet', hdc: 'half double crochet', dc: 'double crochet' } as const;
const CHANGES = { stacked: 'stand above one another', staggered: 'stand between those before' } as const;

function panelFields({ stitch, yarn, bobbles, loop, fringe }: PanelSettings): readonly MakePart[] {
  const panel = (change: (settings: PanelSettings) => PanelSettings) => inKind('panel', change);
  return [
    {
      id: 'panel', title: 'Panel',
      fields: [
        choice({ id: 'panel.stitch', label: 'Stitch of the panel', before: '', after: ',', sections: ['panel'] }, stitch, STITCHES, (next) => panel((all) => ({ ...all, stitch: next }))),
        yarnOf('panel', yarn, (next) => panel((all) => ({ ...all, yarn: next }))),
      ],
    },
    { id: 'bobbles', title: 'Bobbles', fields: bobbleFields(bobbles, (next) => panel((all) => ({ ...all, bobbles: next }))) },
    { id: 'loop', title: 'Loop', fields: loopFields(loop, yarn, (next) => panel((all) => ({ ...all, loop: next }))) },
    { id: 'fringe', title: 'Fringe', fields: fringeFields(fringe, yarn, (next) => panel((all) => ({ ...all, fringe: next }))) },
  ];
}

function tubeFields({ start, end, yarn, changes, loop }: TubeSettings): readonly MakePart[] {
  const tube = (change: (settings: TubeSettings) => TubeSettings) => inKind('tube', change);
  return [
    { id: 'start', title: 'First edge', fields: edgeFields('start', 'first edge', start, (next) => tube((all) => ({ ...all, start: next })), ['tube']) },
    {
      id: 'tube', title: 'Tube',
      fields: [
        choice({ id: 'tube.changes', label: 'Increases and decreases of the tube', before: 'its increases and decreases', after: ',', sections: ['tube'] }, changes, CHANGES, (next) => tube((all) => ({ ...all, changes: next }))),
        yarnOf('tube', yarn, (next) => tube((all) => ({ ...all, yarn: next }))),
      ],
    },
    { id: 'end', title: 'Last edge', fields: edgeFields('end', 'last edge', end, (next) => tube((all) => ({ ...all, end: next })), ['tube']) },
    { id: 'loop', title: 'Loop', fields: loopFields(loop, yarn, (next) => tube((all) => ({ ...all, loop: next }))) },
  ];
}

function discFields({ stitch, more, changes, yarn, brim }: DiscSettings): readonly MakePart[] {
  const disc = (change: (settings: DiscSettings) => DiscSettings) => inKind('disc', change);
  const sections = ['crown', 'sides'];
  return [
    {
      id: 'crown', title: 'Disc',
      fields: [
        choice({ id: 'crown.stitch', label: 'Stitch of the disc', before: '', after: ',', sections: [...sections, 'brim'] }, stitch, STITCHES, (next) => disc((all) => ({ ...all, stitch: next }))),
        choice({ id: 'crown.more', label: 'Increases of a round', before: '', after: ',', sections }, more, { constant: 'the same number more in each round', byGauge: 'as many more as the gauge asks for' }, (next) => disc((all) => ({ ...all, more: next }))),
        choice({ id: 'crown.changes', label: 'Increases, round upon round', before: 'which', after: ',', sections }, changes, CHANGES, (next) => disc((all) => ({ ...all, changes: next }))),
        yarnOf('crown', yarn, (next) => disc((all) => ({ ...all, yarn: next })), ['sides']),
      ],
    },
    { id: 'brim', title: 'Edge', fields: edgeFields('brim', 'edge', brim, (next) => disc((all) => ({ ...all, brim: next })), ['sides']) },
  ];
}
