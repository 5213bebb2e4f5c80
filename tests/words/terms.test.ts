import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import terms from '../../knowledge/spanish/terms.json' with { type: 'json' };

const root = join(import.meta.dirname, '../..');
const filesIn = (folder: string): readonly string[] =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1));

/** What knowledge says, without the ids it is said under and the other names people have for it. */
const saidIn = (file: string, text: string): string =>
  file.endsWith('.json') ? text.replace(/"also": \[[^\]]*\]/g, '').replace(/"(?:[^"\\]|\\.)*"\s*:/g, '') : text;

/** Where Spanish stands: the knowledge put into it, and the catalogues, whose Spanish is told from English by its words. */
const texts = [...filesIn('knowledge/spanish'), ...filesIn('src/words'), ...filesIn('commands/words')]
  .filter((file) => !/terms\.json$|look-up-names\.json$/.test(file))
  .map((file) => ({ file, text: saidIn(file, readFileSync(join(root, file), 'utf8')) }));

it('Spanish has one word for one thing', () => {
  const inEnglishToo = new Set(['breaker', 'dimmer']);
  const strays = Object.values(terms).flatMap(({ avoid, spanish }) =>
    avoid.flatMap((word) =>
      texts
        .filter(({ file }) => file.endsWith('.json') || !inEnglishToo.has(word))
        .filter(({ text }) => new RegExp(`(?<!\\p{L})${word}(?:e?s)?(?!\\p{L})`, 'iu').test(text))
        .map(({ file }) => `${file} says “${word}”: say “${spanish}”`),
    ),
  );
  expect(strays).toEqual([]);
});

it('each term is really used', () => {
  const all = texts.map(({ text }) => text.toLowerCase()).join('\n');
  const unused = Object.values(terms).filter(({ spanish }) => !all.includes(spanish.toLowerCase()));
  // The checklists and the occupant's page name the two kinds of endings; a callback speaks of the ending outside.
  expect(unused.map(({ spanish }) => spanish).filter((term) => term !== 'salida de pared')).toEqual([]);
});

/** The clauses of every Spanish text that speak of what switches power. */
const aboutPower = [
  ...texts,
  ...filesIn('commands/questions').map((file) => ({ file, text: readFileSync(join(root, file), 'utf8') })),
]
  .flatMap(({ file, text }) => text.split(/["'`\n]|[.;:](?=\s)/).map((clause) => ({ file, clause: clause.trim() })))
  .filter(({ clause }) =>
    /(?<!cajas? de(?:l| los)? )(?<!\p{L})(?:disyuntor|breaker|interruptor|apagador|circuito|desconexi[oó]n)/iu.test(
      clause,
    ),
  );

// An open breaker is off to an electrician and on to whoever thinks of a tap: only OFF and ON cannot be misread.
it('no Spanish text calls a breaker or a switch open or closed', () => {
  const openOrShut =
    /(?<!\p{L})(?:re)?(?:abr(?:a|e|en|an|ir|irlo|irlos|imos|ió|iendo)|abiert[oa]s?|cierr(?:a|e|an|en)|cerr(?:ar|arlo|ado|ada|ados|adas|ando))(?!\p{L})/iu;
  // A box, a cover, a panel, a damper, a splice, a tap is rightly open or closed near a circuit.
  const rightly = /(?:caja|tapa|panel|compartimiento|compuerta|hojas|muebles|agua arriba|empalme|trabajo|puntos)/iu;
  const misread = aboutPower
    .flatMap(({ file, clause }) => clause.split(/,\s/).map((part) => ({ file, part })))
    .filter(({ part }) => openOrShut.test(part) && !rightly.test(part));
  expect(misread).toEqual([]);
});

it('whoever is told to switch a breaker reads ON or OFF', () => {
  const orders = aboutPower.filter(({ clause }) =>
    /(?:apagu?|encien|encend|prend|bloque)\p{L}* (?:\(\p{L}+\) )?(?:ya )?(?:en )?(?:el|su|un|los) (?:disyuntor|breaker|circuito)|(?:disyuntor|circuito) (?:apagado|bloqueado|encendido)/iu.test(
      clause,
    ),
  );
  expect(orders.length).toBeGreaterThan(20);
  expect(orders.filter(({ clause }) => !/\((?:OFF|ON)\)/.test(clause))).toEqual([]);
});
