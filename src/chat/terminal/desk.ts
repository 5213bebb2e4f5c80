import type { Reply } from '#findings/reply.ts';
import type { Language } from '#words/language.ts';
import { terminalWords } from '#words/terminal.ts';
import { type Action, briefIn, type Desk, type DeskCommand, type Start } from '../command.ts';
import { acted, refusal } from '../desk.ts';
import { clipped, nearest, optionsFrom } from '../options.ts';
import { textOfFile } from './given-file.ts';

/** What a desk command came to: an answer, or sentences about what is missing or not understood. */
export type DeskAnswer = { readonly reply: Reply | Start } | { readonly problems: readonly string[] };

/** Runs a desk command from typed words: its action, then name=value pairs, or plain words for its first option. */
export function deskAnswer(command: DeskCommand, words: readonly string[], desk: Desk): DeskAnswer {
  const [said, ...after] = spokenFor(words);
  const named = command.actions.find(({ name }) => name !== '' && name === said?.toLowerCase());
  const action = named ?? command.actions.find(({ name }) => name === '');
  const { language = 'english' } = desk.speaker;
  const say = terminalWords[language];
  if (!action) return { problems: [whichAction(command, said, language)] };
  const rest = named ? after : spokenFor(words);
  const pairs = rest.findIndex((word) => /^[a-z][\w-]*=/i.test(word));
  const free = (pairs < 0 ? rest : rest.slice(0, pairs)).join(' ');
  const { values, problems } = optionsFrom(
    pairs < 0 ? [] : rest.slice(pairs),
    action.options.map(({ id }) => id),
    undefined,
    language,
  );
  const [first] = action.options;
  const options = free !== '' && first ? { [first.id]: free, ...values } : values;
  const called = `${command.name} ${action.name}`.trim();
  const trouble = [
    ...problems,
    ...(free !== '' && !first ? [say.takesNothing(called)] : []),
    ...action.options
      .filter(({ id, required }) => required && !options[id]?.trim())
      .map((option) => say.give(option.id, briefIn(option, language))),
    ...action.options.flatMap(({ id, choices }) => {
      const given = options[id];
      if (given === undefined || !choices || choices.some((choice) => choice.id === given.toLowerCase())) return [];
      return [say.isOneOf(id, choices.map((choice) => choice.id).join(', '))];
    }),
  ];
  const refused = refusal(action, desk);
  if (refused !== undefined) return { problems: [refused] };
  if (trouble.length > 0) return { problems: trouble };
  const texts = withFiles(action, options);
  return 'problems' in texts ? texts : { reply: acted(action, desk, texts.options) };
}

/** The options with the text of each file in place of its path. */
function withFiles(
  action: Action,
  given: Readonly<Record<string, string>>,
): { readonly options: Readonly<Record<string, string>> } | { readonly problems: readonly string[] } {
  const read = action.options.flatMap(({ id, file }) => {
    const path = given[id];
    return file && path !== undefined ? [{ id, reading: textOfFile(path) }] : [];
  });
  const problems = read.flatMap(({ reading }) => ('rejected' in reading ? [reading.rejected] : []));
  if (problems.length > 0) return { problems };
  const texts = read.flatMap(({ id, reading }) => ('value' in reading ? [[id, reading.value] as const] : []));
  return { options: { ...given, ...Object.fromEntries(texts) } };
}

/** `--as Ana` says who acts, as `as=Ana` does. */
const spokenFor = (words: readonly string[]): readonly string[] => {
  const at = words.indexOf('--as');
  const name = words[at + 1];
  return at < 0 || name === undefined ? words : [...words.slice(0, at), ...words.slice(at + 2), `as=${name}`];
};

function whichAction({ name, actions }: DeskCommand, said: string | undefined, language: Language): string {
  const { noSuchAction, sayWhich } = terminalWords[language];
  const names = actions.map((action) => action.name);
  const meant = said === undefined ? undefined : nearest(said.toLowerCase(), names);
  if (meant) return noSuchAction(`${name} ${clipped(said ?? '')}`, `${name} ${meant}`);
  return sayWhich(names.map((each) => `${name} ${each}`).join(', '));
}
