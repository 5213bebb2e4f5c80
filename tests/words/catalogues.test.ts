import { describe, expect, it } from 'vitest';
import { worded } from '#interview/worded.ts';
import { BadKnowledge } from '#knowledge/checked.ts';
import { inSpanish } from '#knowledge/spanish.ts';
import { conversationWords } from '#words/conversation.ts';
import { discordWords } from '#words/discord.ts';
import { fileWords } from '#words/files.ts';
import type { InEach } from '#words/in-each.ts';
import { languageMeant } from '#words/language.ts';
import { sourceWords } from '#words/sources.ts';
import { standing } from '#words/standing.ts';
import { terminalWords } from '#words/terminal.ts';
import { walkWords } from '#words/walkthrough.ts';
import { whichJobWords } from '#words/which-job.ts';
import { commands } from '../../commands/index.ts';
import { complaint, context, deadProven } from '../../commands/questions/callback.ts';
import { askWords } from '../../commands/words/ask.ts';
import { callbackWords } from '../../commands/words/callback.ts';
import { callbackAsking } from '../../commands/words/callback-checks.ts';
import { crewWords } from '../../commands/words/crew.ts';
import { handoffWords } from '../../commands/words/handoff.ts';
import { helpWords } from '../../commands/words/help.ts';
import { occupantWords } from '../../commands/words/occupant.ts';
import { swapWords } from '../../commands/words/swap.ts';
import { besideWords } from '../../commands/words/swap-beside.ts';
import { statusWords } from '../../commands/words/swap-status.ts';
import { valueWords } from '../../commands/words/swap-values.ts';

const catalogues: Readonly<Record<string, InEach<object>>> = {
  standing,
  conversationWords,
  terminalWords,
  sourceWords,
  discordWords,
  fileWords,
  callbackWords,
  callbackAsking,
  helpWords,
  askWords,
  walkWords,
  whichJobWords,
  swapWords,
  statusWords,
  valueWords,
  occupantWords,
  besideWords,
  crewWords,
  handoffWords,
};

/** Each text under its place; one that takes values with the same marks put in for them. */
function texts(tree: unknown, at: string): readonly (readonly [string, string])[] {
  if (typeof tree === 'string') return [[at, tree]];
  if (typeof tree === 'function') return [[at, String(tree('‹1›', '‹2›', '‹3›', '‹4›', '‹5›'))]];
  return Object.entries(tree ?? {}).flatMap(([key, below]) => texts(below, `${at} › ${key}`));
}

const marksIn = (text: string): string => (text.match(/‹\d›/g) ?? []).toSorted().join('');

/** Texts that hold nothing but the values put into them, or nothing at all. */
const onlyValues = (text: string): boolean => !/\p{L}/u.test(text.replace(/‹\d›/g, ''));

describe('every text there is in English there is in Spanish', () => {
  for (const [name, { english, spanish }] of Object.entries(catalogues)) {
    it(`${name}: none is still English, and the same values go in`, () => {
      // What the English takes from the knowledge is named in Spanish alone.
      const inSpanishWords = new Map(texts(spanish, name));
      const pairs = texts(english, name).map(([at, text]) => ({ at, text, other: inSpanishWords.get(at) ?? '' }));
      expect(pairs.length).toBeGreaterThan(5);
      expect(pairs.filter(({ text, other }) => text === other && !onlyValues(text)).map(({ at }) => at)).toEqual([]);
      expect(pairs.filter(({ text, other }) => marksIn(text) !== marksIn(other)).map(({ at }) => at)).toEqual([]);
    });
  }

  it('each command says in Spanish what it tells, within the platform’s 100 characters', () => {
    for (const { name, summary, summaries } of commands) {
      expect(summaries?.spanish, name).toMatch(/\S.{9,}/);
      expect(summaries?.spanish, name).not.toBe(summary);
      expect(summaries?.spanish.length, name).toBeLessThanOrEqual(100);
    }
  });

  it('each action says in Spanish what it does and what it takes, within the same limit', () => {
    const desks = commands.flatMap((command) => (command.kind === 'desk' ? [command] : []));
    for (const { name, actions } of desks) {
      for (const { name: action, summary, summaries, options } of actions) {
        const called = `/${name} ${action}`.trim();
        expect(summaries?.spanish, called).toMatch(/\S.{9,}/);
        expect(summaries?.spanish, called).not.toBe(summary);
        expect(summaries?.spanish.length, called).toBeLessThanOrEqual(100);
        for (const { id, brief, briefs } of options) {
          expect(briefs?.spanish, `${called} ${id}`).toMatch(/\S/);
          expect(briefs?.spanish, `${called} ${id}`).not.toBe(brief);
          expect(briefs?.spanish.length, `${called} ${id}`).toBeLessThanOrEqual(100);
        }
      }
    }
  });
});

describe('what the knowledge says is checked against the English', () => {
  const english = { one: { says: 'Wait 20 minutes.', parts: ['cable'] } };
  const check = (spanish: unknown) => () => inSpanish('here.json', { english, same: ['cable'] }, spanish);

  it('takes what has every text, with the same numbers', () => {
    const spanish = { one: { says: 'Espere 20 minutos.', parts: ['cable'] } };
    expect(check(spanish)()).toEqual(spanish);
  });

  it.each([
    [{ one: { parts: ['cable'] } }, 'says: is missing'],
    [{ one: { says: 'Espere 30 minutos.', parts: ['cable'] } }, 'the numbers'],
    [{ one: { says: 'Wait 20 minutes.', parts: ['cable'] } }, 'still English'],
    [{ one: { says: 'Espere 20 minutos.', parts: ['cable', 'tubo'] } }, 'nothing in English is called so'],
    [{}, 'one: is missing'],
  ])('refuses %j', (spanish, why) => {
    expect(check(spanish)).toThrow(BadKnowledge);
    expect(check(spanish)).toThrow(why);
  });
});

describe('a question in Spanish', () => {
  it('is answered in Spanish with or without accents, and in English', () => {
    const asked = worded(deadProven, 'spanish');
    for (const yes of ['Sí', 'si', 'yes', 'sí.']) expect(asked.read(yes, 'metric'), yes).toEqual({ value: 'yes' });
    expect(asked.read('no', 'metric')).toEqual({ value: 'no' });
    expect(asked.show('yes', 'metric')).toBe('Sí');
    const job = worded(context, 'spanish');
    expect(job.read('cableado de aluminio, tiempo frio', 'metric')).toEqual({ value: ['cold', 'aluminium'] });
    expect(job.read('ninguno', 'metric')).toEqual({ value: [] });
  });

  it('refuses in Spanish what it cannot read', () => {
    expect(worded(deadProven, 'spanish').read('quizás mañana', 'metric')).toEqual({
      rejected: 'No entendí “quizás mañana”. Dé sí o no.',
    });
    expect(worded(complaint, 'spanish').read('  ', 'metric')).toEqual({
      rejected: expect.stringMatching(/^No se dio nada\./),
    });
  });
});

it('a locale or a name says which language is meant', () => {
  for (const text of ['es', 'es-419', 'es-ES', 'es_MX.UTF-8', 'Spanish', 'Español', 'espanol']) {
    expect(languageMeant(text), text).toBe('spanish');
  }
  for (const text of ['en', 'en-US', 'en-GB', 'English', 'inglés']) expect(languageMeant(text), text).toBe('english');
  for (const text of ['fr', 'estonian', '', 'C', 'x'.repeat(1000)]) expect(languageMeant(text), text).toBeUndefined();
});
