import { describe, expect, it } from 'vitest';
import { walkFacts } from '#knowledge/checklist-facts.ts';
import { walkOn } from '../../../commands/workings/swap-walk.ts';
import type { Person } from '../../support/stand-in/person.ts';
import { stage } from './stage.ts';

const play = stage();

/** Those that take the most people can be hurt by off a list. */
const lightening = [
  'house-built',
  'fuel-appliances',
  'appliance-in-bath-zone',
  'spillage-result',
  'rated-ceiling',
  'inside-look',
  'wiring-kind',
  'insulation-near',
] as const;

/** Ann leads, Ben learns, Max manages the server and is no crew. The list of a swap is begun. */
async function begun() {
  const crew = play.crew();
  const { ann, ben } = crew;
  const max = play.standIn.user({ name: 'Max', ...crew, permissions: ['ManageGuild'] });
  await max.slash('crew add', { person: `<@${ann.id}>`, as: 'lead', name: 'Ann' });
  await max.slash('crew add', { person: `<@${ben.id}>`, as: 'apprentice', name: 'Ben' });
  const started = await ben.slash('swap start');
  const store = play.bot.store.scoped(crew.guild.id);
  const state = () => walkOn({ store, now: () => new Date().toISOString() }, 1, 'swap')?.state;
  const known = (fact: string) => state()?.facts[fact] ?? 'unknown';
  const form = async (who: Person) => {
    const opened = await who.pressExpectingForm(started, 'Say what is known');
    const [first] = opened.fields;
    if (!first) throw new Error('the form asks nothing');
    const fact = first.id.replace('fact-', '') as keyof typeof walkFacts;
    return { opened, fact, id: first.id, safe: walkFacts[fact].safe[0] ?? '' };
  };
  return { ...crew, max, started, state, known, form };
}

describe('what is known of a job, said in Discord', () => {
  it('lightens the list by a lead’s form, and not by an apprentice’s', async () => {
    const { ann, ben, known, form, state } = await begun();
    const before = state()?.progress.of;
    const { opened, fact, id, safe } = await form(ben);
    expect((await ben.submit(opened, { [id]: safe })).text).toContain('Reported, and counts once a lead confirms it');
    expect(known(fact)).toBe('unknown');
    expect(state()?.progress.of).toBe(before);
    const later = await ann.slashExpectingForm('swap known');
    expect((await ann.submit(later, { [id]: safe })).text).toContain('Recorded');
    expect(known(fact)).toBe(safe);
  });

  it('counts nothing from a press made up, whoever it says it is from', async () => {
    const { ann, ben, max, started, known } = await begun();
    for (const fact of lightening) {
      const value = walkFacts[fact].safe[0];
      const forged = [
        `v1:do:swap:fact:fact=${fact}:is=${value}`,
        `v1:do:swap:known:fact-${fact}=${value}:job=1`,
        `v1:do:swap:fact:fact=${fact}:is=${value}:as=${ann.id}`,
      ].filter((id) => id.length <= 100);
      for (const id of forged) await ben.pressRaw(id, started);
      await max.pressRaw(forged[0] ?? '', started);
      expect(known(fact), fact).toBe('unknown');
    }
  });

  it('takes no form that was opened before somebody said otherwise', async () => {
    const { ann, ben, known, form } = await begun();
    const { opened, fact, id, safe } = await form(ann);
    const worse = walkFacts[fact].options.find((option) => !walkFacts[fact].safe.includes(option.id))?.id ?? 'unknown';
    await ben.slash('swap fact', { fact, is: worse });
    const stale = await ann.submit(opened, { [id]: safe });
    expect(stale.text).toContain('Somebody has said something of this since it was shown.');
    expect(known(fact)).toBe(worse);
  });
});
