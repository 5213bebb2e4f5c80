import type { Action, DeskCommand } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { entryOf, isNameOf, lookedUp, nearestTerms } from '#lookup/lookup.ts';
import { choiceOf, entryReply, nothingFound } from './workings/lookup-replies.ts';

/** Results offered to choose from, and names offered while somebody types. */
const most = { results: 5, names: 20 } as const;

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
      suggest: (_, typed) =>
        lookedUp(typed, most.names).entries.map(({ id, title, kind }) => ({ id, label: `${title} (${kind})` })),
    },
    {
      id: 'all',
      brief: 'yes shows every figure of a long table',
      choices: [{ id: 'yes', label: 'Every figure' }],
    },
  ],
  act(desk, { words = '', all }): Reply {
    const shown = { units: () => desk.telling.units, whole: all === 'yes' };
    const chosen = entryOf(words.trim());
    if (chosen) return entryReply(chosen, shown);
    const asked = words.trim().slice(0, longestShown);
    const { entries, readAs } = lookedUp(words, most.results);
    const [best, ...others] = entries;
    if (!best) return nothingFound(asked, nearestTerms(words, most.results));
    if (isNameOf(words, best) || others.length === 0) return entryReply(best, { ...shown, others });
    if (readAs !== undefined && isNameOf(readAs, best)) return entryReply(best, { ...shown, others, readAs });
    return choiceOf(asked, entries);
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
