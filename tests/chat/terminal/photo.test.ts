import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { mostPhotoBytes } from '#chat/photo-bytes.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import crew from '#commands/crew.ts';
import handoff from '#commands/handoff.ts';
import job from '#commands/job.ts';
import swap from '#commands/swap.ts';
import type { Reply } from '#findings/reply.ts';
import { openStore } from '#store/store.ts';
import { cameraTags, jpeg, webp } from '../../support/photographs.ts';

/** A return visit at one keyboard, and a folder with photos. V05 asks for nothing but a photo of the hood. */
async function visit() {
  const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
  const store = openStore(':memory:');
  onTestFinished(() => {
    store.close();
    rmSync(folder, { recursive: true });
  });
  const kept = store.scoped('terminal');
  const replies: Reply[] = [];
  const session = terminalSession({
    store: kept,
    commands: [swap, crew, job, handoff],
    who: 'van',
    paper: { width: 96, colour: false },
    drawn: async () => undefined,
    kept: async (reply) => {
      replies.push(reply);
      return [];
    },
  });
  const say = async (...lines: readonly string[]): Promise<string> => {
    let said = '';
    for (const line of lines) said = (await session.say(line)).replace(/\s+/g, ' ');
    return said;
  };
  const file = (name: string, bytes: Uint8Array | string = jpeg()): string => {
    writeFileSync(join(folder, name), bytes);
    return join(folder, name);
  };
  await say('crew add Ana as=lead', 'crew add Ben as=apprentice', 'swap start list=callback-visit --as Ben');
  const events = () => kept.walkEvents(1).map(({ what }) => what);
  return { folder, kept, say, file, events, replies };
}

/** What Ana signs before the hood is looked at. */
const upToTheHood = [
  'swap sign step=S09b value="appliance=none" confirm=yes as=Ana',
  'swap sign step=V04b value="record=passed which=Lee, last spring" confirm=yes as=Ana',
];

describe('a photo in the terminal', () => {
  it('is named by its path; its name and checksum are kept', async () => {
    const { say, file, kept, events } = await visit();
    await say(...upToTheHood);
    const said = await say(`swap photo file="${file('hood at last.jpg')}" step=V05 as=Ben`);
    expect(said).toContain('The photo is on Hood looked at (V05). Where it lies and its checksum are kept');
    expect(said).toContain('Done: Hood looked at (V05).');
    expect(events().slice(-2)).toEqual(['photo', 'done']);
    const checksum = createHash('sha256').update(jpeg()).digest('hex');
    expect(kept.photos(1)).toMatchObject([{ message: 'hood at last.jpg', checksum, size: jpeg().length }]);
  });

  it('answers the form of its step line by line', async () => {
    const { say, file, events } = await visit();
    await say(...upToTheHood);
    expect(await say('swap next step=V05 as=Ben')).toContain('1 Send photo V05');
    expect(await say('1')).toContain('(the path of a JPEG, PNG, WebP or HEIC picture of at most 10 MB)');
    expect(await say(file('hood.webp', webp()))).toContain('Done: Hood looked at (V05).');
    expect(events().slice(-2)).toEqual(['photo', 'done']);
  });

  it('waits on its step until the step is free, and then needs no second one', async () => {
    const { say, file, events } = await visit();
    const early = await say(`swap photo file=${file('hood.jpg')} step=V05 as=Ben`);
    expect(early).toContain('The step stays open.');
    expect(await say(...upToTheHood, 'swap next step=V05 as=Ben')).toContain('1 Done: V05');
    expect(await say('1')).toContain('Done: Hood looked at (V05).');
    expect(events().filter((what) => what === 'photo')).toHaveLength(1);
  });

  it('needs no second one in a form either', async () => {
    const { say, file, events } = await visit();
    await say('swap start list=duct-only as=Ben', `swap photo file=${file('hood.jpg')} step=S05 as=Ben`);
    const asked = await say('swap done step=S05 as=Ben', '1');
    expect(asked).toContain('(the path of another picture beside the one sent) Or a dash');
    expect(await say('-')).toContain('Done: Air leaves (S05).');
    expect(events().filter((what) => what === 'photo')).toHaveLength(1);
  });

  it('counts once on a step, and is taken back while the step is open', async () => {
    const { say, file, events } = await visit();
    const photo = `swap photo file=${file('hood.jpg')} step=V05`;
    await say(`${photo} as=Ben`);
    expect(await say(`${photo} as=Ana`)).toBe('That photo is on this step already. It counts once.');
    expect(await say('swap photo-back step=V05 as=Ana')).toContain('Photo taken back');
    expect(await say('swap photo-back step=V05 as=Ben')).toBe('There is no photo on Hood looked at (V05).');
    await say(...upToTheHood, `${photo} as=Ben`);
    expect(await say('swap photo-back step=V05 as=Ben')).toContain('is closed. Take the step back first.');
    expect(events().filter((what) => what.startsWith('photo'))).toEqual(['photo', 'photo-back', 'photo']);
  });

  it('stands in the record of the job and in its file, with who, when, checksum and where it lies', async () => {
    const { say, file, replies, kept } = await visit();
    await say(`swap photo file=${file('hood.jpg')} step=V05 as=Ben`, 'job export');
    const [photo] = kept.photos(1);
    expect(photo).toMatchObject({ step: 'hood-looked-at', message: 'hood.jpg', who: 'Ben' });
    const text = replies.at(-1)?.files?.find(({ type }) => type === 'application/json')?.text ?? '';
    const { list, step, message, checksum, size, who, at } = photo ?? {};
    expect(JSON.parse(text).photos).toMatchObject([{ list, step, message, checksum, size, who, at }]);
    await say('handoff');
    const paper = JSON.stringify(replies.at(-1)?.papers?.find(({ name }) => name.startsWith('record'))?.paper);
    for (const part of ['Hood looked at (V05)', 'hood.jpg', checksum?.slice(0, 12) ?? '?', 'Ben']) {
      expect(paper).toContain(part);
    }
  });

  it('says so where the file tells where it was taken', async () => {
    const { say, file } = await visit();
    const placed = file('placed.jpg', jpeg({ tags: cameraTags({ placed: true }) }));
    expect(await say(`swap photo file=${placed} step=V05 as=Ben`)).toContain('says where it was taken');
  });

  it('is not taken where it is no photo, no file, too large, or not there', async () => {
    const { say, file, folder, kept } = await visit();
    mkdirSync(join(folder, 'album.jpg'));
    execFileSync('sh', ['-c', 'mkfifo "$0"', join(folder, 'pipe.jpg')]);
    for (const [path, says] of [
      [file('note.jpg', 'a note'), 'That file is not a photo, whatever its name says.'],
      [file('none.jpg', ''), 'is not a photo'],
      [file('large.jpg', Buffer.concat([jpeg(), Buffer.alloc(mostPhotoBytes)])), 'larger than 10 MB'],
      [join(folder, 'album.jpg'), '“album.jpg” is not a file.'],
      [join(folder, 'pipe.jpg'), '“pipe.jpg” is not a file.'],
      [join(folder, 'lost.jpg'), 'There is no file “lost.jpg”.'],
      [join(folder, 'x\u0000y.jpg'), 'cannot be read'],
    ] as const) {
      expect(await say(`swap photo file=${path} step=V05 as=Ben`), path).toContain(says);
    }
    expect(kept.photos(1)).toEqual([]);
  });

  it('is kept and shown under a name that does nothing', async () => {
    const { say, file, kept } = await visit();
    const said = await say(`swap photo file="${file('\u001b[31mred\u202e.jpg')}" step=V05 as=Ben`);
    expect(said).not.toContain('\u001b');
    expect(kept.photos(1).map(({ message }) => message)).toEqual(['red.jpg']);
  });
});
