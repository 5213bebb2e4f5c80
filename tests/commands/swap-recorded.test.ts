import { describe, expect, it, onTestFinished } from 'vitest';
import { terminalSession } from '#chat/terminal/session.ts';
import crew from '#commands/crew.ts';
import swap from '#commands/swap.ts';
import { openStore } from '#store/store.ts';
import { jobWith } from './swap-job.ts';

/** A terminal in the crew's van, with records of its own. */
function atTheVan(language?: 'spanish') {
  const store = openStore(':memory:');
  onTestFinished(() => store.close());
  return terminalSession({
    store: store.scoped('prueba'),
    commands: [swap, crew],
    who: 'van',
    language,
    paper: { width: 300, colour: false },
    drawn: async () => undefined,
  });
}

describe('a step is closed by what it records', () => {
  const lead = { as: 'Ana', confirm: 'yes' };

  it.each(['ok', 'OK.', 'yes', 'done', 'listo', 'hecho', 'sí', '-', '👍', 'x'])(
    'a laboratory report that says only “%s” signs no asbestos clear',
    (report) => {
      const job = jobWith();
      job.to('asbestos');
      const reply = job.say('sign', { ...lead, step: 'H02', value: `finding=tested-clear report=${report}` });
      expect(reply.refused).toBe(true);
      expect(reply.headline).toMatch(/^Report: laboratory, number, date: that says it was done/);
    },
  );

  it('nor does one without its number, and one with it does', () => {
    const job = jobWith();
    job.to('asbestos');
    const signed = (report: string) =>
      job.say('sign', { ...lead, step: 'H02', value: `finding=tested-clear report=${report}` });
    expect(signed('the laboratory said it is fine').headline).toMatch(/give its number too/);
    expect(signed('don’t know').headline).toMatch(/Leave the step open until somebody knows/);
    expect(signed('Invented Lab, 4711, 2027-02-20').refused).not.toBe(true);
  });

  it('the breakers opened are named, with more than “ok” or “don’t know”', () => {
    const job = jobWith();
    job.to('find-breaker');
    const answered = (breakers: string) =>
      job.answer('E01', `breakers=${breakers} controls=on stopped=all panel=in-order`);
    for (const nothing of ['ok', 'yes', 'hecho', 'no sé', '?']) expect(answered(nothing).refused, nothing).toBe(true);
    expect(answered('14, bath lights').refused).not.toBe(true);
  });

  it('words are asked for where nobody can be hurt too', () => {
    const job = jobWith();
    job.to('leave-papers');
    expect(job.answer('C03', 'taken=ok').headline).toMatch(/^Taken by: that says it was done/);
  });
});

describe('whoever may not record a step', () => {
  it('is told before anything is filled in or pictured, and how to record what stops the job', () => {
    const job = jobWith();
    job.to('breaker-locked');
    const shown = job.say('sign', { step: 'E02', as: 'Ben' });
    expect(shown.asks).toBeUndefined();
    const refused = job.say('sign', { step: 'E02', confirm: 'yes', as: 'Ben' });
    expect(refused.asks).toBeUndefined();
    expect(refused).toMatchObject({ refused: true });
    expect(refused.headline).toMatch(/^You cannot sign this: it takes .*electrician/);
    expect(refused.headline).toContain(
      'What stops the job anybody records: give it as value, such as means=tagged-only.',
    );
    expect(job.say('sign', { step: 'E02', value: 'means=tagged-only', confirm: 'yes', as: 'Ben' }).refused).not.toBe(
      true,
    );
    expect(job.say('sign', { step: 'E02', confirm: 'yes', as: 'Ana' }).asks?.fields.length).toBeGreaterThan(1);
  });

  it('is told at a tick as well', () => {
    const job = jobWith();
    job.to('find-breaker');
    const reply = job.say('done', { step: 'E01', as: 'Ben' });
    expect(reply.asks).toBeUndefined();
    expect(reply.headline).toMatch(/^You cannot record this: it takes/);
  });
});

describe('where the fan sits and how far off it is', () => {
  const answered = (value: string) => {
    const job = jobWith();
    job.to('tub-distance');
    return job.answer('S07', value);
  };

  it.each([
    ['elsewhere', '0 in'],
    ['elsewhere', '36 in'],
    ['near-tub-or-shower', '0 in'],
    ['near-tub-or-shower', '37 in'],
    ['over-tub-or-shower', '12 in'],
  ])('%s and %s contradict each other, and neither is taken', (place, distance) => {
    const reply = answered(`place=${place} distance=${distance}`);
    expect(reply.refused).toBe(true);
    expect(reply.headline).toMatch(/^These two cannot both be so\. 0 means over the tub or shower/);
  });

  it.each([
    ['elsewhere', '4 ft'],
    ['near-tub-or-shower', '36 in'],
    ['over-tub-or-shower', '0 in'],
    ['sprayed', '10 in'],
    ['unknown', '20 in'],
  ])('%s and %s are taken', (place, distance) => {
    expect(answered(`place=${place} distance=${distance}`).refused).not.toBe(true);
  });
});

describe('a sign-off under a typed name', () => {
  const of = (reply: ReturnType<ReturnType<typeof jobWith>['say']>) =>
    reply.findings.filter(({ id }) => id === 'unchecked-name').map(({ says }) => says);

  it('says who is recorded, and that nothing checked it, before and after', () => {
    const job = jobWith();
    job.to('breaker-locked');
    const [before] = of(job.say('sign', { step: 'E02', as: 'Ana' }));
    expect(before).toBe('It will stand as signed by Ana. The name was typed; nothing checks that it is Ana.');
    job.to('sign-dead');
    const signed = job.say('sign', { step: 'E06 fan', confirm: 'yes', as: 'Ana' });
    expect(of(signed)).toEqual(['Recorded as Ana: the name was typed at a shared keyboard, and nothing checked it.']);
  });

  it('says so of a step that takes a card, and of one passed over, and not of a tick that is anybody’s', () => {
    const job = jobWith();
    job.to('house-age');
    expect(of(job.answer('S01', 'built=1981-or-later', 'Ben'))).toEqual([]);
    job.to('old-airflow');
    expect(of(job.say('override', { step: 'S06', reason: 'Meter broken.', as: 'Ana' }))).toHaveLength(1);
    job.to('find-breaker');
    expect(of(job.answer('E01', 'breakers=14 controls=on stopped=all panel=in-order'))).toHaveLength(1);
  });

  it('is said in Spanish too', async () => {
    const session = atTheVan('spanish');
    await session.say('crew add Ana as=lead');
    await session.say('swap start list=control-only --as Ana');
    expect(await session.say('swap sign step=S11 --as Ana')).toContain(
      'Quedará firmado como Ana. El nombre se escribió; nada comprueba que sea Ana.',
    );
  });
});

describe('a form filled in line by line', () => {
  const sitting = async (language?: 'spanish') => {
    const session = atTheVan(language);
    await session.say('crew add Ben as=apprentice');
    await session.say('swap start --as Ben');
    return session;
  };

  it('checks each field as it is typed, and goes back, explains and leaves commands their slash', async () => {
    const session = await sitting();
    expect(await session.say('swap done step=S07 --as Ben')).toContain('The fan sits?');
    expect(await session.say('on the moon')).toMatch(/pick one of.*\nThe fan sits\?/s);
    expect(await session.say('why')).toMatch(/^It is recorded at: .*\nThe fan sits\?/s);
    expect(await session.say('swap status')).toMatch(/^For the command, type \/swap\.\nThe fan sits\?/);
    expect(await session.say('4')).toContain('Sideways?');
    expect(await session.say('far')).toMatch(/Sideways: .*\nSideways\?/s);
    expect(await session.say('back')).toContain('The fan sits?');
    await session.say('4');
    expect(await session.say('5 ft')).toContain('Done: Tub distance');
  });

  it('takes the Spanish words as well', async () => {
    const session = await sitting('spanish');
    await session.say('swap done step=S07 --as Ben');
    expect(await session.say('por qué')).toContain('Se anota en:');
    expect(await session.say('ayuda')).toContain('Se anota en:');
    await session.say('4');
    expect(await session.say('atrás')).toContain('El extractor queda?');
    expect(await session.say('parar')).toContain('De eso no se anotó nada.');
  });
});
