import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { cameraTags, heic, jpeg, webp } from '../../support/photographs.ts';
import type { Person } from '../../support/stand-in/person.ts';
import type { Seen } from '../../support/stand-in/seen.ts';
import { photo, type Upload } from '../../support/stand-in/uploads.ts';
import { labels, stage } from './stage.ts';

const play = stage({ bot: { fetching: { patience: 1500 } } });

const upload = (more: Partial<Upload> = {}): Upload => ({
  name: 'IMG_1234.JPG',
  contentType: 'image/jpeg',
  bytes: jpeg({ more: 'the hood' }),
  ...more,
});

const sumOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const title = ({ embeds }: Seen): string => embeds[0]?.title ?? '';

/** Ann leads, Ben learns; a return visit is begun, where the hood is looked at and photographed (V05). */
async function visit() {
  const crew = play.crew();
  const { ann, ben, guild } = crew;
  const max = play.standIn.user({ name: 'Max', ...crew, permissions: ['ManageGuild'] });
  await max.slash('crew add', { person: `<@${ann.id}>`, as: 'lead', name: 'Ann' });
  await max.slash('crew add', { person: `<@${ben.id}>`, as: 'apprentice', name: 'Ben' });
  await ben.slash('swap start', { list: 'callback-visit' });
  const kept = play.bot.store.scoped(guild.id);
  return { ...crew, max, kept, photos: () => kept.walkEvents(1).filter(({ what }) => what === 'photo') };
}

/** Everything before the hood, so that V05 is free. */
async function upToTheHood(ann: Person): Promise<void> {
  await ann.slash('swap sign', { step: 'S09b', value: 'appliance=none', confirm: 'yes' });
  await ann.slash('swap sign', { step: 'V04b', value: 'record=passed which=Lee, last spring', confirm: 'yes' });
}

const send = (person: Person, file: Upload, step = 'V05'): Promise<Seen> => person.slash('swap photo', { file, step });

describe('a photo sent for a step', () => {
  it('lies in the channel in a message of its own, and is kept by that message and its checksum', async () => {
    const { ann, ben, kept, photos, channel, guild } = await visit();
    await upToTheHood(ann);
    const file = upload();
    const picture = await send(ben, file);
    expect(picture.content).toBe(`Photo from <@${ben.id}>`);
    expect(picture.buttons).toEqual([]);
    const [shown] = picture.files;
    expect(shown?.name).toBe('photo.jpg');
    expect(sumOf(shown?.bytes ?? Buffer.alloc(0))).toBe(sumOf(file.bytes));
    const page = await ben.followUp(picture);
    expect(page.text).toContain('The photo is on Hood looked at (V05).');
    expect(page.text).toContain('Done: Hood looked at (V05)');
    const reference = `${guild.id}/${channel.id}/${picture.id}/${shown?.id}`;
    const checksum = sumOf(file.bytes);
    expect(photos()).toMatchObject([{ who: `<@${ben.id}>`, value: { reference, checksum, size: file.bytes.length } }]);
    expect(kept.photos(1)).toMatchObject([{ message: reference, checksum, step: photos()[0]?.step }]);
    expect(kept.walkEvents(1).at(-1)).toMatchObject({ what: 'done', value: {} });
  });

  it('is answered for at once, and fetched after that', async () => {
    const { ben } = await visit();
    const begun = ben.begin.slash('swap photo', { file: upload({ served: { hangs: true } }), step: 'V05' });
    expect(await begun.acknowledgement()).toBeLessThan(1000);
    expect((await begun.answer()).content).toContain('could not be fetched');
  });

  it('is sent in the form of a step that asks for it', async () => {
    const { ann, ben, kept, photos } = await visit();
    await upToTheHood(ann);
    const page = await ben.slash('swap next', { step: 'V05' });
    expect(labels(page)[0]).toBe('Send photo V05');
    const form = await ben.pressExpectingForm(page, 'Send photo V05');
    expect(form.fields).toMatchObject([{ id: 'part-picture', kind: 'file', required: true }]);
    const picture = await ben.submit(form, { 'part-picture': upload({ bytes: webp() }) });
    expect(picture.files).toMatchObject([{ name: 'photo.webp' }]);
    const after = await ben.until(page, ({ text }) => text.includes('Done: Hood looked at (V05)'));
    expect(title(after)).not.toContain('V05');
    expect(photos()).toHaveLength(1);
    expect(kept.walkEvents(1).at(-1)?.what).toBe('done');
  });

  it('stands beside the other answers of a form, and needs not be sent again with them', async () => {
    const { ben, kept } = await visit();
    await ben.slash('swap start', { list: 'duct-only' });
    const picture = await send(ben, upload(), 'S05');
    const page = await ben.followUp(picture);
    expect(page.text).toContain('1 sent');
    const form = await ben.pressExpectingForm(page, 'Fill in S05');
    expect(form.fields.map(({ kind, required }) => [kind, required])).toEqual([
      ['menu', true],
      ['file', false],
    ]);
    const [ending] = form.fields;
    await ben.submit(form, { [ending?.id ?? '']: ending?.options[0]?.value ?? '' });
    expect(kept.walkEvents(1, 'duct-only').map(({ what }) => what)).toEqual(expect.arrayContaining(['photo', 'done']));
  });

  it('counts once, however often the same picture is sent', async () => {
    const { ben, photos, channel } = await visit();
    await send(ben, upload());
    const again = await send(ben, upload({ name: 'other name.png' }));
    expect(again.content).toContain('That photo is on this step already. It counts once.');
    expect(again.files).toEqual([]);
    expect(photos()).toHaveLength(1);
    await ben.followUp(
      await ben.slash('swap photo', { file: upload({ bytes: heic() }), step: 'V05' }, { twice: true }),
    );
    expect(photos()).toHaveLength(2);
    const posted = play.standIn.messages(channel).filter(({ files }) => files.length > 0);
    expect(posted.map(({ files }) => files[0]?.name)).toEqual(['photo.jpg', 'photo.heic']);
  });

  it('is taken back by an event, and stands no longer', async () => {
    const { ben, ann, kept, photos } = await visit();
    await send(ben, upload());
    const back = await ben.slash('swap photo-back', { step: 'V05' });
    expect(back.text).toContain('Photo taken back: Hood looked at (V05).');
    expect(
      kept
        .walkEvents(1)
        .map(({ what }) => what)
        .slice(-2),
    ).toEqual(['photo', 'photo-back']);
    expect((await ann.slash('swap photo-back', { step: 'V05' })).content).toContain('There is no photo on');
    await ben.followUp(await send(ben, upload()));
    expect(photos()).toHaveLength(2);
  });

  it('lies there without where it was taken, and its checksum is of what lies there', async () => {
    const { ben, photos } = await visit();
    const sent = upload({ bytes: jpeg({ tags: cameraTags({ placed: true }) }) });
    const picture = await send(ben, sent);
    const page = await ben.followUp(picture);
    const lies = Buffer.from(picture.files[0]?.bytes ?? []);
    expect(lies).toEqual(jpeg());
    expect(photos()[0]?.value).toMatchObject({ checksum: sumOf(lies), size: lies.length });
    expect(page.text).toContain('That was taken out before the photo was put into the channel.');
    expect(Object.keys(photos()[0]?.value as object)).toEqual(['reference', 'checksum', 'size']);
    expect((await send(ben, sent)).content).toContain('It counts once.');
    const plain = jpeg({ tags: cameraTags({ placed: false }), more: 'another' });
    expect((await ben.followUp(await send(ben, upload({ bytes: plain })))).text).not.toContain('where it was taken');
  });

  it('is turned up in the channel as the camera held it', async () => {
    const { ben } = await visit();
    const tags = cameraTags({ placed: true, isLittle: false, orientation: 6 });
    const [lies] = (await send(ben, upload({ bytes: jpeg({ tags }) }))).files;
    const bytes = Buffer.from(lies?.bytes ?? []);
    const at = bytes.indexOf('Exif\0\0', 0, 'latin1') + 6;
    // How many tags there are, which it is, and what it says.
    expect([8, 10, 18].map((place) => bytes.readUInt16BE(at + place))).toEqual([1, 0x0112, 6]);
  });
});

describe('a photo that cannot be taken', () => {
  const failures: readonly (readonly [string, Partial<Upload>, RegExp])[] = [
    ['its address has run out', { served: { gone: true } }, /no longer has that file\. Send it again\./],
    ['another address is named', { served: { redirect: 'http://169.254.169.254/x' } }, /was not fetched\./],
    ['it lies elsewhere', { address: 'https://example.org/a.jpg' }, /does not lie with the platform/],
    ['more comes than was said', { served: { stream: 26 * 1024 * 1024 } }, /larger than 10 MB\. Send it smaller/],
    ['the line is cut', { served: { breaks: true } }, /could not be fetched/],
    ['nothing comes', { served: { hangs: true } }, /could not be fetched/],
    [
      'it is a text with a picture’s name',
      { bytes: Buffer.from('<script>') },
      /is not a photo, whatever its name says/,
    ],
    ['it is empty', { bytes: Buffer.alloc(0) }, /is not a photo/],
    ['it is a HEIC that says where it was taken', { bytes: heic(cameraTags({ placed: true })) }, /Send it as a JPEG/],
    ['it cannot be taken apart', { bytes: jpeg().subarray(0, 60) }, /damaged or built in an unusual way/],
  ];
  for (const [why, more, says] of failures) {
    it(`leaves the step open where ${why}`, async () => {
      const { ben, photos, channel } = await visit();
      const said = await send(ben, upload(more));
      expect(said.content).toMatch(says);
      expect(said.content).toContain('Nothing was recorded, and the step stays as it was.');
      expect([photos(), said.files]).toEqual([[], []]);
      expect(play.standIn.messages(channel).flatMap(({ files }) => files)).toEqual([]);
    });
  }

  it('is not even fetched where it can be told before', async () => {
    const { ben, channel, photos } = await visit();
    const stranger = play.standIn.user({ name: 'Zoe', channel });
    const before = play.standIn.fetched.length;
    for (const [said, words] of [
      [await send(ben, upload({ claimedSize: 26 * 1024 * 1024 })), 'larger than 10 MB'],
      [await send(ben, upload(), 'Z99'), 'That step is not on this list.'],
      [await send(stranger, upload()), 'The crew does not know this person.'],
      [await ben.slash('swap photo', { file: upload(), step: 'V05', job: '77' }), 'There is no such job here.'],
    ] as const) {
      expect(said.content).toContain(words);
      expect(said.ephemeral).toBe(true);
    }
    play.standIn.withhold(channel, ['AttachFiles']);
    expect((await send(ben, upload())).content).toContain('may not attach files in this channel');
    play.standIn.withhold(channel, []);
    expect([photos(), play.standIn.fetched.length - before]).toEqual([[], 0]);
  });

  it('leaves the page it was sent from as it is', async () => {
    const { ann, ben, photos } = await visit();
    await upToTheHood(ann);
    const page = await ben.slash('swap next', { step: 'V05' });
    const form = await ben.pressExpectingForm(page, 'Send photo V05');
    const said = await ben.submit(form, { 'part-picture': upload({ served: { gone: true } }) });
    expect(said.ephemeral).toBe(true);
    expect(said.content).toContain('no longer has that file');
    expect(ben.look(page)?.text).toBe(page.text);
    expect(photos()).toEqual([]);
  });

  it('is never words in its place', async () => {
    const { ann, ben, kept } = await visit();
    await upToTheHood(ann);
    const said = await ben.slash('swap done', { step: 'V05', value: 'picture=I took one' });
    expect(said.content).toContain('Words are no photo.');
    expect(kept.walkEvents(1).some(({ what }) => what === 'done')).toBe(false);
  });
});

describe('what a photo is called', () => {
  it('goes nowhere: not to the channel, not to the records, not to anybody', async () => {
    const { ben, ann, kept } = await visit();
    const names = [
      `@everyone <@${ann.id}> **x**.jpg`,
      '../../../../etc/cron.d/x.jpg',
      '\u001b[2J\u202egpj.exe',
      'CON.jpg',
      `${'a'.repeat(900)}.jpg`,
      'x.jpg\u0000.exe',
    ];
    for (const [index, name] of names.entries()) {
      const picture = await send(ben, upload({ name, bytes: jpeg({ more: `picture ${index}` }) }));
      const page = await ben.followUp(picture);
      expect(picture.files.map((file) => file.name)).toEqual(['photo.jpg']);
      expect(picture.content).toBe(`Photo from <@${ben.id}>`);
      expect(page.text).not.toMatch(/everyone|cron|exe|CON|aaaa/);
    }
    expect(JSON.stringify(kept.sheetAsJson(1))).not.toMatch(/everyone|cron|gpj|CON\.|aaaa|IMG_/);
    expect(kept.photos(1)).toHaveLength(names.length);
  });
});

describe('a list sent as a file', () => {
  const csv = (text: string | Uint8Array, more: Partial<Upload> = {}): Upload => ({
    name: 'fans.csv',
    contentType: 'text/csv',
    bytes: typeof text === 'string' ? Buffer.from(text) : text,
    ...more,
  });

  it('goes on the shelf, row by row', async () => {
    const { ben, kept } = await visit();
    const file = csv('name,fan-curve,collar\r\nElm,84@0.1 66@0.25,4 in\r\nOak,quick,4 in\r\n=1+1,110,\r\n');
    const said = await ben.slash('fan import', { file });
    expect(title(said)).toBe('2 fans are new on the shelf, 1 row was left out.');
    expect(said.text).toContain('3');
    expect(kept.shelfFans().map(({ name }) => name)).toEqual(['=1+1', 'Elm']);
  });

  it('is refused in a sentence where it is too large, no text, or gone', async () => {
    const { ben, kept } = await visit();
    for (const [file, says] of [
      [csv('x', { claimedSize: 1_000_001 }), 'larger than 1 MB'],
      [csv(Buffer.alloc(1_000_001, 'x'), { claimedSize: 10 }), 'larger than 1 MB'],
      [csv(photo().bytes), 'is not text in UTF-8'],
      [csv('name', { served: { gone: true } }), 'no longer has that file'],
      [csv('name', { address: 'http://127.0.0.1:1/x' }), 'does not lie with the platform'],
      [csv(`name,fan-curve\n${'Elm,84\n'.repeat(600)}`), 'too many rows'],
    ] as const) {
      expect((await ben.slash('fan import', { file })).text, says).toContain(says);
    }
    expect(kept.shelfFans()).toEqual([]);
  });
});
