import { describe, expect, it } from 'vitest';
import { emergencies } from '../../../src/studio/handbook.ts';
import { handbook } from '../../helpers/handbook.ts';
import exam from './exam.json' with { type: 'json' };
import questions from './questions.json' with { type: 'json' };
import heldOutQuestions from './questionsHeldOut.json' with { type: 'json' };
import typed from './emergencies.json' with { type: 'json' };
import heldOut from './emergenciesHeldOut.json' with { type: 'json' };
import others from './emergenciesOfOthers.json' with { type: 'json' };
import strangers from './emergenciesOfStrangers.json' with { type: 'json' };
import unseen from './emergenciesUnseen.json' with { type: 'json' };

const missed = (questions: readonly { ask: string; kind: string | null }[]) =>
  questions.flatMap(({ ask, kind }) => {
    const [first = null] = handbook.emergencies(ask);
    return first === kind ? [] : [`${ask}: ${first ?? 'none'}`];
  });

describe('an emergency', () => {
  it('is told apart from what only sounds like it, misspelt or not', () => {
    expect(typed.filter(({ kind }) => kind !== null).length).toBeGreaterThanOrEqual(60);
    expect(typed.filter(({ kind }) => kind === null).length).toBeGreaterThanOrEqual(40);
    expect(missed(typed)).toEqual([]);
  });

  it('in the words set aside before the signs were written is told as well', () => {
    // First result: 30 of 30. The same person wrote signs and questions at about the same time, so it proves little.
    expect(missed(heldOut)).toEqual([]);
  });

  it('in words looked at last is told two times in three at least, and nothing else is taken for one', () => {
    // First result: 16 of 24 found, and none of the 8 false ones. Missed ones fall back to the search of notes.
    const wrong = missed(unseen);
    expect(wrong.length).toBeLessThanOrEqual(8);
    expect(missed(unseen.filter(({ kind }) => kind === null))).toEqual([]);
  });

  it('in thirty more wordings, written down before the signs for them, is told as well', () => {
    // 30 of 30 at first look; the list was in sight while the signs were written.
    expect(missed(strangers)).toEqual([]);
  });

  it('in words that no sign was written for is told half the time at least', () => {
    const wrong = missed(others);
    // At first look 8 of 16 by their first note; since signs are put together from body, thing and harm, all of them.
    expect(wrong).toEqual([]);
  });

  it('in a list that was written before the signs were read is told 9 times in 10', () => {
    // 66 of 97 before signs were put together from body, thing and harm. One person wrote both, so strangers will find more gaps.
    const all = [...exam.emergencies, ...exam.moreEmergencies];
    const meant = all.filter(({ kind }) => kind !== null);
    expect(meant.length).toBeGreaterThanOrEqual(90);
    expect(missed(meant).length).toBeLessThanOrEqual(meant.length / 10);
    expect(missed(all.filter(({ kind }) => kind === null))).toEqual([]);
  });

  it('is not in what members ask of glaze', () => {
    const ids: readonly string[] = emergencies;
    const ofGlaze = [...questions, ...heldOutQuestions].filter(
      ({ right }) => !right.some((id) => ids.includes(id)),
    );
    expect(ofGlaze.length).toBeGreaterThan(600);
    expect(ofGlaze.filter(({ ask }) => handbook.emergencies(ask).length > 0)).toEqual([]);
  });

  it.each([
    'cant move the bucket on my own',
    'my hands went blue from the cobalt',
    'i ate off this plate, is the glaze safe',
    'the sieve choked on the lumps',
    'hot pink underglaze on my hands',
    'latex came off on my fingers',
    'i cannot lift a full bucket',
    'wheel thrown mug with a hand built handle',
    'the mouth of the jug is crawling',
    'glaze in the mouth of my bottle',
    'the burner went out in the gas kiln',
    'sponge sucked up all the glaze',
    'he went down to the kiln room',
    '/help what happens if you swallow glaze',
  ])('is not seen where none is: %s', (question) => {
    expect(handbook.emergencies(question)).toEqual([]);
  });

  it.each([
    'let the pot breathe',
    'fish eye spots',
    'cut in the rim',
    'burn off the rim',
    'cut tiles',
    'choking the sieve',
    'in shock after adding epsom',
  ])('opens no first aid for a pot: %s', (question) => {
    const ids: readonly string[] = emergencies;
    const [first] = handbook.find(question, []).answers;
    expect(first?.found.from === 'handbook' ? ids.includes(first.found.note.id) : false).toBe(false);
  });

  it('has a note of its own each, which says whom to call or to get medical help', () => {
    for (const id of emergencies) {
      const note = handbook.note(id);
      expect(note?.answer).toMatch(/112, 911, 999 or your own emergency number|medical help/);
      expect(note?.cautions[0]).toBe('first-aid');
      // The title must make sense alone on a phone.
      expect(note?.answer.length).toBeLessThanOrEqual(170);
    }
  });

  it('that endangers the helper is named before the injury', () => {
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
