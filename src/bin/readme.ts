import { readFileSync, writeFileSync } from 'node:fs';
import { readmeNow } from '../readme/readmeNow.ts';

const file = 'README.md';
writeFileSync(file, await readmeNow(readFileSync(file, 'utf8')));
