import fc from 'fast-check';

// What goes in is judged by one and the same draw; at a desk every run draws anew, and so goes on looking.
if (process.env['CI'] !== undefined) fc.configureGlobal({ seed: 20260301 });
