import type { WirePost } from '../../wire.ts';
import { phoneNow } from './clock.ts';
import { GrowingPause } from './growingPause.ts';

interface Hooks {
  last(): number;
  post(post: WirePost): void;
  state(open: boolean): void;
  arrived(): void;
  /** The session has ended, or the stream could not be opened. */
  cut(): void;
}

/** A stream that lasted this long counts as a success. */
const wellAfter = 10_000;

/** The event stream. It reconnects by itself and asks for missed posts. */
export const openLive = ({ last, post, state, arrived, cut }: Hooks): { close(): void; again(): void } => {
  let source: EventSource | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let opened: number | undefined;
  const pause = new GrowingPause();
  let closed = false;
  const open = () => {
    if (closed) return;
    clearTimeout(timer);
    source?.close();
    source = new EventSource(`/api/stream?after=${last()}`);
    source.addEventListener('open', () => {
      opened = phoneNow();
      state(true);
    });
    source.addEventListener('post', ({ data }: MessageEvent<string>) => post(JSON.parse(data) as WirePost));
    source.addEventListener('arrived', arrived);
    source.addEventListener('error', () => {
      state(false);
      cut();
      source?.close();
      clearTimeout(timer);
      if (opened !== undefined && phoneNow() - opened > wellAfter) pause.over();
      opened = undefined;
      timer = setTimeout(open, pause.next());
    });
  };
  open();
  return {
    close() {
      closed = true;
      clearTimeout(timer);
      source?.close();
    },
    again: open,
  };
};
