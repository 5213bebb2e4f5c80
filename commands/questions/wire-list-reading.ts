import { type Gauge, gauges, isGauge, thickest } from '#engine/electrical/gauge.ts';
import type { Reading } from '#interview/question.ts';
import { boxRules } from '#knowledge/box-rules.ts';
import { normalised } from './run-grammar.ts';

export interface Wires {
  readonly count: number;
  readonly awg: Gauge;
}

/** Cables as they are bought: `cores` insulated wires each, with a bare one beside them or without. */
interface Cables extends Wires {
  readonly cores: number;
  readonly ground: boolean;
}

/** Wires as counted in a box, some of them told as cables. */
export interface WireList {
  readonly wires: readonly Wires[];
  readonly cables: readonly Cables[];
}

/** Switches, timers and receptacles, each on its own strap, by the thickest wire landed on it. */
export interface Straps extends Wires {
  readonly gangs: number;
}

export const noWires: WireList = { wires: [], cables: [] };

const mostOfOneSize = 100;
const longest = 300;

const times = String.raw`(?:\s*[x×*]\s*|\s+of\s+|\s+)`;
const wireWords = String.raw`(?:\s+(?:wires?|conductors?|leads?|copper|solid|stranded))*`;
const gauge = String.raw`(?:#|no\.?\s*|awg\s*)?\s*(?<awg>\d+)(?![\d./])\s*-?\s*(?:awg|ga(?:u?ge)?)?\b`;
const ground = String.raw`(?<bare>w\/?\s*g(?:round)?\b|(?:with|and)\s+(?:an?\s+)?(?:bare|ground)(?:\s+(?:wire|ground))?\b|g\b)`;
const groundless = String.raw`(?<no>(?:w\/o|without|no)\s+(?:an?\s+)?(?:bare|ground)(?:\s+wire)?\b)`;

const cablePattern = new RegExp(
  String.raw`(?:(?<before>\d+)(?:${times})(?:cables?\s+(?:of\s+)?|runs?\s+(?:of\s+)?)?)?(?:#\s*)?(?<awg>\d+)\s*[/-]\s*(?<cores>[234])(?![\d./])(?:\s*(?:nm-?b?|cables?))*(?:[\s,]*(?:${groundless}|${ground}))?(?:\s*cables?)?(?:\s*[x×*]\s*(?<after>\d+)(?![\d./]))?`,
  'y',
);
const wirePattern = new RegExp(
  String.raw`(?<count>\d+)(?:\s*(?:wires?|conductors?|leads?)\b)?(?:${times}|\s*(?=#))${gauge}${wireWords}`,
  'y',
);
const turnedPattern =
  /(?:#\s*(?<marked>\d+)|(?<sized>\d+)\s*-?\s*(?:awg|ga(?:u?ge)?)\b)\s*[x×*]\s*(?<count>\d+)(?![\d./])/y;
const strapWords =
  '(?:switch(?:es)?|timers?|devices?|straps?|yokes?|receptacles?|outlets?|controls?|sensors?|dimmers?)';
const gangWords = String.raw`(?:(?<wide>wide)|(?<gangs>\d)\s*-?\s*gangs?|(?<double>double)(?:\s*-?\s*gangs?)?)`;
const strapPattern = new RegExp(
  String.raw`(?<count>\d+)(?:\s+${gangWords})?(?:\s+${strapWords})?(?:\s*[x×*]\s*|\s+(?:on|with|of|at)\s+|\s+|\s*(?=#))${gauge}(?:\s*,?\s*${gangWords.replaceAll('?<', '?<after')})?(?:\s+${strapWords})?`,
  'y',
);

/** The count and size of an item that was found, or what is wrong with them. */
function sizedAs(count: string, awg: string): Wires | { readonly trouble: string } {
  const size = Number(awg);
  if (Number(count) > mostOfOneSize) {
    return { trouble: `“${count}x${awg}”: count from 1 to ${mostOfOneSize} of one size, such as 4x14.` };
  }
  if (isGauge(size)) return { count: Number(count), awg: size };
  const turned = size <= 4 && isGauge(Number(count)) ? ` Or is it ${awg}x${count}, the count first?` : '';
  return {
    trouble:
      size <= 4
        ? `${boxRules['thick-wire'].says}${turned}`
        : `No wire is of ${awg} AWG. Sizes are ${gauges.join(', ')}, the count first, such as 4x14.`,
  };
}

type Taken<Item> = { readonly item: Item; readonly end: number } | { readonly trouble: string } | undefined;

/** Reads items one after another, with commas or "and" between them, and names what is none. */
function itemsIn<Item>(
  text: string,
  example: string,
  takeAt: (said: string, place: number) => Taken<Item>,
): Reading<readonly Item[]> {
  if (text.length > longest) return { rejected: `That is too long. Write count x size, such as ${example}.` };
  const said = normalised(text).trim();
  if (/^(?:none|no|nil|0|nothing)$/.test(said)) return { value: [] };
  if (said === '') return { rejected: `Nothing was given. Write count x size, such as ${example}, or none.` };
  const items: Item[] = [];
  let place = 0;
  while (place < said.length) {
    const gap = /[\s;,.+&]*(?:(?:and|plus)\b\s*)?/y;
    gap.lastIndex = place;
    place += gap.exec(said)?.[0].length ?? 0;
    if (place >= said.length) break;
    const taken = takeAt(said, place);
    if (!taken) {
      const strange = [...(said.slice(place).split(/[;,\n]/)[0] ?? '')].filter((sign) => sign >= ' ').join('');
      const clean = strange.length > 30 ? `${strange.slice(0, 30)}…` : strange;
      return { rejected: `“${clean.trim()}” is not understood. Write count x size, such as ${example}, or none.` };
    }
    if ('trouble' in taken) return { rejected: taken.trouble };
    items.push(taken.item);
    place = taken.end;
  }
  return { value: items };
}

const matchAt = (pattern: RegExp, text: string, place: number) => {
  pattern.lastIndex = place;
  const match = pattern.exec(text);
  return match && { groups: (match.groups ?? {}) as Record<string, string | undefined>, end: place + match[0].length };
};

function cablesAt(said: string, place: number): Taken<Cables> {
  const match = matchAt(cablePattern, said, place);
  if (!match) return undefined;
  const { before, after, awg, cores, no } = match.groups;
  if (before !== undefined && after !== undefined) {
    return { trouble: 'Say how many cables once, such as 3 x 14/2.' };
  }
  const sized = sizedAs(before ?? after ?? '1', awg ?? '');
  if ('trouble' in sized) return sized;
  return { item: { ...sized, cores: Number(cores), ground: no === undefined }, end: match.end };
}

function wiresAt(said: string, place: number): Taken<Wires> {
  const match = matchAt(turnedPattern, said, place) ?? matchAt(wirePattern, said, place);
  if (!match) return undefined;
  const { count, awg, marked, sized } = match.groups;
  const wires = sizedAs(count ?? '', awg ?? marked ?? sized ?? '');
  return 'trouble' in wires ? wires : { item: wires, end: match.end };
}

const present = <Item extends Wires>(items: readonly Item[]): readonly Item[] => items.filter(({ count }) => count > 0);

/** Reads "4x14, 2x12", and where cables may be told, "3 x 14/2 with ground" too. */
export function readWireList(text: string, { cables }: { readonly cables: boolean }): Reading<WireList> {
  const example = cables ? '4x14, 2x12 or 3 x 14/2 with ground' : '3x14';
  const reading = itemsIn(text, example, (said, place): Taken<Wires | Cables> => {
    const found = cablesAt(said, place);
    if (found && !cables) return { trouble: `Write single wires here, not cables: count x size, such as ${example}.` };
    return found ?? wiresAt(said, place);
  });
  if ('rejected' in reading) return reading;
  const isCable = (item: Wires | Cables): item is Cables => 'cores' in item;
  return {
    value: {
      wires: present(reading.value.filter((item) => !isCable(item))),
      cables: present(reading.value.filter(isCable)),
    },
  };
}

/** Reads "1x14" and "1x14 wide": straps by the thickest wire landed on them, and how many gangs each takes. */
export function readStraps(text: string): Reading<readonly Straps[]> {
  const reading = itemsIn(text, '1x14 (one device on 14 AWG)', (said, place): Taken<Straps> => {
    const match = matchAt(strapPattern, said, place);
    if (!match) return undefined;
    const { groups, end } = match;
    const sized = sizedAs(groups['count'] ?? '', groups['awg'] ?? '');
    if ('trouble' in sized) return sized;
    const told = groups['gangs'] ?? groups['aftergangs'];
    const wide = groups['wide'] ?? groups['double'] ?? groups['afterwide'] ?? groups['afterdouble'];
    const gangs = told === undefined ? (wide === undefined ? 1 : 2) : Number(told);
    if (gangs < 1 || gangs > 4) return { trouble: 'One device takes one to four gangs, such as 1x14 2-gang.' };
    return { item: { ...sized, gangs }, end };
  });
  return 'rejected' in reading ? reading : { value: present(reading.value) };
}

const wiresText = (wires: readonly Wires[]): string => wires.map(({ count, awg }) => `${count}x${awg}`).join(', ');

export const cableText = ({ count, awg, cores, ground: bare }: Cables): string =>
  `${count} x ${awg}/${cores} ${bare ? 'with' : 'without'} ground`;

/** A list as it can be typed back. */
export const wireListText = ({ wires, cables }: WireList): string =>
  [wiresText(wires), ...cables.map(cableText)].filter((part) => part !== '').join(', ') || 'none';

export const strapsText = (straps: readonly Straps[]): string =>
  straps.map(({ count, awg, gangs }) => `${count}x${awg}${gangs > 1 ? ` ${gangs}-gang` : ''}`).join(', ') || 'none';

/** The insulated wires of a list, those of its cables among them. */
export const insulatedIn = ({ wires, cables }: WireList): readonly Wires[] => [
  ...wires,
  ...cables.map(({ count, awg, cores }) => ({ count: count * cores, awg })),
];

/** The ground wires that the cables of a list bring, with the thickest of them. */
export function groundsIn({ cables }: WireList): { readonly count: number; readonly largestAwg: Gauge | undefined } {
  const grounded = cables.filter(({ ground: bare }) => bare);
  return {
    count: grounded.reduce((sum, { count }) => sum + count, 0),
    largestAwg: thickest(grounded.map(({ awg }) => awg)),
  };
}
