import { Client, type ClientOptions, GatewayIntentBits } from 'discord.js';
import type { StandIn } from './stand-in.ts';

/**
 * The chat library's own client, pointed at the stand-in. Two things differ from its usual ways, both to keep tests
 * short: it does not try a failed request again, and it does not wait five seconds between two identifications.
 */
export const clientFor = (standIn: Pick<StandIn, 'api'>, options: Partial<ClientOptions> = {}): Client =>
  new Client({
    intents: [GatewayIntentBits.Guilds],
    allowedMentions: { parse: [] },
    ...options,
    rest: { api: standIn.api, retries: 0, ...options.rest },
    ws: { buildIdentifyThrottler: async () => ({ waitForIdentify: async () => undefined }), ...options.ws },
  });
