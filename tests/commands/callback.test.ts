import { describe, expect, it } from 'vitest';
import { asJson, exitCode, oneShot } from '#chat/one-shot.ts';
import callback from '#commands/callback.ts';
import { callbackFindings } from '#knowledge/callback-findings.ts';
import { causes } from '#knowledge/causes.ts';
import { talked } from './talked.ts';

const asked = (...words: string[]) => oneShot(callback, words, { units: 'inch-pound' });
const json = (...words: string[]) => JSON.parse(asJson(asked(...words)));

describe('a callback answered at once', () => {
  it('names the likeliest cause by its id, and the next check by its finding', () => {
    const { status, findings } = json(
      'seen=whoosh, noise-new, small, sp-high, flow-mid',
      'not-seen=rattle, grind',
      'context=recent-swap',
    );
    expect(status).toBe('answered');
    const likely = findings.filter(({ id }: { id: string }) => id === 'likely-cause');
    expect(likely[0].cause).toBe('smallduct');
    expect(likely.every(({ cause }: { cause: string }) => cause in causes)).toBe(true);
    const next = json('seen=fog').findings.find(({ id }: { id: string }) => id === 'next-check');
    expect(next.finding in callbackFindings).toBe(true);
  });

  it('takes the old spelling of ids and names every one it does not know', () => {
    expect(asked('seen=hood_none').status).toBe('answered');
    const { status, problems } = asked('seen=fog, bogus, nonsens', 'context=moon');
    expect(status).toBe('needs-answers');
    expect(problems.map(({ says }) => says).join(' ')).toMatch(/bogus.*nonsens.*moon/s);
  });

  it('stops for fumes before anything is ranked, and sends people out before anything else', () => {
    const answer = asked('seen=spill, whoosh');
    expect(exitCode(answer)).toBe(3);
    expect(answer.reply?.findings[0]).toMatchObject({ id: 'danger', weight: 'stop' });
    expect(answer.reply?.findings[0]?.says).toMatch(/^Everyone outside now/);
  });

  it('gives no order beside the one to leave, and asks after whoever got a shock', () => {
    const stops = (asked('seen=spill, smell').reply?.findings ?? []).filter(({ id }) => id === 'danger');
    expect(stops.length).toBeGreaterThan(1);
    expect(stops[0]?.says).toMatch(/^Everyone outside now/);
    for (const { says } of stops.slice(1)) expect(says).toMatch(/^Once outside, tell the fire service/);
    // No source: common practice in first aid.
    expect(asked('seen=shock').reply?.findings[0]?.says).toMatch(/ask how they are.*emergency services.*doctor today/);
  });

  it('ends with one sentence for the customer, and never says that it is safe', () => {
    const told = (...words: string[]) => {
      const findings = asked(...words).reply?.findings ?? [];
      const mine = findings.filter(({ id }) => id === 'tell-customer');
      expect(mine).toHaveLength(1);
      expect(findings.at(-1)).toBe(mine[0]);
      expect(mine[0]?.says.match(/\.(?:\s|$)/g)).toHaveLength(1);
      expect(mine[0]?.says).not.toMatch(/\bsafe\b|\bno danger\b|\bfine to\b/i);
      return mine[0]?.says ?? '';
    };
    expect(told('seen=spill')).toMatch(/everyone outside now.*nobody goes back in/);
    expect(told('seen=hum-noturn')).toMatch(/what the stop above says to do/);
    expect(told('seen=door-slam', 'context=combustion')).toMatch(/leave the fan, and whatever burns gas/);
    expect(told('seen=rattle, rattle-hand')).toMatch(/^Tell the customer: one of us comes to look/);
  });

  it('puts no word into a caller’s mouth: a musty smell is not said to come while the fan runs', () => {
    const { reply } = asked('complaint=musty smell in the bathroom');
    const [there] = reply?.tables?.at(-1)?.rows ?? [];
    expect(there?.[1]).toBe('a musty or sewer smell');
  });

  it('never proposes a look inside the grille before the circuit is proven dead', () => {
    for (const seen of ['hum', 'rattle', 'flow-low', 'tissue', 'not-working']) {
      const next = asked(`seen=${seen}`).reply?.findings.find(({ id }) => id === 'next-check');
      expect(next?.working.find(({ what }) => what === 'Power')?.value).not.toBe('off and proven');
    }
  });

  it('never prints a chance as a percentage', () => {
    const { reply } = asked('seen=fog, tissue', 'context=old-unit');
    expect(reply?.findings.map(({ says }) => says).join(' ')).not.toMatch(/\d\s*%/);
  });
});

describe('numbers on the sheet are evidence', () => {
  const duct = ['fan-curve=110@0.1 84@0.25 0@0.45', 'collar=4 in', 'duct-run=10 ft 4 in smooth; elbow 90; wall cap'];

  it('an airflow far below what the duct should let through speaks for a blockage, with both numbers shown', () => {
    const { reply } = asked('seen=fog', 'measured-airflow=22 cfm', 'airflow-needed=60', ...duct);
    const told = reply?.findings
      .filter(({ id }) => id === 'by-the-numbers')
      .map(({ says }) => says)
      .join(' ');
    expect(told).toMatch(/22 cfm measured at the grille, \d+ cfm .*predicted/);
    expect(reply?.findings.some(({ check }) => check === 'far-below-predicted')).toBe(true);
  });

  it('an airflow as predicted but below the need speaks for a fan too small', () => {
    const { reply } = asked('seen=fog', 'measured-airflow=84 to 92 cfm', 'airflow-needed=140', ...duct);
    const checks = reply?.findings.map(({ check }) => check);
    expect(checks).toContain('as-predicted');
    expect(checks).toContain('need-not-met');
    expect(reply?.findings.find(({ id }) => id === 'likely-cause')?.cause).toBe('undersized');
  });
});

describe('run time, door, pressure, hood and attic are evidence too', () => {
  const room = ['room-length=8 ft', 'room-width=5 ft', 'fixtures=toilet, tub'];
  const duct = ['fan-curve=110@0.1 84@0.25 0@0.45', 'collar=4 in', 'duct-run=10 ft 4 in smooth; elbow 90; wall cap'];
  const told = (...words: string[]): Record<string, string> =>
    Object.fromEntries(
      (asked('seen=fog', ...words).reply?.findings ?? [])
        .filter(({ id }) => id === 'by-the-numbers')
        .map(({ check, says }) => [check ?? '', says]),
    );

  it('a control set shorter than the room needs, and one set long enough', () => {
    const set = (minutes: number) =>
      told(...room, 'measured-airflow=85 cfm', `run-time-set=${minutes} min`)['run-short'];
    expect(set(3)).toMatch(/^By the numbers: a .*: 3 min set, \d+ min needed\.$/);
    expect(set(60)).toMatch(/^By the numbers: not .*: 60 min set, \d+ min needed\.$/);
  });

  it('a time too short of a room that needs more air instead accuses nobody', () => {
    expect(told(...room, 'measured-airflow=4 cfm', 'run-time-set=20 min')).not.toHaveProperty('run-short');
  });

  it('a gap under the door that starves the fan, by fan and duct or by two readings', () => {
    const door = (gap: string) => ['door-width=30 in', `door-gap=${gap}`];
    expect(told(...duct, ...door('1/8 in'))['gap-small']).toMatch(/1\/8 in under the door, .* in needed/);
    expect(told(...duct, ...door('1 1/2 in'))['gap-small']).toMatch(/^By the numbers: not /);
    expect(told('measured-airflow=50 cfm', 'door-open-airflow=80 cfm', ...door('1/4 in'))['gap-small']).toMatch(
      /1\/4 in under the door/,
    );
    expect(told('door-width=30 in', ...duct)).not.toHaveProperty('gap-small');
  });

  // The lines of low and high, 0.05 and 0.25 in. w.g., are common practice, no source.
  it('a pressure high with the flow low is a block, low with the flow low a weak fan', () => {
    const cause = (pressure: string) =>
      asked(
        'seen=fog',
        'measured-airflow=25 cfm',
        'airflow-needed=60',
        `collar-pressure=${pressure}`,
        ...duct,
      ).reply?.findings.find(({ id }) => id === 'likely-cause')?.cause ?? '';
    expect(['hoodstuck', 'nest', 'crushed', 'fandamper']).toContain(cause('0.4 in. w.g.'));
    expect(['dirty', 'speed-low', 'radclosed']).toContain(cause('0.02 in. w.g.'));
    expect(told('collar-pressure=0.4 in. w.g.')['sp-high']).toMatch(/0\.4 in\. w\.g\. at the collar, high over 0\.25/);
  });

  it('less air at the hood than at the grille is a leak', () => {
    expect(told('measured-airflow=80 cfm', 'hood-airflow=40 cfm')['leaks-between']).toMatch(
      /80 cfm measured at the grille, 40 cfm measured at the hood/,
    );
    expect(told('measured-airflow=80 cfm', 'hood-airflow=78 cfm')['leaks-between']).toMatch(/^By the numbers: not /);
  });

  it('a bare duct in a cold attic should sweat, and one as warm as the house should not', () => {
    const attic = (...words: string[]) => told('measured-airflow=60 cfm', ...duct, 'attic-duct-length=10 ft', ...words);
    expect(attic('attic-temperature=10 F', 'duct-insulation=none')['sweat-predicted']).toMatch(/10 °F in the attic/);
    expect(attic('attic-temperature=95 F', 'duct-insulation=none')['sweat-predicted']).toMatch(/^By the numbers: not /);
    expect(attic('attic-temperature=10 F')).not.toHaveProperty('sweat-predicted');
  });

  it('less air than at the swap means that something has changed since', () => {
    const words = ['airflow-at-swap=78 to 86 cfm', 'airflow-needed=50', 'swap-day=2026-03-03'];
    const { reply } = asked('seen=weak', 'measured-airflow=30 to 36 cfm', ...words);
    expect(reply?.findings.map(({ check }) => check)).toEqual(expect.arrayContaining(['flow-fell', 'enough-then']));
    expect(reply?.findings.find(({ id }) => id === 'at-the-swap')?.says).toMatch(
      /^At the swap, March 3, 2026: 82 cfm measured at the grille/,
    );
    const likely = reply?.findings.filter(({ id }) => id === 'likely-cause').map(({ cause }) => cause);
    for (const design of ['undersized', 'smallduct', 'longrun']) expect(likely).not.toContain(design);
  });
});

describe('the complaint in plain words', () => {
  it('a danger stops at once: nothing is confirmed or asked before it is said', async () => {
    for (const said of ['there is a burning smell', 'the CO alarm went off', 'it hums but the blades do not turn']) {
      const talk = await talked(callback, 'callback', said);
      expect(talk, said).toMatch(/Stop\. Deal with the danger first\./);
      expect(talk, said).not.toMatch(/Is that right/);
    }
  });

  it('a danger only wondered about is asked first, and counts as there until somebody says no', async () => {
    const wondering = 'not sure if there is a burning smell, it rattles';
    expect(await talked(callback, 'callback', wondering)).toMatch(/Is there a hot or burning smell/);
    expect(await talked(callback, 'callback', wondering, "don't know")).toMatch(/Stop\. Deal with the danger/);
    expect(await talked(callback, 'callback', wondering, 'no')).toMatch(
      /I understood: a rattle at grille or ceiling\./,
    );
    expect(exitCode(asked(`complaint=${wondering}`))).toBe(3);
  });

  it('everything understood is shown and can be put right with one press', async () => {
    const said = 'it rattles, no smell, brand new fan';
    const shown = await talked(callback, 'callback', said);
    expect(shown).toMatch(
      /I understood: a rattle at grille or ceiling\. Not there: a smell\. The job: we\s+worked on it in the\s+last 30 days\./,
    );
    expect(await talked(callback, 'callback', said, '2')).toMatch(
      /I understood no sign that is there\. Not there: a smell\./,
    );
    expect(await talked(callback, 'callback', said, '3')).toMatch(
      /I understood: a rattle at grille or ceiling\. The job/,
    );
  });

  it('yes or no does not answer which of several', async () => {
    const talk = await talked(callback, 'callback seen=light-ok not-seen=rattle', 'no', 'yes');
    expect(talk.match(/Yes or no does not say which/g)).toHaveLength(2);
  });
});

it('the office talks a complaint through, takes a word back and skips what it cannot see', async () => {
  await expect(
    await talked(
      callback,
      'callback',
      '   ',
      'it rattles since last week, no smell',
      '1',
      '1',
      'why',
      "don't know",
      'no',
      'back',
      'no',
    ),
  ).toMatchFileSnapshot('../conversations/callback.txt');
});
