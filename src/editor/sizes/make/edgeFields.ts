import type { EdgeSettings } from '../../../engine/2-construct/recipes/settings.ts';
import { choice, type MakeChange, type MakeField } from './makeField.ts';

const EDGES: Readonly<Record<EdgeSettings['edge'], string>> = {
  none: 'no edge', plain: 'plain rows', backLoops: 'ridges in back loops', posts: 'ribs in front and back posts', folded: 'folded double inwards', picot: 'folded double to points',
};

/** Height of an edge that had none, cm. */
const USUAL_CM = 3;

/** What can be changed about an edge. `id` is its section. */
export function edgeFields(id: string, called: string, edge: EdgeSettings, set: (edge: EdgeSettings) => MakeChange, alsoWrites: readonly string[] = []): readonly MakeField[] {
  const sections = [id, ...alsoWrites];
  const kind = choice({ id: `${id}.edge`, label: `Kind of the ${called}`, before: '', after: edge.edge === 'none' ? '' : ',', sections }, edge.edge, EDGES, (next) => set({ ...edge, edge: next, heightCm: next === 'none' ? 0 : edge.heightCm > 0 ? edge.heightCm : USUAL_CM }));
  if (edge.edge === 'none') return [kind];
  return [
    kind,
    { kind: 'cm', id: `${id}.height`, label: `Height of the ${called}`, before: '', after: 'high,', sections, cm: edge.heightCm, set: (heightCm) => set({ ...edge, heightCm }) },
    { kind: 'yarn', id: `${id}.yarn`, label: `Yarn of the ${called}`, before: 'in', after: '', sections: [id], letter: edge.yarn, set: (yarn) => set({ ...edge, yarn }) },
  ];
}
