import type { Pattern } from '../engine/1-pattern/pattern.ts';
import type { Publication } from '../engine/publish/publication.ts';
import type { PublishChoices } from '../engine/publish/publishChoices.ts';
import { archive, textBytes, uniqueNames, type MadeFile } from './archive.ts';
import { openFontBook, type FontBook } from './fonts/fontBook.ts';
import type { PublishResources } from './fonts/fontFiles.ts';
import { pngProblem } from './pngSize.ts';
import { OUTPUTS, type Output, type Progress, type PublishOrder } from './publishOrder.ts';
import { SheetProblem } from './svg/readSvg.ts';
import { writePdf } from './writePdf.ts';
import { openPngWriter } from './writePng.ts';

/** Makes the sheets of a pattern: the engine's own publishing, handed in so that jobs can be tried on any sheets. */
export type MakeSheets = (pattern: Pattern, choices: PublishChoices, asked: { readonly files: boolean }) => Generator<number, Publication>;

/**
 * Makes all files that were asked for, step by step: a generator that yields how far it is before each step and returns the files.
 * A caller cancels by asking for no more steps. App and command line run this same job, so that both give the same bytes.
 */
export async function* publishJob(order: PublishOrder, resources: PublishResources, makeSheets: MakeSheets): AsyncGenerator<Progress, MadeFile[]> {
  const wanted = OUTPUTS.filter((output) => order.outputs.includes(output));
  yield { done: 0, of: 1, making: 'sheets' };
  const publication = yield* setSheets(makeSheets(order.pattern, order.choices, { files: wanted.includes('text') }));
  const { sheets } = publication;
  if (wanted.includes('png')) {
    const problem = sheets.map((sheet) => pngProblem(sheet, order.pngDpi)).find((one) => one !== null);
    if (problem !== undefined) throw new SheetProblem(problem);
  }
  const rest = wanted.reduce((sum, output) => sum + (output === 'text' ? 1 : sheets.length), 0) + (order.zip ? 1 : 0);
  let done = Math.max(1, Math.ceil(rest * (SHEETS_SHARE / (1 - SHEETS_SHARE))));
  const of = done + rest;
  const files: MadeFile[] = [];
  const book = wanted.includes('pdf') || wanted.includes('png') ? await openFontBook(resources) : null;
  for (const output of wanted) {
    yield { done, of, making: output };
    for await (const step of make(output, publication, order, resources, book)) {
      files.push(...step.files);
      done += step.steps;
      yield { done, of, making: output };
    }
  }
  const names = uniqueNames(files.map(({ name }) => name));
  const named = files.map(({ bytes }, index) => ({ name: names[index]!, bytes }));
  if (!order.zip) return named;
  yield { done, of, making: 'zip' };
  return [{ name: uniqueNames([`${publication.name}.zip`])[0]!, bytes: archive(named) }];
}

/** Share of a whole job that setting the sheets is taken for: how much follows is only known then. */
const SHEETS_SHARE = 0.25;

/** Sets the sheets, and says how far they are before each part. */
async function* setSheets(parts: Generator<number, Publication>): AsyncGenerator<Progress, Publication> {
  for (;;) {
    const part = parts.next();
    if (part.done) return part.value;
    yield { done: Math.min(1, part.value) * SHEETS_SHARE, of: 1, making: 'sheets' };
  }
}

/** A step of making one output: the files that it finished, and of how many steps of the whole it was. */
interface Step {
  readonly files: readonly MadeFile[];
  readonly steps: number;
}

async function* make(output: Output, publication: Publication, order: PublishOrder, resources: PublishResources, book: FontBook | null): AsyncGenerator<Step> {
  const { sheets, files, name } = publication;
  switch (output) {
    case 'svg':
      for (const sheet of sheets) yield { files: [{ name: `${sheet.name}.svg`, bytes: textBytes(sheet.svg) }], steps: 1 };
      break;
    case 'text':
      yield { files: files.map((file) => ({ name: file.name, bytes: textBytes(file.text) })), steps: 1 };
      break;
    case 'png': {
      const draw = await openPngWriter(resources, book!);
      for (const sheet of sheets) yield { files: [{ name: `${sheet.name}.png`, bytes: draw(sheet, order.pngDpi) }], steps: 1 };
      break;
    }
    case 'pdf': {
      if (sheets.length === 0) break;
      const { title, creator, rights } = publication;
      const pages = writePdf(sheets, { title, creator, rights, language: 'en', date: dateOf(order.pattern) }, book!);
      let page = await pages.next();
      for (; !page.done; page = await pages.next()) yield { files: [], steps: 1 };
      yield { files: [{ name: `${name}.pdf`, bytes: page.value }], steps: 0 };
    }
  }
}

/** The day that the pattern gives, or none: never the clock's. */
function dateOf({ imprint }: Pattern): Date | null {
  const date = new Date(`${imprint?.date ?? ''}T00:00:00Z`);
  return Number.isNaN(date.getTime()) ? null : date;
}
