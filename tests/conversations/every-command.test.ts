import { expect, it } from 'vitest';
import { commands } from '#commands/index.ts';
import { dialogue, type Line } from './dialogue.ts';

// Every house, fan and reading here is invented.

/** What is typed to each command after one another on one job; a command without lines here fails the test. */
const spoken: Readonly<Record<string, readonly Line[]>> = {
  demo: ['demo', '', 'next', '2', 'demo 12', 'demo end'],
  plan: [
    'plan room-length="9 ft" room-width="6 ft" fan-curve="110@0.1 84@0.25" collar="4 in" duct-run="14 ft 4 in flex; 2 x elbow 90; wall cap"',
    'why',
    '1, 2',
    '8 ft',
    'toilet, tub',
    'no',
    '1',
    'none',
    '1.0',
  ],
  ask: [
    'job open Quick questions',
    'ask how long leave fan on 80cfm 5x8',
    'stop',
    'ask 3 14/2 with ground and a switch in an 18 cube box ok?',
    'stop',
  ],
  lookup: ['lookup roof jack', 'lookup equivalant lenght', 'job open 1'],
  size: ['size', 'change 3', '10 ft'],
  duct: ['duct', 'working'],
  reach: ['reach duct-kind=flex duct-diameter="4 in" elbows=2'],
  runtime: ['runtime shower-minutes=10 house-humidity=45', 'don’t know', 'yes', 'no'],
  sweat: ['sweat attic-temperature="10 F" duct-insulation=R-6', 'don’t know', 'don’t know'],
  makeup: [
    'makeup door-width="30 in" door-gap="1/2 in" transfer-grille=none carbon-monoxide-alarm=fitted',
    '6',
    'none',
    '1',
    '1',
    'no',
    'don’t know',
  ],
  measure: ['measure method=bag bag-volume="39 gal" fill-times="6.1, 6.4, 6.2, 6.3, 6.2 s"', 'don’t know'],
  boxfill: ['boxfill box="18 in3" conductors=6x14 devices=1x14', '2', '1x14', 'none', 'none', '3'],
  power: ['power unit-kind=fan-only fan-place=elsewhere control-wanted=countdown-timer', 'no', '2', 'stop'],
  cost: ['cost fan-watts=25 hours-per-day="1 h"', 'don’t know', 'don’t know', 'don’t know', 'don’t know'],
  parts: ['parts', 'don’t know'],
  swap: ['swap start list=swap', 'swap next', 'swap status'],
  handoff: ['handoff'],
  callback: [
    'callback loud hum since Tuesday and the mirror stays fogged',
    '1',
    'none',
    'no',
    'why',
    'don’t know',
    'don’t know',
    'don’t know',
    'don’t know',
    'stop',
  ],
  fan: ['fan add Invented 110 fan-curve="110@0.1 84@0.25" collar="6 in" rated-sones=0.8', 'fan list'],
  job: ['job show', 'job list', 'job undo'],
  crew: ['crew show', 'crew set units=metric', 'crew set units=inch-pound'],
  help: ['help', 'help duct'],
};

/** One conversation, cut at each command’s first line. */
async function page(): Promise<string> {
  const parts = [
    'job open 12 Sample Street',
    ...commands.flatMap(({ name }) => [{ remark: `/${name}` }, ...(spoken[name] ?? [])]),
  ];
  const talk = await dialogue(...parts);
  const [greeting = '', ...sections] = talk.split(/^# \//m);
  const told = sections.map((section) => {
    const [name = '', ...lines] = section.trimEnd().split('\n');
    const summary = commands.find((command) => command.name === name)?.summary ?? '';
    return `## /${name}\n\n${summary}\n\n\`\`\`text\n${lines.join('\n')}\n\`\`\`\n`;
  });
  return [
    '# How every command speaks',
    '',
    'One invented house, from the first plan to the callback, as it reads in the terminal. The page is written by',
    '`npm run dialogues`, and a test holds it to what the program says. In Discord the same words come with buttons, menus and pictures.',
    '',
    `\`\`\`text\n${greeting.trimEnd()}\n\`\`\``,
    '',
    told.join('\n'),
  ].join('\n');
}

it('every command is heard on the page of dialogues, and none tells a trouble of ours', {
  timeout: 60_000,
}, async () => {
  expect(commands.filter(({ name }) => !spoken[name]).map(({ name }) => name)).toEqual([]);
  const text = await page();
  expect(text).not.toMatch(/undefined|NaN|\[object|went wrong/);
  await expect(text).toMatchFileSnapshot('every-command.md');
});
