// Runs a program under a Node that is new enough for it: `node src/run.js src/bin/say.ts …`.
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import './needsNode.js';

const [node, , program, ...typed] = process.argv;
process.argv = [node, resolve(program), ...typed];
await import(pathToFileURL(process.argv[1]).href);
