import { describe, expect, it, onTestFinished } from 'vitest';
import { terminalSession } from '#chat/terminal/session.ts';
import ask from '#commands/ask.ts';
import callback from '#commands/callback.ts';
import duct from '#commands/duct.ts';
import { openStore } from '#store/store.ts';

const day = 24 * 3600 * 1000;

/** One job whose days pass as told. */
function job(language?: 'spanish') {
  let now = new Date('2026-11-23T15:00:00Z');
  const store = openStore(':memory:', { now: () => now });
  onTestFinished(() => store.close());
  const sitting = () =>
    terminalSession({
      store: store.scoped('test'),
      commands: [ask, callback, duct],
      who: 'ann',
      language,
      paper: { width: 400, colour: false },
      drawn: async () => undefined,
    });
  let session = sitting();
  return {
    say: (line: string) => session.say(line),
    asking: () => session.asking(),
    later(days: number) {
      now = new Date(now.getTime() + days * day);
      session = sitting();
    },
  };
}

const askedStill = 'On November 23, 2026 ann told of a danger: “smells like rotten eggs”. Is it still so?';

describe('a danger told on an earlier day', () => {
  it('stops at once on its own day', async () => {
    const { say } = job();
    expect(await say('ask smells like rotten eggs')).toContain('Everyone outside now');
    expect(await say('callback')).toContain('Everyone outside now');
  });

  it('is asked about, with when it was told and by whom, and what to do until it is known', async () => {
    const { say, later, asking } = job();
    await say('ask smells like rotten eggs');
    later(7);
    const asked = await say('callback');
    expect(asked).toContain(askedStill);
    expect(asked).toContain('Until it is known it counts as fumes');
    expect(asking()).toBe(true);
    const said = await say('yes');
    expect(said).toContain('Everyone outside now');
    expect(said).toContain('Told on November 23, 2026 by ann: “smells like rotten eggs”.');
  });

  it('is not dropped by a later complaint', async () => {
    const { say, later } = job();
    await say('ask smells like rotten eggs');
    later(1);
    expect(await say('callback complaint="the grille rattles"')).toContain(askedStill);
    expect(await say('no')).toContain('I understood: a rattle');
  });

  it('that nobody can say stops, and is asked again another day', async () => {
    const { say, later } = job();
    await say('ask smells like rotten eggs');
    later(1);
    await say('callback');
    expect(await say("don't know")).toContain('Everyone outside now');
    later(1);
    expect(await say('callback')).toContain(askedStill);
  });

  it('that is over is never asked about again, until it is told anew', async () => {
    const { say, later, asking } = job();
    await say('ask smells like rotten eggs');
    later(1);
    await say('callback');
    expect(await say('no')).not.toContain('Everyone outside');
    expect(asking()).toBe(true);
    later(1);
    expect(await say('callback')).not.toContain('told of a danger');
    expect(await say('/callback complaint="smells like rotten eggs"')).toContain('Everyone outside now');
  });

  it('never holds up one that is told today', async () => {
    const { say, later } = job();
    await say('ask smells like rotten eggs');
    later(3);
    const said = await say('callback complaint="I got a shock from the switch"');
    expect(said).toContain('Touch no metal of the switch or fan');
    expect(said).toContain('Told on November 23, 2026 by ann: “smells like rotten eggs”.');
  });

  it('told as a sign by its id counts the same', async () => {
    const { say, later } = job();
    await say('callback seen=smell');
    later(2);
    expect(await say('callback')).toContain('On November 23, 2026 ann told of a danger: “smell”. Is it still so?');
    expect(await say('no')).not.toContain('Leave it alone and switch off at the breaker');
  });

  it('is asked about in Spanish', async () => {
    const { say, later } = job('spanish');
    await say('ask huele a gas en el baño');
    later(7);
    const asked = await say('callback');
    expect(asked).toContain(
      'El 23 de noviembre de 2026 ann avisó de un peligro: “huele a gas en el baño”. ¿Sigue igual?',
    );
    expect(await say('no sé')).toContain('Todos afuera ahora');
  });
});
