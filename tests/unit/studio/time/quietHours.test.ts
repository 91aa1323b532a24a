import { describe, expect, it } from 'vitest';
import { instant } from '../../../../src/studio/ids.ts';
import { outsideQuiet, quietAt, usualQuiet } from '../../../../src/studio/time/quietHours.ts';

const at = (iso: string) => instant(Date.parse(iso));
const iso = (ms: number) => new Date(ms).toISOString();
const zone = 'America/St_Johns';

describe('quiet hours', () => {
  // St John's: UTC-3:30 in winter, UTC-2:30 from 8 March 2026, 02:00 on.
  it('hold news back until the morning on the wall, in the night that loses an hour too', () => {
    expect(iso(outsideQuiet(at('2026-03-08T04:00:00Z'), usualQuiet, zone, 'after'))).toBe(
      '2026-03-08T10:30:00.000Z',
    );
    expect(iso(outsideQuiet(at('2026-03-07T04:00:00Z'), usualQuiet, zone, 'after'))).toBe(
      '2026-03-07T11:30:00.000Z',
    );
  });

  it('bring a warning forward to the evening before', () => {
    expect(iso(outsideQuiet(at('2026-03-08T09:00:00Z'), usualQuiet, zone, 'before'))).toBe(
      '2026-03-08T01:25:00.000Z',
    );
  });

  it('begin on the minute and end on the minute', () => {
    expect(quietAt(at('2026-03-07T01:29:59Z'), usualQuiet, zone)).toBeUndefined();
    expect(quietAt(at('2026-03-07T01:30:00Z'), usualQuiet, zone)).toBeDefined();
    expect(quietAt(at('2026-03-07T11:30:00Z'), usualQuiet, zone)).toBeUndefined();
  });

  it('leave everything where it is when there are none', () => {
    const night = at('2026-03-08T04:00:00Z');
    expect(outsideQuiet(night, undefined, zone, 'after')).toBe(night);
  });
});
