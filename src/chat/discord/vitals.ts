import { type Client, Status } from 'discord.js';
import type { Vitals } from '#operation/health.ts';

/** How the connections of a client are. */
export function vitalsOf(client: Client): Vitals {
  const shards = [...client.ws.shards.values()].map(({ id, status, lastPingTimestamp }) => ({
    id,
    ready: status === Status.Ready,
    lastHeartbeat: lastPingTimestamp > 0 ? new Date(lastPingTimestamp).toISOString() : null,
  }));
  const started = client.isReady();
  const state = !started ? 'starting' : shards.every(({ ready }) => ready) ? 'ready' : 'away';
  return { state, servers: client.guilds.cache.size, shards };
}
