import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { decisionPage } from '../readme/decisionPage.ts';
import { readmeNow } from '../readme/readmeNow.ts';

const file = 'README.md';
writeFileSync(file, await readmeNow(readFileSync(file, 'utf8')));
mkdirSync('docs', { recursive: true });
writeFileSync('docs/decision.md', decisionPage());
