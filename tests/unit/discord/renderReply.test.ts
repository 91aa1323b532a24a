import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Action, Chart, Reply } from '../../../src/contract/contract.ts';
import type { DiscordPorts } from '../../../src/discord/ports.ts';
import { readPressId } from '../../../src/discord/render/pressId.ts';
import { renderReply } from '../../../src/discord/render/renderReply.ts';
import { instant, studioId } from '../../../src/studio/ids.ts';
import { type Text, said, t } from '../../../src/words/text/text.ts';
import { list, text } from '../../helpers/discord/discordBody.ts';
import { everyComponent } from '../../helpers/discord/discordMessageRules.ts';
import { bodyProblems } from '../../helpers/discord/discordRules.ts';

const studio = studioId('0193e7a4-7c1e-7a3b-9d7c-0f6f3a1b2c4d');
const place = { studio, direct: false };

const ports = (more: Partial<DiscordPorts> = {}) => {
  const lines = new Map<string, string>();
  const log = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const held: DiscordPorts['held'] = {
    hold: (_, line) => {
      lines.set(`held${lines.size}`, line);
      return `held${lines.size - 1}`;
    },
    held: (id) => Promise.resolve(lines.has(id) ? { studio, line: lines.get(id) ?? '' } : undefined),
  };
  const draw = () => Promise.resolve(Buffer.from('png'));
  // Only what rendering uses.
  return { log, held, draw, ...more } as DiscordPorts;
};

const reply = (more: Partial<Reply>): Reply => ({
  kind: 'answer',
  title: t`Stir it first. Don't add water.`,
  data: {},
  ...more,
});
const chart: Chart = {
  title: 'Gull Grey',
  alt: 'Gravity over a week',
  key: '',
  zone: 'America/St_Johns',
  series: [],
  marks: [],
};
const action = (label: string, line: string): Action => ({ label: t`${said(label)}`, line, press: 'run' });

describe('a reply', () => {
  test('has the answer alone on its first line, then facts, then the small type', async () => {
    const { content } = await renderReply(
      reply({
        facts: [{ label: t`Gravity`, text: t`1.47 ± 0.01` }],
        dont: [t`Don't pour water off.`],
        cautions: [t`Wear gloves.`],
        reasons: [t`Stirred two days ago by ${said('Mara *M*')}.`],
      }),
      place,
      ports(),
    );
    expect(content.split('\n')).toEqual([
      "Stir it first. Don't add water.",
      '**Gravity** 1.47 ± 0.01',
      "- Don't pour water off.",
      '> Wear gloves.',
      '-# Stirred two days ago by Mara \\*M\\*.',
    ]);
  });

  test('what was logged stands right under the answer', async () => {
    const logged = { entry: '1-56', text: t`450 ml of water` };
    const facts = [{ label: t`Gravity`, text: t`1.46 ± 0.01` }];
    const { content } = await renderReply(reply({ logged, facts }), place, ports());
    expect(content.split('\n')[1]).toBe('Logged 1-56: 450 ml of water.');
  });

  test('carries its chart as a picture with its description, and its file', async () => {
    const { files, attachments } = await renderReply(
      reply({ chart, file: { name: 'log.csv', type: 'text/csv', content: 'a,b\n' } }),
      place,
      ports(),
    );
    expect(files.map(({ name, contentType }) => [name, contentType])).toEqual([
      ['chart.png', 'image/png'],
      ['log.csv', 'text/csv'],
    ]);
    expect(attachments).toEqual([
      { id: '0', filename: 'chart.png', description: 'Gravity over a week' },
      { id: '1', filename: 'log.csv' },
    ]);
  });

  test('whose chart cannot be drawn, or whose file is too large, says so and stands', async () => {
    const draw = () => Promise.reject(new Error('a planted bug'));
    const file = {
      name: 'all.json',
      type: 'application/json' as const,
      content: 'x'.repeat(11 * 1024 * 1024),
    };
    const { content, files } = await renderReply(reply({ chart, file }), place, ports({ draw }));
    expect(files).toEqual([]);
    expect(content).toMatch(
      /^Stir it first.*\n-# The picture could not be drawn.*\n-# The file is too large/,
    );
  });

  test('that is too long keeps its answer, and the rest of it comes after, each line once', async () => {
    const reasons = Array.from({ length: 40 }, (_, i) => [`<${i}> ${'so '.repeat(30)}`]);
    const { content, rest } = await renderReply(reply({ reasons }), place, ports());
    expect(content).toMatch(/^Stir it first/);
    for (const page of [content, ...rest]) expect(page.length).toBeLessThanOrEqual(2000);
    const told = [...[content, ...rest].join('\n').matchAll(/<(\d+)>/g)].map(([, no]) => Number(no));
    expect(told).toEqual(reasons.map((_, i) => i));
  });

  test('with a line longer than a message says all of it', async () => {
    const words = Array.from({ length: 900 }, (_, i) => `w${i}`);
    const { content, rest } = await renderReply(
      reply({ reasons: [[said(words.join(' '))]] }),
      place,
      ports(),
    );
    const told = [content, ...rest].join(' ').match(/\bw\d+/g);
    expect(told).toEqual(words);
  });

  test('that is far too long says that there is more', async () => {
    const reasons = Array.from({ length: 400 }, () => ['so '.repeat(40)]);
    const { rest } = await renderReply(reply({ reasons }), place, ports());
    expect(rest.at(-1)).toMatch(/\n-# There is more than fits here\.$/);
    for (const page of rest) expect(page.length).toBeLessThanOrEqual(2000);
  });

  test('that is a list shows whole rows, and offers to go on with the first that it did not show', async () => {
    const rows = Array.from({ length: 60 }, (_, i) => `/look from:${i}`);
    const { content, components, rest } = await renderReply(
      reply({
        facts: rows.map((_, i) => ({ label: [`Row ${i}`], text: ['x'.repeat(80)] })),
        cautions: [t`Wear gloves.`],
        actions: Array.from({ length: 5 }, (_, i) => action(`Do ${i}`, `/pour ${i}`)),
        more: { of: 'facts', label: t`More`, from: rows },
      }),
      place,
      ports(),
    );
    const shown = [...content.matchAll(/\*\*Row (\d+)\*\*/g)].length;
    expect(shown).toBeGreaterThan(10);
    expect(content).toContain('> Wear gloves.');
    expect(rest).toEqual([]);
    const last = everyComponent(components).at(-1);
    expect(last).toMatchObject({ label: 'More', custom_id: `r///look from:${shown}` });
  });

  test('has a day and its time of day as one moment', async () => {
    const at = instant(Date.parse('2026-05-20T21:00:00Z'));
    const text = t`since ${{ at, show: 'day' }} ${{ at, show: 'clock' }}, or ${{ at, show: 'day' }}`;
    const { content } = await renderReply(reply({ title: text }), place, ports());
    // 20 May 2026 21:00 UTC by the Unix clock.
    expect(content).toBe('since <t:1779310800:f>, or <t:1779310800:D>');
  });

  test('makes a valid message, whatever is in it', async () => {
    const words: fc.Arbitrary<Text> = fc.array(
      fc.oneof(
        fc.string({ unit: 'grapheme', maxLength: 300 }).map(said),
        fc.constantFrom('It is ', 'x'.repeat(900)),
      ),
      { minLength: 1, maxLength: 4 },
    );
    const some = fc.array(words, { maxLength: 8 });
    const actions = fc.array(
      fc
        .record({
          label: fc.string({ minLength: 1, maxLength: 120 }).filter((label) => /\w/.test(label)),
          line: fc.string({ maxLength: 150 }),
        })
        .map(({ label, line }) => action(label, `/pour ${line}`)),
      { maxLength: 30 },
    );
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('answer' as const, 'choice' as const, 'refusal' as const),
        words,
        some,
        some,
        actions,
        async (kind, title, reasons, dont, offered) => {
          const { files, rest, ...message } = await renderReply(
            { kind, title: [...t`.`, ...title], reasons, dont, actions: offered, data: {} },
            place,
            ports(),
          );
          expect(bodyProblems('message', { ...message, allowed_mentions: { parse: [] } }, [])).toEqual([]);
          expect(files).toEqual([]);
          for (const page of rest) expect(page.length).toBeLessThanOrEqual(2000);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('an action', () => {
  test('comes back from its button as it was, however long, in a server and in a direct message', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: 'grapheme', maxLength: 150 }),
        fc.boolean(),
        fc.constantFrom('run' as const, 'edit' as const),
        async (typed, direct, press) => {
          const line = `/added note:${typed}`;
          const house = ports();
          const { components } = await renderReply(
            reply({ actions: [{ label: t`x`, line, press }] }),
            { studio, direct },
            house,
          );
          const id = text(everyComponent(components)[1]?.['custom_id']);
          expect(id.length).toBeLessThanOrEqual(100);
          const back = await readPressId(id, house);
          expect(back).toMatchObject({ press, line });
          if (direct) expect(back?.studio).toBe(studio);
        },
      ),
    );
  });

  test('offered twice is one button', async () => {
    const { components } = await renderReply(
      reply({ actions: [action('a', '/x'), action('b', '/x')] }),
      place,
      ports(),
    );
    expect(list(components[0]?.components)).toHaveLength(1);
  });

  test('with an id that the bot did not make is ignored', async () => {
    for (const id of ['', 'pick', 'x/y/z', 'r*unknown'])
      expect(await readPressId(id, ports())).toBeUndefined();
  });
});
