import { type Text } from '../text/text.ts';

/** How a keeper who has looked at a bucket goes past 0.2 %. */
export const pastCheckpoint: Text = [
  'If a keeper decides to add more, they log it as usual: /added bucket: what:flocculant amount:. If the bucket is a fresh batch, log what went in with remake:yes; the count then starts at zero.',
];
