import type { WirePost } from '../wire.ts';

interface Hooks {
  last(): number;
  post(post: WirePost): void;
  state(open: boolean): void;
  /** The session has ended, or the stream could not be opened. */
  cut(): void;
}

/** The event stream. It reconnects by itself and asks for missed posts. */
export const openLive = ({ last, post, state, cut }: Hooks): { close(): void; again(): void } => {
  let source: EventSource | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let pause = 500;
  let closed = false;
  const open = () => {
    if (closed) return;
    clearTimeout(timer);
    source?.close();
    source = new EventSource(`/api/stream?after=${last()}`);
    source.addEventListener('open', () => {
      pause = 500;
      state(true);
    });
    source.addEventListener('post', ({ data }: MessageEvent<string>) => post(JSON.parse(data) as WirePost));
    source.addEventListener('error', () => {
      state(false);
      cut();
      source?.close();
      clearTimeout(timer);
      timer = setTimeout(open, pause);
      pause = Math.min(pause * 2, 10_000);
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
