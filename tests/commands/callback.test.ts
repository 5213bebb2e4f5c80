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
    expect(told).toMatch(/measured at the grille 22 cfm.*predicted \d+ cfm/s);
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
