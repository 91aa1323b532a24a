import type { WirePost } from '../wire.ts';

interface Hooks {
  last(): number;
  post(post: WirePost): void;
  state(open: boolean): void;
}

/** The live stream. It comes back by itself and asks for what it missed. */
export const openLive = ({ last, post, state }: Hooks): { close(): void; again(): void } => {
  let source: EventSource | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let pause = 500;
  const open = () => {
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
      source?.close();
      clearTimeout(timer);
      timer = setTimeout(open, pause);
      pause = Math.min(pause * 2, 10_000);
    });
  };
  open();
  return {
    close() {
      clearTimeout(timer);
      source?.close();
    },
    again: open,
  };
};
