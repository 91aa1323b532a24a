// The entry of the bundled program. It imports the rest dynamically, after checking that this Node is new enough.
import { setFlagsFromString } from 'node:v8';
import { whenShellEnds } from '../needsNode.js';

// Memory is tidied once it has grown by half, not manyfold: a bot shares a small machine.
setFlagsFromString('--heap-growing-percent=50');

whenShellEnds(() => process.kill(process.pid, 'SIGTERM'));

await import('./main.ts');
