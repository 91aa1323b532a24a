import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { GatewayOpcodes } from 'discord.js';
import { WebSocketServer, type RawData, type WebSocket } from 'ws';
import { fields, isFields } from './discordBody.ts';
import type { World } from './discordWorld.ts';

interface Session {
  id: string;
  events: { op: GatewayOpcodes; t: string; s: number; d: unknown }[];
  socket: WebSocket | undefined;
}

const HEARTBEAT_INTERVAL = 41_250;
const KEPT_FOR_RESUME = 5_000;

/** The socket side: hands out sessions, replays what a resumed one missed, and misbehaves when told to. */
export class DiscordGatewayDouble {
  readonly identifies: { intents: number }[] = [];
  resumes = 0;
  /** Closes every new connection with this code. */
  refusing: number | undefined;
  /** Called when a session has been resumed and told so. */
  onResumed: () => void = () => undefined;
  readonly #world: World;
  readonly #token: string;
  readonly #changed: () => void;
  readonly #url: () => string;
  readonly #server = new WebSocketServer({ noServer: true });
  #session: Session | undefined;

  constructor(world: World, token: string, url: () => string, changed: () => void) {
    this.#world = world;
    this.#token = token;
    this.#url = url;
    this.#changed = changed;
  }

  accept(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    this.#server.handleUpgrade(request, socket, head, (client) => {
      client.on('message', (data) => this.#hear(client, data));
      client.on('close', () => {
        if (this.#session?.socket === client) this.#session.socket = undefined;
      });
      send(client, { op: GatewayOpcodes.Hello, d: { heartbeat_interval: HEARTBEAT_INTERVAL } });
    });
  }

  /** Sends an event; one that finds no connection waits for the session to be resumed. */
  dispatch(t: string, d: unknown): void {
    const session = this.#session;
    if (!session) throw new Error('no bot has identified itself yet');
    const event = { op: GatewayOpcodes.Dispatch, t, s: (session.events.at(-1)?.s ?? 0) + 1, d };
    session.events.push(event);
    if (session.events.length > 2 * KEPT_FOR_RESUME) session.events.splice(0, KEPT_FOR_RESUME);
    if (session.socket) send(session.socket, event);
  }

  /** Sends a text as it is, sense or not. */
  say(text: string): void {
    this.#session?.socket?.send(text);
  }

  get connected(): boolean {
    return this.#session?.socket !== undefined;
  }

  dropSocket(): void {
    this.#session?.socket?.terminate();
  }

  close(code: number): void {
    this.#session?.socket?.close(code);
  }

  askToReconnect(): void {
    if (this.#session?.socket) send(this.#session.socket, { op: GatewayOpcodes.Reconnect, d: null });
  }

  invalidateSession(resumable: boolean): void {
    if (this.#session?.socket)
      send(this.#session.socket, { op: GatewayOpcodes.InvalidSession, d: resumable });
    if (!resumable) this.#session = undefined;
  }

  stop(): void {
    for (const client of this.#server.clients) client.terminate();
    this.#server.close();
  }

  #hear(client: WebSocket, data: RawData): void {
    const payload: unknown = JSON.parse(String(data));
    if (!isFields(payload)) return client.close(4002);
    const d = fields(payload['d']);
    switch (payload['op']) {
      case GatewayOpcodes.Heartbeat:
        return send(client, { op: GatewayOpcodes.HeartbeatAck });
      case GatewayOpcodes.Identify:
        return this.#identify(client, d);
      case GatewayOpcodes.Resume:
        return this.#resume(client, d);
      default:
        return undefined;
    }
  }

  #identify(client: WebSocket, d: Record<string, unknown>): void {
    const intents = Number(d['intents']);
    this.identifies.push({ intents });
    this.#changed();
    if (d['token'] !== this.#token) return client.close(4004);
    if (this.refusing !== undefined) return client.close(this.refusing);
    const session: Session = { id: `session-${this.identifies.length}`, events: [], socket: client };
    this.#session = session;
    const world = this.#world;
    this.dispatch('READY', {
      v: 10,
      user: world.bot,
      guilds: [{ id: world.guildId, unavailable: true }],
      application: { id: world.applicationId, flags: 0 },
      session_id: session.id,
      resume_gateway_url: this.#url(),
    });
    this.dispatch('GUILD_CREATE', { id: world.guildId, name: 'Wrackline Clay Co-op' });
    this.#changed();
  }

  #resume(client: WebSocket, d: Record<string, unknown>): void {
    const session = this.#session;
    if (d['token'] !== this.#token) return client.close(4004);
    if (session?.id !== d['session_id'] || !session)
      return send(client, { op: GatewayOpcodes.InvalidSession, d: false });
    session.socket = client;
    for (const event of session.events.filter((one) => one.s > Number(d['seq']))) send(client, event);
    this.dispatch('RESUMED', {});
    this.resumes += 1;
    this.onResumed();
    this.#changed();
  }
}

const send = (client: WebSocket, payload: unknown): void => client.send(JSON.stringify(payload));
