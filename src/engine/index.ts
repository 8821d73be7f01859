/** The engine's public list: what pages, keeping and the command line may use. Stages in their order, then the readings. */
export { STITCHES, stitchCode, stitchOfCode, stitchRow, type StitchKind, type StitchRow } from './craft/stitches.ts';
export { CAUTION_GUIDANCE, cautionsFor, type Caution, type Feature, type Wearer } from './craft/cautions.ts';
export type { Terms } from './craft/terms.ts';
export { techniqueRow, type Technique } from './craft/colourTechniques.ts';
export { amountFor, type Amount, type Instruction, type Stated, type TextRange } from './notation/instruction.ts';
export { finding, type Degree, type Finding, type Mend, type Rule, type Where } from './notation/finding.ts';
export { readRow } from './notation/readRow.ts';
export { writeRow } from './notation/writeRow.ts';

export type { CellRun, ColourLimits, Edition, Gauge, Ground, Imprint, Line, Motif, Pattern, Placement, PrintMark, RowKey, Section, SectionColour, Version, Wording, Yarn } from './1-pattern/pattern.ts';
export type { Measure, MeasureName, PieceFacts, Pins, Swatch, YarnSupply } from './1-pattern/pieceFacts.ts';
export type { Applied, Edit, Field, Transaction } from './1-pattern/edit.ts';
export { applyEdit } from './1-pattern/applyEdit.ts';
export { applyTransaction } from './1-pattern/applyTransaction.ts';
export { historyList, NO_HISTORY, perform, record, redo, undo, type History, type Step } from './1-pattern/history.ts';
export { openPatternFile, writePatternFile, type Opened } from './1-pattern/file.ts';
export { describeOpened } from './1-pattern/describeOpened.ts';
export { patternFromText } from './1-pattern/patternFromText.ts';
export { patternInVersion } from './1-pattern/patternInVersion.ts';

export type { Program, ProgramRow } from './2-construct/program.ts';
export { construct, lineOf } from './2-construct/construct.ts';
export { readLine } from './2-construct/readLine.ts';
export { gaugeOf } from './2-construct/recipes/gaugeBook.ts';
export { makePiece, type MadePiece } from './2-construct/recipes/makePiece.ts';
export { gradePattern, type Graded, type Grading } from './2-construct/recipes/gradePattern.ts';
export { settingsOf } from './2-construct/recipes/settingsOf.ts';
export type { PieceRequest, PieceSettings } from './2-construct/recipes/settings.ts';
export type { Origin } from './2-construct/recipes/origin.ts';
export { startPattern, type Construction, type StartSettings } from './2-construct/recipes/startPattern.ts';

export { FLAG, type Fabric, type WorkedRow } from './3-fabric/fabric.ts';
export { work } from './3-fabric/work.ts';

export type { Colours, PlacementFit } from './4-colour/colours.ts';
export { colour } from './4-colour/colour.ts';
export { colourGrid, type ColourGrid } from './4-colour/colourGrid.ts';
export { carryOf, type PieceCarry, type RowCarry, type SectionCarry } from './4-colour/carry.ts';
export { fabricWithStitches, setStitches, type SetStitches } from './4-colour/setStitches.ts';

export type { Box, Layout } from './5-layout/layout.ts';
export { layOut } from './5-layout/layOutSection.ts';
export { shapeSolid } from './5-layout/solid/shapeSolid.ts';
export type { Solid } from './5-layout/solid/solid.ts';

export type { Drawing, Glyph, Mark, MarkRole, Stroke } from './6-drawing/drawing.ts';
export { draw } from './6-drawing/draw.ts';
export { solidPaths } from './6-drawing/solidPaths.ts';
export { SOLID_CAPTION, solidSvg } from './6-drawing/solidSvg.ts';
export { writeSvg } from './6-drawing/writeSvg.ts';
export { printSection, type PrintFile, type SectionPrint } from './6-drawing/printSection.ts';
export { printSchematic, type SchematicFile, type SchematicPrint } from './6-drawing/schematic/printSchematic.ts';
export { lengthWords } from './6-drawing/schematic/lengthWords.ts';

export { flatness, type FlatnessRow } from './readings/flatness/flatness.ts';
export { ledger, yarnsOfRow, type LedgerRow } from './readings/ledger/ledger.ts';
export { writeWords } from './readings/words/writeWords.ts';
export { wordsToText } from './readings/words/wordsToText.ts';
export { wordsToHtml, wordsToMarkdown } from './readings/words/wordsToMarkup.ts';
export type { WordStyle } from './notation/writeWork.ts';
export { certainMend } from './readings/checks/certainMend.ts';
export { check } from './readings/checks/check.ts';
export { describeFinding, placeOfFinding } from './readings/checks/prose.ts';
export { motifMultiple, type MotifMultipleCost } from './readings/sizes/motifMultiple.ts';
export { sectionWants, type SectionWants } from './readings/sizes/sectionWants.ts';
export { sizeReport, type FinishedSize, type MotifCost, type SectionDifference, type SectionSize, type SizeReport } from './readings/sizes/sizeReport.ts';
export { pinChecks } from './readings/sizes/pinChecks.ts';
export { sizeChecks } from './readings/sizes/sizeChecks.ts';
export { featuresOf } from './readings/sizes/featuresOf.ts';
export { footFrom, sockSizes, type SockSize } from './readings/sizes/sockSizes.ts';
export { errata, type Erratum } from './readings/errata/errata.ts';
export { errataText } from './readings/errata/errataText.ts';
export { yarnBySection, type SectionYarn } from './readings/yarn/yarnBySection.ts';
export { yarnNeed, type YarnAmount, type YarnNeed, type YarnTotal } from './readings/yarn/yarnNeed.ts';
export type { YarnNumbers } from './readings/yarn/yarnNumbers.ts';
