import { describe, expect, it } from 'vitest';
import { openGlazeRoom, gullGreyLine, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';
import exam from './exam.json' with { type: 'json' };
import offTopic from './offTopic.json' with { type: 'json' };
import tuned from './questions.json' with { type: 'json' };
import heldOut from './questionsHeldOut.json' with { type: 'json' };
import ofSafety from './questionsOfSafety.json' with { type: 'json' };
import ofWeek from './questionsOfWeek.json' with { type: 'json' };
import unseen from './questionsUnseen.json' with { type: 'json' };

const openRoom = async () => {
  const room = await openGlazeRoom();
  await room.keeper(0, gullGreyLine());
  await room.keeper(0, '/bucket add name:"Whelk White" pail:19l gravity:1.43-1.47');
  return room;
};

const answersTo = async (room: GlazeRoom, question: string): Promise<string[]> => {
  const answer = await room.request(1, { path: ['ask'], typed: { question } });
  expect(answer.kind).toBe('answer');
  const answers = answer.data['answers'] as { id: string }[];
  return answers.map(({ id }) => id);
};

/** How many questions have a right note first, and how many among the first three. */
const rates = async (questions: readonly { ask: string; right: readonly string[] }[]) => {
  const room = await openRoom();
  const hits = { first: 0, three: 0 };
  for (const { ask, right } of questions) {
    const answers = await answersTo(room, ask);
    if (right.includes(answers[0] ?? '')) hits.first++;
    if (answers.slice(0, 3).some((id) => right.includes(id))) hits.three++;
  }
  return { first: hits.first / questions.length, three: hits.three / questions.length };
};

describe('questions as members type them', () => {
  it('are many, and none is in both halves', () => {
    expect(tuned.length + heldOut.length).toBeGreaterThan(390);
    const asked = [...tuned, ...heldOut, ...unseen].map(({ ask }) => ask);
    expect(new Set(asked).size).toBe(asked.length);
  });

  it('that the search was tuned on find a right note first, 17 times in 20, and 19 among the first three', async () => {
    const { first, three } = await rates(tuned);
    expect(first).toBeGreaterThanOrEqual(0.85);
    expect(three).toBeGreaterThanOrEqual(0.95);
  });

  it('that were not used for tuning find one as often', async () => {
    const { first, three } = await rates(heldOut);
    expect(first).toBeGreaterThanOrEqual(0.85);
    expect(three).toBeGreaterThanOrEqual(0.95);
  });
});

describe('questions in quite different words, not used for tuning', () => {
  // First result: 56 of 80 first, 60 among the first three; far worse than on the questions used for tuning.
  it('find a right note first 13 times in 20 at least', async () => {
    const { first, three } = await rates(unseen);
    expect(first).toBeGreaterThanOrEqual(0.65);
    expect(three).toBeGreaterThanOrEqual(0.7);
  });

  // First result: 23 of 30 rejected. A word of a note in an unrelated question can still match.
  it('about other things are refused at least 3 times in 4', async () => {
    const room = await openRoom();
    let refused = 0;
    for (const question of offTopic.unseen) if ((await answersTo(room, question)).length === 0) refused++;
    expect(refused / offTopic.unseen.length).toBeGreaterThanOrEqual(0.75);
  });
});

describe('eighty questions that were written from the trade before any note was read', () => {
  // Before likeness was learnt: 88 % first, 92 % among the first three. Seven ask for what no note has, and are left out.
  it('find a right note first 9 times in 10', async () => {
    const { first, three } = await rates(exam.questions.filter(({ right }) => right.length > 0));
    expect(first).toBeGreaterThanOrEqual(0.9);
    expect(three).toBeGreaterThanOrEqual(0.93);
  });

  it('and those about other things are refused 9 times in 10', async () => {
    const room = await openRoom();
    let refused = 0;
    for (const question of exam.offTopic) if ((await answersTo(room, question)).length === 0) refused++;
    expect(refused / exam.offTopic.length).toBeGreaterThanOrEqual(0.9);
  });
});

describe('sixty questions of members and a technician, written before any note was read', () => {
  // Before anything was changed for the half that was looked at: 90 % first and among the first three.
  it('find a right note first 9 times in 10 in the half that was looked at', async () => {
    const { first, three } = await rates(ofWeek.looked);
    expect(first).toBeGreaterThanOrEqual(0.9);
    expect(three).toBeGreaterThanOrEqual(0.95);
  });

  // First result: 87 % first, 97 % among the first three.
  it('and more than 8 times in 10 in the half whose misses nobody looked at', async () => {
    const { first, three } = await rates(ofWeek.unseen);
    expect(first).toBeGreaterThanOrEqual(0.8);
    expect(three).toBeGreaterThanOrEqual(0.95);
  });
});

describe('a question on which somebody’s health hangs', () => {
  it('finds its note first, however it is asked', async () => {
    const room = await openRoom();
    expect(ofSafety.length).toBeGreaterThanOrEqual(60);
    const missed: string[] = [];
    for (const { ask, right } of ofSafety) {
      const [first = 'no note'] = await answersTo(room, ask);
      if (!right.includes(first)) missed.push(`${ask}: ${first}`);
    }
    expect(missed).toEqual([]);
  });

  it.each(['do I need to wear a mask when mixing glaze', 'should I wear a mask', 'mask for mixing glaze'])(
    'about a mask is told of silica, the keeper, the respirator and local codes first: %s',
    async (question) => {
      const room = await openRoom();
      const { title } = await room.request(1, { path: ['ask'], typed: { question } });
      for (const said of [/respirable silica/, /keeper/, /fitted respirator/, /local codes/])
        expect(title).toMatch(said);
    },
  );
});

describe('a word of five letters or more', () => {
  /** Misspelt by hand: after the first letter, one left out or two swapped. */
  it.each([
    ['crwaling', 'crawling'],
    ['crawlng', 'crawling'],
    ['pinhols', 'pinholing'],
    ['pinholnig', 'pinholing'],
    ['sive', 'sieving'],
    ['seive', 'sieving'],
    ['shievring', 'shivering'],
    ['crazng', 'crazing'],
    ['bilstering', 'blistering'],
    ['hydormeter', 'hydrometer'],
    ['flocculnt', 'flocculant'],
    ['deflocculent', 'deflocculant'],
    ['latx peel', 'latex'],
    ['kiln fuems', 'kiln-room'],
    ['respirtor', 'dust'],
    ['silcia', 'dust'],
    ['pregnnat', 'pregnancy'],
    ['swalowed glaze', 'swallowed'],
    ['wher is the sive', 'where-kept'],
  ])('is found with one letter missing or two swapped: %s', async (question, id) => {
    const [first] = await answersTo(await openRoom(), question);
    expect(first).toBe(id);
  });
});

describe('what is not of the glaze room', () => {
  it('gets no note, 19 times in 20 at least, and nonsense never', async () => {
    const room = await openRoom();
    const unknown = 'kvvz qxj wpf '.repeat(400).slice(0, 5000);
    const story = 'why is my glaze pinholing '.repeat(200).slice(0, 5000);
    const answered = async (questions: readonly string[]): Promise<string[]> => {
      const some: string[] = [];
      for (const question of questions) {
        const { kind, title, data } = await room.request(1, { path: ['ask'], typed: { question } });
        expect(kind).toBe('answer');
        if (
          !/^(?:No note on that|That is too long to look up)\./.test(title) ||
          JSON.stringify(data['answers']) !== '[]'
        )
          some.push(`${question}: ${title}`);
      }
      return some;
    };
    expect(await answered([unknown, story])).toEqual([]);
    for (const questions of [offTopic.tuned, offTopic.heldOut]) {
      const some = await answered(questions);
      expect([some, some.length / questions.length <= 0.05]).toEqual([some, true]);
    }
    expect(room.bugs).toEqual([]);
  });
});
