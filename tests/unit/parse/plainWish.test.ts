import { describe, expect, it } from 'vitest';
import { plainWish } from '../../../src/parse/plain/plainWish.ts';

/** The wish as one text: how it is granted, the command, its options. */
const wished = (line: string): string => {
  const wish = plainWish(line);
  if (!wish) return 'none';
  const options = Object.entries(wish.typed).map(([name, value]) => `${name}:${value}`);
  return [wish.by, ...wish.path, ...options.sort()].join(' ');
};

describe('what a line in plain words wishes for', () => {
  it.each([
    ['undo', 'run undo'],
    ['Undo that!', 'run undo'],
    ['undo my last entry', 'run undo'],
    ['take that back', 'run undo'],
    ['oops wrong bucket', 'run undo'],
    ['sorry, I logged that in the wrong bucket', 'run undo'],
    ['my coats', 'run coat list'],
    ['are my coats dry?', 'run coat list'],
    ['what needs doing', 'run round'],
    ["what's to do today?", 'run round'],
    ['plan a batch', 'form batch plan'],
    ['new batch', 'form batch plan'],
    ['mix a fresh batch of glaze', 'form batch plan'],
    ['make 10 l of glaze', 'form batch plan volume:10 l'],
    ['gull grey fired well', 'log fired bucket:gull grey result:good'],
    ['the sandbar came out of the kiln fine', 'log fired bucket:sandbar result:fine'],
    ['remind me in 20 minutes to look at gull grey', 'run remind me bucket:gull grey in:20 minutes'],
    ['remind me to stir the sandbar in half an hour', 'run remind me bucket:sandbar in:30 min'],
    ['dose for tansy field', 'run dose bucket:tansy field'],
    ['fired gull grey: crawled', 'log fired bucket:gull grey result:crawled'],
    ['we fired the sandbar and it came out with pinholes', 'log fired bucket:sandbar result:pinholes'],
  ])('%s', (line, wish) => {
    expect(wished(line)).toBe(wish);
  });

  it.each([
    'gull grey',
    'gull grey 1.46 13 sec stirred',
    'undo the lid',
    'my coats crawl',
    'a batch of gull grey is thin',
    'fired well',
    'what should I do about pinholes?',
    '',
    'x'.repeat(5000),
  ])('is nothing: %s', (line) => expect(wished(line)).toBe('none'));
});
