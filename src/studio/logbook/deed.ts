/** Work on a bucket, for the question who did it last. */
export type Deed = 'stir' | 'sieve' | 'addition' | 'reading' | 'any';
