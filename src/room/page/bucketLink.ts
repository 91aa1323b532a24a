import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireBoard, WireLeaf, WireText } from '../wire.ts';
import { button, h } from './browser/dom.ts';
import { get } from './browser/net.ts';
import { leafOf } from './jobs.ts';
import { nodes } from './text.ts';

interface Room {
  commands: readonly WireLeaf[];
  openForm(
    leaf: WireLeaf,
    given: { typed: Record<string, string>; trouble?: WireText; above?: HTMLElement },
  ): () => void;
  send(line: string): void;
}

/**
 * Opens the reading form of the bucket that the address names, as a label's code and a card on the board do, with what the bucket needs above it. The address keeps
 * its number until then, so that whoever has to sign in first gets there too.
 */
export const openLinkedBucket = async ({ commands, openForm, send }: Room): Promise<void> => {
  const [, linked] = /^\/bucket\/(\d{1,9})$/.exec(location.pathname) ?? [];
  const reading = leafOf(commands, 'reading');
  if (linked === undefined || !reading) return;
  const no = Number(linked);
  const board = await get<WireBoard>('/api/board');
  history.replaceState(null, '', '/');
  // Without an answer the number alone still fills the form.
  const bucket = board.ok ? board.value.buckets.find((one) => one.no === no) : undefined;
  if (board.ok && !bucket) {
    openForm(reading, { typed: {}, trouble: [words.noSuchBucket(no)] });
    return;
  }
  const card = button(
    words.cardOf,
    () => {
      close();
      send(`/bucket show bucket:${no}`);
    },
    { class: 'stamp quiet' },
  );
  const above = h(
    'div',
    { class: 'of-bucket', 'data-step': bucket?.step },
    bucket && h('p', { class: 'state' }, bucket.stepName),
    bucket && h('p', {}, h('b', {}, `${no} · `, h('bdi', {}, bucket.name)), ': ', ...nodes(bucket.needs)),
    card,
  );
  const close = openForm(reading, { typed: { bucket: bucket?.name ?? String(no) }, above });
};
