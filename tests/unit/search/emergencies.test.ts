import { describe, expect, it } from 'vitest';
import { emergencies } from '../../../src/studio/handbook.ts';
import { handbook } from '../../helpers/handbook.ts';
import typed from './emergencies.json' with { type: 'json' };
import heldOut from './emergenciesHeldOut.json' with { type: 'json' };
import unseen from './emergenciesUnseen.json' with { type: 'json' };

const missed = (questions: readonly { ask: string; kind: string | null }[]) =>
  questions.flatMap(({ ask, kind }) => {
    const [first = null] = handbook.emergencies(ask);
    return first === kind ? [] : [`${ask}: ${first ?? 'none'}`];
  });

describe('an emergency', () => {
  it('is told from what only sounds like it, as people type it, misspelt too', () => {
    expect(typed.filter(({ kind }) => kind !== null).length).toBeGreaterThanOrEqual(60);
    expect(typed.filter(({ kind }) => kind === null).length).toBeGreaterThanOrEqual(40);
    expect(missed(typed)).toEqual([]);
  });

  it('in the words set aside before the signs were written is told as well', () => {
    // At first look 30 of 30: the same hand wrote both, and soon after one another.
    expect(missed(heldOut)).toEqual([]);
  });

  it('in words looked at last is told two times in three at least, and nothing else is taken for one', () => {
    // At first look 16 of 24, and none of the 8 that are none. What is missed is looked up among the notes.
    const wrong = missed(unseen);
    expect(wrong.length).toBeLessThanOrEqual(8);
    expect(missed(unseen.filter(({ kind }) => kind === null))).toEqual([]);
  });

  it('has a note of its own each, which says whom to call or to get medical help', () => {
    for (const id of emergencies) {
      const note = handbook.note(id);
      expect(note?.answer).toMatch(/112, 911, 999 or your own emergency number|medical help/);
      expect(note?.cautions[0]).toBe('first-aid');
      // It stands alone on a phone.
      expect(note?.answer.length).toBeLessThanOrEqual(170);
    }
  });

  it('that endangers whoever helps is said before what happened to the hurt', () => {
    expect(handbook.emergencies('someone got electrocuted and is not breathing')).toEqual([
      'shock',
      'collapsed',
    ]);
    expect(handbook.emergencies('i smell gas and my friend fainted')).toEqual(['gas-leak', 'collapsed']);
  });

  it.each([
    'mixed without a mask and now my chest is tight',
    'can you help, my chest is tight',
    'feels as if my throat is closing',
    'what do i do if someone faints',
    'i swallowed some glaze, is that dangerous',
    'not sure if it matters but my eye burns',
    'why is the kiln alarm beeping',
  ])('is not talked away by “if”, “can” or “why”: %s', (question) => {
    expect(handbook.emergencies(question)).not.toEqual([]);
  });

  it.each([
    'how do we keep glaze from getting in my eye',
    'what happens if my kid swallows glaze',
    'can you get lead poisoning from a mug',
    'does it hurt if it gets in my eye',
    'who is on firing duty',
    'the foot is sharp',
    'brush stroke marks',
    'i cut my mug in half to check the glaze',
  ])('is not made of what may happen one day: %s', (question) => {
    expect(handbook.emergencies(question)).toEqual([]);
  });
});
