import type { Dice } from '../support/whole-swap/dice.ts';
import { typedFor } from './typed.ts';

/** Numbers and names of what is likely to be there: they make a walk go further than chance alone would. */
const usual: Readonly<Record<string, readonly string[]>> = {
  job: ['1', '2', 'Elm'],
  name: ['1', '2', 'Elm', 'Hall bath 80'],
  as: ['lead', 'apprentice', 'Ana', 'json', 'csv'],
  person: ['Ana', 'Ben'],
  list: ['swap', 'callback-visit'],
  confirm: ['yes'],
  sure: ['yes', 'Elm'],
  what: ['put', 'take', 'licensed-electrician'],
  value: ['yes', '0', 'volts=0 on=120', 'appliance=none'],
};

/** What somebody gives for an option of this name. */
export function usualFor(id: string, chance: Dice): string {
  const known = usual[id];
  return known && chance.chance(0.5) ? chance.oneOf(known) : typedFor(id, chance);
}
