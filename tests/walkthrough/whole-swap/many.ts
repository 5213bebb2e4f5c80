import { killedDay } from '../../support/whole-swap/killed-day.ts';
import { startServer } from '../../support/whole-swap/killed-server.ts';
import { beginning } from '../../support/whole-swap/pulled-desk.ts';

/**
 * The days of the tests beside, many times over: `npm run deaths -- [seeds] [servers]`. Every word
 * to the database is died before once on the truck list, then whole swaps are walked with many deaths, then whole programs
 * are killed. Prints what was tried, and ends with 1 when anything was lost or done twice.
 */
async function many(seeds: number, servers: number): Promise<number> {
  const wrong: string[] = [];
  const begun = await beginning();
  const sum = { everyWord: 0, days: 0, deaths: 0, acknowledged: 0, again: 0, kills: 0 };
  const truck = 'before-leaving-the-shop';
  try {
    const { words } = await begun.day({ seed: 1, list: truck, deaths: { atWord: Number.POSITIVE_INFINITY } });
    for (let word = 0; word < words; word += Math.max(1, Math.ceil(words / (seeds * 20)))) {
      const day = await begun.day({ seed: 1, list: truck, deaths: { atWord: word } });
      sum.everyWord += day.deaths;
      wrong.push(...day.complaints.map((each) => `before word ${word}: ${each}`));
    }
    for (let seed = 1; seed <= seeds; seed += 1) {
      const day = await begun.day({ seed, list: 'swap', deaths: { share: 0.1 }, asides: 0.03 });
      sum.days += 1;
      sum.deaths += day.deaths;
      sum.acknowledged += day.deeds.filter(({ state }) => state === 'acknowledged').length;
      sum.again += day.again.length;
      wrong.push(...day.complaints.map((each) => `seed ${seed}: ${each}`));
    }
  } finally {
    begun.remove();
  }
  for (let seed = 1; seed <= servers; seed += 1) {
    const server = await startServer();
    try {
      const day = await killedDay(server, { seed, kills: 8, asides: 0.02 });
      sum.kills += server.deaths;
      wrong.push(
        ...server.standIn.violations,
        ...(await server.complaints(day)).map((each) => `server ${seed}: ${each}`),
      );
    } finally {
      await server.close();
    }
  }
  process.stdout.write(`${JSON.stringify(sum)}\n${wrong.map((line) => `${line}\n`).join('')}`);
  return wrong.length === 0 ? 0 : 1;
}

const [seeds = '20', servers = '3'] = process.argv.slice(2);
const main = async () => {
  process.exitCode = await many(Number(seeds), Number(servers));
};
void main();
