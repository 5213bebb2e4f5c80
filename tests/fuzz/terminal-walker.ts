import { terminalSession } from '#chat/terminal/session.ts';
import { commands } from '#commands/index.ts';
import { openStore } from '#store/store.ts';
import { type Dice, dice } from '../support/whole-swap/dice.ts';
import { leadsOn, slipIn, unseenIn } from './harm.ts';
import { anything, typedFor } from './typed.ts';
import { usualFor } from './usual.ts';
import type { Walker } from './walker.ts';

const names = commands.map(({ name }) => name);
const turns = ['back', 'why', 'stop', 'go on', 'working', 'change', 'undo', "don't know", '', '/help'] as const;

const quoted = (text: string): string => (/\s/.test(text) ? `"${text}"` : text);

/** A command as somebody types it: some of what it takes, not always well. */
function commandLine(chance: Dice): string {
  const command = chance.oneOf(commands);
  const action = command.kind === 'desk' ? chance.oneOf(command.actions) : undefined;
  const ids =
    action?.options.map(({ id }) => id) ?? (command.kind === 'answer' ? command.takes.map(({ id }) => id) : []);
  const share = chance.oneOf([0, 0.1, 0.3, 0.9]);
  const given = ids.filter(() => chance.chance(share)).map((id) => `${id}=${quoted(usualFor(id, chance))}`);
  const free = chance.chance(0.2) ? [anything(chance)] : [];
  const slash = chance.chance(0.5) ? '/' : '';
  const line = [`${slash}${command.name}`, action?.name ?? '', ...free, ...given]
    .filter((word) => word !== '')
    .join(' ');
  return chance.chance(0.05) ? `${line.slice(0, 3)}${line.slice(4)}` : line;
}

/** Somebody at a keyboard who types anything in any order, and what of the replies should not be. */
export async function terminalWalker(seed: number): Promise<Walker> {
  const chance = dice(seed);
  const store = openStore(':memory:');
  const begun = () =>
    terminalSession({
      store: store.scoped('terminal'),
      commands,
      who: 'van',
      paper: { width: chance.oneOf([29, 40, 87]), colour: false },
      drawn: async () => undefined,
      kept: async () => [],
    });
  let session = begun();
  const typed = new Set<string>();

  const line = (): string => {
    const text = chance.chance(0.5) && session.asking() ? answerLine() : otherLine();
    return text.replace(/[\r\n]+/g, ' ');
  };
  const answerLine = (): string =>
    typedFor(chance.oneOf(['', 'room-length', 'fan-curve', 'duct-run', 'fixtures']), chance);
  const otherLine = (): string => {
    const roll = chance.below(10);
    if (roll < 4) return commandLine(chance);
    if (roll < 6) return chance.oneOf(turns);
    if (roll < 7) return String(chance.below(30));
    if (roll < 8) return `change ${chance.below(12)}`;
    return anything(chance);
  };

  return {
    async step() {
      if (chance.chance(0.01)) session = begun();
      const said = line();
      for (const word of said.split(/[^\w]+/)) typed.add(word);
      const about = JSON.stringify(said);
      if (chance.chance(0.1)) session.completions(said);
      const reply = await session.say(said);
      const harm = unseenIn(reply) ?? slipIn(reply, typed);
      const problems = [
        ...(harm === undefined ? [] : [`${harm} in the reply to ${about}: ${reply.slice(0, 300)}`]),
        ...(reply.trim() === '' && said.trim() !== '' ? [`nothing was said to ${about}`] : []),
        ...(reply.trim() === '' || session.asking() || leadsOn(reply, names)
          ? []
          : [`no way on after ${about}: ${reply.slice(0, 300)}`]),
      ];
      return { did: about, problems };
    },
    close: async () => store.close(),
  };
}
