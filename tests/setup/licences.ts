import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly dev?: boolean;
}

/** Build tools whose own code is part of the built app. */
const BUILT_IN = ['node_modules/svelte', 'node_modules/@sveltejs/kit'];
/** Asked for by packages, but no part of the app. */
const NOT_SHIPPED = new Set(['node_modules/typescript']);

/** One package that is part of the app. */
export interface ShippedPackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Folder below the project. */
  readonly folder: string;
}

/** The packages that the built app is made of, by name, as the lock file has them. */
export function shippedPackages(root: string): readonly ShippedPackage[] {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as { packages: Record<string, Locked> };
  return Object.entries(packages)
    .filter(([folder, { dev }]) => folder !== '' && (!dev || BUILT_IN.includes(folder)) && !NOT_SHIPPED.has(folder))
    .map(([folder, { version, license }]) => ({ name: folder.replace(/^.*node_modules\//, ''), version, licence: license ?? licenceOfText(root, folder), folder }))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));
}

/** Some old packages say their licence in its text only. */
function licenceOfText(root: string, folder: string): string {
  const text = licenceText(root, folder);
  return /\bMIT\b|Permission is hereby granted, free of charge/.test(text ?? '') ? 'MIT' : 'see its text';
}

/** The licence's own text in a package's folder, or null where it has none. */
export function licenceText(root: string, folder: string): string | null {
  const at = join(root, folder);
  const file = existsSync(at) ? readdirSync(at).find((name) => /^(licen[cs]e|copying)(\.|-|$)/i.test(name)) : undefined;
  return file === undefined ? null : readFileSync(join(at, file), 'utf8').replace(/\r\n?/g, '\n').trim();
}

/** The file of licences that goes out with the app. */
export function licencesFile(root: string): string {
  const packages = shippedPackages(root);
  const list = packages.map(({ name, version, licence }) => `${name} ${version} (${licence})`);
  const texts = packages.map(({ name, version, licence, folder }) => `${'-'.repeat(72)}\n${name} ${version}: ${licence}\n\n${licenceText(root, folder) ?? 'The package gives no text of its own.'}\n`);
  return `What Turnwork is made of, beside its own code (MIT)\n\n${list.join('\n')}\nDejaVu Sans (Bitstream Vera and Arev licences), Literata and Alegreya Sans (SIL Open Font License 1.1): see below\n\n${texts.join('\n')}\n${'-'.repeat(72)}\nTypefaces\n\n${readFileSync(join(root, 'src/publish/fonts/files/LICENCES.txt'), 'utf8').trim()}\n`;
}
