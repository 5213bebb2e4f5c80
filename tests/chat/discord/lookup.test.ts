import { expect, it } from 'vitest';
import { stage } from './stage.ts';

const play = stage();

it('suggests while somebody types, and opens what is chosen or pressed', async () => {
  const { ann } = play.crew();
  const offered = await ann.autocomplete('lookup', 'words', 'equiv');
  expect(offered[0]).toEqual({ name: 'Equivalent length (term)', value: 'term.equivalent-length' });
  const opened = await ann.slash('lookup', { words: 'term.equivalent-length' });
  expect(opened.text).toContain('feet of straight duct');
  const several = await ann.slash('lookup', { words: 'insulation attic' });
  expect(several.buttons).toHaveLength(5);
  const second = several.buttons[1]?.label ?? '';
  const pressed = await ann.press(several, second);
  expect(pressed.text).toContain('About it');
});

it('shows the rest of a long table at a press', async () => {
  const { ann } = play.crew();
  const table = await ann.slash('lookup', { words: 'length.irc' });
  expect(table.text).toContain('the first 8 of 15');
  const whole = await ann.press(table, 'Show all 15 figures');
  expect(whole.text).toContain('Smooth duct, 8 in');
});

it('is not led astray by what people type', async () => {
  const { ann } = play.crew();
  for (const words of ['"', 'a OR b', '@everyone', '🙂', '`'.repeat(200)]) {
    expect((await ann.slash('lookup', { words })).text).not.toBe('');
    await ann.autocomplete('lookup', 'words', words);
  }
});

it('cuts a long title on a button between words, with its place in the list', async () => {
  const { ann } = play.crew();
  const several = await ann.slash('lookup', { words: 'insulation attic' });
  const labels = several.buttons.map(({ label = '' }) => label);
  expect(labels.some((label) => /^\d\. .*\w…$/.test(label))).toBe(true);
  for (const label of labels) expect(label.length).toBeLessThanOrEqual(42);
});
