// The program as it is bundled. Everything else is loaded by an import of its own, once this Node is known to be new enough.
import '../needsNode.js';

await import('./main.ts');
