import { describe, expect, it } from 'vitest';
import { oneShot } from '#chat/one-shot.ts';
import callback from '#commands/callback.ts';

/** How a complaint ends where nobody can be asked back. */
const status = (complaint: string) => oneShot(callback, [`complaint=${complaint}`], { units: 'inch-pound' }).status;

/** Ways people tell of danger; invented for this purpose, none taken from a catalogue. */
const dangers = {
  heat: [
    ...[
      'burning smell from the fan',
      'smells like something is burning',
      'smell of hot plastic',
      'the plug is scorched',
    ],
    ...[
      'brown marks around the switch',
      'switch plate is black',
      'the switch gets warm and buzzes',
      'loud hum, wall is hot',
    ],
    ...['it sparked when i turned it on', 'saw a flash in the fan', 'arcing sound', 'crackling noise from the switch'],
    ...[
      'buzzing and crackling in the wall',
      'sizzling sound inside fan',
      'smoke comes from the grille',
      'fan caught fire',
    ],
    ...[
      'small flame from housing',
      'fishy smell from the fan',
      'ozone smell',
      'it stinks like burned wires',
      'fan housing hot',
    ],
    ...[
      'it is noisy and also there is a faint burning odor',
      'no noise, no leak, but sparks',
      'burnign smell',
      'sparkz',
    ],
  ],
  shock: [
    ...['i got a shock', 'got zapped touching the grille', 'tingle when I touch the cover', 'shokc when touching'],
    ...['tingling from the faucet when fan is on', 'mirror stays fogged, kids said it gave them a little shock'],
    ...['the wire is bare and exposed'],
  ],
  fumes: [
    ...[
      'CO alarm went off',
      'the co detector keeps chirping when the fan runs',
      'c o alarm',
      'co2 alarm',
      'carbon dioxide alarm',
    ],
    ...[
      'headaches and dizzy when the shower fan runs',
      'gas smell in bathroom',
      'rotten egg smell',
      'soot above the water heater',
    ],
    ...['fumes from the water heater when fan on', 'exhaust smell from boiler when fan on'],
  ],
  water: ['water in the light', 'water drips onto the lamp from the fan', 'light is full of water'],
} as const;

describe.each(Object.entries(dangers))('a danger told of: %s', (_, said) => {
  it.each([...said])('stops: %s', (complaint) => {
    expect(status(complaint)).toBe('stopped');
  });
});

describe('a danger that stands after a denial of something else', () => {
  it.each([
    ...[
      'no idea why it sparks',
      'not sure why it smells burnt',
      'can’t figure out why there is smoke',
      'never seen so much smoke',
    ],
    ...[
      'i don’t like the burning smell',
      'not surprised it is smoking',
      'it never used to spark',
      'could not stop the burning smell',
    ],
    ...[
      'cannot touch the switch without a shock',
      'i did not mention the sparks before',
      'won’t turn on without sparking',
    ],
    ...['no one believes me but it sparks', 'there was no burning smell yesterday, today there is a burning smell'],
    ...['never stops sparking', 'without the fan the co alarm is quiet', 'nobody home when the co alarm went off'],
  ])('stops: %s', (complaint) => {
    expect(status(complaint)).toBe('stopped');
  });

  it.each([
    ...[
      'no smoke',
      'no burning smell',
      'no sparks, no smoke, no smell',
      'there is no smell of burning',
      'it does not smell burnt',
    ],
    ...['never sparks', 'it hums but no burning smell', 'no hum, rattle or burning smell', 'it isn’t smoking'],
  ])('but not where the danger itself is denied: %s', (complaint) => {
    expect(status(complaint)).not.toBe('stopped');
  });
});
