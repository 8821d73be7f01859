import type { SectionColour } from '../../../engine/1-pattern/pattern.ts';
import type { Command } from '../benchState.ts';

/** Says how the colours of a section are worked; what is `undefined` is not said any more. No step where nothing changes. */
export function setSectionColour(section: string, change: { readonly [F in keyof SectionColour]?: SectionColour[F] | undefined }): Command {
  return ({ pattern, at }) => {
    const owner = pattern.sections.find((each) => each.id === section);
    if (!owner) return null;
    const told = Object.fromEntries(Object.entries({ ...owner.colour, ...change }).filter(([, value]) => value !== undefined)) as SectionColour;
    const colour = Object.keys(told).length > 0 ? told : null;
    if (JSON.stringify(colour) === JSON.stringify(owner.colour ?? null)) return null;
    return { label: `Colours of ${owner.name.toLowerCase()}`, at, edits: [{ kind: 'setSectionColour', section, colour }] };
  };
}
