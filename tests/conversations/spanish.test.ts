import { expect, it } from 'vitest';
import { dialogue } from './dialogue.ts';
import { englishLeft } from './english-left.ts';

it('a crew that settled Spanish is asked and answered in Spanish', async () => {
  const said = await dialogue(
    { remark: 'A setting of the crew, for a terminal where nobody says otherwise.' },
    'crew set language=es',
    { restart: true },
    'callback',
    'zumba fuerte desde el martes y el espejo sigue empañado',
    'si',
    'ninguno',
    'por qué',
    'no sé',
    'quizás',
    'no',
    'atrás',
    'responder ya',
    'cálculos',
  );
  await expect(said).toMatchFileSnapshot('spanish-callback.txt');
  // Setting it was still in English, and the greeting names commands.
  expect(englishLeft(said.slice(said.indexOf('you: callback')))).toEqual([]);
});

it('a danger told in Spanish stops everything, in Spanish, with no weaker words', async () => {
  const said = await dialogue(
    'crew set language=es',
    'callback complaint="sonó la alarma de monóxido y nos duele la cabeza"',
  );
  const answer = said.slice(said.lastIndexOf('bot: '));
  expect(answer).toContain('ALTO:');
  expect(answer.replace(/\s+/g, ' ')).toContain('Todos afuera ahora; llamen a los bomberos desde afuera');
  expect(englishLeft(answer)).toEqual([]);
});

it('English is known when it is left over', () => {
  expect(englishLeft('Caution: Expect 27 cfm')).toEqual(['Caution']);
  expect(englishLeft('Precaución: espere 27 cfm')).toEqual([]);
  expect(englishLeft('you: what is this\nUse /duct, “the fan”.')).toEqual([]);
});
