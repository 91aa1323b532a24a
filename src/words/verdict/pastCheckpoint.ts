import { type Text } from '../text/text.ts';

/** How a keeper who has looked at a bucket goes past 0.2 %. */
export const pastCheckpoint: Text = [
  'A keeper who decides to add more logs it as usual. If the bucket is a fresh batch, log what went in with remake:yes; the count then starts at zero.',
];
