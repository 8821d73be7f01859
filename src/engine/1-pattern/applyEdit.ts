import type { Applied, Edit } from './edit.ts';
import { applyCells } from './edits/applyCells.ts';
import { applyField } from './edits/applyField.ts';
import { applyImprint } from './edits/applyImprint.ts';
import { applyInsertLines, applyRemoveLines, applySetLine } from './edits/applyLines.ts';
import { applyInsertMotif, applyRemoveMotif, applySetMotif } from './edits/applyMotif.ts';
import { applyInsertPlacement, applyMovePlacement, applyRemovePlacement, applySetPlacement } from './edits/applyPlacement.ts';
import { applyPattern } from './edits/applyPattern.ts';
import { applyPiece } from './edits/applyPiece.ts';
import { applyInsertSection, applyRemoveSection, applySetSection } from './edits/applySection.ts';
import { applyColourLimits, applySectionColour } from './edits/applySectionColour.ts';
import { applyJoinLines, applySplitLine } from './edits/applySplit.ts';
import { applyInsertVersion, applyRemoveVersion, applySetVersion } from './edits/applyVersion.ts';
import { applyWording } from './edits/applyWording.ts';
import type { Pattern } from './pattern.ts';

/**
 * Makes one edit: gives the new pattern (what is not touched is shared with the old one) and the edit that takes it
 * back exactly, or a refusal with its reason in words. Nothing is thrown.
 *
 * One law decides what is refused: an edit that would leave a document which could not be opened from a file again. So
 * an inverse is never refused on the pattern that it was made for. Size vectors are the exception, because a change of
 * sizes needs several edits: `applyTransaction` looks at them when all are made.
 *
 * Cost: linear in the list that is touched (sections, lines of one section, motifs, placements or cells).
 */
export function applyEdit(pattern: Pattern, edit: Edit): Applied {
  switch (edit.kind) {
    case 'set':
      return applyField(pattern, edit);
    case 'insertSection':
      return applyInsertSection(pattern, edit);
    case 'removeSection':
      return applyRemoveSection(pattern, edit);
    case 'setSection':
      return applySetSection(pattern, edit);
    case 'setSectionColour':
      return applySectionColour(pattern, edit);
    case 'setLine':
      return applySetLine(pattern, edit);
    case 'insertLines':
      return applyInsertLines(pattern, edit);
    case 'removeLines':
      return applyRemoveLines(pattern, edit);
    case 'splitLine':
      return applySplitLine(pattern, edit);
    case 'joinLines':
      return applyJoinLines(pattern, edit);
    case 'insertMotif':
      return applyInsertMotif(pattern, edit);
    case 'setMotif':
      return applySetMotif(pattern, edit);
    case 'removeMotif':
      return applyRemoveMotif(pattern, edit);
    case 'insertPlacement':
      return applyInsertPlacement(pattern, edit);
    case 'setPlacement':
      return applySetPlacement(pattern, edit);
    case 'removePlacement':
      return applyRemovePlacement(pattern, edit);
    case 'movePlacement':
      return applyMovePlacement(pattern, edit);
    case 'insertVersion':
      return applyInsertVersion(pattern, edit);
    case 'setVersion':
      return applySetVersion(pattern, edit);
    case 'removeVersion':
      return applyRemoveVersion(pattern, edit);
    case 'setColourLimits':
      return applyColourLimits(pattern, edit);
    case 'setPiece':
      return applyPiece(pattern, edit);
    case 'setImprint':
      return applyImprint(pattern, edit);
    case 'setWording':
      return applyWording(pattern, edit);
    case 'setPattern':
      return applyPattern(pattern, edit);
    case 'setCells':
      return applyCells(pattern, edit);
  }
}
