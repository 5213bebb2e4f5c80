import { expect, it, onTestFinished } from 'vitest';
import { messageSight } from '../../support/whole-swap/discord-place.ts';
import { type Forged, forgedFrom, notRefused } from '../../support/whole-swap/forging.ts';
import { killedDay } from '../../support/whole-swap/killed-day.ts';
import { startServer } from '../../support/whole-swap/killed-server.ts';

const minutes = 60_000;

it(
  'a whole swap by two people, through deaths of the program and forged presses, to the papers',
  async () => {
    const server = await startServer();
    onTestFinished(() => server.close());
    const { ann, ben } = server.people;
    const forged: Forged[] = [];
    let holds = 0;
    const day = await killedDay(server, {
      seed: 3,
      kills: 2,
      async before(who, sight, step) {
        if (who !== server.crew.lead || !step.hold) return;
        const fresh = forgedFrom(sight, step);
        expect(fresh.length).toBeGreaterThan(0);
        forged.push(...fresh);
        holds += 1;
        const nth = holds % fresh.length;
        expect(await notRefused(ben, fresh.slice(nth, nth + 1))).toEqual([]);
      },
    });
    expect(server.deaths).toBe(2);
    expect(messageSight(await ben.slash('swap next')).headline).toMatch(/closed, by Ann/);

    await server.restart();
    const stale = forged.filter((_, index) => index % 7 === 0);
    expect(stale.length).toBeGreaterThan(5);
    expect(await notRefused(ben, stale)).toEqual([]);

    const papers = await ann.slash('handoff');
    expect(papers.files.map(({ name }) => name)).toEqual(['occupant-job-1.pdf', 'record-job-1.pdf']);
    expect(papers.text).not.toContain('is not closed');
    expect(server.standIn.violations).toEqual([]);
    expect(await server.complaints(day)).toEqual([]);
  },
  8 * minutes,
);
