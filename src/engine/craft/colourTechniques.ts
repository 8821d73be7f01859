/** How several yarns are worked in one section. */
export type Technique = 'carried' | 'stranded' | 'intarsia' | 'stripes';

/** The four, in the order in which they are offered. */
export const TECHNIQUES = ['carried', 'stranded', 'intarsia', 'stripes'] as const satisfies readonly Technique[];

/** What a technique allows before a technical editor would ask. Lengths in stitches; null: no limit. */
export interface TechniqueLimits {
  /** Stitches over which a yarn may be carried (or lie as a float) in a row. */
  readonly longestCarry: number | null;
  /** Yarns in one row. */
  readonly mostYarns: number | null;
  /** Rows over which a yarn may be carried up before it is cut. */
  readonly rowsUp: number;
}

/** A technique in words: data for the written pattern. Sentences name no stitch, so that they hold in US and UK terms. */
export interface TechniqueRow {
  readonly technique: Technique;
  readonly name: string;
  /** What it is, in one sentence. */
  readonly what: string;
  /** How it is worked, sentence by sentence, in the order of working. */
  readonly how: readonly string[];
}

const CHANGE = 'Change yarn on the last pull-through of the stitch before the new colour.';

/**
 * The techniques in words. Changing on the last pull-through and working over the carried yarn: published lessons in
 * tapestry crochet (C. Ventura) and a crochet magazine; one bobbin for each area of colour, and stripes of an even number of
 * rows so that the yarn hangs where it is needed: published how-to books. The rest is *common practice*.
 */
const ROWS: Readonly<Record<Technique, TechniqueRow>> = {
  carried: {
    technique: 'carried',
    name: 'carried inside',
    what: 'The yarns not in use lie along the top of the row below and are worked over, so that no floats show.',
    how: [
      CHANGE,
      'Lay the yarn not in use along the top of the row below and work the stitches over it.',
      'Carry it to the end of the row even where it is not needed again, so that the fabric is equally thick.',
      'Pull a carried yarn flat after each change, without drawing the row in.',
    ],
  },
  stranded: {
    technique: 'stranded',
    name: 'stranded',
    what: 'The yarns not in use lie loosely as floats across the wrong side.',
    how: [
      CHANGE,
      'Keep the yarn not in use on the wrong side: behind the work on right side rows, before it on wrong side rows.',
      'Leave each float as long as the stitches it passes, stretched a little, and catch a longer one halfway.',
    ],
  },
  intarsia: {
    technique: 'intarsia',
    name: 'intarsia',
    what: 'Every area of colour has a bobbin of its own, which is left hanging until the next row comes to it.',
    how: [
      'Wind a bobbin for each area of colour before you begin.',
      CHANGE,
      'Cross the old yarn over the new one on the wrong side at every change, so that no hole is left.',
      'Leave the old yarn hanging on the wrong side and take it up again in the next row.',
    ],
  },
  stripes: {
    technique: 'stripes',
    name: 'stripes',
    what: 'Each row is worked in one yarn.',
    how: [
      'Change yarn on the last pull-through of the last stitch of the row before the new colour.',
      'Carry the other yarn loosely up the side, and catch it at the edge in every second row.',
      'Cut a yarn that hangs at the other end of the row, or that is not needed for many rows, and join it anew.',
    ],
  },
};

/** A technique in words. */
export function techniqueRow(technique: Technique): TechniqueRow {
  return ROWS[technique];
}

/** The longest float that needs no catching: 2.5 cm, as published lessons in stranded work agree ("no hard-and-fast rule"). */
export const LONGEST_FLOAT_MM = 25;

/** Stitches that a hanging yarn is taken across instead of joining another: *common practice*, from memory. */
export const LONGEST_REACH = 3;

/**
 * What a technique allows if the pattern doesn't say otherwise, for stitches of a width in mm. Stranded: floats up to
 * 2.5 cm (some lessons say 5 stitches), two yarns in a row (*common practice*). Carried inside: any length, as nothing can
 * catch; three yarns, because each carried one makes the stitches taller (published lesson in tapestry crochet). Stripes:
 * one yarn. Yarns are carried up over 4 rows (*common practice*; magazines say there is no fast rule).
 */
export function techniqueLimits(technique: Technique, stitchWidthMm: number): TechniqueLimits {
  switch (technique) {
    case 'carried':
      return { longestCarry: null, mostYarns: 3, rowsUp: 4 };
    case 'stranded':
      return { longestCarry: Math.max(1, Math.floor(LONGEST_FLOAT_MM / stitchWidthMm)), mostYarns: 2, rowsUp: 4 };
    case 'intarsia':
      return { longestCarry: LONGEST_REACH, mostYarns: null, rowsUp: 4 };
    case 'stripes':
      return { longestCarry: null, mostYarns: 1, rowsUp: 4 };
  }
}
