// Writes static/licences.txt from what is installed: `npx tsx tests/setup/makeLicences.ts`, after packages have changed.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { licencesFile } from './licences.ts';

const root = join(import.meta.dirname, '../..');
writeFileSync(join(root, 'static/licences.txt'), licencesFile(root));
