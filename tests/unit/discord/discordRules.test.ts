import { ApplicationCommandOptionType, MessageFlags } from 'discord.js';
import { describe, expect, test } from 'vitest';
import { type BodyKind, bodyProblems } from '../../helpers/discord/discordRules.ts';

// Limits: the platform's published developer documentation; shapes: its published OpenAPI description.
const QUIET = { parse: [] };

describe('the double catches planted violations', () => {
  const option = (name: string, more: object = {}) => ({
    type: ApplicationCommandOptionType.String,
    name,
    description: 'x',
    ...more,
  });
  const commands = (...options: object[]) => [{ name: 'reading', description: 'x', options }];
  const message = (more: object) => ({ content: 'x', allowed_mentions: QUIET, ...more });
  const row = (...components: object[]) => ({ type: 1, components });
  const button = (custom_id: string, label = 'x') => ({ type: 2, style: 2, custom_id, label });
  const form = (...components: object[]) => ({ type: 9, data: { custom_id: 'f', title: 'x', components } });
  const field = (custom_id: string, more: object = {}) => ({
    type: 18,
    label: 'x',
    component: { type: 4, style: 1, custom_id, ...more },
  });
  const display = (length: number) => ({ type: 10, content: 'x'.repeat(length) });
  const V2 = { content: undefined, flags: MessageFlags.IsComponentsV2 };

  const planted: [string, BodyKind, unknown, RegExp][] = [
    ['an upper-case name', 'commands', [{ name: 'Reading', description: 'x' }], /upper-case/],
    ['a name with a space', 'commands', commands(option('my bucket')), /no command or option name/],
    ['an empty description', 'commands', [{ name: 'reading', description: '' }], /1 to 100/],
    ['an option without description', 'commands', commands(option('a', { description: '' })), /description/],
    [
      'a required option after an optional one',
      'commands',
      commands(option('a'), option('b', { required: true })),
      /required after/,
    ],
    ['two options of one name', 'commands', commands(option('a'), option('a')), /more than one/],
    [
      '26 options',
      'commands',
      commands(...Array.from({ length: 26 }, (_, i) => option(`o${i}`))),
      /26 options/,
    ],
    [
      '26 choices',
      'commands',
      commands(
        option('a', { choices: Array.from({ length: 26 }, (_, i) => ({ name: `${i}`, value: `${i}` })) }),
      ),
      /26 choices/,
    ],
    [
      'choices and autocomplete',
      'commands',
      commands(option('a', { autocomplete: true, choices: [{ name: 'x', value: 'x' }] })),
      /autocomplete together/,
    ],
    [
      '101 commands',
      'commands',
      Array.from({ length: 101 }, (_, i) => ({ name: `c${i}`, description: 'x' })),
      /at most 100/,
    ],
    [
      '9000 characters',
      'commands',
      commands(
        ...Array.from({ length: 25 }, (_, i) =>
          option(`o${i}`, {
            choices: Array.from({ length: 4 }, (_, j) => ({ name: `${j}`.repeat(90), value: `${j}` })),
          }),
        ),
      ),
      /at most 8000/,
    ],
    ['an empty message', 'message', { allowed_mentions: QUIET, content: ' ' }, /empty message/],
    [
      'an edit that leaves nothing',
      'followUpEdit',
      { allowed_mentions: QUIET, content: '' },
      /empty message/,
    ],
    ['2001 characters', 'message', message({ content: 'x'.repeat(2001) }), /2001/],
    ['mentions left to the platform', 'message', { content: '@everyone' }, /allowed_mentions/],
    [
      'mentions both parsed and listed',
      'message',
      message({ allowed_mentions: { parse: ['users'], users: ['1'] } }),
      /lists them too/,
    ],
    [
      '7000 characters of embeds',
      'message',
      message({ embeds: [1, 2].map(() => ({ description: 'x'.repeat(3500) })) }),
      /6000/,
    ],
    [
      'V2 and content',
      'message',
      message({ flags: MessageFlags.IsComponentsV2, components: [display(1)] }),
      /V2 and content/,
    ],
    [
      'V2 and embeds',
      'message',
      message({ ...V2, components: [display(1)], embeds: [{ title: 'x' }] }),
      /V2 and embeds/,
    ],
    [
      'a layout without V2',
      'message',
      message({ components: [display(1)] }),
      /without the components V2 flag/,
    ],
    [
      '4001 characters of text display',
      'message',
      message({ ...V2, components: [display(4000), display(1)] }),
      /4001/,
    ],
    [
      '41 components',
      'message',
      message({
        ...V2,
        components: [{ type: 17, components: Array.from({ length: 40 }, () => display(1)) }],
      }),
      /41 components/,
    ],
    ['a custom_id twice', 'message', message({ components: [row(button('a')), row(button('a'))] }), /twice/],
    ['a custom_id of 101', 'message', message({ components: [row(button('a'.repeat(101)))] }), /components/],
    ['a label of 81', 'message', message({ components: [row(button('a', 'x'.repeat(81)))] }), /components/],
    [
      'six buttons in a row',
      'message',
      message({ components: [row(...'abcdef'.split('').map((id) => button(id)))] }),
      /components/,
    ],
    [
      'six rows',
      'message',
      message({ components: 'abcdef'.split('').map((id) => row(button(id))) }),
      /6 action rows/,
    ],
    ['a button without label', 'message', message({ components: [row(button('a', ''))] }), /without label/],
    [
      'a select among buttons',
      'message',
      message({
        components: [row(button('a'), { type: 3, custom_id: 'b', options: [{ label: 'x', value: 'x' }] })],
      }),
      /shares its row/,
    ],
    [
      'two options of one value',
      'message',
      message({
        components: [
          row({
            type: 3,
            custom_id: 'b',
            options: [
              { label: 'x', value: 'x' },
              { label: 'y', value: 'x' },
            ],
          }),
        ],
      }),
      /share a value/,
    ],
    ['an attachment without a file', 'message', message({ attachments: [{ id: '0' }] }), /has no file/],
    ['a nonce of 26', 'message', message({ nonce: 'x'.repeat(26) }), /nonce/],
    ['six fields in a form', 'callback', form(...'abcdef'.split('').map((id) => field(id))), /1 to 5/],
    ['one field twice in a form', 'callback', form(field('a'), field('a')), /twice/],
    [
      'a form’s title of 46',
      'callback',
      { type: 9, data: { custom_id: 'f', title: 'x'.repeat(46), components: [field('a')] } },
      /title/,
    ],
    [
      'a field filled beyond its length',
      'callback',
      form(field('a', { value: 'xxx', max_length: 2 })),
      /where 2 fit/,
    ],
    [
      '26 rows of completion',
      'callback',
      { type: 8, data: { choices: Array.from({ length: 26 }, () => ({ name: 'x', value: 'x' })) } },
      /data/,
    ],
    ['a callback of unknown type', 'callback', { type: 3 }, /callback type/],
  ];

  test.each(planted)('%s', (_, kind, body, expected) => {
    expect(bodyProblems(kind, body, []).join('\n')).toMatch(expected);
  });

  test('and accepts the nearest valid bodies', () => {
    const lawful: [BodyKind, unknown][] = [
      [
        'commands',
        commands(option('a', { required: true }), option('b', { choices: [{ name: 'x', value: 'x' }] })),
      ],
      ['message', message({ content: 'x'.repeat(2000), components: [row(button('a'), button('b'))] })],
      ['message', { ...message({ ...V2, components: [display(4000)] }) }],
      ['followUpEdit', { allowed_mentions: QUIET, components: [] }],
      ['callback', form(...'abcde'.split('').map((id) => field(id)))],
      ['callback', { type: 5, data: { flags: 64 } }],
    ];
    for (const [kind, body] of lawful) expect(bodyProblems(kind, body, [])).toEqual([]);
  });
});
