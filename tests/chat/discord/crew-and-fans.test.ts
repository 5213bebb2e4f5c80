import { describe, expect, it } from 'vitest';
import { stage } from './stage.ts';

const play = stage();

const title = (message: { readonly embeds: readonly { readonly title?: string }[] }) => message.embeds[0]?.title;

/** A crew with somebody who manages the server, beside Ann who does not. */
function managed() {
  const crew = play.crew();
  const max = play.standIn.user({ name: 'Max', ...crew, permissions: ['ManageGuild'] });
  return { ...crew, max, kept: play.bot.store.scoped(crew.guild.id) };
}

describe('/crew', () => {
  it('is changed by those who manage the server, and by nobody else', async () => {
    const { ann, max, kept } = managed();
    const forbidden = [
      ['crew set', { units: 'metric' }],
      ['crew add', { person: `<@${ann.id}>`, as: 'lead', name: 'Ann' }],
      ['crew remove', { person: 'Ann' }],
      ['crew qualify', { person: 'Ann', what: 'licensed-electrician', number: '1', expires: '2030-01-01' }],
      ['crew unqualify', { person: 'Ann', what: 'licensed-electrician' }],
      ['crew retention', { keep: '1 month' }],
      ['crew forget', { person: 'Ann', confirm: 'yes' }],
    ] as const;
    for (const [line, options] of forbidden) {
      const refused = await ann.slash(line, options);
      expect(refused.text, line).toContain('Only people who may manage this server can change that.');
      expect(refused.ephemeral, line).toBe(true);
    }
    expect([kept.members(), kept.setting('units'), kept.retention()]).toEqual([[], undefined, null]);
    expect(title(await max.slash('crew set', { units: 'metric' }))).toBe('Settled: units metric.');
    expect(kept.setting('units')).toBe('metric');
    expect(title(await ann.slash('crew show'))).toBe('0 members, 0 leads.');
  });

  it('names people by mention, and forgets one of them for good', async () => {
    const { ann, max, kept } = managed();
    expect(title(await max.slash('crew add', { person: 'Ann', as: 'lead' }))).toContain('Name one person with @');
    await max.slash('crew add', { person: `<@${ann.id}>`, as: 'lead', name: 'Ann' });
    expect(kept.standing(`<@${ann.id}>`).kinds).toEqual(['lead']);
    const offered = await max.autocomplete('crew forget', 'person', 'an');
    expect(offered).toEqual([{ name: 'Ann', value: `<@${ann.id}>` }]);
    await ann.slash('job open', { name: 'Elm' });
    const asked = await max.slash('crew forget', { person: `<@${ann.id}>` });
    expect(title(asked)).toContain('Nothing is changed yet.');
    const forgot = await max.slash('crew forget', { person: `<@${ann.id}>`, confirm: 'yes' });
    expect(title(forgot)).toContain('Done: “someone” stands');
    expect(kept.findSheet('Elm')?.openedBy).toBe('someone');
    expect(kept.recordsNaming([`<@${ann.id}>`])).toBe(0);
  });
});

describe('/fan', () => {
  it('keeps a shelf that another server neither sees nor is offered', async () => {
    const [north, south] = [managed(), managed()];
    await north.ann.slash('fan add', { name: 'Hall bath 80', 'fan-curve': '84@0.1 66@0.25', collar: '4 in' });
    expect(await north.ben.autocomplete('fan use', 'name', 'hall')).toEqual([
      { name: 'Hall bath 80', value: 'Hall bath 80' },
    ]);
    expect(await south.ben.autocomplete('fan use', 'name', 'hall')).toEqual([]);
    expect(title(await south.ben.slash('fan use', { name: 'Hall bath 80' }))).toContain('There is no fan');
    expect(title(await north.ben.slash('fan use', { name: 'hall' }))).toContain('Hall bath 80 is on job 1');
    const asked = await north.ben.slash('duct');
    expect(asked.content).toContain('What is the duct');
  });

  it('shows a name as it was typed, whatever it would do', async () => {
    const { ann, ben } = managed();
    const name = `**x** @everyone <@${ben.id}>`;
    await ann.slash('fan add', { name, 'fan-curve': '84' });
    const listed = await ann.slash('fan list');
    expect(listed.text).not.toMatch(/(?<!\\)\*\*x|@everyone/);
    expect(listed.text).not.toContain(`<@${ben.id}>`);
    const compared = await ann.slash('fan compare', { first: name });
    expect(compared.files[0]?.description).toContain('Chart of static pressure');
  });

  it('takes a list as text and gives it back as a file', async () => {
    const { ann } = managed();
    const csv = 'name,fan-curve,collar\\nElm,84@0.1 66@0.25,4 in\\n=1+1,110,';
    expect(title(await ann.slash('fan import', { csv }))).toBe('2 fans are new on the shelf.');
    const exported = await ann.slash('fan export');
    expect(exported.files.map(({ name }) => name)).toEqual(['fans.csv']);
  });

  it('says so where no file may be attached', async () => {
    const { ann, channel } = managed();
    await ann.slash('fan demo');
    play.standIn.withhold(channel, ['AttachFiles']);
    expect((await ann.slash('fan export')).content).toContain('The file is left out.');
  });
});
