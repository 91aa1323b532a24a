import fc from 'fast-check';

// CI uses a fixed seed, so that a change is judged on the same cases. A developer's runs use new seeds and so search
// on.
if (process.env['CI'] !== undefined) fc.configureGlobal({ seed: 20260301 });
