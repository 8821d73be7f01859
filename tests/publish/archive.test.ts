import { unzipSync, strFromU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { archive, safeName, textBytes, uniqueNames } from '../../src/publish/archive.ts';

describe('names of files', () => {
  it.each([
    ['puffin-quay.pdf', 'puffin-quay.pdf'], ['../../etc/passwd', 'etc-passwd'], ['a\\b\\c.svg', 'a-b-c.svg'], ['.hidden', 'hidden'], ['<script>.svg', 'script.svg'], ['con.txt', 'con-file.txt'], ['LPT1', 'LPT1-file'],
    ['Söckchen 木綿.svg', 'Söckchen-木綿.svg'], ['', 'file'], ['...', 'file'], ['a..b', 'a.b'], ['leg\u202e.gvs', 'leg.gvs'], ['a\u0000b.svg', 'a-b.svg'], [`${'x'.repeat(300)}.svg`, `${'x'.repeat(100)}.svg`], ['trailing. ', 'trailing'],
  ])('“%s” becomes “%s”', (name, safe) => {
    expect(safeName(name)).toBe(safe);
    expect(safeName(safe)).toBe(safe);
  });

  it('are numbered where they would be the same, whatever their case', () => {
    expect(uniqueNames(['leg.svg', 'Leg.svg', 'leg.svg', 'leg-2.svg', 'foot'])).toEqual(['leg.svg', 'Leg-2.svg', 'leg-3.svg', 'leg-2-2.svg', 'foot']);
  });
});

describe('an archive', () => {
  const files = [{ name: 'b/a.txt', bytes: textBytes('first — ä') }, { name: 'a.pdf', bytes: new Uint8Array([1, 2, 3]) }, { name: 'a.pdf', bytes: new Uint8Array([4]) }];

  it('has every file, in order, under names that can’t climb out', () => {
    const read = unzipSync(archive(files));
    expect(Object.keys(read)).toEqual(['b-a.txt', 'a.pdf', 'a-2.pdf']);
    expect(strFromU8(read['b-a.txt']!)).toBe('first — ä');
    expect([...read['a-2.pdf']!]).toEqual([4]);
  });

  it('is the same at another time and in another zone', () => {
    const zone = process.env['TZ'];
    const first = archive(files);
    process.env['TZ'] = 'Pacific/Kiritimati';
    const second = archive(files);
    process.env['TZ'] = 'America/Anchorage';
    const third = archive(files);
    if (zone === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zone;
    expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true);
    expect(Buffer.from(third).equals(Buffer.from(first))).toBe(true);
  });
});
