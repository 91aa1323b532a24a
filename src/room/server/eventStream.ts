import type { ServerResponse } from 'node:http';
import type { Session } from '../ports.ts';

/** More than a phone may lag behind and still catch up message by message. */
const mostBehind = 256 * 1024;
const beat = 15_000;
/** After a silence the first post is sent at once; further ones are batched, this many milliseconds apart. */
const batchMilliseconds = 150;

/** All open event streams, with their sessions and addresses. */
export type Listening = Map<EventStream, { session: Session; from: string }>;

/**
 * One phone's event stream (SSE). What the phone does not read is buffered up to a limit, then the stream is closed;
 * the phone reconnects and asks for missed posts. So a silent phone costs the others nothing.
 */
export class EventStream {
  readonly #out: ServerResponse;
  readonly #beat: ReturnType<typeof setInterval>;
  #gathered = '';
  #gathering: ReturnType<typeof setTimeout> | undefined;

  constructor(out: ServerResponse, onEnd: () => void) {
    this.#out = out;
    out.writeHead(200, {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      'x-accel-buffering': 'no',
      'x-content-type-options': 'nosniff',
    });
    out.write('retry: 1500\n\n');
    this.#beat = setInterval(() => this.#write(': \n\n'), beat);
    out.on('error', () => undefined);
    out.once('close', () => {
      clearInterval(this.#beat);
      clearTimeout(this.#gathering);
      onEnd();
    });
  }

  send(event: string, no: number | undefined, json: string): void {
    const id = no === undefined ? '' : `id: ${no}\n`;
    this.#gathered += `${id}event: ${event}\ndata: ${json}\n\n`;
    if (this.#gathering === undefined) this.#tell();
  }

  close(): void {
    this.#out.end(this.#gathered);
  }

  #tell(): void {
    const told = this.#gathered;
    this.#gathered = '';
    this.#gathering = told === '' ? undefined : setTimeout(() => this.#tell(), batchMilliseconds);
    if (told !== '') this.#write(told);
  }

  #write(text: string): void {
    if (this.#out.destroyed || this.#out.writableEnded) return;
    if (this.#out.writableLength > mostBehind) this.#out.destroy();
    else this.#out.write(text);
  }
}
