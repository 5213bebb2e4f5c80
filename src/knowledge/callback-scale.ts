import { z } from 'zod';
import { pascals, ratio } from '#quantity/units.ts';
import contextsFile from '../../knowledge/causes/contexts.json' with { type: 'json' };
import dangersFile from '../../knowledge/causes/dangers.json' with { type: 'json' };
import tiersFile from '../../knowledge/causes/tiers.json' with { type: 'json' };
import { checked } from './checked.ts';
import { figure, sentence } from './figure.ts';
import { citationFields, cite } from './sources.ts';

/** Where a thing can be seen from, nearest first. A hood on the roof is for a roofer and is never asked for. */
export const checkPlaces = ['phone', 'floor', 'outside', 'ladder', 'attic', 'instrument'] as const;
export type CheckPlace = (typeof checkPlaces)[number];

/** What the power must be for a check. Anything inside the grille is `off and proven`. */
export const checkPowers = ['any', 'on, hands off', 'off and proven'] as const;
export type CheckPower = (typeof checkPowers)[number];

/** Who may do a check or a remedy. */
export const callbackTrades = [
  'apprentice-under-lead',
  'lead',
  'licensed-electrician',
  'roofer',
  'plumber',
  'fuel-gas-trade',
] as const;

/** How often a sign comes with a cause. `rules out` means the two cannot be true together, whatever else is wrong. */
export const signTiers = ['always', 'usually', 'sometimes', 'rarely', 'hardly ever', 'rules out'] as const;

export const causeBands = ['very-likely', 'likely', 'possible', 'unlikely'] as const;
export type CauseBand = (typeof causeBands)[number];

const strengthNames = ['strongly', 'clearly', 'slightly'] as const;
export type StrengthName = (typeof strengthNames)[number];

const chance = z.number().gt(0).lt(1);
const share = figure('1', ratio);

const tier = z
  .strictObject({ chance, means: z.string().endsWith('.'), ...citationFields })
  .transform((entry) => ({ chance: entry.chance, means: entry.means, citation: cite(entry) }));

const band = z
  .strictObject({ name: z.string(), from: z.number().min(0).lt(1), ...citationFields })
  .transform((entry) => ({ name: entry.name, from: entry.from, citation: cite(entry) }));

const scale = checked(
  'knowledge/causes/tiers.json',
  z.strictObject({
    tiers: z.record(z.enum(signTiers), tier),
    bands: z.record(z.enum(causeBands), band),
    strengths: z.record(z.enum(strengthNames), share),
    effort: z.record(z.enum(checkPlaces), share),
    powerEffort: z.record(z.enum(checkPowers), share),
    figures: z.strictObject({
      'signs-for-very-likely': share,
      'group-share': share,
      'second-fault': share,
      'second-fault-said': share,
      'silent-cause': share,
      'enough-to-tell': share,
      'clear-from': share,
      'rule-out-from': share,
      'worth-asking': share,
      'worth-the-effort': share,
    }),
    lines: z.strictObject({
      'flow-low': share,
      'flow-ok': share,
      'pressure-low': figure('Pa', pascals),
      'pressure-high': figure('Pa', pascals),
      'far-below': share,
      leak: share,
    }),
    sentences: z.strictObject({
      stopped: sentence,
      'not-enough': sentence,
      clear: sentence,
      'nothing-left': sentence,
      'rule-out-first': sentence,
    }),
  }),
  tiersFile,
);

/** The figures reasoning works with. All are judgement: nobody has published how often each sign comes with each cause. */
export const callbackScale = scale;
export type CallbackScale = typeof scale;

/** Where a measured number becomes a finding. */
export const callbackLines = scale.lines;
export type CallbackLines = CallbackScale['lines'];

/** How a callback ends, in words. */
export const callbackSentences = scale.sentences;

export type DangerId = keyof typeof dangersFile;

const oneSentence = z.string().regex(/^[^.]+\.$/, 'one sentence, with one full stop at its end');

/** What to do at once, and while nobody can say, by kind of danger, each in one sentence. */
export const callbackDangers = checked(
  'knowledge/causes/dangers.json',
  z.record(
    z.string(),
    z
      .strictObject({
        name: z.string(),
        /** One sentence: what to do now. */
        says: oneSentence,
        /** One sentence: what to do while nobody can say whether it is there. */
        untilKnown: oneSentence,
        /** What not knowing weighs: it ends the asking, or the asking goes on with what leaves the fan alone. */
        unknownIs: z.enum(['stop', 'caution']),
        /** Everybody leaves the house: no other order may be given beside it. */
        everyoneOut: z.literal(true).optional(),
        ...citationFields,
      })
      .transform((entry) => ({
        name: entry.name,
        says: entry.says,
        untilKnown: entry.untilKnown,
        unknownStops: entry.unknownIs === 'stop',
        everyoneOut: entry.everyoneOut ?? false,
        citation: cite(entry),
      })),
  ),
  dangersFile,
) as Readonly<
  Record<
    DangerId,
    {
      readonly name: string;
      readonly says: string;
      readonly untilKnown: string;
      readonly unknownStops: boolean;
      readonly everyoneOut: boolean;
      readonly citation: ReturnType<typeof cite>;
    }
  >
>;

export const isDanger = (id: string): id is DangerId => Object.hasOwn(dangersFile, id);

export type ContextId = keyof typeof contextsFile;

/** What is true of the job beside the complaint, and makes some causes likelier. */
export const callbackContexts = checked(
  'knowledge/causes/contexts.json',
  z.record(
    z.string(),
    z
      .strictObject({ name: z.string(), question: z.string().max(100).endsWith('?'), ...citationFields })
      .transform((entry) => ({ name: entry.name, question: entry.question, citation: cite(entry) })),
  ),
  contextsFile,
) as Readonly<
  Record<ContextId, { readonly name: string; readonly question: string; readonly citation: ReturnType<typeof cite> }>
>;

export const isContext = (id: string): id is ContextId => Object.hasOwn(contextsFile, id);
