import { describe, expect, it } from 'vitest';
import { wordsOfReply } from './at-a-desk.ts';
import { jobWith } from './swap-job.ts';

describe('the page of a hold shows what is signed', () => {
  it('every test of the box, where it is signed dead', () => {
    const job = jobWith();
    job.to('sign-dead');
    const page = wordsOfReply(job.page('E06 fan'));
    for (const code of ['E03', 'E04 ', 'E04b', 'E05']) expect(page).toContain(code);
    expect(page).toMatch(/E04 .*Hot to neutral: 0 V.*E04b .*Highest of all pairs: 0 V.*E05 /s);
  });

  it('what was reported, and how much is not known, where a lead confirms the survey', () => {
    const job = jobWith();
    job.say('fact', { fact: 'roof-work', is: 'none', as: 'Ben' });
    const page = wordsOfReply(job.page('S12'));
    expect(page).toContain('Reported, and counts once you sign: Does anyone have to go on the roof? No (Ben)');
    expect(page).toMatch(/\d+ more not known: each stays the dangerous answer/);
    // A card's word is not a lead's to confirm.
    job.say('fact', { fact: 'wiring-kind', is: 'copper-cable', as: 'Ben' });
    expect(wordsOfReply(job.page('S12'))).not.toContain('What wiring feeds the fan?');
  });

  it('what was passed over, where the list is closed', () => {
    const job = jobWith();
    job.to('old-airflow');
    expect(wordsOfReply(job.page('C04'))).toContain('Every step done, none passed over');
    job.say('override', { step: 'S06', reason: 'Meter broken.', as: 'Ana' });
    expect(wordsOfReply(job.page('C04'))).toContain('Passed over: Old airflow (S06): Meter broken.');
  });
});
