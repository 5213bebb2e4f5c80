import { meets, within } from '#quantity/meets.ts';
import type { WalkWords } from '#words/walkthrough.ts';
import type { ListedNumber, ListedPart } from './listed-step.ts';
import type { StepValue } from './walk-event.ts';

/** A number outside the range of its step. */
export interface OutOfRange {
  readonly part: string;
  /** "Free wire: at least 6 in." */
  readonly says: string;
}

/** What an answer says about its step. */
export interface Judged {
  /** Why it cannot be read as an answer at all. */
  readonly misread: string | null;
  /** What to do now, where it stops the job. */
  readonly stops: string | null;
  /** What has not been said yet. */
  readonly missing: readonly string[];
  readonly outside: readonly OutOfRange[];
  /** Remarks that go with an answer that is taken. */
  readonly advice: readonly string[];
}

/** What the judgement needs from outside the answer. */
export interface Beside {
  /** In which words to tell it. */
  readonly told: WalkWords;
  /** Photos that were sent for the step beforehand. */
  readonly photos: number;
  /** What an earlier step recorded, in SI; absent while that step is open. */
  readonly recorded: (step: string, part: string) => number | undefined;
}

const keysOf = (part: ListedPart): readonly string[] =>
  part.kind === 'pair' ? [part.first.id, part.second.id] : [part.id];

const isAsked = ({ onlyIf }: ListedPart, value: StepValue): boolean =>
  onlyIf === undefined || onlyIf.is.includes(String(value[onlyIf.part]));

/** What two parts of one answer say against each other, such as farther off and 0 in; nothing where they agree. */
export function contradiction(parts: readonly ListedPart[], value: StepValue): string | null {
  for (const part of parts) {
    if (part.kind !== 'number' || part.agrees === undefined) continue;
    const number = value[part.id];
    const { least, most, over } = part.agrees.beside[String(value[part.agrees.part])] ?? {};
    if (typeof number !== 'number') continue;
    const agrees =
      (!least || meets(number, least.si)) && (!most || within(number, most.si)) && (!over || !within(number, over.si));
    if (!agrees) return part.agrees.says;
  }
  return null;
}

/** Reads an answer against the parts of its step. Never throws, whatever the answer. */
export function judged(parts: readonly ListedPart[], value: StepValue, beside: Beside): Judged {
  const asked = parts.filter((part) => isAsked(part, value));
  const strays = Object.keys(value).filter((key) => !asked.some((part) => keysOf(part).includes(key)));
  const given = asked.filter((part) => keysOf(part).every((key) => value[key] !== undefined));
  const misreadings = given.map((part) => misread(part, value, beside)).filter((each) => each !== null);
  const outside = given.flatMap((part) => outOfRange(part, value, beside));
  const options = given.flatMap((part) =>
    part.kind === 'choice' ? part.options.filter(({ id }) => id === value[part.id]) : [],
  );
  const stopped = given.find(
    (part) => part.kind === 'number' && part.outsideStops && outside.some((each) => each.part === part.id),
  );
  return {
    misread: misreadings[0] ?? (strays[0] === undefined ? null : beside.told.notAsked(strays[0])),
    stops:
      options.find(({ stops }) => stops)?.stops ??
      (stopped?.kind === 'number' ? stopped.outsideStops : undefined) ??
      null,
    missing: asked.filter((part) => isMissing(part, value, beside)).map(({ label }) => label),
    outside,
    advice: [...options.flatMap(({ advises }) => advises ?? []), ...given.flatMap((part) => advised(part, value))],
  };
}

function isMissing(part: ListedPart, value: StepValue, { photos }: Beside): boolean {
  if (part.kind === 'text' && part.neededBelow && isBelow(part.neededBelow, value)) return value[part.id] === undefined;
  if (part.optional || keysOf(part).every((key) => value[key] !== undefined)) return false;
  return !(part.kind === 'photo' && photos > 0);
}

function isBelow({ part, than }: { readonly part: string; readonly than: string }, value: StepValue): boolean {
  const [number, other] = [value[part], value[than]];
  return typeof number === 'number' && typeof other === 'number' && !meets(number, other);
}

function misread(part: ListedPart, value: StepValue, { told }: Beside): string | null {
  const said = value[part.id];
  const isNumber = (key: string) => typeof value[key] === 'number';
  switch (part.kind) {
    case 'choice':
      return part.options.some(({ id }) => id === said) ? null : told.pickAnswer(part.label);
    case 'number':
      return isNumber(part.id) ? aboveItsMost(part, value) : told.giveNumber(part.label);
    case 'pair':
      return isNumber(part.first.id) && isNumber(part.second.id) ? null : told.giveBoth(part.label);
    case 'tester-proof':
      return said === 'proving-unit' || isNumber(part.id) ? null : told.provingUnit(part.label);
    case 'tick':
      return said === true ? null : told.tickOnce(part.label);
    case 'photo':
    case 'text':
      return typeof said === 'string' && said.trim() !== '' ? null : told.nothingGiven(part.label);
  }
}

function aboveItsMost({ mostOf, id }: ListedNumber, value: StepValue): string | null {
  const most = mostOf && value[mostOf.part];
  return mostOf && typeof most === 'number' && !within(Number(value[id]), most) ? mostOf.says : null;
}

function outOfRange(part: ListedPart, value: StepValue, beside: Beside): OutOfRange[] {
  const out = (says: string): OutOfRange[] => [{ part: part.id, says: `${part.label}: ${says}.` }];
  if (part.kind === 'pair') {
    const [first, second] = [Number(value[part.first.id]), Number(value[part.second.id])];
    return first > 0 && second >= 0 && 100 * (first - second) < part.dropUnder * first
      ? []
      : out(beside.told.lessLost(part.dropUnder));
  }
  const number = value[part.id];
  if (typeof number !== 'number') return [];
  if (part.kind === 'tester-proof') {
    return meets(number, part.least.si) && within(number, part.most.si)
      ? []
      : out(beside.told.livePoint(part.least.shown, part.most.shown));
  }
  if (part.kind !== 'number') return [];
  const { id, leastBeside } = part;
  const below = leastBeside && isBelow({ part: id, than: leastBeside.part }, value) ? [leastBeside.says] : [];
  return [...outOfNumber(part, number, beside), ...below].flatMap(out);
}

function outOfNumber({ least, most, under, leastOf }: ListedNumber, number: number, beside: Beside): string[] {
  const says: string[] = [];
  const { told } = beside;
  if (least && !meets(number, least.si)) says.push(told.atLeast(least.shown));
  if (most && !within(number, most.si)) says.push(told.atMost(most.shown));
  if (under && !(number < under.si)) says.push(told.under(under.shown));
  if (leastOf) {
    const recorded = beside.recorded(leastOf.step, leastOf.part);
    if (recorded === undefined || !meets(number, recorded)) says.push(told.belowAgreed);
  }
  return says;
}

function advised(part: ListedPart, value: StepValue): string[] {
  const number = value[part.id];
  if (part.kind !== 'number' || !part.advised || typeof number !== 'number') return [];
  const { least, most, says } = part.advised;
  const inside = (!least || meets(number, least.si)) && (!most || within(number, most.si));
  return inside ? [] : [says];
}
