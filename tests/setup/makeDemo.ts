// Makes the demo's two files in static/ from its structure and motifs: the pattern file, and the written pattern that gives
// the same fabric. Run by `npx tsx tests/setup/makeDemo.ts`; a test fails when the files are not what this makes.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeDemo } from './demo.ts';

const root = join(import.meta.dirname, '../..');
const demo = makeDemo(readFileSync(join(root, 'tests/samples/puffin-quay/structure.txt'), 'utf8'));
writeFileSync(join(root, 'static/puffin-quay.json'), demo.file);
writeFileSync(join(root, 'static/puffin-quay.txt'), demo.text);
