import type { Estimate } from '#quantity/estimate.ts';
import type { Kind } from '#quantity/kind.ts';
import type { Wording } from './choices.ts';
import type { Question, WhenUnknown } from './question.ts';

interface Asking<Q extends number, Value> extends Wording {
  readonly kind: Kind<Q>;
  readonly whenUnknown: WhenUnknown<Value>;
}

/** Of "4 in or 100 mm" the first: an example must itself be an answer. */
const firstExample = (example: string): string => example.split(' or ')[0] ?? example;

/** A question answered by an amount or a range of it: "14 ft", "12 to 16 ft". Not knowing is a wide range. */
export const estimated = <Q extends number>({
  kind,
  whenUnknown,
  ...wording
}: Asking<Q, Estimate<Q>>): Question<Estimate<Q>> => ({
  ...wording,
  accepts: kind.accepts,
  widget: { kind: 'text', placeholder: firstExample(kind.example) },
  whenUnknown,
  read: (text, units) => kind.readEstimate(text, units),
  show: (value, units) => kind.showEstimate(value, units),
});

/** A question answered by one amount, or by nothing where it may be left out. */
export const optional = <Q extends number>({
  kind,
  because,
  ...wording
}: Wording & { readonly kind: Kind<Q>; readonly because: string }): Question<Q | null> => ({
  ...wording,
  accepts: kind.accepts,
  widget: { kind: 'text', placeholder: firstExample(kind.example) },
  whenUnknown: { value: null, because },
  read: (text, units) => kind.read(text, units),
  show: (value, units) => (value === null ? 'not known' : kind.show(value, units)),
});
