import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { GatewayCloseCodes, GatewayIntentBits, GatewayOpcodes } from 'discord.js';
import { type RawData, type WebSocket, WebSocketServer } from 'ws';
import { guildCreate } from './fixtures.ts';
import type { World } from './world.ts';

/** The connection over which the platform tells the bot what happens, and the ways it breaks. */
export interface Gateway {
  /** How often the bot said what. */
  readonly counts: { identified: number; resumed: number; heartbeats: number };
  /** How many connections are ready. */
  readonly connections: number;
  /** Cuts the line without a word; what happens meanwhile is told on resuming. */
  dropConnections(): void;
  /** Asks the bot to connect again (op 7). */
  askToReconnect(): void;
  /** Declares the sessions over (op 9), or only to be resumed. */
  invalidateSessions(resumable?: boolean): void;
  /** Goes dumb on the present connections: no heartbeat is acknowledged and nothing is told. */
  goSilent(): void;
  /** Closes the present connections with a number: 4004 is a bad token, 4014 an intent that is not allowed. */
  closeWith(code: number): void;
  /** Closes with a number whenever the bot identifies; none to stop. */
  refuseWith(code: number | undefined): void;
}

interface Session {
  readonly id: string;
  readonly shard: number;
  told: number;
  /** The latest of what was told, for the bot that comes back. */
  readonly events: { readonly s: number; readonly text: string }[];
  line: Line | undefined;
}

interface Line {
  readonly socket: WebSocket;
  session: Session | undefined;
  silent: boolean;
}

interface Heard {
  readonly op: number;
  readonly d: {
    readonly token?: string;
    readonly intents?: number;
    readonly shard?: readonly [number, number];
    readonly session_id?: string;
    readonly seq?: number;
  };
}

export interface GatewayOptions {
  readonly heartbeatInterval: number;
  /** Intents that need the platform's leave and have it. */
  readonly allowedIntents: number;
}

const privileged = GatewayIntentBits.GuildMembers | GatewayIntentBits.GuildPresences | GatewayIntentBits.MessageContent;
const mostRemembered = 10_000;

/** Closed with one of these, a session is over for good. */
const farewells: readonly number[] = [1000, 1001];

export function gateway(world: World, { heartbeatInterval, allowedIntents }: GatewayOptions) {
  const server = new WebSocketServer({ noServer: true, perMessageDeflate: false });
  const sessions = new Map<string, Session>();
  const lines = new Set<Line>();
  const counts = { identified: 0, resumed: 0, heartbeats: 0 };
  let refusal: number | undefined;

  const send = ({ socket, silent }: Line, text: string) => {
    if (!silent && socket.readyState === socket.OPEN) socket.send(text);
  };
  const say = (line: Line, op: GatewayOpcodes, d: unknown) => send(line, JSON.stringify({ op, d, s: null, t: null }));

  const tell = (session: Session, event: string, d: unknown) => {
    session.told += 1;
    const s = session.told;
    const text = JSON.stringify({ op: GatewayOpcodes.Dispatch, t: event, s, d });
    if (session.events.push({ s, text }) > mostRemembered) session.events.splice(0, mostRemembered / 2);
    if (session.line) send(session.line, text);
  };

  const shardOf = (guildId: string) => Number((BigInt(guildId) >> 22n) % BigInt(world.shards));

  world.dispatch = (event, data, guildId) => {
    for (const session of sessions.values()) {
      if (guildId === undefined || session.shard === shardOf(guildId)) tell(session, event, data);
    }
  };

  function identify(line: Line, { token, intents = 0, shard = [0, 1] }: Heard['d']) {
    counts.identified += 1;
    if (refusal !== undefined) return line.socket.close(refusal);
    if (token !== world.token) return line.socket.close(GatewayCloseCodes.AuthenticationFailed);
    if (intents & privileged & ~allowedIntents) return line.socket.close(GatewayCloseCodes.DisallowedIntents);
    const session: Session = { id: `session-${world.nextId()}`, shard: shard[0], told: 0, events: [], line };
    sessions.set(session.id, session);
    line.session = session;
    const guilds = [...world.guilds.values()].filter(({ id }) => shardOf(id) === session.shard);
    tell(session, 'READY', {
      v: 10,
      user: world.bot,
      guilds: guilds.map(({ id }) => ({ id, unavailable: true })),
      session_id: session.id,
      resume_gateway_url: `${world.origin.replace('http', 'ws')}/gateway`,
      shard,
      application: { id: world.bot.id, flags: 0 },
      session_type: 'normal',
      relationships: [],
      private_channels: [],
      presences: [],
      guild_join_requests: [],
      user_settings: {},
    });
    for (const guild of guilds) tell(session, 'GUILD_CREATE', guildCreate(guild, world.bot.id));
    world.signal.notify();
  }

  function resume(line: Line, { token, session_id: id = '', seq = 0 }: Heard['d']) {
    const session = sessions.get(id);
    if (token !== world.token) return line.socket.close(GatewayCloseCodes.AuthenticationFailed);
    if (!session) return say(line, GatewayOpcodes.InvalidSession, false);
    counts.resumed += 1;
    session.line = line;
    line.session = session;
    for (const { s, text } of session.events) if (s > seq) send(line, text);
    tell(session, 'RESUMED', {});
    world.signal.notify();
  }

  function hear(line: Line, raw: RawData) {
    const { op, d } = JSON.parse(String(raw)) as Heard;
    if (op === GatewayOpcodes.Heartbeat) {
      counts.heartbeats += 1;
      say(line, GatewayOpcodes.HeartbeatAck, null);
    } else if (op === GatewayOpcodes.Identify) identify(line, d);
    else if (op === GatewayOpcodes.Resume) resume(line, d);
  }

  function hangUp(line: Line, code: number) {
    lines.delete(line);
    const { session } = line;
    if (session?.line !== line) return;
    session.line = undefined;
    if (farewells.includes(code)) sessions.delete(session.id);
  }

  server.on('connection', (socket: WebSocket) => {
    const line: Line = { socket, session: undefined, silent: false };
    lines.add(line);
    socket.on('message', (raw) => hear(line, raw));
    socket.on('close', (code) => hangUp(line, code));
    socket.on('error', () => socket.terminate());
    say(line, GatewayOpcodes.Hello, { heartbeat_interval: heartbeatInterval });
  });

  const controls: Gateway = {
    counts,
    get connections() {
      return [...lines].filter(({ session }) => session !== undefined).length;
    },
    dropConnections() {
      for (const { socket } of lines) socket.terminate();
    },
    askToReconnect() {
      for (const line of lines) say(line, GatewayOpcodes.Reconnect, null);
    },
    invalidateSessions(resumable = false) {
      for (const line of lines) {
        if (!resumable && line.session) sessions.delete(line.session.id);
        say(line, GatewayOpcodes.InvalidSession, resumable);
      }
    },
    goSilent() {
      for (const line of lines) line.silent = true;
    },
    closeWith(code) {
      for (const { socket } of lines) socket.close(code);
    },
    refuseWith(code) {
      refusal = code;
    },
  };

  return {
    controls,
    /** Takes over a request that wants to become a connection. */
    welcome: (request: IncomingMessage, socket: Duplex, head: Buffer) =>
      server.handleUpgrade(request, socket, head, (made) => server.emit('connection', made, request)),
  };
}
