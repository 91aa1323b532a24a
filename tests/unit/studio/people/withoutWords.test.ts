import { describe, expect, it } from 'vitest';
import { memberId } from '../../../../src/studio/ids.ts';
import { withoutWords } from '../../../../src/studio/people/withoutWords.ts';

const wren = memberId('1');
const clean = withoutWords({
  members: [wren],
  names: ['Wren', 'A. (b) [c]*'],
  texts: ['3 bowls', 'ok', 'a "big" spill'],
});

describe('an answer without somebody’s words', () => {
  it('keeps the very value in which there are none', () => {
    const reply = { title: ['Stir it.', { said: 'Gull Grey' }], data: { n: [1, null, true] } };
    expect(clean(reply)).toBe(reply);
  });

  it.each([
    [{ title: [{ member: '1', name: 'Wren' }] }, { title: [{ member: '1', name: '…' }] }],
    [{ title: [{ member: '2', name: 'Wrenna' }] }, { title: [{ member: '2', name: 'Wrenna' }] }],
    [{ reasons: [[{ said: '3 bowls' }, ' are dry']] }, { reasons: [[{ said: '…' }, ' are dry']] }],
    [{ title: [{ said: 'ask Wren’s friend' }] }, { title: [{ said: 'ask …’s friend' }] }],
    [{ title: [{ said: 'A. (b) [c]* did it' }] }, { title: [{ said: '… did it' }] }],
    [
      { data: { by: 'WREN', title: 'Wren', names: ['Wren', 'Kit'] } },
      { data: { by: '…', title: '…', names: ['…', 'Kit'] } },
    ],
    // The program's own sentences contain no names.
    [{ title: ['Wren or stir?'] }, { title: ['Wren or stir?'] }],
    [{ actions: [{ line: '/stirred bucket:gg note:ok' }] }, { actions: [{ line: '/help' }] }],
    [{ actions: [{ line: '/stirred bucket:stoke' }] }, { actions: [{ line: '/stirred bucket:stoke' }] }],
    [{ actions: [{ line: String.raw`/added note:"a \"big\" spill"` }] }, { actions: [{ line: '/help' }] }],
    [{ file: { name: 'x.csv', content: '1,2,3 bowls' } }, { file: { name: 'x.csv', content: '' } }],
    [
      { file: { name: 'x.csv', content: '1,2,3 bowlsful' } },
      { file: { name: 'x.csv', content: '1,2,3 bowlsful' } },
    ],
    [{ typed: '/coat on pieces:3 bowls for:tonight' }, { typed: '/coat on pieces:… for:tonight' }],
    [{ typed: String.raw`/added note:"a \"big\" spill"` }, { typed: '…' }],
  ])('%j becomes %j', (before, after) => {
    expect(clean(before)).toEqual(after);
    expect(clean(after)).toEqual(after);
  });

  it('leaves what the screen goes by, whatever somebody was called or noted', () => {
    const words = withoutWords({ members: [wren], names: ['Run', 'Day'], texts: ['answer', 'stir'] });
    const reply = {
      kind: 'answer',
      title: [{ at: 1, show: 'day' }],
      actions: [{ line: '/help', press: 'run' }],
      data: { verdict: { step: 'stir' } },
    };
    expect(words(reply)).toBe(reply);
    expect(words({ ...reply, title: [{ said: 'stir' }] })).toEqual({ ...reply, title: [{ said: '…' }] });
  });

  it('looks for no name that has no letter', () => {
    const blank = withoutWords({ members: [], names: ['', ' ', '…'], texts: [''] });
    expect(blank({ title: [{ said: 'a … b' }] })).toEqual({ title: [{ said: 'a … b' }] });
  });
});
