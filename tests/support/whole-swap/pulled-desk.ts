import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checklists } from '#knowledge/checklists.ts';
import { openStore, type Store } from '#store/store.ts';
import { hired } from './crew.ts';
import { type Day, Died, wholeDay } from './day.ts';
import { complaintsAbout } from './deeds.ts';
import type { ListId } from './demo-job.ts';
import { type DeskDeed, type DeskSight, deskDeed, doneAtDesk } from './desk-place.ts';
import { dice } from './dice.ts';
import { type Plug, plugFor } from './plug.ts';
import type { Place } from './sight.ts';

const crew = { lead: '<@1001>', apprentice: '<@1002>' } as const;

/** When the program dies. */
export type Deaths =
  /** Once, before its nth word to the database. */
  | { readonly atWord: number }
  /** At about this share of everything that is done, somewhere within it. */
  | { readonly share: number };

export interface PulledDay extends Day {
  /** Words to the database on the whole day, but for those after a death. */
  readonly words: number;
  /** What is wrong with the records at the end, one line each. */
  readonly complaints: readonly string[];
}

interface Wanted {
  readonly seed: number;
  readonly list: ListId;
  readonly deaths: Deaths;
  readonly asides?: number;
}

/** Records with the crew and the job in them and nothing else, to begin every day from. */
export interface Beginning {
  day(wanted: Wanted): Promise<PulledDay>;
  remove(): void;
}

/** More words than any one thing done needs, so that some deaths come after all of them and before the acknowledgement. */
const mostWords = 60;

export async function beginning(): Promise<Beginning> {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
  const first = join(folder, 'first.sqlite');
  const store = openStore(first);
  await hired(
    placeAt((deed) => doneAtDesk(store.scoped('crew'), deed, true)),
    crew,
  );
  store.close();
  let days = 0;
  return {
    async day(wanted) {
      days += 1;
      const records = join(folder, `day-${days}.sqlite`);
      copyFileSync(first, records);
      return dayWithDeaths(records, wanted);
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

const placeAt = (does: (deed: DeskDeed) => DeskSight): Place<DeskSight> => ({
  type: async (who, words, given) => does(deskDeed.typed(who, words, given)),
  press: async (who, on, label) => does(deskDeed.pressed(who, on, label)),
  fill: async (who, on, values) => does(deskDeed.filled(who, on, values)),
});

async function dayWithDeaths(first: string, { seed, list, deaths, asides = 0 }: Wanted): Promise<PulledDay> {
  const luck = dice(seed);
  let file = first;
  let store: Store = openStore(file);
  const plug = plugFor(() => file);
  try {
    if ('atWord' in deaths) plug.arm(deaths.atWord);
    const place = placeAt((deed) => {
      if ('share' in deaths && luck.chance(deaths.share)) plug.arm(luck.below(mostWords));
      return acknowledged(
        plug,
        () => doneAtDesk(store.scoped('crew'), deed, 'share' in deaths && luck.chance(0.5)),
        'share' in deaths,
      );
    });
    const revive = async () => {
      const copy = plug.pulled();
      if (copy === undefined) throw new Error('It died without the plug being pulled.');
      store.close();
      file = copy;
      store = openStore(file);
    };
    const day = await wholeDay(place, [crew.lead, crew.apprentice], { luck, list, revive, asides });
    // A plug armed at the last deed must not go off at the reading of what came of the day.
    plug.remove();
    const events = store.scoped('crew').walkEvents(1);
    return { ...day, words: plug.words, complaints: complaintsAbout(day.deeds, events, checklists[list].steps) };
  } finally {
    plug.remove();
    store.close();
  }
}

/** The plug may be pulled at every word, and once more when all is written and nothing is said yet. */
function acknowledged(plug: Plug, act: () => DeskSight, each: boolean): DeskSight {
  try {
    const sight = act();
    plug.pass();
    if (each) plug.pullIfArmed();
    return sight;
  } catch (error) {
    if (plug.isPulled) throw new Died('The plug was pulled.');
    throw error;
  }
}
