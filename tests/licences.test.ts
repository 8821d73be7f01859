import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shippedPackages } from './setup/licences.ts';

const root = join(import.meta.dirname, '..');

/** Licences under which packages may be part of an app that is given away (their SPDX names). */
const MAY_BE_SHIPPED = ['MIT', 'ISC', 'BSD-3-Clause', 'Apache-2.0', 'MPL-2.0', 'OFL-1.1', '0BSD'];

describe('the packages of the app', () => {
  const shipped = shippedPackages(root);

  it('are listed with version and licence in the file that goes out with it', () => {
    const file = readFileSync(join(root, 'static/licences.txt'), 'utf8');
    expect(shipped.length).toBeGreaterThan(20);
    for (const { name, version, licence } of shipped) expect(file).toContain(`${name} ${version} (${licence})`);
  });

  it('have licences under which they may be given away', () => {
    expect(shipped.filter(({ licence }) => !MAY_BE_SHIPPED.includes(licence))).toEqual([]);
  });
});
