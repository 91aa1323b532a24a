// The entry of the bundled program. It imports the rest dynamically, after checking that this Node is new enough.
import '../needsNode.js';

await import('./main.ts');
