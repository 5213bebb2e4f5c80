import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { paperElsewhere } from '#pictures/drawn-elsewhere.ts';
import type { Person } from '../../support/stand-in/person.ts';
import type { Seen } from '../../support/stand-in/seen.ts';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { startBot } from './bot.ts';
import { labels, quickly, stage } from './stage.ts';

const play = stage();
const title = ({ embeds }: Seen): string => embeds[0]?.title ?? '';

/** Ann leads and may test wiring, Ben learns. */
async function hired(max: Person, { ann, ben }: { ann: Person; ben: Person }): Promise<void> {
  await max.slash('crew add', { person: `<@${ann.id}>`, as: 'lead', name: 'Ann' });
  await max.slash('crew qualify', {
    person: `<@${ann.id}>`,
    what: 'electrically-qualified',
    number: 'EQ-1',
    expires: '2099-01-01',
  });
  await max.slash('crew add', { person: `<@${ben.id}>`, as: 'apprentice', name: 'Ben' });
}

async function scene() {
  const crew = play.crew();
  const max = play.standIn.user({ name: 'Max', ...crew, permissions: ['ManageGuild'] });
  await hired(max, crew);
  const kept = play.bot.store.scoped(crew.guild.id);
  return { ...crew, max, kept };
}

/** Everything on the truck, by Ben; then only the lead's look is left. */
async function loadTruck(ben: Person): Promise<void> {
  for (const [step, value] of [
    ['B01', 'same'],
    ['B02', 'yes'],
    ['B03', 'proving unit'],
    ['B04', '2'],
    ['B05', 'sound'],
    ['B06', 'yes'],
    ['B07', 'all-here'],
    ['B08', 'asked'],
  ] as const) {
    const page = await ben.slash('swap next', { step });
    const first = labels(page)[0] ?? '';
    if (first.startsWith('Fill in')) await ben.slash('swap done', { step, value });
    else await ben.press(page, first);
  }
}

describe('/swap in Discord', () => {
  it('walks the shop list: the apprentice loads, the lead signs', async () => {
    const { ann, ben, kept } = await scene();
    const started = await ben.slash('swap start', { list: 'before-leaving-the-shop' });
    expect(title(started)).toMatch(/Before leaving the shop, job 1: \d+ steps/);
    const first = await ben.press(started, 'First step');
    expect(title(first)).toMatch(/^B01: /);
    await loadTruck(ben);
    const waiting = await ben.slash('swap next');
    expect(title(waiting)).toContain('Truck checked (B09) waits for a lead.');
    expect(labels(waiting)).toEqual(['Look again']);
    const look = await ann.slash('swap next');
    expect(title(look)).toMatch(/^B09: /);
    const refused = await ben.press(look, 'Sign: B09');
    expect(refused.ephemeral).toBe(true);
    expect(refused.content).toContain('An apprentice cannot record this. It takes a lead.');
    expect(title(await ann.press(look, 'Sign: B09'))).toContain('The list is closed, by Ann.');
    expect(kept.walkEvents(1).filter(({ what }) => what === 'signed')).toMatchObject([{ who: `<@${ann.id}>` }]);
  });

  it('takes no signature by a forged press or form, nor under another’s name', async () => {
    const { ann, ben, kept } = await scene();
    await ben.slash('swap start', { list: 'before-leaving-the-shop' });
    await loadTruck(ben);
    const look = await ann.slash('swap next');
    const signing = look.buttons.find(({ label }) => label === 'Sign: B09')?.customId ?? '';
    expect(signing.length).toBeLessThanOrEqual(100);
    for (const id of [
      signing,
      signing.replace(':do:swap:sign:', ':do:swap:done:'),
      `${signing}:as=ann`,
      `${signing}:confirm=yes`,
      'v1:do:swap:sign:step=b09:confirm=yes:job=1',
      'v1:do:swap:override:step=b09:reason=hurry',
      'v1:do:crew:add:person=ben:as=lead',
      'v1:do:constructor:x',
      'v1:do:swap:sign:__proto__=x',
    ]) {
      const said = await ben.pressRaw(id, look);
      expect(said.ephemeral, id).toBe(true);
    }
    expect(kept.walkEvents(1).filter(({ what }) => ['signed', 'overridden'].includes(what))).toEqual([]);
    expect(kept.standing(`<@${ben.id}>`).kinds).toEqual(['apprentice']);
  });

  it('takes no stale signature: what was recorded since is looked at first', async () => {
    const { ann, ben, kept } = await scene();
    await ben.slash('swap start', { list: 'before-leaving-the-shop' });
    await loadTruck(ben);
    const look = await ann.slash('swap next');
    await ben.slash('swap back', { step: 'B02' });
    const stale = await ann.press(look, 'Sign: B09');
    expect(stale.content).toContain('Something was recorded since this was shown.');
    expect(kept.walkEvents(1).filter(({ what }) => what === 'signed')).toEqual([]);
  });

  it('does a press once, told twice or pressed twice', async () => {
    const { ben, kept } = await scene();
    await ben.slash('swap start', { list: 'before-leaving-the-shop' });
    const page = await ben.slash('swap next', { step: 'B02' });
    const press = page.buttons[0];
    await ben.press(page, press?.label ?? '', { twice: true });
    const again = await ben.pressRaw(press?.customId ?? '', page);
    expect(again.text).toContain('That is recorded already. It counts once.');
    expect(kept.walkEvents(1).filter(({ what }) => what === 'done')).toHaveLength(1);
  });

  it('asks for numbers and words in a form', async () => {
    const { ben, kept } = await scene();
    await ben.slash('swap start');
    const page = await ben.slash('swap next', { step: 'S01' });
    const form = await ben.pressExpectingForm(page, 'Fill in S01');
    expect(form.fields.map(({ label }) => label)).toEqual(['Built', 'Federally assisted housing', 'Who lives there']);
    const next = await ben.submit(form, {
      'part-built': '1981-on',
      'part-assisted': 'no',
      'part-people': 'two adults',
    });
    expect(next.text).toContain('Done: House age');
    expect(kept.walkEvents(1, 'swap').find(({ what }) => what === 'done')?.value).toEqual({
      built: '1981-on',
      assisted: 'no',
      people: 'two adults',
    });
  });

  it('hands over two papers that say the work is not finished', async () => {
    const { ann } = await scene();
    await ann.slash('swap start');
    // The thread that sets pages is begun with the first; a stand-in person waits less long than the platform does.
    await paperElsewhere({ title: 'first', blocks: [], foot: '', made: new Date(0) });
    const papers = await ann.slash('handoff');
    expect(papers.files.map(({ name }) => name)).toEqual(['occupant-job-1.pdf', 'record-job-1.pdf']);
    expect(papers.text).toContain('is not closed');
  });

  it('goes on after a restart with the buttons of before', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const file = join(folder, 'records.sqlite');
    const standIn = await startStandIn();
    onTestFinished(() => standIn.close());
    const ben = standIn.user({ permissions: ['ManageGuild'] });
    const first = await startBot(standIn, { file, draw: quickly });
    await ben.slash('crew add', { person: `<@${ben.id}>`, as: 'apprentice', name: 'Ben' });
    await ben.slash('swap start', { list: 'before-leaving-the-shop' });
    await ben.slash('swap done', { step: 'B06', value: 'yes' });
    const page = await ben.slash('swap next', { step: 'B02' });
    await first.stop();
    const second = await startBot(standIn, { file, draw: quickly });
    onTestFinished(() => second.stop());
    const done = await ben.press(page, page.buttons[0]?.label ?? '');
    expect(done.text).toContain('Done: Duct on truck (B02)');
    expect(title(await ben.slash('swap status'))).toContain('] 2 of ');
    expect([...first.logged, ...second.logged]).toEqual([]);
  });
});
