import { expect, it } from 'vitest';
import { memorySnapshots, type Snapshot } from '../../../src/store/engine/snapshotCache.ts';
import { studioId } from '../../../src/studio/ids.ts';
import { newStudio } from '../../../src/studio/settings/foldStudio.ts';

it('keeps the studios that were used last, be it only read', () => {
  const cache = memorySnapshots(2);
  const snapshot: Snapshot = { studio: newStudio, streams: new Map() };
  const [read, idle, fresh] = ['read', 'idle', 'fresh'].map(studioId);
  if (read === undefined || idle === undefined || fresh === undefined) throw new Error('three ids');
  cache.set(read, snapshot);
  cache.set(idle, snapshot);
  cache.get(read);
  cache.set(fresh, snapshot);
  expect([read, idle, fresh].map((studio) => cache.get(studio) !== undefined)).toEqual([true, false, true]);
});
