import { describe, expect, it } from 'vitest';
import { instant } from '../../../../src/studio/ids.ts';
import { sessionsAfter, type GlazingSession } from '../../../../src/studio/time/session.ts';

const at = (iso: string) => instant(Date.parse(iso));
const iso = (ms: number) => new Date(ms).toISOString();
const evening = { opens: 18 * 60, closes: 21 * 60 };
const tuesday: GlazingSession = { name: 'tuesday', day: 'tuesday', hours: evening };
const zone = 'America/St_Johns';

const starts = (from: string, closures: string[] = [], sessions = [tuesday]) =>
  [...sessionsAfter(at(from), sessions, { closures }, zone)].map((one) => iso(one.from));

describe('glazing sessions', () => {
  it('come round at the same time on the wall, whatever the clocks do between', () => {
    // Tuesdays 3 and 10 March 2026, before and after the change of 8 March.
    expect(starts('2026-03-01T12:00:00Z').slice(0, 2)).toEqual([
      '2026-03-03T21:30:00.000Z',
      '2026-03-10T20:30:00.000Z',
    ]);
  });

  it('are not held on a day off', () => {
    expect(starts('2026-03-01T12:00:00Z', ['2026-03-03'])[0]).toBe('2026-03-10T20:30:00.000Z');
  });

  it('that have begun are not upcoming', () => {
    expect(starts('2026-03-03T21:30:00Z')[0]).toBe('2026-03-10T20:30:00.000Z');
  });

  it('of one day come in their order', () => {
    const morning = { name: 'beginners', day: 'tuesday' as const, hours: { opens: 540, closes: 660 } };
    expect(starts('2026-03-01T12:00:00Z', [], [tuesday, morning]).slice(0, 2)).toEqual([
      '2026-03-03T12:30:00.000Z',
      '2026-03-03T21:30:00.000Z',
    ]);
  });

  it('of a studio without sessions are an empty list', () => {
    expect(starts('2026-03-01T12:00:00Z', [], [])).toEqual([]);
  });
});
