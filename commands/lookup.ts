import type { Action, DeskCommand } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { entryOf, isNameOf, lookedUp, nearestTerms } from '#lookup/lookup.ts';
import { lookupWords } from './words/lookup.ts';
import { languageAt } from './words/swap.ts';
import { choiceOf, entryReply, nothingFound } from './workings/lookup-replies.ts';

/** Results offered to choose from, and names offered while somebody types. */
const most = { results: 5, names: 20 } as const;

/** "What is the dew point" names the dew point. */
const asNamed = (words: string): string =>
  words.replace(
    /^\s*¿?(?:qu[eé] (?:es|son|significa|quiere decir)|what(?:['’]?s| is| are)|define)\s+(?:(?:el|la|los|las|una?|the|an?)\s+)?|[?.!\s]+$/gi,
    '',
  );

/** Letters shown of what was typed. */
const longestShown = 40;

const find: Action = {
  name: '',
  summary: 'Look up a word, a rule, a table, a fitting, a cause or a step, with its source.',
  options: [
    {
      id: 'words',
      brief: 'what to look up, such as: sone, wall cap, box fill, duct length',
      required: true,
      suggest(desk, typed) {
        const language = languageAt(desk);
        const { kind: called } = lookupWords[language];
        return lookedUp(typed, most.names, language).entries.map(({ id, title, kind }) => ({
          id,
          label: `${title} (${called(kind)})`,
        }));
      },
    },
    {
      id: 'all',
      brief: 'yes shows every figure of a long table',
      choices: [{ id: 'yes', label: 'Every figure' }],
    },
  ],
  act(desk, { words = '', all }): Reply {
    const language = languageAt(desk);
    const shown = { units: () => desk.telling.units, whole: all === 'yes', language };
    const chosen = entryOf(words.trim(), language);
    if (chosen) return entryReply(chosen, shown);
    const asked = words.trim().slice(0, longestShown);
    const { entries, readAs } = lookedUp(words, most.results, language);
    const [best, ...others] = entries;
    if (!best) return nothingFound(asked, nearestTerms(words, most.results, language), language);
    if (isNameOf(asNamed(words), best) || others.length === 0) return entryReply(best, { ...shown, others });
    if (readAs !== undefined && isNameOf(readAs, best)) return entryReply(best, { ...shown, others, readAs });
    return choiceOf(asked, entries, language);
  },
};

const lookup: DeskCommand = {
  kind: 'desk',
  name: 'lookup',
  summary: find.summary,
  example: 'equivalent length',
  actions: [find],
};

export default lookup;
