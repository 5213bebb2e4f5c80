import { expect, it } from 'vitest';
import { dialogue } from './dialogue.ts';

// Number 7, Fennel Row is invented for these pages: a hall bath of 9 by 8 ft under an old 80 cfm fan, with a run of flex
// through the attic to a wall. Nobody lives there, and no fan of this sort was ever sold.

it('the room: a slip, a question back, something not known, a step back', async () => {
  const talk = await dialogue(
    { remark: 'Fennel Row is an invented house.' },
    'job open 7 Fennel Row',
    'size',
    'nine',
    '9 kg',
    '8 ft measured',
    'why',
    '7-6',
    'back',
    '8',
    'toilet and bath and fridge',
    'toilet and bath',
    'maybe',
    'don’t know',
    '1',
    'working',
  );
  await expect(talk).toMatchFileSnapshot('fennel-row-size.txt');
});

it('the duct: part by part, a part taken back, a restart in the middle, a change of mind', async () => {
  const talk = await dialogue(
    { remark: 'Fennel Row is an invented house.' },
    'job open 7 Fennel Row',
    'duct',
    'ones(3000,3000)',
    '84@0.1 90@0.25',
    '84@0.1 66@0.25',
    '0 in',
    '4"',
    '14 feet of 4 inch flexible with a sag',
    'elbow 90',
    'elbow 90',
    'back',
    'reducer 4 to 6 in',
    { restart: true },
    'job show',
    'go on',
    'elbow 90',
    'wall cap',
    '70',
    'none',
    'what for',
    'why',
    '1.0 off the label',
    'change',
    'change 3',
    '14 ft 4 in smooth; 2 x elbow 90; wall cap',
    'back',
  );
  await expect(talk).toMatchFileSnapshot('fennel-row-duct.txt');
});

it('the sheet: what one says the other need not be asked', async () => {
  const talk = await dialogue(
    { remark: 'Fennel Row is an invented house.' },
    'job open 7 Fennel Row',
    'size room-length=9 ft room-width=8 ft ceiling-height=8 ft fixtures=toilet, tub toilet-compartment=no running=on-demand',
    { restart: true, who: 'lead' },
    'duct fan-curve=84@0.1 66@0.25 collar=4 in duct-run="14 ft 4 in flex; 2 x elbow 90; wall cap" fan-settings=none rated-sones=dk',
    'job undo',
    'job show',
    'job close',
    'job list all',
    'size',
    'stop',
    'job open 7 fennel row',
  );
  await expect(talk).toMatchFileSnapshot('fennel-row-sheet.txt');
});

it('a newcomer who types what comes to mind', async () => {
  const talk = await dialogue(
    'hello',
    'dcut',
    'size 9 by 8',
    'help',
    'duct',
    'help',
    'help me',
    '/sise',
    '/help size',
    'go on',
    'stop',
    'go on',
    'working',
    'change 2',
    'job',
    'job show nobody',
    '',
  );
  await expect(talk).toMatchFileSnapshot('newcomer.txt');
});
