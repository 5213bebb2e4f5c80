import { type InEach, inEach } from '#words/in-each.ts';
import causesFile from '../../knowledge/spanish/callback-causes.json' with { type: 'json' };
import findingsFile from '../../knowledge/spanish/callback-findings.json' with { type: 'json' };
import scaleFile from '../../knowledge/spanish/callback-scale.json' with { type: 'json' };
import variablesFile from '../../knowledge/spanish/callback-variables.json' with { type: 'json' };
import { type CallbackFindingId, callbackFindings, callbackVariables, type VariableId } from './callback-findings.ts';
import {
  type ContextId,
  callbackContexts,
  callbackDangers,
  callbackSentences,
  type DangerId,
} from './callback-scale.ts';
import { type CauseId, causes } from './causes.ts';
import { inSpanish } from './spanish.ts';

/** What a check is called and how it is made. */
interface CheckText {
  readonly question: string;
  readonly short: string;
  readonly how: string;
}

/** What is told of a cause. */
interface CauseText {
  readonly name: string;
  readonly confirm: string;
  readonly remedy: string;
  readonly parts: readonly string[];
  readonly caution?: string;
  readonly refer?: string;
}

interface CallbackTexts {
  readonly findings: Readonly<Record<CallbackFindingId, CheckText>>;
  readonly variables: Readonly<Record<VariableId, CheckText>>;
  readonly causes: Readonly<Record<CauseId, CauseText>>;
  readonly dangers: Readonly<
    Record<DangerId, { readonly name: string; readonly says: string; readonly untilKnown: string }>
  >;
  readonly contexts: Readonly<Record<ContextId, { readonly name: string; readonly question: string }>>;
  readonly sentences: Readonly<Record<keyof typeof callbackSentences, string>>;
}

function mapped<Key extends string, From, To>(
  entries: Readonly<Record<Key, From>>,
  to: (entry: From) => To,
): Readonly<Record<Key, To>> {
  return Object.fromEntries(
    (Object.entries(entries) as [Key, From][]).map(([key, entry]) => [key, to(entry)]),
  ) as Readonly<Record<Key, To>>;
}

const checkText = ({ question, short, how }: CheckText): CheckText => ({ question, short, how });

const english: CallbackTexts = {
  findings: mapped(callbackFindings, checkText),
  variables: mapped(callbackVariables, checkText),
  causes: mapped(causes, ({ name, confirm, remedy, parts, caution, refer }) => ({
    name,
    confirm,
    remedy,
    parts,
    ...(caution === undefined ? {} : { caution }),
    ...(refer === undefined ? {} : { refer }),
  })),
  dangers: mapped(callbackDangers, ({ name, says, untilKnown }) => ({ name, says, untilKnown })),
  contexts: mapped(callbackContexts, ({ name, question }) => ({ name, question })),
  sentences: mapped(callbackSentences, ({ says }) => says),
};

const { dangers, contexts, sentences } = english;

/** Everything the knowledge of callbacks says in words, in each language. */
export const callbackTexts: InEach<CallbackTexts> = inEach(english, {
  findings: inSpanish('knowledge/spanish/callback-findings.json', { english: english.findings }, findingsFile),
  variables: inSpanish('knowledge/spanish/callback-variables.json', { english: english.variables }, variablesFile),
  causes: inSpanish(
    'knowledge/spanish/callback-causes.json',
    { english: english.causes, same: ['motor', 'control', 'cable'] },
    causesFile,
  ),
  ...inSpanish('knowledge/spanish/callback-scale.json', { english: { dangers, contexts, sentences } }, scaleFile),
});
