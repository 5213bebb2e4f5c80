import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { checklists } from '#knowledge/checklists.ts';
import { openStore } from '#store/store.ts';
import { type Program, startProgram } from '../../chat/discord/program.ts';
import type { Person } from '../stand-in/person.ts';
import { type StandIn, startStandIn } from '../stand-in/stand-in.ts';
import type { Crew } from './crew.ts';
import { type Day, Died } from './day.ts';
import { complaintsAbout } from './deeds.ts';
import { type DiscordSight, discordPlace } from './discord-place.ts';
import type { Place } from './sight.ts';

/** The whole program in a process of its own, on records of its own, with the stand-in of the platform before it. */
export interface Server {
  readonly standIn: StandIn;
  readonly people: { readonly ann: Person; readonly ben: Person };
  readonly crew: Crew;
  readonly place: Place<DiscordSight>;
  /** How often it was killed. */
  readonly deaths: number;
  /** Ends it with SIGKILL and starts it again, on the same records. */
  restart(): Promise<void>;
  /** The program is killed, once, this many milliseconds after the next thing done. */
  killAfter(milliseconds: number): void;
  /** Ends it kindly, and says what is wrong with the records after that day, one line each. */
  complaints(day: Day): Promise<readonly string[]>;
  close(): Promise<void>;
}

const ready = /"what":"ready"/;

export async function startServer(): Promise<Server> {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
  const file = join(folder, 'records.sqlite');
  const standIn = await startStandIn({ patience: 30_000 });
  const guild = standIn.guild();
  const ann = standIn.user({ name: 'Ann', permissions: ['ManageGuild'] });
  const ben = standIn.user({ name: 'Ben' });
  const crew = { lead: `<@${ann.id}>`, apprentice: `<@${ben.id}>` };
  const people = new Map([
    [crew.lead, ann],
    [crew.apprentice, ben],
  ]);

  let program: Program;
  const start = async () => {
    program = startProgram(folder, { ...standIn.environment, FANWRIGHT_DB: file, DISCORD_GUILD: guild.id });
    await program.until(ready);
  };
  await start();

  let deaths = 0;
  let fuse: number | undefined;
  const place = discordPlace(people, async (_begun, answer) => {
    const alive = program;
    const dead = alive.ended.then((): never => {
      throw new Died('The program was killed.');
    });
    if (fuse !== undefined) {
      const burning = delay(fuse);
      fuse = undefined;
      await burning;
      alive.kill('SIGKILL');
      await alive.ended;
    }
    return Promise.race([answer, dead]);
  });

  return {
    standIn,
    people: { ann, ben },
    crew,
    place,
    get deaths() {
      return deaths;
    },
    async restart() {
      deaths += 1;
      program.kill('SIGKILL');
      await program.ended;
      await start();
    },
    killAfter(milliseconds) {
      fuse = milliseconds;
    },
    async complaints({ deeds }) {
      program.kill('SIGTERM');
      await program.ended;
      const store = openStore(file);
      try {
        return complaintsAbout(deeds, store.scoped(guild.id).walkEvents(1), checklists.swap.steps);
      } finally {
        store.close();
      }
    },
    async close() {
      program.kill('SIGKILL');
      await program.ended;
      await standIn.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
