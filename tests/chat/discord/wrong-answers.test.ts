import { describe, expect, it } from 'vitest';
import type { Form } from '../../support/stand-in/forms.ts';
import type { Seen } from '../../support/stand-in/seen.ts';
import { labels, question, stage } from './stage.ts';

const play = stage();

/** What nobody means as an answer to any of these questions. */
const nonsense: readonly (readonly [string, string])[] = [
  ['spaces', '   '],
  ['a page of text', 'Lorem ipsum dolor sit amet, '.repeat(150)],
  ['ten thousand digits', '9'.repeat(10_000)],
  ['an emoji', '🛁🚿'],
  ['half an emoji', '\ud83d'],
  ['a spreadsheet formula', '=1+1'],
  ['a program', 'ones(3000,3000)'],
  ['a NUL', '\u0000'],
  ['a terminal escape', '\u001b[31mred\u001b[0m'],
  ['the wrong unit', '8 kg'],
  ['a diameter of nothing', '0 in'],
  ['less than nothing', '-4 in'],
  ['a shout', '@everyone'],
  ['somebody', '<@123456789012345678>'],
  ['a quote that never ends', '```'],
  ['a link', '[click](https://example.com)'],
  ['a prototype', '__proto__'],
];

const perQuestion: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  'duct-run': [
    ['a reducer the wrong way', '10 ft 4 in flex; reducer 3 to 4 in; wall cap'],
    ['a duct of no diameter', '10 ft 0 in flex; wall cap'],
    ['more elbows than any duct', '500 x elbow 90'],
    ['a word misspelt', '10 ft 4 in flex; wal capp'],
  ],
  'fan-curve': [
    ['a fan that moves more against more', '50@0.1 80@0.3'],
    ['a fan that moves nothing', '0@0'],
  ],
  'fan-settings': [['too many', '1, 2, 3, 4, 5, 6, 7, 8, 9, 10']],
};

const fieldRoom = (form: Form): number => {
  const [part] = form.parts;
  const component = part && 'component' in part ? part.component : undefined;
  return component && 'max_length' in component ? (component.max_length ?? 4000) : 4000;
};

const soFar = ({ content }: Seen): string => content.split('\n')[1]?.replace(/^-# So far: /, '') ?? '';

/** Asks each question in turn and answers it with everything that is wrong before what is right. */
async function endured(
  command: string,
  right: Readonly<Record<string, string>>,
  pick: (message: Seen) => string | undefined,
) {
  const { ann } = play.crew();
  let message = await ann.slash(command);
  const first = message.id;
  const asked: string[] = [];
  for (let steps = 0; labels(message).includes("Don't know"); steps += 1) {
    expect(steps).toBeLessThan(20);
    const pressed = pick(message);
    const button = labels(message).find((label) => label === 'Answer' || label === 'Type it');
    if (pressed !== undefined) {
      message =
        message.menus.length > 0
          ? await ann.pick(message, message.menus[0]?.placeholder ?? '', [pressed])
          : await ann.press(message, pressed);
      continue;
    }
    const ids = (await ann.pressExpectingForm(message, button ?? '')).fields.map(({ id }) => id);
    asked.push(...ids);
    const before = question(message);
    for (const [what, text] of [...nonsense, ...ids.flatMap((id) => perQuestion[id] ?? [])]) {
      const form = await ann.pressExpectingForm(message, button ?? '');
      const typed = text.slice(0, fieldRoom(form));
      message = await ann.submit(form, Object.fromEntries(ids.map((id) => [id, typed])));
      expect(message.id, what).toBe(first);
      expect(question(message), what).toBe(before);
      const [said = ''] = message.content.replace(/^-# .*\n/gm, '').split('\n');
      // A sentence of its own, not the question again, and nothing a program says to its maker.
      expect(said, what).toMatch(/^\S.{10,}[.?]$/);
      expect(said, what).not.toMatch(/undefined|NaN|\bat \w+ \(|Error|\[object/);
    }
    const form = await ann.pressExpectingForm(message, button ?? '');
    message = await ann.submit(form, Object.fromEntries(ids.map((id) => [id, right[id] ?? ''])));
    expect(question(message) === before, `${ids} took ${ids.map((id) => right[id])}`).toBe(false);
    expect(soFar(message)).not.toContain('undefined');
  }
  return { message, asked };
}

describe('what cannot be an answer gets a sentence and the dialogue goes on', { timeout: 30_000 }, () => {
  it('at every typed question of /size', async () => {
    const right = { 'room-length': '8 ft', 'room-width': '5 ft', 'ceiling-height': '8 ft' };
    const { message, asked } = await endured('size', right, ({ menus, buttons }) =>
      menus.length > 0 ? 'None of these' : buttons.find(({ label }) => label === 'When the room is used')?.label,
    );
    expect(asked).toEqual(['room-length', 'room-width', 'ceiling-height']);
    expect(message.embeds[0]?.title).toBe('This room needs 50 cfm (23.6 L/s).');
  });

  it('at every typed question of /duct', async () => {
    const right = {
      'fan-curve': '96@0 84@0.1 66@0.25 0@0.5',
      collar: '4 in',
      'duct-run': '14 ft 4 in flex; wall cap',
      'airflow-needed': '80 cfm',
      'fan-settings': 'none',
      'rated-sones': '1.5',
    };
    const { message, asked } = await endured('duct', right, () => undefined);
    expect(asked).toEqual(Object.keys(right));
    expect(message.embeds[0]?.title).toContain('will come out of this duct');
  });
});

describe('wrong answers given with the command', () => {
  it.each<readonly [string, string]>([...nonsense, ['a backwards reducer', 'reducer 3 to 4 in; wall cap']])(
    '%s: is named, and the question asked',
    async (_, text) => {
      const { ann } = play.crew();
      const asked = await ann.slash(
        'duct',
        { 'fan-curve': '110', collar: '4 in', 'duct-run': text.slice(0, 600) },
        { force: true },
      );
      expect(question(asked)).toContain('What is the duct, from the fan to outdoors?');
      expect(asked.content).not.toMatch(/undefined|Error/);
    },
  );
});

describe('what was not understood', () => {
  it('comes back in the next form to be mended, until it is understood', async () => {
    const { ann } = play.crew();
    const run = await ann.slash('duct', { 'fan-curve': '110', collar: '4 in' });
    const typo = '10 ft 4 in flex; 2 x elbow 90; wal capp';
    const refused = await ann.submit(await ann.pressExpectingForm(run, 'Type it'), { 'duct-run': typo });
    expect(refused.content).toContain('“wal capp” is not understood.');
    const form = await ann.pressExpectingForm(refused, 'Type it');
    expect(form.fields[0]?.value).toBe(typo);
    const understood = await ann.submit(form, { 'duct-run': typo.replace('wal capp', 'wall cap') });
    const undone = await ann.press(understood, 'Back');
    expect((await ann.pressExpectingForm(undone, 'Type it')).fields[0]?.value).toBe('');
  });

  it('is kept for each field of a form', async () => {
    const { ann } = play.crew();
    const first = await ann.slash('size');
    const form = await ann.pressExpectingForm(first, 'Answer');
    const refused = await ann.submit(form, { 'room-length': '8 kg', 'room-width': '5 lb' });
    const again = await ann.pressExpectingForm(refused, 'Answer');
    expect(again.fields.map(({ value }) => value)).toEqual(['8 kg', '5 lb']);
  });
});
