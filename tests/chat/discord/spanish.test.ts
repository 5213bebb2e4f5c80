import { expect, it } from 'vitest';
import { englishLeft } from '../../conversations/english-left.ts';
import { labels, stage } from './stage.ts';

const play = stage();

it('whoever uses the platform in Spanish is answered in Spanish, and nobody else is', async () => {
  const { guild, channel } = play.crew();
  const eva = play.standIn.user({ guild, channel, name: 'Eva', locale: 'es-419' });
  const said: string[] = [];
  let seen = await eva.slash('callback', { complaint: 'zumba fuerte y el espejo sigue empañado' });
  const told = () => said.push(`${seen.text}\n[${labels(seen).join('] [')}]`);
  told();
  seen = await eva.press(seen, 'Es correcto');
  told();
  expect(labels(seen)).toEqual(expect.arrayContaining(['No sé', 'Por qué', 'Atrás']));
  seen = await eva.press(seen, 'No sé');
  told();
  seen = await eva.press(seen, 'Por qué');
  told();
  seen = await eva.press(seen, 'No preguntar más, ver causas');
  told();
  expect(labels(seen)).toContain('Ver los cálculos');
  const all = `${said.join('\n\n')}\n`;
  await expect(all).toMatchFileSnapshot('../../conversations/spanish-callback-discord.txt');
  expect(englishLeft(all)).toEqual([]);

  const bob = play.standIn.user({ guild, channel, name: 'Bob', locale: 'en-US' });
  expect((await bob.slash('callback', { complaint: 'loud hum' })).text).toContain(
    'Until it is known the motor counts as held back',
  );
});

it('choices that come up while somebody types are in their language, and mean the same', async () => {
  const { guild, channel } = play.crew();
  const eva = play.standIn.user({ guild, channel, name: 'Eva', locale: 'es-ES' });
  const offered = await eva.autocomplete('size', 'fixtures', '');
  expect(offered).toEqual(
    expect.arrayContaining([{ name: 'No sé', value: "don't know" }, expect.objectContaining({ value: 'toilet' })]),
  );
});
