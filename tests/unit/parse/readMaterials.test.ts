import { expect, it } from 'vitest';
import { readMaterials } from '../../../src/parse/readMaterials.ts';

it.each([
  ['moon dust: like kaolin', { name: 'moon dust', like: 'kaolin' }],
  ['moon dust like kaolin', { name: 'moon dust', like: 'kaolin' }],
  [
    'black stain: cobalt + manganese, not soluble, 4.2',
    { name: 'black stain', hazards: ['cobalt', 'manganese'], soluble: false, particleGravity: 4.2 },
  ],
  [
    'Black stain, hazards: chrome and silica, insoluble, gravity 4,2',
    { name: 'Black stain', hazards: ['chromium', 'silica dust'], soluble: false, particleGravity: 4.2 },
  ],
  [
    'white powder = none, dissolves in water, sg 1.7',
    { name: 'white powder', hazards: [], soluble: true, particleGravity: 1.7 },
  ],
  ['- sea clay: like ball clay, lead', { name: 'sea clay', like: 'ball clay', hazards: ['lead'] }],
  ['moon dust: green', { name: 'moon dust', unread: ['green'] }],
  // What every object inherits is no hazard.
  ['moon dust: constructor', { name: 'moon dust', unread: ['constructor'] }],
])('%s', (line, read) => {
  expect(readMaterials(line)).toEqual([{ unread: [], ...read }]);
});

it('a pasted list is one material a line', () => {
  expect(
    readMaterials('a1: like kaolin\n\nb2: like talc; c3: like quartz\r\n').map(({ name }) => name),
  ).toEqual(['a1', 'b2', 'c3']);
});
