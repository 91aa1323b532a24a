/** What somebody does to a bucket, when it is asked who did it last. */
export type Deed = 'stir' | 'sieve' | 'addition' | 'reading' | 'any';
