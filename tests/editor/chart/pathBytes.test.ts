import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathBytes } from '../../../src/editor/chart/pathBytes.ts';

const path = pathBytes();
const whole = fc.integer({ min: -2_000_000_000, max: 2_000_000_000 });

/** The same path as a text put together from its numbers. */
function asText(commands: readonly (readonly [number, number])[]): string {
  return commands
    .map(([x, y], n) => {
      if (n === 0) return `M${x} ${y}`;
      if (y === 0) return `h${x}`;
      if (x === 0) return `v${y}`;
      return `l${x}${y > 0 ? ' ' : ''}${y}`;
    })
    .join('');
}

describe('path data written as bytes', () => {
  it('is the text that its numbers would make', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.oneof(whole, fc.integer({ min: -12, max: 12 })), fc.oneof(whole, fc.constantFrom(0, 9, 10, 99, 100))), { minLength: 1, maxLength: 80 }), (commands) => {
        path.start();
        commands.forEach(([x, y], n) => (n === 0 ? path.moveTo(x, y) : path.lineBy(x, y)));
        path.close();
        expect(path.text()).toBe(`${asText(commands)}z`);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('takes the zero that rounding gives as nought, whatever its sign', () => {
    path.start();
    path.moveTo(Math.round(-0.2), Math.round(-0.4));
    expect(path.text()).toBe('M0 0');
  });

  it('grows for any length and takes path data as it is', () => {
    const glyph = 'm1 2l3 4z'.repeat(5000);
    path.start();
    for (let n = 0; n < 3000; n++) path.moveTo(n, -n);
    path.append(glyph);
    const text = path.text();
    expect(text.startsWith('M0 0M1 -1M2 -2')).toBe(true);
    expect(text.endsWith(`M2999 -2999${glyph}`)).toBe(true);
    path.start();
    expect(path.text()).toBe('');
  });
});
