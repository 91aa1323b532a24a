import { present } from '../../present.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { BucketEntry } from '../../studio/bucket/bucketEvent.ts';
import type { Entry } from '../../studio/entry.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { countedReadings } from '../../studio/bucket/withoutFlagged.ts';
import { bucketStates } from '../../studio/bucket/fold/foldBucket.ts';
import type { LoggedEvent, Notes } from '../../studio/logbook/ports.ts';
import type { Asking, Chart } from '../../contract/contract.ts';

const isBucketEntry = (entry: Entry<LoggedEvent>): entry is BucketEntry => entry.stream > 0;

type Mark = Chart['marks'][number];
const isMark = (kind: string, mark: Record<Mark['kind'], string>): kind is Mark['kind'] => kind in mark;

/**
 * Gravity and efflux time with their windows, and the additions and stirs between. Undefined if nothing was measured.
 */
export const bucketChart = async (
  state: BucketState,
  { book, words }: Asking,
): Promise<Chart | undefined> => {
  const { zone } = await book.studio();
  const { mark } = words.chart;
  const all = await book.entries(state.no, { most: 500 });
  const entries = all
    .filter((entry): entry is (Entry<LoggedEvent> & Notes) & BucketEntry => isBucketEntry(entry))
    .filter(({ undoneBy, event }) => undoneBy === undefined && event.kind !== 'undo');
  const believed: ReadonlySet<number> = countedReadings(bucketStates(state.no, entries));
  const gravity: Chart['series'][number]['points'] = [];
  const efflux: Chart['series'][number]['points'] = [];
  const marks: Chart['marks'] = [];
  for (const { event, at, seq } of entries) {
    if (event.kind === 'reading' && event.gravity)
      gravity.push({ at, value: event.gravity.value, u95: event.gravity.u95, believed: believed.has(seq) });
    if (event.kind === 'reading' && event.flow && event.flow.seconds !== 'wont-run')
      efflux.push({ at, value: event.flow.seconds, believed: event.stirred === true });
    const { kind } = event;
    if (isMark(kind, mark)) marks.push({ at, kind, label: mark[kind] });
  }
  if (gravity.length + efflux.length === 0) return undefined;
  const { settings } = state;
  const oldest = <T extends { at: number }>(points: T[]) => points.sort((a, b) => a.at - b.at);
  return {
    title: settings.name,
    alt: words.chart.alt(settings.name, oldest(gravity), settings.gravity, marks.length),
    key: words.chart.key,
    zone,
    series: present([
      gravity.length > 0 && {
        label: words.chart.gravity,
        unit: '',
        ...definedOnly({ band: settings.gravity }),
        points: oldest(gravity),
      },
      efflux.length > 0 && {
        label: words.chart.efflux,
        unit: 's',
        ...definedOnly({ band: settings.efflux }),
        points: oldest(efflux),
      },
    ]),
    marks: oldest(marks),
  };
};
