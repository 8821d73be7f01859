import type { Amount, Instruction, Into, Stated } from '../../../src/engine/notation/instruction.ts';

/**
 * Instructions in short: `2×sc@next3` two sc in each of the next 3 stitches, `sc&2` two together, `F.` / `B.` loops, `FP.` /
 * `BP.` posts, `bobble'5` legs (`bobble'3tr` of another stitch), `@end-3` to the last 3, `<…>` a group, `*…*` `(…)` `[…]` repeats with `x6` or `>end`, `$A` with A,
 * `to$A` change to A, `"…"` a remark, `?…?` words not read, ` = 24 sts` the stated count.
 */
export function compactRow(body: readonly Instruction[], stated: Stated | null = null): string {
  return body.map(compactClause).join(' ') + (stated ? compactCount(stated) : '');
}

function compactCount({ count, unit, of, step, list, also }: Stated): string {
  const more = `${(also ?? []).map((one) => `, ${amount(one.count)} ${one.unit}`).join('')}${list ? ` [${list.map(amount).join(' ')}]` : ''}`;
  return ` = ${amount(count)}${unit === '' ? '' : ` ${unit}`}${of === 'last' ? ' last' : ''}${step === null ? '' : ` step ${amount(step)}`}${more}`;
}

function amount(value: Amount | 'rest'): string {
  return typeof value === 'object' ? value.join('/') : String(value);
}

function place(into: Into): string {
  const what = 'what' in into && into.what !== 'st' ? `:${into.what}` : '';
  switch (into.at) {
    case 'next':
      return `next${amount(into.count)}${what}${into.loops === undefined ? '' : `*${into.loops}`}`;
    case 'across':
      return `${into.word}${into.except === 0 ? '' : `-${amount(into.except)}`}${what}${into.loops === undefined ? '' : `*${into.loops}`}`;
    case 'open':
      return `${into.word}${amount(into.count)}`;
    case 'section':
      return `of<${into.name}>${amount(into.count)}`;
    case 'beside':
      return `${into.side}:${into.what}`;
    case 'fromHook':
      return `hook${into.nth}`;
    default:
      return `${into.at}${what}`;
  }
}

const BRACKETS = { star: ['*', '*'], paren: ['(', ')'], bracket: ['[', ']'] } as const;

function compactClause(node: Instruction): string {
  switch (node.kind) {
    case 'work': {
      const { kind, loop, post, spike, legs, together } = node.stitch;
      const way = `${loop === 'both' ? '' : loop === 'front' ? 'F.' : 'B.'}${post === 'none' ? '' : post === 'front' ? 'FP.' : 'BP.'}${spike > 0 ? `spike${spike}.` : ''}`;
      return `${node.each === 1 ? '' : `${amount(node.each)}×`}${way}${kind}${legs > 0 ? `'${legs}${node.stitch.legKind ?? ''}` : ''}${together > 1 ? `&${together}` : ''}@${place(node.into)}`;
    }
    case 'group':
      return `<${compactRow(node.body)}>@${place(node.into)}`;
    case 'chain':
      return `ch${amount(node.count)}${node.counts === null ? '' : `=${node.counts}`}`;
    case 'skip':
      return `skip${amount(node.count)}${node.what === 'st' ? '' : `:${node.what}`}`;
    case 'leave':
      return `leave${amount(node.count)}${node.what ? `:${node.what}` : ''}`;
    case 'mesh':
      return `${node.mesh}${amount(node.count)}`;
    case 'repeat': {
      const { times } = node;
      const [open, close] = BRACKETS[node.style];
      return `${open}${compactRow(node.body)}${close}${times.kind === 'times' ? `x${amount(times.times)}` : `>${times.word}${times.except === 0 ? '' : `-${amount(times.except)}`}`}`;
    }
    case 'joinAt':
      return `joinAt:${node.yarn ?? '-'}:${amount(node.nth)}:${node.from}`;
    case 'yarn':
      return `${node.word === 'with' ? '' : 'to'}$${node.letter}`;
    case 'asRows':
      return `as${node.last === undefined ? (node.rows?.join('+') ?? `${node.from}-${node.to}`) : `Last${node.last}`}${(node.changes ?? []).map(({ runs, by }) => `{${typeof runs === 'string' ? runs : runs.join('+')}:${amount(by)}}`).join('')}`;
    case 'inPattern':
      return node.even ? `even@${node.into.at === 'across' ? node.into.word : ''}` : `pattern@${place(node.into)}`;
    case 'spread':
      return `${node.stitch.kind}@${node.word}:${amount(node.by)}`;
    case 'evenly':
      return `${node.count === null ? '' : `${amount(node.count)}×`}${node.stitch.kind}@evenly:${node.along}`;
    case 'remark':
      return `"${node.text}"`;
    case 'unread':
      return `?${node.text}?`;
    default:
      return node.kind;
  }
}
