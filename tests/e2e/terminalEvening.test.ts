import { expect, it } from 'vitest';
import { verdictOf, type Answer } from '../helpers/discord/answerSchemas.ts';
import { runSay } from '../helpers/sayProcess.ts';
import { evening, setUp } from '../helpers/evening.ts';
import { newLogbook } from '../helpers/store/storeFile.ts';

const spoken = async (file: string, lines: string): Promise<Answer[]> => {
  const said = await runSay(file, ['--json', '-'], { input: lines });
  expect(said.stderr).toBe('');
  return said.answers();
};

it('an evening with ten buckets is answered line by line', async () => {
  const file = await newLogbook();
  expect((await spoken(file, setUp)).filter(({ ok }) => !ok)).toEqual([]);
  const lines = evening.map(([line]) => line).join('\n');
  const answers = await spoken(file, `@2026-05-20T22:00:00Z Wren\n${lines}\n`);
  expect(answers).toHaveLength(evening.length);
  evening.forEach(([line, step, title], i) => {
    const answer = answers[i];
    if (!answer) throw new Error(`no answer to ${line}`);
    expect(verdictOf(answer).step, line).toBe(step);
    expect(answer.title, line).toMatch(title);
    // The title must make sense alone in a notification; at most three facts follow.
    expect(answer.title.length, line).toBeLessThan(140);
    expect(answer.facts.length, line).toBeLessThanOrEqual(3);
    expect(answer.actions.length, line).toBeLessThanOrEqual(3);
  });
});

it('what is offered in a reply can be typed as it stands', async () => {
  const file = await newLogbook();
  await spoken(file, setUp);
  const at = '@2026-05-20T22:00:00Z Wren\n';
  const [asked] = await spoken(file, `${at}/reading bucket:gg weight:236.1g seconds:14 stirred:yes\n`);
  const [pressed] = await spoken(file, `${at}${asked?.actions[0]?.line ?? ''}\n`);
  expect(pressed).toMatchObject({ ok: true, data: { verdict: { step: 'measure' } } });
  const [late] = await spoken(file, `${at}${asked?.actions[0]?.line ?? ''}\n`);
  expect(late).toMatchObject({ ok: false, kind: 'refusal' });
  expect(late?.reasons.join('\n')).toMatch(/Wren added 2\.\d+ l of water/);
});
