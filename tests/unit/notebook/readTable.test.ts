import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../../src/notebook/readTable.ts';

const rows = (text: string) => {
  const read = readTable(text);
  return read.ok
    ? [read.table.header, ...read.table.rows.map(({ line, cells }) => [line, ...cells])]
    : read.why;
};

describe('a table of separated values', () => {
  it.each([
    [',', 'Date,Bucket,SG'],
    [';', 'Date;Bucket;SG'],
    ['a tab', 'Date\tBucket\tSG'],
    ['a semicolon, with commas in names', 'Date;Bucket, or pail;"SG, read; twice"'],
  ])('is separated by %s, as its first line is', (_, header) => {
    const read = readTable(`${header}\n`);
    expect(read.ok && read.table.header.length).toBe(3);
  });

  it('may say its separator itself', () => {
    expect(rows('sep=;\na,b;c\n1;2\n')).toEqual([
      ['a,b', 'c'],
      [3, '1', '2'],
    ]);
  });

  it('tells on which line of the file each row begins, over quoted lines and blank ones', () => {
    const text = 'Date,Note\r\n1,"one\r\ntwo, ""three"""\r\n\r\n,,\r\n2,four\r\n';
    expect(rows(text)).toEqual([
      ['Date', 'Note'],
      [2, '1', 'one\ntwo, "three"'],
      [6, '2', 'four'],
    ]);
  });

  it('ends its lines as old and new machines do', () => {
    for (const end of ['\n', '\r\n', '\r'])
      expect(rows(`a,b${end}1,2${end}`)).toEqual([
        ['a', 'b'],
        [2, '1', '2'],
      ]);
  });

  it('is refused by the number of the line when a quote is never closed', () => {
    expect(rows('a,b\n1,2\n3,"4\n5,6\n7,8\n')).toEqual({ kind: 'open-quote', line: 3 });
    expect(rows('a,b\n1,"2"3\n')).toEqual({ kind: 'open-quote', line: 2 });
  });

  it('is refused when it is no notebook: a line of 10 MB, a million columns, more columns or lines than any has, nothing', () => {
    expect(rows(`a,b\n1,${'x'.repeat(1e7)}\n`)).toMatchObject({ kind: 'long-line', line: 2 });
    expect(rows(`a,b\n1${','.repeat(1e6)}\n`)).toMatchObject({ kind: 'long-line', line: 2 });
    expect(rows(`a,b\n1${',2'.repeat(300)}\n`)).toMatchObject({
      kind: 'many-columns',
      line: 2,
      columns: 301,
    });
    expect(rows('1\n'.repeat(250_001))).toMatchObject({ kind: 'many-lines' });
    expect(rows('\n\n')).toEqual({ kind: 'empty' });
  });

  it('whatever stands in its cells, it is read as it was written', () => {
    const cell = fc.string({ unit: 'binary', maxLength: 12 }).map((text) => text.replace(/\r\n?/g, '\n'));
    const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(cell, cell), { maxLength: 20 }),
        fc.constantFrom(',', ';', '\t'),
        (all, between) => {
          const text = [['a', 'b'], ...all].map((row) => row.map(quoted).join(between)).join('\r\n');
          const read = readTable(text);
          const found = read.ok ? read.table.rows.map(({ cells }) => cells) : read.why;
          expect(found).toEqual(all.filter((row) => row.some((one) => one.trim() !== '')));
        },
      ),
    );
  });
});
