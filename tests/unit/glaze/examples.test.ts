import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** A number as an example prints it: its value, and half a unit of its last printed digit. */
class Printed {
  readonly value: number;
  readonly slack: number;
  constructor(text: string) {
    const [mantissa = '', exponent = '0'] = text.toLowerCase().split('e');
    this.value = Number(text);
    this.slack = 0.5000001 * 10 ** (Number(exponent) - (mantissa.split('.')[1] ?? '').length);
  }
}

interface Example {
  file: string;
  call: string;
  result: string;
}

const folder = new URL('../../../src/glaze/', import.meta.url);
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.ts'),
);
const sources = files.map((file) => ({ file, text: readFileSync(new URL(file, folder), 'utf8') }));
const examples = sources.flatMap(({ file, text }) =>
  [...text.matchAll(/@example (.+?) \/\/=> (.+?)(?: \*\/)?$/gm)].map(
    ([, call = '', result = '']): Example => ({ file, call, result }),
  ),
);

const scope: Record<string, unknown> = { Printed };
for (const file of files) Object.assign(scope, await import(new URL(file, folder).href));

const evaluate = (expression: string): unknown =>
  new Function(...Object.keys(scope), `'use strict'; return (${expression});`)(...Object.values(scope));

const printed = (result: string): unknown =>
  evaluate(
    result.replaceAll(/'[^']*'|(?<![\w.])-?\d[\d.]*(?:e-?\d+)?/g, (token) =>
      token.startsWith("'") ? token : `new Printed('${token}')`,
    ),
  );

const agree = (actual: unknown, expected: unknown, at: string): void => {
  if (expected instanceof Printed) {
    expect(typeof actual, at).toBe('number');
    expect(Math.abs(Number(actual) - expected.value), `${at}: ${String(actual)}`).toBeLessThanOrEqual(
      expected.slack,
    );
  } else if (typeof expected === 'object' && expected !== null) {
    const is = Object.entries(Object(actual));
    const should = Object.entries(expected);
    expect(is.map(([key]) => key).sort(), at).toEqual(should.map(([key]) => key).sort());
    const values = new Map(is);
    for (const [key, value] of should) agree(values.get(key), value, `${at}.${key}`);
  } else expect(actual, at).toBe(expected);
};

describe('the worked example beside each formula', () => {
  it('is there for each', () => {
    const docs = sources.flatMap(
      ({ text }) => text.match(/\/\*\*(?:(?!\*\/)[^])*@formula(?:(?!\*\/)[^])*\*\//g) ?? [],
    );
    expect(docs.length).toBeGreaterThan(0);
    expect(docs.filter((doc) => !doc.includes('@example'))).toEqual([]);
  });

  it.each(examples)('$file: $call', ({ call, result }) => agree(evaluate(call), printed(result), call));

  it('stands beside every formula that has a @formula', () => {
    const tags = (tag: string) => sources.reduce((sum, { text }) => sum + text.split(tag).length - 1, 0);
    expect(examples.length).toBe(tags('@example'));
    expect(tags('@example')).toBeGreaterThanOrEqual(tags('@formula'));
  });

  it('says what goes in, what comes out, within which limits and on whose word', () => {
    const blocks = sources.flatMap(
      ({ text }) => text.match(/\/\*\*(?:(?!\*\/)[^])*@formula(?:(?!\*\/)[^])*\*\//g) ?? [],
    );
    expect(blocks.length).toBeGreaterThan(60);
    for (const block of blocks)
      for (const tag of ['@param', '@returns', '@range', '@source', '@example']) expect(block).toContain(tag);
  });

  it('fails when a printed digit is wrong', () => {
    expect(() => agree(1.4801, printed('1.48'), 'wrong')).not.toThrow();
    expect(() => agree(1.486, printed('1.48'), 'wrong')).toThrow();
    expect(() => agree({ ok: true, value: 1 }, printed('{ ok: false, value: 1 }'), 'wrong')).toThrow();
  });
});
