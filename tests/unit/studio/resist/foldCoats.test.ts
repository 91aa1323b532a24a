import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../../../src/studio/entry.ts';
import type { CoatEvent } from '../../../../src/studio/resist/coatEvent.ts';
import { applyToCoats, foldCoats } from '../../../../src/studio/resist/foldResistCoats.ts';
import { coatStream, entryId, hours, instant, later, memberId, seq } from '../../../../src/studio/ids.ts';

const by = memberId('wren');
const entries = (events: CoatEvent[]): Entry<CoatEvent>[] =>
  events.map((event, i) => {
    const at = later(instant(Date.UTC(2026, 2, 1, 12)), hours(i));
    const place = seq(i + 1);
    return { id: entryId(coatStream, place), stream: coatStream, seq: place, at, loggedAt: at, by, event };
  });
const on = (pieces: string, over?: number): CoatEvent => ({
  kind: 'on',
  resist: 'wax',
  pieces,
  ...(over !== undefined && { over: seq(over) }),
});
const off = (of: number): CoatEvent => ({ kind: 'off', of: seq(of), how: 'glazed' });
const undo = (of: number): CoatEvent => ({ kind: 'undo', of: seq(of) });
const left = (events: CoatEvent[]) => foldCoats(entries(events)).map(({ id }) => id);

describe('the coats that are on', () => {
  it('are those that went on and are not off', () => {
    expect(left([on('bowls'), on('jug'), off(1)])).toEqual(['c-2']);
  });

  it('are on again when taking them off is taken back', () => {
    expect(left([on('bowls'), off(1), undo(2)])).toEqual(['c-1']);
  });

  it('count a second layer as one coat, from when it went on', () => {
    const [coat, ...others] = foldCoats(entries([on('bowls'), on('bowls', 1), on('bowls', 2)]));
    expect(others).toEqual([]);
    expect(coat).toMatchObject({ id: 'c-3', below: [1, 2], onAt: Date.UTC(2026, 2, 1, 14) });
  });

  it('are the first layer again when the second is taken back', () => {
    expect(left([on('bowls'), on('bowls', 1), undo(2)])).toEqual(['c-1']);
  });

  it('are forgotten after a month, when another goes on', () => {
    const [first, second] = entries([on('bowls'), on('jug')]);
    if (!first || !second) throw new Error('two were made');
    const muchLater = later(second.at, hours(31 * 24));
    expect(foldCoats([first, { ...second, at: muchLater, loggedAt: muchLater }])).toHaveLength(1);
  });
});

const event = fc.oneof(
  fc.string({ maxLength: 3 }).map((pieces) => on(pieces)),
  fc.integer({ min: 1, max: 12 }).map((of) => on('again', of)),
  fc.integer({ min: 1, max: 12 }).map(off),
  fc.integer({ min: 1, max: 12 }).map((of): CoatEvent => ({ kind: 'not-mine', of: seq(of) })),
);

describe('folding', () => {
  it('entry by entry comes to the same as folding all', () => {
    fc.assert(
      fc.property(fc.array(event, { maxLength: 12 }), (events) => {
        const all = entries(events);
        expect(all.reduce(applyToCoats, [])).toEqual(foldCoats(all));
      }),
    );
  });

  it('an entry and its undo leaves what there was without either', () => {
    fc.assert(
      fc.property(fc.array(event, { minLength: 1, maxLength: 12 }), fc.nat(), (events, which) => {
        const all = entries(events);
        const taken = which % all.length;
        const withUndo = entries([...events, undo(taken + 1)]);
        expect(foldCoats(withUndo)).toEqual(foldCoats(all.filter((_, i) => i !== taken)));
      }),
    );
  });
});
