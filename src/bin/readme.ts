import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { decisionPage } from '../generated/decisionPage.ts';
import { foldKeyModule } from '../generated/foldKeyNow.ts';
import { readmeNow } from '../generated/readmeNow.ts';

const file = 'README.md';
writeFileSync(file, await readmeNow(readFileSync(file, 'utf8')));
mkdirSync('docs', { recursive: true });
writeFileSync('docs/decision.md', decisionPage());
writeFileSync('src/store/states/foldKey.ts', foldKeyModule());
