import { parse } from 'discord-markdown-parser';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  escaped,
  markdown,
  markdownWithin,
  oneLine,
  plainMarkdown,
} from '../../../src/discord/render/markdown.ts';
import { instant } from '../../../src/studio/ids.ts';
import { said, t, type Part, type Text } from '../../../src/words/text/text.ts';
import { isFields, text } from '../../helpers/discord/discordBody.ts';

/** What an independent Discord markdown parser finds in a message: its text, and any formatting. */
const read = (message: string): { words: string; found: string[] } => {
  const found: string[] = [];
  const words = (nodes: unknown): string => {
    if (typeof nodes === 'string') return nodes;
    if (Array.isArray(nodes)) return nodes.map(words).join('');
    if (!isFields(nodes)) return '';
    // An emoji shown as a picture is still that emoji.
    if (nodes['type'] === 'twemoji') return text(nodes['name']);
    if (nodes['type'] !== 'text') found.push(text(nodes['type']));
    return words(nodes['content']);
  };
  return { words: words(parse(message, 'extended')), found };
};

const visible = (message: string): string => message.replaceAll('\u200b', '');

/** Text full of characters that matter in markdown. */
const nasty = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        ...[
          '*',
          '_',
          '~',
          '`',
          '|',
          '>',
          '<',
          '#',
          '-',
          '+',
          '@',
          ':',
          '/',
          '\\',
          '[',
          ']',
          '(',
          ')',
          '!',
          '1.',
          '\n',
          ' ',
        ],
        ...[
          '@everyone',
          '@here',
          '<@123456789012345678>',
          '<#123456789012345678>',
          '<:a:123456789012345678>',
          '<t:1:R>',
        ],
        ...[
          '[x](https://e.example)',
          '<https://e.example>',
          'https://e.example',
          '```',
          '||',
          '-# ',
          '## ',
          '</x:1>',
          '<id:guide>',
        ],
        ...['\u202e', '\u2066', '\u0000', '\ud800', '\u2028', 'e\u0301\u0301\u0301\u0301\u0301', '👩‍🎨'],
      ),
      fc.string({ unit: 'grapheme', maxLength: 3 }),
    ),
    { maxLength: 12 },
  )
  .map((parts) => parts.join(''));

describe('a member’s words', () => {
  test('show as typed, and never become formatting', () => {
    fc.assert(
      fc.property(nasty, (typed) => {
        const { words, found } = read(escaped(typed));
        expect(found).toEqual([]);
        expect(visible(words)).toBe(oneLine(typed));
      }),
      { numRuns: 3_000 },
    );
  });

  test('stay in their place inside a sentence of ours', () => {
    fc.assert(
      fc.property(nasty, nasty, (one, two) => {
        const { words, found } = read(markdown(t`Poured ${said(one)} into ${said(two)}.`));
        expect(found).toEqual([]);
        expect(visible(words)).toBe(`Poured ${oneLine(one)} into ${oneLine(two)}.`);
      }),
      { numRuns: 2_000 },
    );
  });

  test('are one line without control characters, direction marks, or piled-up accents', () => {
    expect(oneLine(' two\nlines\u0000\u202Egnp.exe\u2066 \t end ')).toBe('two lines gnp.exe end');
    expect(oneLine(`Z${'\u0301'.repeat(40)}`)).toBe('Z\u0301\u0301\u0301');
    expect(oneLine('lone \ud83d half')).toBe('lone \ufffd half');
  });

  test('cannot be read as an everyone-mention, a link or a heading', () => {
    expect(escaped('@everyone')).toBe('@\u200beveryone');
    expect(escaped('[free glaze](https://e.example)')).toBe('\\[free glaze\\](https:\u200b//e.example)');
    expect(escaped('# big')).toBe('\\# big');
    expect(escaped('1. first')).toBe('1\\. first');
    expect(escaped('a - b # c')).toBe('a - b # c');
  });
});

describe('text', () => {
  const at = instant(1_772_366_400_999);

  test('shows instants as stamps of whole seconds', () => {
    const shown = (show: 'ago' | 'clock' | 'day') => markdown(t`${{ at, show }}`);
    expect([shown('ago'), shown('clock'), shown('day')]).toEqual([
      '<t:1772366400:R>',
      '<t:1772366400:f>',
      '<t:1772366400:D>',
    ]);
  });

  test('that is too long ends in an ellipsis, and never inside an escape, a stamp or a letter', () => {
    const parts: fc.Arbitrary<Part | string> = fc.oneof(
      fc.constantFrom('Stir it. ', 'Add ', '👩‍🎨 '),
      nasty.map((typed): Part => said(typed)),
      fc.constant<Part>({ at, show: 'ago' }),
    );
    fc.assert(
      fc.property(fc.array(parts, { maxLength: 8 }), fc.integer({ min: 1, max: 60 }), (given, most) => {
        const cut = markdownWithin(given, most);
        expect(cut.length).toBeLessThanOrEqual(most);
        expect(read(cut).found.filter((kind) => kind !== 'timestamp')).toEqual([]);
        expect(cut).not.toMatch(/[\ud800-\udbff](?![\udc00-\udfff])/);
      }),
      { numRuns: 2_000 },
    );
  });

  test('that fits is left whole', () => {
    const whole: Text = t`Stir it first.`;
    expect(markdownWithin(whole, 14)).toBe('Stir it first.');
    expect(markdownWithin(whole, 13)).toBe('Stir it firs…');
  });

  test('on a button has no markup, and the time in UTC', () => {
    expect(plainMarkdown(t`${said('*Gull* Grey')} at ${{ at, show: 'clock' }}`, 80)).toBe(
      '*Gull* Grey at 2026-03-01, 12:00 UTC',
    );
  });
});
