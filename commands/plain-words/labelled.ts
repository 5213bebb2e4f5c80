import type { AnyQuestion, UnitSystem } from '#interview/question.ts';
import { askedBy, questionsById } from './asked-by.ts';
import { otherNames, unread } from './labels.ts';
import { cutsNumber, type Fact, type Taken, without } from './line.ts';
import { number } from './measures.ts';

/**
 * Answers told as on a form: the name of what is asked, then its answer ("duct insulation R-6, clamps none", "HDD: 5400"). What
 * counts as an answer the question itself decides. Such a place is sure, so it is read before any other rule.
 */

interface Labelled {
  readonly name: string;
  readonly id: string;
  readonly answer: string;
  readonly from: number;
  readonly to: number;
}

/** The questions a name may mean, and whether it is the id of one: that means the same wherever it stands. */
interface Meant {
  readonly ids: readonly string[];
  readonly whole: boolean;
}

const named: ReadonlyMap<string, Meant> = namesOf();

function namesOf(): ReadonlyMap<string, Meant> {
  const names = new Map<string, Meant>();
  const ids = [...questionsById.keys()].filter((id) => !unread.has(id));
  for (const id of ids) names.set(id.replaceAll('-', ' '), { ids: [id], whole: id.includes('-') });
  for (const [id, others] of Object.entries(otherNames))
    for (const name of others) {
      const known = names.get(name);
      names.set(name, { ids: [...(known?.ids ?? []), id], whole: known?.whole ?? false });
    }
  return names;
}

const inPattern = (name: string): string => name.replaceAll(' ', '[ -]');
const anyName = [...named.keys()]
  .sort((one, other) => other.length - one.length)
  .map(inPattern)
  .join('|');
const mark = String.raw`(?: ?[:=] ?| - )`;
const label = new RegExp(
  String.raw`(?<![a-z\d'/~-])(?<name>${anyName})(?![a-z'])(?:(?<mark>${mark})| (?:(?:is|are|was|were|of|at|about) )?(?=[-\d$.~a-z]))`,
  'g',
);

/** Where a clause begins: nothing but these stands before the name of a field. */
const opening = /(?:^|[,;.?!(~]| -)\s*(?:- ?)?(?:(?:and|with|the|an?|my|our|plus|new|its|has|w) )*$/;
const negated = /\b(?:no|not|without|any|zero)(?: (?:an?|the|internal|inside|cable|separate))? $/;
const ends = /;|\.(?=\s|$)|[?!~)]/;
/** Where an answer may be cut when all of the clause is none. */
const cuts = /,| and | with | but | - | \(| then | what | how | will | is | does | do | ok /g;
/** What may stand right behind an answer whose name is an everyday word. */
const closing = /^\s*(?:$|[,;.?!~(]|- |and |what |how |will |is |does |do |with |ok\b|enough\b)/;

/** An amount with this behind it is one side, one point or one end of something longer. */
const goesOn = /^ ?(?:x|by|@|at|to|or|-|\/) ?\d/;

const unit =
  '(?:cfm|l/s|m3/h|cfm50|in|ft|mm|cm|m|sqin|cm2|sqft|m2|degf|degc|deg|%|min|sec|hr|gal|liter|pa|fpm|mps|watt|amp|sone|hdd|kd|ppm|awg|in3|cm3)';
const amount = new RegExp(
  String.raw`^-?${number}(?: ?${unit}(?![a-z\d])(?: ${number} in(?![a-z\d])|/day| (?:a|per) day)?)?`,
);

/** Units as the questions know them. */
const written: readonly (readonly [RegExp, string])[] = [
  [/\bdegf\b/g, 'F'],
  [/\bdegc\b/g, 'C'],
  [/\bsqin\b/g, 'sq in'],
  [/\bsqft\b/g, 'sq ft'],
  [/\bmps\b/g, 'm/s'],
  [/\bliter\b/g, 'L'],
  [/\bwatt\b/g, 'W'],
  [/\bamp\b/g, 'A'],
  [/\bhr\b/g, 'h'],
  [/\bkd\b/g, 'K·d'],
  [/(\d) hdd\b/g, '$1'],
  [/(\d) sec\b/g, '$1 s'],
  [/^r ?-? ?(?=\d)/g, 'R-'],
  [/^rsi ?-? ?(?=\d)/g, 'RSI '],
];
const asWritten = (said: string, id: string): string =>
  written
    .reduce(
      (text, [from, to]) => text.replace(from, to),
      id.endsWith('-temperature') ? said.replace(/(\d) deg\b/, '$1') : said,
    )
    .replace(/\s+/g, ' ')
    .trim();

/** The stretch of an answer the question accepts: all of the clause, or as much of it as will do. */
function answerIn(
  rest: string,
  question: AnyQuestion,
  { whole, marked, units }: { readonly whole: boolean; readonly marked: boolean; readonly units: UnitSystem },
): { readonly answer: string; readonly length: number } | undefined {
  if (question.id === 'fan-curve' && /^\d+(?:\.\d+)?(?: cfm| l\/s)? ?(?:@|at)/.test(rest)) return undefined;
  if (question.id === 'fan-curve' && movesSo.test(rest)) return undefined;
  const stop = rest.search(ends);
  const clause = rest.slice(0, stop < 0 ? rest.length : stop).slice(0, longest);
  const found = [...clause.matchAll(cuts)].map(({ index }) => index).slice(0, mostCuts);
  const amountIn = question.widget.kind === 'text' ? amount.exec(clause)?.[0].length : undefined;
  const stops = [...(amountIn === undefined ? [] : [amountIn]), ...found, clause.length];
  for (const length of many(question) || (marked && question.widget.kind === 'one') ? stops.reverse() : stops) {
    const said = clause.slice(0, length).trimEnd();
    const written = asWritten(said, question.id);
    // "Support fittings: 1 stud".
    const answer = question.widget.kind === 'several' ? written.replace(/^1 (?=[a-z])/, '') : written;
    // "Exhaust 72 / 85 %" tells two things under one name: neither is sure.
    if (/\d \/ \d/.test(answer) && !many(question)) continue;
    if (answer === '' || !('value' in question.read(answer, units))) continue;
    const behind = rest.slice(said.length);
    if (length === amountIn && goesOn.test(behind)) continue;
    if (!whole && !marked && !closing.test(behind)) continue;
    return { answer, length: said.length };
  }
  return undefined;
}

/** "Fan: 120 delivered" tells what it moves, not what its carton says. */
const movesSo =
  /^\d+(?:\.\d+)?(?: cfm| l\/s| m3\/h)? ?\(?(?:actual(?:ly)?|really|delivered|delivering|measured|out (?:of )?the|at the (?:cap|grille))\b/;

/** Whether an answer may hold several things with commas between: then as much of the clause as will do is meant. */
const many = ({ accepts }: AnyQuestion): boolean => /commas|count x/.test(accepts);

const longest = 120;
const mostCuts = 8;

const bare = /^-?[\d./ -]+$/;

/** Everything on a line that stands behind its name, for whichever command may ask it. */
function labelledIn(line: string, units: UnitSystem): readonly Labelled[] {
  return [...line.matchAll(label)].flatMap(({ index, 0: said, groups }) => {
    const name = (groups?.['name'] ?? '').replaceAll('-', ' ');
    const meant = named.get(name);
    const before = line.slice(0, index);
    const from = index + said.length;
    if (meant === undefined || negated.test(before)) return [];
    const marked = groups?.['mark'] !== undefined;
    if (!meant.whole && !opening.test(before)) return [];
    return meant.ids.flatMap((id) => {
      const question = questionsById.get(id);
      const found = question && answerIn(line.slice(from), question, { whole: meant.whole, marked, units });
      if (found === undefined || cutsNumber(line, from, from + found.length)) return [];
      return [{ name, id, answer: found.answer, from: index, to: from + found.length }];
    });
  });
}

/** The same line is read for many commands, one after the other. */
let before: { readonly line: string; readonly units: UnitSystem; readonly found: readonly Labelled[] } | undefined;

/** The answers on a line that stand behind their names, as far as this command asks for them. */
export function labelled(line: string, command: string, units: UnitSystem): Taken {
  if (before?.line !== line || before.units !== units) before = { line, units, found: labelledIn(line, units) };
  const asked = askedBy.get(command);
  const facts: Fact[] = [];
  let text = line;
  for (const { name, id, answer, from, to } of before.found) {
    const [first] = named.get(name)?.ids.filter((each) => asked?.has(each)) ?? [];
    // A number without a unit is what the name means first; with one it is what the unit is of.
    if (!asked?.has(id) || (first !== id && bare.test(answer)) || facts.some((each) => each.id === id)) continue;
    // "Power 14, 30 watt": where watts are told as such, a number without a unit is something else.
    if (id === 'fan-watts' && bare.test(answer) && /\d watt\b/.test(line)) continue;
    if (text.slice(from, to).includes('~')) continue;
    facts.push({ id, answer });
    text = without(text, from, to);
  }
  return { facts, text };
}
