import type { BucketEntry, BucketEvent } from '../../studio/bucket/bucketEvent.ts';
import { createHash } from 'node:crypto';
import { entryId, hours, instant, later, memberId, seq, streamNo } from '../../studio/ids.ts';
import { foldBucket } from '../../studio/bucket/foldBucket.ts';
import { readBucketEvent } from '../entries/eventRow.ts';

const hour = 3_600_000;

/** A short life of a bucket in which everything that is ever logged of one happens. */
export const probeEvents: readonly BucketEvent[] = [
  {
    kind: 'setup',
    settings: {
      name: 'Probe',
      use: 'dipping',
      pail: 19_000,
      shape: { bottom: 250, top: 290, height: 340 },
      gravity: { low: 1.42, high: 1.46 },
      solids: 2.6,
      restLimit: 4 * hour,
      shelfLife: 168 * hour,
      mesh: 80,
      cautions: ['gloves'],
    },
    volume: 15_000,
  },
  {
    kind: 'reading',
    gravity: { value: 1.4, u95: 0.02, by: 'hydrometer' },
    stirred: false,
    seen: ['clear-water', 'cake'],
  },
  { kind: 'stir', minutes: 2, tool: 'mixer', seen: ['lumps'] },
  { kind: 'stir', minutes: 3, seen: ['cake-gone'] },
  {
    kind: 'reading',
    gravity: { value: 1.45, u95: 0.008, by: 'weight' },
    flow: { cup: 'ford4', kind: 'ford4', seconds: 13.5 },
    gap: 70,
    temperature: 18,
    stirred: true,
    seen: ['none'],
  },
  { kind: 'addition', added: { what: 'water', volume: 450 } },
  { kind: 'addition', added: { what: 'draw-off', volume: 200 } },
  { kind: 'addition', added: { what: 'dry', mass: 300 } },
  { kind: 'addition', added: { what: 'flocculant', volume: 15 } },
  { kind: 'addition', added: { what: 'flocculant', heptahydrate: 4 } },
  { kind: 'reading', look: 'right', stirred: true, seen: [] },
  { kind: 'addition', added: { what: 'glaze', volume: 2_000, gravity: 1.5, gravityU: 0.02 } },
  { kind: 'addition', added: { what: 'taken', volume: 1_500 } },
  { kind: 'sieve', mesh: 80 },
  { kind: 'tile', seconds: 3, thickness: 0.9, absorption: 12 },
  { kind: 'change', settings: { nick: 'p', solids: 2.55 }, cleared: ['shape'], volume: 15_500 },
  { kind: 'hold', cause: 'other', why: 'a sponge fell in' },
  { kind: 'release' },
  { kind: 'reading', gravity: { value: 1.46, u95: 0.01, by: 'stated' }, stirred: true, seen: [] },
  { kind: 'reading', gravity: { value: 1.38, u95: 0.01, by: 'stated' }, stirred: true, seen: [] },
  { kind: 'reading', gravity: { value: 1.385, u95: 0.01, by: 'stated' }, stirred: true, seen: [] },
  { kind: 'addition', added: { what: 'deflocculant', mass: 2 }, remake: true },
  { kind: 'addition', added: { what: 'flocculant' } },
  { kind: 'addition', added: { what: 'water' } },
  { kind: 'addition', added: { what: 'other', name: 'gum', volume: 50 } },
  { kind: 'hold', cause: 'frozen', why: 'left outside' },
  { kind: 'reading', look: 'thin', seen: ['skin'] },
  { kind: 'stir', seen: ['none'] },
  { kind: 'retire' },
  { kind: 'undo', of: 8 },
].map((event) => readBucketEvent(JSON.stringify(event)));

const probe = probeEvents.map((event, i): BucketEntry => {
  const place = seq(i + 1);
  // Some within minutes of one another, some hours.
  const at = later(instant(1_700_000_000_000), hours(i % 3 === 0 ? i : i - 0.9));
  const stream = streamNo(1);
  return { id: entryId(stream, place), stream, seq: place, at, loggedAt: at, by: memberId('probe'), event };
});

const digest = (value: unknown) =>
  createHash('sha256').update(JSON.stringify(value)).digest('base64url').slice(0, 16);

/**
 * Changes when the same entries fold to another state than in an earlier release: states cached by that one are
 * then folded anew. Told from a probe, so that nobody has to remember to raise a number.
 */
export const foldFingerprint = digest(probe.map((_, i) => foldBucket(streamNo(1), probe.slice(0, i + 1))));
