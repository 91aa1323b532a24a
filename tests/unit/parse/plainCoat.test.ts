import { expect, it } from 'vitest';
import { readPlainCoat } from '../../../src/parse/plain/plainCoat.ts';

const read = (line: string): string => {
  const coat = readPlainCoat(line);
  return coat ? [coat.kind, coat.pieces, coat.when].filter((one) => one !== undefined).join(' | ') : 'none';
};

it.each([
  ['I waxed the foot of two mugs', 'wax | two mugs'],
  ['just waxed my 3 bowls.', 'wax | 3 bowls'],
  ['we have waxed 3 bowls last night 9pm', 'wax | 3 bowls | last night 9pm'],
  ['hot waxed 12 plates', 'hot-wax | 12 plates'],
  ['put wax on 3 bowls', 'wax | 3 bowls'],
  ['brushed latex on the lid of the tall jug', 'latex | tall jug'],
  ['melted wax on 2 cups', 'hot-wax | 2 cups'],
  ['taped two plates 2 hours ago', 'tape | two plates | 2 hours ago'],
])('“%s” is a coat', (line, coat) => {
  expect(read(line)).toBe(coat);
});

it.each([
  ['how long does wax take to dry'],
  ['waxed the foot but the glaze stuck'],
  ['wax on where I wanted glaze, what now?'],
  ['wax got on the part that I wanted to glaze'],
  ['I waxed'],
  ['is the wax on 3 bowls dry?'],
  ['wax on the wrong mug'],
  ['I will wax 3 bowls'],
])('“%s” is none', (line) => {
  expect(read(line)).toBe('none');
});
