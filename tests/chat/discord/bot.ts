import { type Client, Events } from 'discord.js';
import { chartPictures, drawnChart } from '#chat/discord/chart-pictures.ts';
import { fetching } from '#chat/discord/fetching.ts';
import { gathering } from '#chat/discord/gathering.ts';
import { type House, usualPatience } from '#chat/discord/house.ts';
import { type Log, logTo } from '#chat/discord/log.ts';
import { pace } from '#chat/discord/pace.ts';
import { register } from '#chat/discord/register.ts';
import { serve } from '#chat/discord/serve.ts';
import { typedBefore } from '#chat/discord/typed-before.ts';
import { commands } from '#commands/index.ts';
import { openStore, type Store } from '#store/store.ts';
import { clientFor } from '../../support/stand-in/client.ts';
import type { StandIn } from '../../support/stand-in/stand-in.ts';

/** Fanwright in Discord, inside the test: the real client, the real records. */
export interface Bot {
  readonly client: Client<true>;
  readonly store: Store;
  /** What it logged of warnings and errors; most tests expect nothing. */
  readonly logged: readonly Readonly<Record<string, unknown>>[];
  /** Ends it as a restart would: what was acknowledged is finished, the records are closed. */
  stop(): Promise<void>;
}

export interface BotOptions {
  /** The file the records are in; in memory if not said. */
  readonly file?: string;
  readonly commands?: House['commands'];
  /** Draws a chart; as in earnest if not said. */
  readonly draw?: typeof drawnChart;
  readonly patience?: number;
  /** Whether it is busy; as it really is if not said. */
  readonly behind?: () => boolean;
  /** How fast one person may go. */
  readonly pace?: House['pace'];
  readonly guild?: string;
  /** Whether it greets a server that takes it in. Most tests begin in one it has long been with. */
  readonly greets?: boolean;
  /** Bounds on fetching files, where they are not the usual ones. */
  readonly fetching?: Parameters<typeof fetching>[1];
}

export async function startBot(standIn: StandIn, options: BotOptions = {}): Promise<Bot> {
  const { draw = drawnChart, patience = usualPatience } = options;
  const records = openStore(options.file ?? ':memory:');
  const known = (key: string): string | undefined => (key.startsWith('greeted ') ? 'yes' : records.note(key));
  const store = options.greets ? records : { ...records, note: known };
  const logged: Record<string, unknown>[] = [];
  const log: Log = logTo(
    (line) => logged.push(JSON.parse(line)),
    'warn',
    () => new Date(0),
  );
  const client = clientFor(standIn);
  const house = {
    store,
    commands: options.commands ?? commands,
    pictures: chartPictures(draw),
    typed: typedBefore(),
    ...gathering(),
    ...(options.behind ? { behind: options.behind } : {}),
    fetchFile: fetching(standIn.api, options.fetching),
    patience,
    // Tests go faster than people, so there is no limit unless one is asked for.
    pace: options.pace ?? pace(0),
  };
  const service = serve(client, house, log);
  const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
  await client.login(standIn.token);
  const readyClient = await ready;
  await register(readyClient, { store, commands: house.commands, guild: options.guild, log });
  return {
    client: readyClient,
    store,
    logged,
    async stop() {
      await service.finished();
      await client.destroy();
      store.close();
    },
  };
}
