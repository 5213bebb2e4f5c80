import type { Dice } from '../support/whole-swap/dice.ts';
import { anything } from './typed.ts';

const acts = ['answer', 'form', 'pick', 'back', 'why', 'not-known', 'change', 'working', 'everything', 'start', 'do'];

/** The id of a press nobody was offered: one that was offered elsewhere or before, as it is or changed, or made up. */
export function forgedId(seen: readonly string[], chance: Dice): string {
  const known = seen.length > 0 ? chance.oneOf(seen) : 'v1:answer:0123456789:0:0';
  const parts = known.split(':');
  const at = chance.below(parts.length);
  const changed = (word: string) => parts.map((part, index) => (index === at ? word : part)).join(':');
  const id = chance.oneOf([
    () => known,
    () => changed(chance.oneOf(acts)),
    () => changed(String(chance.below(1000))),
    () => changed(anything(chance)),
    () => changed('__proto__=x'),
    () => `${known}:confirm=yes`,
    () => parts.slice(0, at).join(':'),
    () =>
      `v1:do:${chance.oneOf(['job', 'crew', 'swap', 'fan'])}:${chance.oneOf(['erase', 'sign', 'override', 'add', 'forget'])}:name=1:sure=yes`,
    () => anything(chance),
  ])();
  return id.slice(0, 100) || 'v1';
}
