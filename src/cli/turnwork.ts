import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { printSchematic, printSection, wordsToHtml, wordsToMarkdown, wordsToText, writeWords, type Pattern } from '../engine/index.ts';
import { exitCodeOf, FINE, UNREADABLE, WRONG } from './exitCode.ts';
import { loadFile, type Loaded } from './loadFile.ts';
import { askedFor, USAGE, type Options } from './options.ts';
import { pieceReport, pieceToText } from './pieceReport.ts';
import { publishAskedFor } from './publishOptions.ts';
import { readReport, reportToText } from './readReport.ts';
import { workedSize } from './workedSize.ts';

/** Runs one command; prints to standard output, problems to standard error; returns the exit code. */
async function main(args: readonly string[]): Promise<number> {
  if (args[0] === 'publish' && !args.includes('--help')) {
    const wanted = publishAskedFor(args.slice(1));
    return typeof wanted === 'string' ? problem(`${wanted}\n\n${USAGE}`) : (await import('./publishFiles.ts')).publishFiles(wanted);
  }
  const asked = askedFor(args);
  if (!asked.ok) {
    console.error(asked.problem === '' ? USAGE : `${asked.problem}\n\n${USAGE}`);
    return asked.problem === '' ? FINE : UNREADABLE;
  }
  const loaded = loadFile(asked.file);
  if ('problem' in loaded) return problem(loaded.problem);
  const { options } = asked;
  const sizes = sizesAsked(loaded.pattern, options, asked.command === 'words');
  if (typeof sizes === 'string') return problem(sizes);
  switch (asked.command) {
    case 'read': {
      const report = readReport(loaded, sizes[0]!);
      console.log(options.json ? JSON.stringify(report, null, 2) : reportToText(report));
      return report.findings.some((found) => found.degree === 'wrong') ? WRONG : FINE;
    }
    case 'words': {
      const worked = sizes.map((size) => workedSize(loaded.pattern, size));
      const words = writeWords({ pattern: loaded.pattern, sizes: worked, terms: options.terms ?? loaded.pattern.wording?.terms ?? loaded.pattern.terms, style: { ...loaded.pattern.wording, ...options.style } });
      console.log(options.format === 'md' ? wordsToMarkdown(words) : options.format === 'html' ? wordsToHtml(words) : wordsToText(words));
      return exitCodeOf(loaded, sizes);
    }
    case 'chart':
      return writeCharts(loaded, sizes[0]!, options);
    case 'piece': {
      const report = pieceReport(loaded, sizes[0]!);
      console.log(options.json ? JSON.stringify(report, null, 2) : pieceToText(report));
      const unwritten = options.out === null ? null : writeSchematics(loaded.pattern, sizes[0]!, options.out);
      return unwritten ?? (report.findings.some((found) => found.degree === 'wrong') ? WRONG : FINE);
    }
  }
}

function writeCharts(loaded: Loaded, size: number, options: Options): number {
  const { pattern } = loaded;
  const wanted = options.section?.toLowerCase();
  const chosen = pattern.sections.flatMap((section, index) => (wanted === undefined || section.name.toLowerCase() === wanted ? [index] : []));
  if (chosen.length === 0) return problem(`There is no section “${options.section}”; the pattern has ${pattern.sections.map((section) => section.name).join(', ') || 'none'}.`);
  const { fabric, colours } = workedSize(pattern, size);
  const out = options.out!;
  try {
    mkdirSync(out, { recursive: true });
    for (const section of chosen) {
      const files = printSection(pattern, fabric, colours.yarn, section, size, {
        mmPerStitch: options.mm, mono: options.mono, symbols: options.symbols, hand: options.leftHanded ? 'left' : 'right', paper: options.paper, view: options.view,
      });
      for (const file of files) {
        writeFileSync(join(out, file.name), file.text);
        console.log(join(out, file.name));
      }
    }
  } catch (error) {
    return problem(`${out}: ${(error as Error).message}`);
  }
  return exitCodeOf(loaded, [size]);
}

/** Writes both schematics of a size; the exit code of what went wrong, or null. Standard output is the report's. */
function writeSchematics(pattern: Pattern, size: number, out: string): number | null {
  const { fabric, colours } = workedSize(pattern, size);
  try {
    mkdirSync(out, { recursive: true });
    for (const file of printSchematic(pattern, fabric, colours.yarn, size)) writeFileSync(join(out, file.name), file.text);
    return null;
  } catch (error) {
    return problem(`${out}: ${(error as Error).message}`);
  }
}

/** Indices of the sizes asked for; a sentence when there is no such size. */
function sizesAsked(pattern: Pattern, options: Options, all: boolean): number[] | string {
  if (options.size === null || (all && options.size === 'all')) return all ? pattern.sizes.map((_, size) => size) : [0];
  const index = pattern.sizes.findIndex((name) => name.toLowerCase() === options.size!.toLowerCase());
  return index >= 0 ? [index] : `There is no size “${options.size}”; the pattern has ${pattern.sizes.filter((name) => name !== '').join(', ') || 'one size without a name'}.`;
}

function problem(text: string): number {
  console.error(text);
  return UNREADABLE;
}

process.exitCode = await main(process.argv.slice(2));
