import { startStandIn } from '../support/stand-in/stand-in.ts';
import { startBot, type Which } from './bots.ts';
import { median, type Row, type Section } from './rows.ts';

const rounds = 7;
const patience = 30_000;

/** Milliseconds from the start of the process to being connected, and to its first answer. */
async function oneStart(which: Which): Promise<{ connected: number; answered: number }> {
  const standIn = await startStandIn({ judging: false, patience });
  const start = performance.now();
  const bot = startBot(which, standIn);
  await standIn.connected();
  const connected = performance.now() - start;
  await standIn.user().slash('help', {}, { force: true });
  const answered = performance.now() - start;
  await bot.stop();
  await standIn.close();
  return { connected, answered };
}

export const startTime: Section = {
  title: `From the start of the process to being there (median of ${rounds}, in turns)`,
  async measure() {
    const times: Record<Which, { connected: number[]; answered: number[] }> = {
      bare: { connected: [], answered: [] },
      fanwright: { connected: [], answered: [] },
    };
    // The first start of each fills the loader's cache and does not count.
    for (let round = -1; round < rounds; round += 1) {
      for (const which of ['bare', 'fanwright'] as const) {
        const { connected, answered } = await oneStart(which);
        if (round < 0) continue;
        times[which].connected.push(connected);
        times[which].answered.push(answered);
      }
    }
    return (['connected', 'answered'] as const).flatMap((what): readonly Row[] => {
      const bare = median(times.bare[what]);
      const ours = median(times.fanwright[what]);
      const words = what === 'connected' ? 'connected' : 'first answer';
      return [
        { what: `${words}, bare bot`, measured: `${bare.toFixed(0)} ms` },
        {
          what: `${words}, Fanwright`,
          measured: `${ours.toFixed(0)} ms, ${(ours / bare).toFixed(2)} times as long`,
          ...(what === 'connected' ? { aim: { says: 'at most 2 times', met: ours <= 2 * bare } } : {}),
        },
      ];
    });
  },
};
