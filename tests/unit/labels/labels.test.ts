import { describe, expect, it } from 'vitest';
import type { Label, LabelSheet } from '../../../src/contract/labelSheet.ts';
import { reachOf } from '../../../src/contract/roomReach.ts';
import { labelsPdf } from '../../../src/labels/labelsPdf.ts';
import { demoStudio } from '../../helpers/demoStudio.ts';
import { readCode } from '../../helpers/labels/readCode.ts';
import { renderPdf, type PrintedPage } from '../../helpers/labels/renderPdf.ts';
import { plainText } from '../../../src/contract/plainText.ts';
import { bucketCautionWords } from '../../../src/words/verdict/bucketCautionWords.ts';

const url = 'https://glaze.wrackline.example';

const label = (changed: Partial<Label> = {}): Label => ({
  no: 4,
  name: 'Gull Grey',
  nick: 'gg',
  window: { label: 'Gravity', low: 1.42, high: 1.46, lowText: '1.42', highText: '1.46' },
  seconds: '12 to 16 s by hall cup',
  lines: ['Fires to cone 6, oxidation.', 'For dipping.'],
  cautions: ['Wear gloves.'],
  lead: { kind: 'code', url: `${url}/bucket/4`, caption: 'Scan it to log a reading.' },
  ...changed,
});
const sheet = (labels: Label[], changed: Partial<LabelSheet> = {}): LabelSheet => ({
  paper: 'a4',
  title: 'Bucket labels',
  printed: 'Printed today',
  foot: 'Bucket labels.',
  boxNote: 'A box marks a letter that could not be printed.',
  labels,
  ...changed,
});

const drawn = async (wanted: LabelSheet) => {
  const { file, ...rest } = await labelsPdf(wanted);
  return { ...rest, content: file.content, drawn: await renderPdf(file.content) };
};

const codesOf = (page: PrintedPage): (string | undefined)[] =>
  page.texts
    .filter(({ text }) => text.startsWith('Scan it'))
    .map(({ x, y }) => readCode(page, { x: x - 12, y: page.height - y - 128, width: 116, height: 122 }));

/** A text’s box, from its baseline to the height of its letters. */
const boxes = ({ texts }: PrintedPage) =>
  texts.map(({ text, x, y, width, size }) => ({
    text,
    left: x,
    right: x + width,
    low: y,
    high: y + 0.7 * size,
  }));

/** Pairs of texts that lie over one another. */
const overlaps = (page: PrintedPage): string[] => {
  const all = boxes(page);
  return all.flatMap((a, i) =>
    all
      .slice(i + 1)
      .filter((b) => a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.low < b.high && b.low < a.high)
      .map((b) => `${a.text} / ${b.text}`),
  );
};

const wordsOf = (pages: readonly PrintedPage[]): string =>
  pages
    .flatMap(({ texts }) => texts.map(({ text }) => text))
    .join('')
    .replace(/\s+/g, '');

const longName = `Grandmother's ${'very '.repeat(8)}old speckled oatmeal white no 2`.slice(0, 80);
const hardLabels: Label[] = [
  label({ no: 1, name: longName }),
  label({ no: 2, name: 'W'.repeat(80), nick: 'MMMMMMMMMMMM' }),
  label({ no: 3, name: 'Żółć Ēriks Ψάρι Морская ночь 🪣🐳 霧' }),
  label({ no: 1234, name: 'Gull Wing', cautions: Object.values(bucketCautionWords) }),
  label({
    no: 99,
    lines: ['Fires to cone 6.', `Recipe: ${'feldspar 44, '.repeat(31)}.`, `On ${'stoneware '.repeat(12)}.`],
  }),
  label({ no: 123456789, name: 'Fog' }),
];

describe('a sheet of labels', () => {
  it.each([
    ['a4', 595.28, 841.89],
    ['letter', 612, 792],
  ] as const)('is as large as %s paper, by its standard', async (paper, width, height) => {
    const { drawn: pages } = await drawn(sheet([label()], { paper }));
    expect([pages[0]?.width, pages[0]?.height]).toEqual([width, height]);
  });

  it.each(['a4', 'letter'] as const)(
    'on %s keeps long names, every caution and a long recipe whole: nothing is cut, nothing lies over another',
    async (paper) => {
      const { drawn: pages, unprinted } = await drawn(sheet(hardLabels, { paper }));
      for (const page of pages) {
        for (const { text, left, right, low, high } of boxes(page)) {
          expect(left, text).toBeGreaterThanOrEqual(29);
          expect(right, text).toBeLessThanOrEqual(page.width - 29);
          expect(low, text).toBeGreaterThanOrEqual(28);
          expect(high, text).toBeLessThanOrEqual(page.height - 29);
        }
        expect(overlaps(page)).toEqual([]);
      }
      const all = wordsOf(pages);
      for (const { name, nick, lines, cautions } of hardLabels.filter(({ no }) => no !== 3))
        for (const text of [name, nick ?? '', ...lines, ...cautions])
          expect(all).toContain(text.replace(/\s+/g, ''));
      expect(all).toContain('ŻółćĒriksΨάριМорскаяночь');
      expect(unprinted).toEqual([{ no: 3, characters: ['🪣', '🐳', '霧'] }]);
      expect(all).toContain('Aboxmarksaletter');
    },
  );

  it('keeps each label within its cut lines', async () => {
    const { drawn: pages } = await drawn(sheet([...hardLabels.slice(0, 3), label()]));
    for (const page of pages)
      for (const { text, left, right } of boxes(page)) {
        const middle = page.width / 2;
        expect(left < middle ? right : page.width - left, text).toBeLessThanOrEqual(middle - 12);
      }
  });

  it('shows the number larger than anything else', async () => {
    const { drawn: pages } = await drawn(sheet([label()]));
    const largest = pages[0]?.texts.toSorted((a, b) => b.size - a.size)[0];
    expect(largest?.text).toBe('4');
  });

  it.each(['a4', 'letter'] as const)('on %s has a code on each label that a scanner reads', async (paper) => {
    const labels = Array.from({ length: 7 }, (_, i) =>
      label({ no: i + 1, lead: { kind: 'code', url: `${url}/bucket/${i + 1}`, caption: 'Scan it to log.' } }),
    );
    const { drawn: pages, pages: count } = await drawn(sheet(labels, { paper }));
    expect(pages).toHaveLength(count);
    expect(pages.flatMap(codesOf)).toEqual(labels.map(({ no }) => `${url}/bucket/${no}`));
  });

  it('is plain characters, so that every platform hands it on as it is', async () => {
    expect((await labelsPdf(sheet(hardLabels))).file.content).toMatch(/^[\x20-\x7e\n]+$/);
  });
});

describe('/bucket labels', () => {
  const open = async (room?: string) => {
    const { app, studio, as, now, close } = await demoStudio('2026-05-20T21:00:00Z');
    if (room !== undefined) app.rooms.set(studio, room);
    const keeper = await as('Odile', 'keeper');
    let key = 0;
    return {
      close,
      zone: 'America/St_Johns',
      now,
      print: (typed: Record<string, string> = {}, who = keeper) =>
        app.desk.dispatch({ ...who, key: String(++key), now, path: ['bucket', 'labels'], typed }),
      member: await as('Wren'),
    };
  };
  const said = (
    texts: readonly Parameters<typeof plainText>[0][] | undefined,
    now: Parameters<typeof plainText>[1],
  ) => (texts ?? []).map((text) => plainText(text, now)).join(' ');

  it('prints every bucket in use, with codes to its page in the room', async () => {
    const studio = await open(url);
    const reply = await studio.print();
    expect(reply).toMatchObject({ kind: 'answer', data: { paper: 'a4', reach: 'anywhere' } });
    expect(reply.cautions).toEqual([]);
    const pages = await renderPdf(reply.file?.content ?? '');
    expect(pages.flatMap(codesOf)).toEqual(Array.from({ length: 12 }, (_, i) => `${url}/bucket/${i + 1}`));
    const all = wordsOf(pages);
    for (const text of [
      'Gull Grey “gg”',
      '12 to 16 s by hall cup',
      'Fires to cone 6, oxidation.',
      'For brushing.',
      'Fires to cone 10, reduction.',
      'On stoneware, porcelain.',
      bucketCautionWords.cobalt,
      'Wed 20 May 2026',
    ])
      expect(all).toContain(text.replace(/\s+/g, ''));
    await studio.close();
  });

  it('on an address of the network warns, on the sheet too, that it may change', async () => {
    const studio = await open('http://192.168.1.20:8017');
    const reply = await studio.print({ buckets: 'gg, 7', paper: 'Letter' });
    expect(reply.data).toMatchObject({ paper: 'letter', labels: [{ bucket: 1 }, { bucket: 7 }] });
    expect(said(reply.cautions, studio)).toMatch(/may change/);
    expect(wordsOf(await renderPdf(reply.file?.content ?? ''))).toContain('Thataddressmaychange');
    await studio.close();
  });

  it.each(['http://127.0.0.1:8017', 'http://localhost:8017', 'http://[::1]:8017'])(
    'on %s prints nothing, says what to set, and offers lines to type',
    async (room) => {
      const studio = await open(room);
      const reply = await studio.print();
      expect(reply).toMatchObject({ kind: 'refusal' });
      expect(reply.file).toBeUndefined();
      expect(said([reply.title], studio)).toMatch(/ROOM_URL/);
      expect(reply.actions?.[0]?.line).toBe('/bucket labels code:no');
      await studio.close();
    },
  );

  it('without a room prints the line to type on Discord', async () => {
    const studio = await open();
    const reply = await studio.print({ buckets: 'gull grey' });
    expect(reply.data['labels']).toEqual([{ bucket: 1, line: '/reading bucket:1' }]);
    expect(wordsOf(await renderPdf(reply.file?.content ?? ''))).toContain('/readingbucket:1');
    await studio.close();
  });

  it('is for keepers, and asks about a bucket that it does not find without losing the rest', async () => {
    const studio = await open(url);
    expect((await studio.print({}, studio.member)).kind).toBe('refusal');
    const wrong = await studio.print({ buckets: 'gg, sandbra, 7' });
    expect(wrong.kind).toBe('refusal');
    expect(said([wrong.title], studio)).toContain('sandbra');
    expect(wrong.actions?.[0]?.line).toBe('/bucket labels buckets:"gg, 4, 7"');
    await studio.close();
  });
});

// RFC 1122, 1918, 3927, 6598, 4193, 4291 and 6762.
describe('who can open an address', () => {
  it.each([
    ['http://127.0.0.1:8017', 'machine'],
    ['http://127.8.9.1', 'machine'],
    ['http://localhost', 'machine'],
    ['http://[::1]:8017', 'machine'],
    ['http://[::ffff:127.0.0.1]', 'machine'],
    ['http://0.0.0.0', 'machine'],
    ['http://10.0.0.4', 'network'],
    ['http://172.16.0.1', 'network'],
    ['http://172.32.0.1', 'anywhere'],
    ['http://192.168.1.20:8017', 'network'],
    ['http://169.254.3.4', 'network'],
    ['http://100.64.0.1', 'network'],
    ['http://[fe80::1]', 'network'],
    ['http://[fd12:3456::1]', 'network'],
    ['http://[::ffff:10.0.0.1]', 'network'],
    ['http://glaze-room.local:8017', 'network'],
    ['http://glaze-room:8017', 'network'],
    ['http://8.8.8.8', 'anywhere'],
    ['http://[2001:db8::1]', 'anywhere'],
    ['https://glaze.wrackline.example/', 'anywhere'],
  ] as const)('%s: %s', (address, reach) => {
    expect(reachOf(address)).toBe(reach);
  });
});
