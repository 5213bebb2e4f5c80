import { createHash } from 'node:crypto';
import type { Command, Desk } from '#chat/command.ts';
import { deskFor } from '#chat/desk.ts';
import crew from '#commands/crew.ts';
import job from '#commands/job.ts';
import swap from '#commands/swap.ts';
import type { FormOffer, PressOffer, Reply } from '#findings/reply.ts';
import type { ScopedStore } from '#store/store.ts';
import type { Sight } from './sight.ts';

/** What a desk answered, with what can be pressed or filled in. It can be sent to another process. */
export interface DeskSight extends Sight {
  readonly offers: readonly PressOffer[];
  readonly asks: FormOffer | null;
}

/** One thing done at a desk. */
export interface DeskDeed {
  readonly who: string;
  readonly command: string;
  readonly action: string;
  readonly given: Readonly<Record<string, string>>;
}

const commands: readonly Command[] = [job, crew, swap];

/** An invented photo: its name is all there is to it. */
const photo: Desk['photo'] = (named) => ({
  value: { reference: named, checksum: createHash('sha256').update(named).digest('hex'), size: 1, placed: false },
});

/** Does one thing at the desk behind every medium. With `together` all it changes is kept at once, as in Discord. */
export function doneAtDesk(store: ScopedStore, deed: DeskDeed, together: boolean): DeskSight {
  const speaker = { channel: 'job', who: deed.who };
  const desk = deskFor({ store: () => store, speaker, commands, mayManage: true, photo });
  const command = commands.find(({ name }) => name === deed.command);
  const action = command?.kind === 'desk' ? command.actions.find(({ name }) => name === deed.action) : undefined;
  if (!action) throw new Error(`There is no ${deed.command} ${deed.action}.`);
  const act = () => action.act(desk, deed.given);
  const reply = together ? store.together(act) : act();
  if ('start' in reply) throw new Error(`${deed.command} ${deed.action} asks questions.`);
  return sightOf(reply);
}

function sightOf(reply: Reply): DeskSight {
  const { headline, findings, presses = [], asks, refused } = reply;
  return {
    headline,
    text: [headline, ...findings.map(({ says }) => says)].join('\n'),
    presses: presses.map(({ label }) => label),
    refused: refused ?? false,
    offers: presses,
    asks: asks ?? null,
    ...(asks
      ? {
          form: asks.fields.map(({ id, label, accepts, optional, choices = [] }) => ({
            id,
            label,
            accepts,
            optional,
            choices: choices.map((choice) => choice.label),
          })),
        }
      : {}),
  };
}

/** What typing, pressing and filling in come to at a desk. */
export const deskDeed = {
  typed(who: string, words: string, given: Readonly<Record<string, string>> = {}): DeskDeed {
    const [command = '', action = ''] = words.split(' ');
    return { who, command, action, given };
  },
  pressed(who: string, on: DeskSight, label: string): DeskDeed {
    const offer = on.offers.find((each) => each.label === label);
    if (!offer) throw new Error(`There is no [${label}] on: ${on.text}`);
    return { who, command: offer.command, action: offer.action, given: offer.given };
  },
  filled(who: string, { asks }: DeskSight, values: Readonly<Record<string, string>>): DeskDeed {
    if (!asks) throw new Error('There is no form to fill in.');
    const ids = asks.fields.map(({ id, choices }) => {
      const said = values[id];
      return said === undefined ? [] : [[id, choices?.find(({ label }) => label === said)?.id ?? said]];
    });
    return {
      who,
      command: asks.command,
      action: asks.action,
      given: { ...asks.given, ...Object.fromEntries(ids.flat()) },
    };
  },
};
