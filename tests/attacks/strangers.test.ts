import { describe, expect, it } from 'vitest';
import { stage } from '../chat/discord/stage.ts';
import type { Seen } from '../support/stand-in/seen.ts';

const play = stage();
const press = ({ buttons }: Seen, label: RegExp): string =>
  buttons.find((each) => label.test(each.label))?.customId ?? '';

/** Ann leads, Ben learns, Max manages the server. */
async function crewed() {
  const crew = play.crew();
  const max = play.standIn.user({ name: 'Max', ...crew, permissions: ['ManageGuild'] });
  await max.slash('crew add', { person: `<@${crew.ann.id}>`, as: 'lead', name: 'Ann' });
  await max.slash('crew add', { person: `<@${crew.ben.id}>`, as: 'apprentice', name: 'Ben' });
  return { ...crew, max, kept: play.bot.store.scoped(crew.guild.id) };
}

const loaded = [
  ...[
    ['B01', 'same'],
    ['B02', 'yes'],
    ['B03', 'proving unit'],
    ['B04', '2'],
    ['B05', 'sound'],
    ['B06', 'yes'],
  ],
  ...[
    ['B07', 'all-here'],
    ['B08', 'asked'],
  ],
] as const;

/** The shop list with only the lead's hold left, and the page that offers it. */
async function holdOffered() {
  const scene = await crewed();
  await scene.ben.slash('swap start', { list: 'before-leaving-the-shop' });
  for (const [step = '', value = ''] of loaded) {
    const page = await scene.ben.slash('swap next', { step });
    const [first] = page.buttons;
    if (first?.label.startsWith('Fill in')) await scene.ben.slash('swap done', { step, value });
    else await scene.ben.press(page, first?.label ?? '');
  }
  const page = await scene.ann.slash('swap next');
  const signing = press(page, /^Sign/);
  expect(signing).toContain(':do:swap:sign:');
  return { ...scene, page, signing };
}

const signatures = ({ kept }: Awaited<ReturnType<typeof crewed>>) =>
  kept.walkEvents(1).filter(({ what }) => what === 'signed').length;

describe('a hold that is offered to a lead', () => {
  it('is signed by nobody who was taken off the roster after it was shown', async () => {
    const scene = await holdOffered();
    await scene.max.slash('crew remove', { person: `<@${scene.ann.id}>` });
    const said = await scene.ann.pressRaw(scene.signing, scene.page);
    expect(said.ephemeral).toBe(true);
    expect(signatures(scene)).toBe(0);
  });

  it('is signed by nobody who became an apprentice, nor by one with every other part', async () => {
    const scene = await holdOffered();
    await scene.max.slash('crew add', { person: `<@${scene.ann.id}>`, as: 'apprentice' });
    await scene.ann.pressRaw(scene.signing, scene.page);
    await scene.ann.slash('swap sign', { step: 'B09', confirm: 'yes' });
    expect(signatures(scene)).toBe(0);
  });

  it('is signed by nobody from another server, whose presses name nothing there', async () => {
    const scene = await holdOffered();
    const other = await crewed();
    const theirs = await other.ann.slash('job show');
    const said = await other.ann.pressRaw(scene.signing, theirs);
    expect(said.text).not.toMatch(/Signed|Truck checked/);
    expect([signatures(scene), other.kept.walkEvents(1).length]).toEqual([0, 0]);
  });

  it('is signed once by two who press at the same moment', async () => {
    const scene = await holdOffered();
    await scene.max.slash('crew add', { person: `<@${scene.max.id}>`, as: 'lead', name: 'Max' });
    await Promise.all([scene.ann.pressRaw(scene.signing, scene.page), scene.max.pressRaw(scene.signing, scene.page)]);
    expect(signatures(scene)).toBe(1);
  });

  it('is taken back by no apprentice, and its list not begun anew without it', async () => {
    const scene = await holdOffered();
    await scene.ann.pressRaw(scene.signing, scene.page);
    expect(signatures(scene)).toBe(1);
    await scene.ben.slash('swap back', { step: 'B09' });
    await scene.ben.slash('swap override', { step: 'B09', reason: 'hurry' });
    expect(scene.kept.walkEvents(1).filter(({ what }) => what === 'undone' || what === 'overridden')).toEqual([]);
  });
});

describe('a name that is meant to do something', () => {
  it.each([
    ['@everyone @here <@&1> <#1>', /@everyone|@here|<@&1>|<#1>/],
    ['**x** ||y|| `z` [a](https://example.org)', /(?<!\\)\*\*x|(?<!\\)\|\|y|(?<!\\)`z|(?<!\\)\[a\]/],
    ['\u202Eevil\u2066 \u001b[31mred', /[\u202e\u2066]|\p{Cc}\[31m/u],
    ['<:smile:123456789012345678> </ask:123456789012345678> <t:0:R>', /<:smile|<\/ask|<t:0/],
    ['x'.repeat(200), /x{200}x/],
  ])('is shown as it was typed: %s', async (name, harm) => {
    const { ann } = await crewed();
    await ann.slash('job open', { name });
    for (const line of ['job show', 'job list', 'swap start', 'swap status', 'job export'] as const) {
      const said = await ann.slash(line);
      expect(said.text, line).not.toMatch(harm);
    }
  });
});
