import facts from '../../knowledge/spanish/checklists/facts.json' with { type: 'json' };
import own from '../../knowledge/spanish/observations.json' with { type: 'json' };
import { type ObservationId, observations, plannedObservations } from './circuit-rules.ts';
import { inSpanish } from './spanish.ts';

/** What an observation says, apart from when and where it is made. */
interface ObservationTexts {
  readonly prompt: string;
  readonly brief: string;
  readonly why: string;
  /** By the ids of its answers. */
  readonly options: Readonly<Record<string, string>>;
  readonly whenUnknown: string;
}

const textsOf = (id: ObservationId): ObservationTexts => {
  const { prompt, brief, why, options, whenUnknown } = observations[id];
  return { prompt, brief, why, options: Object.fromEntries(options.map((each) => [each.id, each.label])), whenUnknown };
};

const ofChecklists: Readonly<Record<string, object>> = facts;

/** The observations of the planning stage in Spanish. Those the checklists read too have their words from there. */
export const observationsInSpanish = inSpanish(
  'knowledge/spanish/observations.json',
  { english: Object.fromEntries(plannedObservations.map((id) => [id, textsOf(id)])), same: ['No'] },
  Object.fromEntries(
    Object.entries(own).map(([id, texts]) => [id, { ...(Object.hasOwn(facts, id) ? ofChecklists[id] : {}), ...texts }]),
  ),
);
