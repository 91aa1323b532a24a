import { expect, it } from 'vitest';
import { lookAfter, type Look } from '../../../src/monitor/health.ts';

const yes: Look = () => true;
const off: Look = () => 'off';
const no: Look = () => false;
const well = { store: yes, discord: yes, room: off, reminders: yes };

const hangs: Look = () => new Promise(() => undefined);
const breaksLater: Look = () => Promise.reject(new Error('broken on purpose'));
const breaks: Look = () => {
  throw new Error('broken on purpose');
};

it('is ready when every part that is wanted works', async () => {
  expect(await lookAfter(well)).toEqual({
    ready: true,
    parts: { store: 'ok', discord: 'ok', room: 'off', reminders: 'ok' },
    wrong: [],
  });
});

it.each([
  ['does not answer', hangs],
  ['breaks', breaks],
  ['breaks later', breaksLater],
  ['says no', no],
])('is not ready when the logbook %s', async (_how, store) => {
  expect(await lookAfter({ ...well, store })).toEqual({
    ready: false,
    parts: { store: 'wrong', discord: 'ok', room: 'off', reminders: 'ok' },
    wrong: ['The logbook does not answer.'],
  });
});

it('says everything that is wrong, not only the first', async () => {
  const { wrong } = await lookAfter({ ...well, discord: no, reminders: no });
  expect(wrong).toEqual([
    'Discord is not connected; the log says why.',
    'No reminders go out; the log says why.',
  ]);
});
