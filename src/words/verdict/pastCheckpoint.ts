import type { Text } from '../text/text.ts';

/** How a keeper who has looked at a bucket goes past 0.2 %. */
export const pastCheckpoint: Text = [
  'A keeper who goes on logs the dose all the same: /added bucket: what:flocculant amount:. Was it remade? Log what went in with remake:yes, and the count starts again.',
];
