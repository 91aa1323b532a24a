import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { completeLine } from '../../../src/desk/completeLine.ts';
import { demoStudio } from '../../helpers/demoStudio.ts';

let demo: Awaited<ReturnType<typeof demoStudio>>;
beforeAll(async () => {
  demo = await demoStudio('2026-05-20T21:00:00Z');
});
afterAll(() => demo.close());

const complete = async (line: string, role: 'member' | 'keeper' = 'member') =>
  completeLine(line, { ...(await demo.as('Wren', role)), now: demo.now }, demo.app.desk);

describe('completing a line', () => {
  it.each([
    ['/rea', ['/reading '], '/rea'],
    ['rea', ['/reading '], 'rea'],
    ['/bucket sh', ['show '], 'sh'],
    ['/reading seco', ['seconds:'], 'seco'],
    ['/reading bucket:gg sec', ['seconds:'], 'sec'],
    ['/reading bucket:"Gull Grey" sec', ['seconds:'], 'sec'],
  ])('of %s gives %j', async (line, candidates, end) => {
    expect(await complete(line)).toEqual([candidates, end]);
  });

  it('gives buckets by name, quoted where the name has a space', async () => {
    const [candidates, end] = await complete('/water-or-stir bucket:gull');
    expect(candidates).toEqual(['"Gull Grey"', '"Gull Wing"']);
    expect(end).toBe('gull');
  });

  it('finds a bucket that is misspelt', async () => {
    expect(await complete('/water-or-stir bucket:sandbra')).toEqual([['Sandbar'], 'sandbra']);
  });

  it('goes on inside a quotation that is still open', async () => {
    expect(await complete('/water-or-stir bucket:"gull w')).toEqual([['"Gull Wing"'], '"gull w']);
  });

  it('takes words before any option for the first one', async () => {
    expect((await complete('/water-or-stir fog'))[0]).toEqual(['"Fog Bell"']);
  });

  it('gives the set values of an option', async () => {
    expect((await complete('/added bucket:gg what:fl'))[0]).toEqual(['flocculant']);
    expect((await complete('/reading bucket:gg stirred:'))[0]).toEqual(['yes', 'no']);
  });

  it('never gives an option that the line has already', async () => {
    const [candidates] = await complete('/reading bucket:gg ');
    expect(candidates).toContain('seconds:');
    expect(candidates).not.toContain('bucket:');
  });

  it('gives the buckets that a line in plain words begins like', async () => {
    expect(await complete('gull')).toEqual([['Gull Grey ', 'Gull Wing '], 'gull']);
    expect(await complete('gull w')).toEqual([['Gull Wing '], 'gull w']);
    expect((await complete('/gull'))[0]).toEqual([]);
  });

  it('gives nothing for a command that is not there', async () => {
    expect((await complete('/paint bucket:gg'))[0]).toEqual([]);
  });
});
