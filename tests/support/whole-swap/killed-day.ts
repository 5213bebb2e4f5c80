import { hired } from './crew.ts';
import { type Manner as AnyManner, type Day, wholeDay } from './day.ts';
import { dice } from './dice.ts';
import type { DiscordSight } from './discord-place.ts';
import type { Server } from './killed-server.ts';
import type { Place } from './sight.ts';

type Manner = AnyManner<DiscordSight>;

/** Fewer than are done on the whole day, so that every kill comes. */
const things = 200;

/**
 * A whole swap in a server, whose program is killed at instants drawn beforehand: between two things that were acknowledged,
 * or some milliseconds after one was done. What the crew sees of the job before is noted on the sheet.
 */
export async function killedDay(
  server: Server,
  { seed, kills, ...manner }: { readonly seed: number; readonly kills: number } & Pick<Manner, 'asides' | 'before'>,
): Promise<Day> {
  const luck = dice(seed);
  const { lead, apprentice } = server.crew;
  const { ann } = server.people;
  await hired(server.place, server.crew);
  await ann.slash('size', {
    'room-length': '8 ft',
    'room-width': '5 ft',
    'ceiling-height': '8 ft',
    fixtures: 'none',
    running: 'on-demand',
  });
  const at = new Map(
    Array.from({ length: kills }, () => [luck.below(things), luck.chance(0.3) ? null : luck.below(25)]),
  );
  let done = 0;
  const counted = async (act: () => Promise<DiscordSight>): Promise<DiscordSight> => {
    const kill = at.get(done);
    done += 1;
    if (kill === null) await server.restart();
    else if (kill !== undefined) server.killAfter(kill);
    return act();
  };
  const { place } = server;
  const killable: Place<DiscordSight> = {
    type: (...deed) => counted(() => place.type(...deed)),
    press: (...deed) => counted(() => place.press(...deed)),
    fill: (...deed) => counted(() => place.fill(...deed)),
  };
  return wholeDay(killable, [lead, apprentice], { ...manner, luck, revive: () => server.restart() });
}
