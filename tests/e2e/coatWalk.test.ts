import { execFileSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { answerSchema } from '../helpers/discord/answerSchemas.ts';
import { storeFile } from '../helpers/store/storeFile.ts';

const source = (file: string) => fileURLToPath(new URL(`../../src/${file}`, import.meta.url));
const say = [source('run.js'), source('bin/say.ts')];
const coatsSchema = z.object({
  coats: z.array(
    z.looseObject({
      id: z.string(),
      kind: z.string(),
      pieces: z.string(),
      onAt: z.iso.datetime(),
      readyAt: z.iso.datetime(),
      ready: z.boolean(),
    }),
  ),
});

/** Runs one line at the real terminal, at the given instant. */
const at = (file: string, instant: string, line: string, ...more: string[]) => {
  const printed = execFileSync(process.execPath, [...say, '--json', '--at', instant, ...more, line], {
    env: { PATH: process.env['PATH'], TZ: 'Asia/Tokyo', DATABASE_FILE: file },
    encoding: 'utf8',
  });
  return answerSchema.parse(JSON.parse(printed));
};
const coatAt = (file: string, instant: string) => {
  const [coat] = coatsSchema.parse(at(file, instant, '/coat list').data).coats;
  return coat;
};

/**
 * Every evening at 19:00 or 19:30, before a night in which the clocks change. Expected times are worked out by hand
 * from the zones' rules of 2026: twelve elapsed hours, past 05:00 local time, and not before the studio opens at 08:00.
 */
const nights = [
  // St John's loses 02:00 to 03:00 on 8 March: UTC-3:30 becomes UTC-2:30. Twelve hours after 19:00 it is 08:00.
  {
    zone: 'America/St_Johns',
    on: '2026-03-07T22:30:00.000Z',
    ready: '2026-03-08T10:30:00.000Z',
    wall: '08:00',
  },
  // London has 01:00 to 02:00 twice on 25 October: twelve hours after 19:00 it is 06:00, and the studio opens at 08:00.
  { zone: 'Europe/London', on: '2026-10-24T18:00:00.000Z', ready: '2026-10-25T08:00:00.000Z', wall: '08:00' },
  // Lord Howe loses half an hour on 4 October: UTC+10:30 becomes UTC+11. Twelve hours after 19:45 it is 08:15.
  {
    zone: 'Australia/Lord_Howe',
    on: '2026-10-03T09:15:00.000Z',
    ready: '2026-10-03T21:15:00.000Z',
    wall: '08:15',
  },
];

const minute = 60_000;
const plus = (iso: string, ms: number) => new Date(Date.parse(iso) + ms).toISOString();

describe('an evening and the next morning at the terminal', () => {
  for (const { zone, on, ready, wall } of nights)
    test(`in ${zone}, in the night that its clocks change`, () => {
      const file = storeFile();
      at(file, plus(on, -minute), `/studio set zone:${zone}`, '--keeper');
      const put = at(file, on, '/coat on kind:wax pieces:"3 bowls" for:"tonight 9pm"');
      expect(put.title).toMatch(new RegExp(`21:00 is too early\\. It is ready .* ${wall}\\.$`));
      expect(coatsSchema.parse(put.data).coats).toMatchObject([
        { id: 'c-1', kind: 'wax', pieces: '3 bowls', onAt: on, readyAt: ready, ready: false },
      ]);
      for (const later of ['02:00', '04:00', '08:00'])
        expect(coatAt(file, plus(on, Number(later.slice(0, 2)) * 60 * minute))?.ready).toBe(false);
      expect(coatAt(file, plus(ready, -1))?.ready).toBe(false);
      expect(coatAt(file, ready)?.ready).toBe(true);

      const layer = at(file, plus(ready, minute), '/coat on kind:wax pieces:"3 bowls"');
      expect(coatsSchema.parse(layer.data).coats).toMatchObject([{ id: 'c-2', ready: false }]);
      expect(at(file, plus(ready, 2 * minute), '/coat off coat:c-2 how:washed').ok).toBe(true);
      expect(coatAt(file, plus(ready, 3 * minute))).toBeUndefined();
    });

  test('coats are their member’s own; a keeper sees all', () => {
    const file = storeFile();
    at(file, '2026-03-07T22:30:00Z', '/coat on kind:latex pieces:jug', '--as', 'Mara');
    expect(coatAt(file, '2026-03-07T22:31:00Z')).toBeUndefined();
    const all = at(file, '2026-03-07T22:31:00Z', '/coat list', '--as', 'Tove', '--keeper');
    expect(coatsSchema.parse(all.data).coats).toMatchObject([{ id: 'c-1', kind: 'latex' }]);
    expect(JSON.stringify(all.facts)).toContain('Mara');
  });
});
