import { describe, expect, it } from 'vitest';
import { openGlazeRoom } from '../../helpers/room/glazeRoom.ts';

const plan = async (use: string, line: string) => {
  const room = await openGlazeRoom();
  await room.keeper(0, `/bucket add name:Kelp pail:2l volume:1l use:${use}`);
  return room.say(1, line);
};

describe('a plan for a bucket that is not dipped into', () => {
  it('is coats of a brush, and says that a dip time does not apply', async () => {
    const answer = await plan('brushing', '/prep piece:jug bucket:kelp thickness:1mm surface:carved cone:08');
    const steps = answer.reasons.join('\n');
    // The handbook's note on brushing (common practice).
    expect(steps).toMatch(/three even coats.*each across the one before, each dull before the next/);
    expect(steps).toMatch(/first coat well into the carving/);
    expect(steps).not.toMatch(/[Dd]ip it/);
    expect(answer.dont.join(' ')).toMatch(/a brushing bucket, so a dip time does not apply/);
    expect(answer.dont.join(' ')).not.toMatch(/tiles, for 1, 3 and 6 s/);
    expect(answer.data).toMatchObject({ seconds: null, use: 'brushing' });
    expect(answer.facts[0]?.label).toBe('Brush');
    // Three coats, each dull after a quarter of an hour (common practice), before the foot is wiped.
    const { dipAt, steps: timed } = answer.data as { dipAt: string; steps: { step: string; at: string }[] };
    const foot = timed.find(({ step }) => step === 'foot')?.at ?? '';
    expect((Date.parse(foot) - Date.parse(dipAt)) / 60_000).toBe(45);
  });

  it('is passes of a spray in the booth, with the warning of the mist', async () => {
    const answer = await plan('spraying', '/prep piece:jug bucket:kelp');
    expect(answer.reasons.join('\n')).toMatch(/Spray Kelp on in the booth, in thin passes/);
    expect(answer.cautions.join(' ')).toMatch(/Spray only in a booth.*respirator/);
    expect(answer.facts[0]?.label).toBe('Spray');
  });

  it('is a dip as before for a dipping bucket', async () => {
    const answer = await plan('dipping', '/prep piece:jug bucket:kelp');
    expect(answer.reasons.join('\n')).toMatch(/Dip it in Kelp/);
    expect(answer.data).toMatchObject({ use: 'dipping' });
  });
});
