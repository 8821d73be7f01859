// What the engine's stages and an edit cost: `npx tsx tests/bench/engine.ts [--repeats 9] [--shape panel|tube]`. Medians of wall
// time and, in brackets, of processor time (which other work on the machine changes less), ms. The stages are the session's own
// lines. Everything is done once before it is measured, as it is on a page that has been open for a moment.
import { parseArgs } from 'node:util';
import { applyTransaction } from '../../src/engine/1-pattern/applyTransaction.ts';
import type { Edit } from '../../src/engine/1-pattern/edit.ts';
import type { Pattern } from '../../src/engine/1-pattern/pattern.ts';
import { patternFromText } from '../../src/engine/1-pattern/patternFromText.ts';
import { construct } from '../../src/engine/2-construct/construct.ts';
import type { Fabric } from '../../src/engine/3-fabric/fabric.ts';
import { work } from '../../src/engine/3-fabric/work.ts';
import { colour } from '../../src/engine/4-colour/colour.ts';
import { colourGrid, type ColourGrid } from '../../src/engine/4-colour/colourGrid.ts';
import { layOut } from '../../src/engine/5-layout/layOutSection.ts';
import type { Layout } from '../../src/engine/5-layout/layout.ts';
import { sameStitches } from '../../src/engine/5-layout/sameStitches.ts';
import { draw } from '../../src/engine/6-drawing/draw.ts';
import type { Drawing } from '../../src/engine/6-drawing/drawing.ts';
import { writeSvg } from '../../src/engine/6-drawing/writeSvg.ts';
import { printLook } from '../../src/engine/6-drawing/look.ts';
import { sameDrawing } from '../../src/editor/chart/sameDrawing.ts';
import { editedRow, ENGINE_SIZES, enginePattern, type EngineShape, type RowOf } from './enginePattern.ts';

const { values } = parseArgs({ options: { repeats: { type: 'string', default: '9' }, shape: { type: 'string', default: 'panel' } } });
const repeats = Number(values.repeats);
const shape: EngineShape = values.shape === 'tube' ? 'tube' : 'panel';
const DRAWN = { symbols: 'all', numbers: true, grid: true } as const;

interface Cost {
  readonly wallMs: number;
  readonly cpuMs: number;
}

/** Everything that a page holds of one pattern. */
interface Held {
  readonly pattern: Pattern;
  readonly fabric: Fabric;
  readonly grid: ColourGrid;
  readonly layout: Layout;
  readonly drawing: Drawing;
}

function timed<T>(act: () => T): { readonly made: T; readonly cost: Cost } {
  const [wall, cpu] = [performance.now(), process.cpuUsage()];
  const made = act();
  const used = process.cpuUsage(cpu);
  return { made, cost: { wallMs: performance.now() - wall, cpuMs: (used.user + used.system) / 1000 } };
}

function median(costs: readonly Cost[]): Cost {
  const middle = (numbers: number[]): number => numbers.sort((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? 0;
  return { wallMs: middle(costs.map(({ wallMs }) => wallMs)), cpuMs: middle(costs.map(({ cpuMs }) => cpuMs)) };
}

function read(text: string): Pattern {
  const { pattern } = patternFromText(text);
  if (!pattern) throw new Error('the pattern to be measured could not be read');
  return pattern;
}

/** All stages, from text or from an edited pattern with what was held before; `note` is told what each cost. */
function throughStages(from: string | Pattern, before: Held | null, note: (stage: string, cost: Cost) => void): Held {
  const stage = <T>(name: string, act: () => T): T => {
    const { made, cost } = timed(act);
    note(name, cost);
    return made;
  };
  const pattern = typeof from === 'string' ? stage('read', () => read(from)) : from;
  const fabric = stage('work', () => work(construct(pattern, 0), before?.fabric ?? null));
  const grid = before?.fabric === fabric ? before.grid : stage('colour', () => colourGrid(fabric));
  const { yarn } = stage('colour', () => colour(pattern, fabric, 0, grid));
  if (yarn.length !== fabric.count) throw new RangeError(`${yarn.length} yarns for ${fabric.count} stitches`);
  if (before?.fabric === fabric) return { ...before, pattern };
  if (before && stage('compare', () => sameStitches(before.fabric, fabric))) return { ...before, pattern, fabric, grid };
  const layout = stage('lay out', () => layOut(fabric, 0, pattern.gauge, {}, before?.layout));
  const drawn = stage('draw', () => draw(fabric, layout, DRAWN, before?.drawing));
  const drawing = before && stage('compare', () => sameDrawing(before.drawing, drawn)) ? before.drawing : drawn;
  return { pattern, fabric, grid, layout, drawing };
}

function edited(pattern: Pattern, edits: readonly Edit[]): Pattern {
  const applied = applyTransaction(pattern, { label: 'measured', at: 0, edits });
  if (!applied.ok) throw new Error(applied.reason);
  return applied.pattern;
}

/** Gives one row other words. */
function otherWords(pattern: Pattern, share: number, text: string): Pattern {
  const section = pattern.sections[0]!;
  const rows = section.lines.filter((line) => line.kind === 'row');
  const line = rows[Math.max(2, Math.round((rows.length - 1) * share))]!;
  return edited(pattern, [{ kind: 'setLine', section: section.id, line: { ...line, text } }]);
}

/** One brush stroke's end: 20 loose cells in one row. */
function otherCells(pattern: Pattern, share: number, turn: number): Pattern {
  const section = pattern.sections[0]!;
  const rows = section.lines.filter((line) => line.kind === 'row');
  const line = rows[Math.max(2, Math.round((rows.length - 1) * share))]!;
  return edited(pattern, [{ kind: 'setCells', section: section.id, row: { line: line.id, nth: 0 }, size: 0, runs: [{ from: 3 + (turn % 5), letters: 'C'.repeat(20) }] }]);
}

const PLACES = [['a quarter', 0.25], ['a half', 0.5], ['three quarters', 0.75]] as const;
/** Edits of a row's stitches, there and back by turns: of its yarns alone, a stitch of the same height, all stitches of another height, a stitch more, a stitch fewer. */
const EDITS = [
  ['other yarns', ['sc', 'sc']], ['a stitch as high', ['backLoop', 'sc']], ['stitches of another height', ['hdc', 'sc']], ['a stitch more', ['more', 'sc']], ['a stitch fewer', ['fewer', 'sc']],
] as const satisfies readonly (readonly [string, readonly [RowOf, RowOf]])[];
const table = new Map<string, string[]>();
const put = (name: string, column: number, { wallMs, cpuMs }: Cost): void => {
  const line = table.get(name) ?? [];
  line[column] = `${wallMs.toFixed(wallMs < 10 ? 2 : 0)} (${cpuMs.toFixed(cpuMs < 10 ? 1 : 0)})`;
  table.set(name, line);
};

ENGINE_SIZES.forEach(([columns, rows], column) => {
  const costs = new Map<string, Cost[]>();
  const note = (name: string, cost: Cost): void => void costs.set(name, [...(costs.get(name) ?? []), cost]);
  let turn = 0;
  let held: Held | null = null;
  for (let n = -2; n < repeats; n++) {
    // Another title each time: no stage may know the text from before.
    const text = enginePattern(shape, columns, rows).replace('Bench', `Bench ${n}`);
    const stages = new Map<string, Cost>();
    const whole = timed(() => throughStages(text, null, (name, cost) => stages.set(name, sum(stages.get(name), cost))));
    held = whole.made;
    const written = timed(() => writeSvg(held!.drawing, { look: printLook(held!.pattern.yarns), yarnOf: held!.fabric.yarn, rows: held!.fabric.rows, title: 'Bench', desc: '' }));
    if (n < 0) continue;
    for (const [name, cost] of stages) note(name, cost);
    note('whole', whole.cost);
    note('write SVG', written.cost);
  }
  const measure = (name: string, change: (pattern: Pattern, turn: number) => Pattern): void => {
    for (let n = -3; n < repeats; n++) {
      const before: Held = held!;
      const { made, cost } = timed(() => throughStages(change(before.pattern, ++turn), before, () => undefined));
      held = made;
      if (n >= 0) note(name, cost);
    }
  };
  for (const [where, share] of PLACES) {
    measure(`stroke at ${where}`, (pattern, n) => otherCells(pattern, share, n));
    for (const [name, kinds] of EDITS) {
      // The yarns stay those of the first row put in, but where they are what changes.
      const yarns = (n: number): number => (name === 'other yarns' ? n : 1);
      held = throughStages(otherWords(held!.pattern, share, editedRow(shape, columns, yarns(turn), 'sc')), held, () => undefined);
      measure(`${name} at ${where}`, (pattern, n) => otherWords(pattern, share, editedRow(shape, columns, yarns(n), kinds[n % 2]!)));
    }
    held = throughStages(otherWords(held!.pattern, share, editedRow(shape, columns, 1, 'sc')), held, () => undefined);
  }
  for (const [name, list] of costs) put(name, column, median(list));
});

function sum(one: Cost | undefined, other: Cost): Cost {
  return one ? { wallMs: one.wallMs + other.wallMs, cpuMs: one.cpuMs + other.cpuMs } : other;
}

const heads = ENGINE_SIZES.map(([columns, rows]) => `${(columns * rows).toLocaleString('en')} stitches`);
const lines = [[`${shape}, ms (processor)`, ...heads], ...[...table].map(([name, cells]) => [name, ...cells])];
const widths = lines[0]!.map((_, column) => Math.max(...lines.map((line) => (line[column] ?? '').length)));
process.stdout.write(`${lines.map((line) => line.map((cell, column) => (column === 0 ? cell.padEnd(widths[0]!) : cell.padStart(widths[column]!))).join('  ')).join('\n')}\n`);
