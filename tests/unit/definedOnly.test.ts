import { expect, it } from 'vitest';
import { definedOnly } from '../../src/definedOnly.ts';

it('fields that are undefined are absent; others stay in their order, false, zero, empty and null ones too', () => {
  const fields = { note: '', gone: undefined, count: 0, stirred: false, gravity: null, name: 'Capelin' };
  expect(Object.entries(definedOnly(fields))).toEqual([
    ['note', ''],
    ['count', 0],
    ['stirred', false],
    ['gravity', null],
    ['name', 'Capelin'],
  ]);
});
