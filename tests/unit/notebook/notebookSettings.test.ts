import { describe, expect, it } from 'vitest';
import { withDecimalMark } from '../../../src/notebook/decimalMark.ts';
import {
  readColumnsSaid,
  settleNotebook,
  type NotebookSaid,
} from '../../../src/notebook/notebookSettings.ts';
import { readTable } from '../../../src/notebook/readTable.ts';

const settled = (text: string, said: Partial<NotebookSaid> = {}) => {
  const read = readTable(text);
  if (!read.ok) throw new Error(read.why.kind);
  return settleNotebook(read.table, { columns: new Map(), ...said });
};
const columnsOf = (text: string, said: Partial<NotebookSaid> = {}) => {
  const found = settled(text, said);
  if (!found.ok) return found;
  return found.settings.columns.map(({ meaning, unit }) =>
    unit === undefined ? meaning : `${meaning} ${unit}`,
  );
};

describe('what a notebook’s columns mean', () => {
  it('is told by names that can mean one thing only, in any order, with the units in them', () => {
    expect(columnsOf('Notes,Temp °F,Water (ml),S.G.,Glaze,Date\nx,64,200,1.44,Heron,2026-03-05\n')).toEqual([
      'note',
      'temperature °F',
      'water ml',
      'gravity',
      'bucket',
      'date',
    ]);
  });

  it('is asked about where a name could mean several things, or nothing', () => {
    expect(settled('Date,Bucket,Name,Vis\n2026-03-05,Heron,Wren,14\n')).toEqual({
      ok: false,
      questions: [
        { kind: 'meaning', column: 'Name', samples: ['Wren'] },
        { kind: 'meaning', column: 'Vis', samples: ['14'] },
      ],
    });
  });

  it('is as somebody says, by a column’s name or its place', () => {
    const text = 'Date,Bucket,Name,"Water, total",,empty\n2026-03-05,Heron,Wren,2,fine,\n';
    const columns = readColumnsSaid('name=who, "Water, total"=water l, 5=note');
    expect(columnsOf(text, { columns: columns ?? new Map() })).toEqual([
      'date',
      'bucket',
      'who',
      'water l',
      'note',
    ]);
  });

  it('needs a unit where bare numbers went in', () => {
    const text = 'Date,Bucket,Water\n2026-03-05,Heron,200\n2026-03-06,Heron,1 l\n';
    expect(settled(text)).toMatchObject({ questions: [{ kind: 'unit', column: 'Water', samples: ['200'] }] });
    expect(columnsOf(text.replace(',200', ',200 ml'))).toEqual(['date', 'bucket', 'water']);
  });

  it('is refused when two columns would be the same, when one is not there, or none says when and where', () => {
    const line = '\n2026-03-05,Heron,2,3\n';
    expect(settled(`Date,Bucket,SG,Gravity${line}`)).toMatchObject({
      problem: { kind: 'twice', meaning: 'gravity' },
    });
    expect(settled(`Date,Bucket,Note,Notes${line}`)).toMatchObject({ ok: true });
    expect(settled(`Date,Bucket,SG,Note${line}`, { columns: new Map([['Colour', 'note']]) })).toMatchObject({
      problem: { kind: 'no-column', column: 'Colour' },
    });
    expect(settled(`Date,Bucket,SG,Note${line}`, { columns: new Map([['SG', 'colour']]) })).toMatchObject({
      problem: { kind: 'no-meaning', typed: 'colour' },
    });
    expect(settled('SG,Bucket\n1.44,Heron\n')).toMatchObject({
      problem: { kind: 'none-means', meaning: 'date' },
    });
    expect(settled('SG,Date\n1.44,2026-03-05\n')).toMatchObject({ problem: { meaning: 'bucket' } });
    expect(settled('SG,Date\n1.44,2026-03-05\n', { bucket: 'Heron' })).toMatchObject({ ok: true });
  });

  it.each(['Date', 'Date=', '=date', 'Date=date, Note'])('%j says nothing about columns', (typed) => {
    expect(readColumnsSaid(typed)).toBeUndefined();
  });
});

describe('the order of day and month', () => {
  const dates = (...all: string[]) =>
    settled(['Date,Bucket,SG', ...all.map((one) => `${one},Heron,1.44`)].join('\n'));

  it('is told by any date that has only one', () => {
    expect(dates('3/5/2026', '13/5/2026')).toMatchObject({ settings: { order: 'd/m/y' } });
    expect(dates('3/5/2026', '3/25/2026')).toMatchObject({ settings: { order: 'm/d/y' } });
    expect(dates('3.5.2026', '2026-03-05')).toMatchObject({ ok: true });
  });

  it('is asked about when each could be either, and when they disagree', () => {
    expect(dates('3/5/2026', '4/6/2026')).toMatchObject({ questions: [{ kind: 'dates' }] });
    expect(dates('3/25/2026', '25/3/2026')).toMatchObject({
      questions: [{ kind: 'dates', samples: ['25/3/2026', '3/25/2026'] }],
    });
  });
});

describe('the decimal mark', () => {
  const amounts = (gravity: string, ...all: string[]) =>
    settled(
      ['Date;Bucket;SG;Water ml', ...all.map((one) => `2026-03-05;Heron;${gravity};${one}`)].join('\n'),
    );

  it('is needed only where a number could be two, and told by the others', () => {
    expect(amounts('', '12,5', '200')).not.toMatchObject({ settings: { decimal: ',' } });
    expect(amounts('', '1.200', '12,5')).toMatchObject({ settings: { decimal: ',' } });
    expect(amounts('', '1,200', '12.5')).toMatchObject({ settings: { decimal: '.' } });
    // No gravity is in the thousands.
    expect(amounts('1,440', '1.200')).toMatchObject({ settings: { decimal: ',' } });
  });

  it('is asked about otherwise', () => {
    expect(amounts('', '1.200')).toMatchObject({ questions: [{ kind: 'decimal', samples: ['1.200'] }] });
    expect(amounts('', '1,200', '1.5', '1,5')).toMatchObject({ questions: [{ kind: 'decimal' }] });
  });

  it('leaves numbers alone that have one meaning', () => {
    expect(withDecimalMark('1,200 ml', ',')).toBe('1.200 ml');
    expect(withDecimalMark('1,200 ml', '.')).toBe('1200 ml');
    expect(withDecimalMark('1.200', ',')).toBe('1200');
    for (const plain of ['1.5', '1,5', '12', '0,125', '1,200,000', '1 1/2'])
      expect(withDecimalMark(plain, ',')).toBe(plain);
  });
});
