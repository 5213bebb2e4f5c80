import type { Reading, UnitSystem } from '#interview/question.ts';
import { fittingIds, fittings, flexLays } from '#knowledge/ducts.ts';
import { type Estimate, exactly } from '#quantity/estimate.ts';
import { ductDiameter, ductLength, roughnessHeight } from '#quantity/kinds.ts';
import { type Metres, type Ratio, ratio } from '#quantity/units.ts';
import { fittingPatterns, kindMeant, normalised, partPatterns } from './run-grammar.ts';
import type { DuctRun, RunPart } from './run-parts.ts';

const longest = 600;
const mostParts = 40;
const wouldDo =
  'A part is a length of duct (14 ft 4 in flex), a fitting (2 x elbow 90), a change of size (reducer 5 to 4 in) or an end (wall cap).';

type Groups = Record<string, string | undefined>;

/** A part read at a place in the text, and where it ends. */
type Taken = { readonly part: RunPart; readonly end: number } | { readonly trouble: string } | undefined;

const patterns = fittingPatterns(fittingIds.map((id) => [id, fittings[id].names] as const));

/**
 * Reads a duct run from text. Parts may be separated by `;`, a line break, a comma or "then", or stand one after another as
 * in speech. What was not understood is named.
 */
export function readDuctRun(text: string, units: UnitSystem): Reading<DuctRun> {
  if (text.length > longest) return { rejected: `That is too long to be one run of duct. ${wouldDo}` };
  const said = normalised(text);
  const parts: RunPart[] = [];
  let place = 0;
  while (place < said.length) {
    const gap = /[\s;,.+]*(?:(?:then|and|plus|into|with|to)\b[\s;,]*)?/y;
    gap.lastIndex = place;
    place += gap.exec(said)?.[0].length ?? 0;
    if (place >= said.length) break;
    if (parts.length >= mostParts)
      return { rejected: `More than ${mostParts} parts: join alike ones, such as 3 x elbow 90.` };
    const taken = takenAt(said, place, units);
    if (!taken) {
      const strange = shown(said.slice(place).split(/[;\n,]/)[0] ?? '');
      return {
        rejected:
          strange === '' ? `That cannot be read as duct. ${wouldDo}` : `“${strange}” is not understood. ${wouldDo}`,
      };
    }
    if ('trouble' in taken) return { rejected: taken.trouble };
    parts.push(taken.part);
    place = taken.end;
  }
  if (parts.length === 0) return { rejected: `Nothing was given. ${wouldDo}` };
  const lost = parts.find((_, index) => diameterAt(parts, index) === null);
  if (lost) return { rejected: 'No part says its diameter. Say it at least once, such as 14 ft 4 in flex.' };
  return { value: { parts } };
}

const shown = (text: string): string => {
  const clean = [...text]
    .filter((character) => character >= ' ' && character !== '\u007f')
    .join('')
    .trim();
  return clean.length > 40 ? `${clean.slice(0, 40)}…` : clean;
};

function matchAt(pattern: RegExp, text: string, place: number): RegExpExecArray | null {
  pattern.lastIndex = place;
  return pattern.exec(text);
}

function takenAt(text: string, place: number, units: UnitSystem): Taken {
  return (
    transitionAt(text, place, units) ??
    ductAt(text, place, units) ??
    fittingAt(text, place, units) ??
    kindlessAt(text, place)
  );
}

const size = (text: string | undefined, units: UnitSystem): Reading<Metres | null> =>
  text === undefined ? { value: null } : ductDiameter.read(text, units);

function ductAt(text: string, place: number, units: UnitSystem): Taken {
  for (const pattern of partPatterns.duct) {
    const match = matchAt(pattern, text, place);
    const groups = (match?.groups ?? {}) as Groups;
    const kind = kindMeant(groups['kind'] ?? '');
    if (!match || !kind) continue;
    const length = ductLength.readEstimate(groups['length'] ?? '', units);
    if ('rejected' in length) return { trouble: length.rejected };
    const diameter = size(groups['size'], units);
    if ('rejected' in diameter) return { trouble: diameter.rejected };
    const state = stateAt(text, place + match[0].length, units);
    if ('trouble' in state) return state;
    const { compression, roughness, end } = state;
    if (compression !== null && (kind === 'smooth' || kind === 'spiral')) {
      return { trouble: 'Only flex lies squeezed, slack or pulled tight; leave that out for smooth and spiral duct.' };
    }
    return {
      part: { part: 'duct', kind, diameter: diameter.value, length: length.value, compression, roughness },
      end,
    };
  }
  return undefined;
}

interface State {
  readonly compression: Estimate<Ratio> | null;
  readonly roughness: Metres | null;
  readonly end: number;
}

/** What is said of a length of duct after its kind: how tight it is pulled, how rough it is. */
function stateAt(text: string, place: number, units: UnitSystem): State | { readonly trouble: string } {
  let end = place;
  let compression: Estimate<Ratio> | null = null;
  let roughness: Metres | null = null;
  for (let count = 0; count < 4; count += 1) {
    const match = matchAt(partPatterns.modifier, text, end);
    if (!match || match[0].trim() === '') break;
    const said = match.groups as Groups;
    const squeezed = said['c1'] ?? said['c2'];
    if (squeezed !== undefined) {
      const percent = Number(squeezed.replace(',', '.'));
      if (!(percent >= 0 && percent <= 60)) {
        return { trouble: 'Compression is from 0 to 60 %: 0 is pulled tight, 15 is as let go, 30 is sloppy.' };
      }
      compression = exactly(ratio(percent / 100));
    } else if (said['loose']) compression = flexLays[/slopp|sagg/.test(said['loose']) ? 'sloppy' : 'as-let-go'].amount;
    else if (said['tight']) compression = flexLays.stretched.amount;
    else if (said['rough']) {
      const read = roughnessHeight.read(`${said['rough']} ${said['roughUnit']}`, units);
      if ('rejected' in read) return { trouble: read.rejected };
      roughness = read.value;
    }
    end += match[0].length;
  }
  return { compression, roughness, end };
}

const countOf = (text: string | undefined): number => (text === undefined || /^an?$/.test(text) ? 1 : Number(text));

const coefficientOf = (text: string | undefined): number | null =>
  text === undefined ? null : Number(text.replace(',', '.').replace(/^\./, '0.'));

function fittingAt(text: string, place: number, units: UnitSystem): Taken {
  const custom = matchAt(partPatterns.custom, text, place);
  const named = custom ? undefined : patterns.find(([, pattern]) => matchAt(pattern, text, place));
  const match = custom ?? (named ? matchAt(named[1], text, place) : null);
  if (!match) return undefined;
  const groups = match.groups as Groups;
  const coefficient = coefficientOf(groups['k']);
  if (custom && coefficient === null) {
    return { trouble: 'A fitting that is not in the list needs its loss coefficient, such as fitting 3 in k=0.21.' };
  }
  if (coefficient !== null && !(coefficient >= 0 && coefficient <= 100)) {
    return { trouble: 'A loss coefficient is from 0 to 100, such as k=0.35.' };
  }
  const count = countOf(groups['count']);
  if (count < 1 || count > 30) return { trouble: 'Count from 1 to 30 of one fitting, such as 2 x elbow 90.' };
  const diameter = size(groups['size'] ?? groups['before'], units);
  if ('rejected' in diameter) return { trouble: diameter.rejected };
  const fitting = named?.[0] ?? 'custom';
  return {
    part: { part: 'fitting', fitting, count, diameter: diameter.value, coefficient },
    end: place + match[0].length,
  };
}

function transitionAt(text: string, place: number, units: UnitSystem): Taken {
  const match = matchAt(partPatterns.transition, text, place) ?? matchAt(partPatterns.turned, text, place);
  if (!match) return undefined;
  const groups = match.groups as Groups;
  const unit = groups['toUnit'] ?? groups['fromUnit'] ?? '';
  const from = ductDiameter.read(`${groups['from']} ${groups['fromUnit'] ?? unit}`, units);
  const to = ductDiameter.read(`${groups['to']} ${unit}`, units);
  if ('rejected' in from) return { trouble: from.rejected };
  if ('rejected' in to) return { trouble: to.rejected };
  if (from.value === to.value)
    return { trouble: `${match[0].trim()} changes nothing: both ends are alike. Leave it out.` };
  const way = groups['way'] ?? '';
  if (way.startsWith('reduc') && from.value < to.value) {
    return {
      trouble: `“${match[0].trim()}” runs backwards: a reducer goes from the larger to the smaller, in the direction of the air. Write increaser for the other way.`,
    };
  }
  if (/^(?:increas|enlarg)/.test(way) && from.value > to.value) {
    return {
      trouble: `“${match[0].trim()}” runs backwards: an increaser goes from the smaller to the larger, in the direction of the air. Write reducer for the other way.`,
    };
  }
  return {
    part: { part: 'transition', from: from.value, to: to.value, coefficient: coefficientOf(groups['k']) },
    end: place + match[0].length,
  };
}

/** A length without a kind is so common a slip that it gets its own sentence. */
function kindlessAt(text: string, place: number): Taken {
  const match = matchAt(partPatterns.kindless, text, place);
  if (!match) return undefined;
  return {
    trouble: `“${shown(match[0])}”: say what kind of duct, smooth, spiral, flex or foil flex, such as 14 ft 4 in flex.`,
  };
}

/** The diameter a part has by what it says or by its neighbours: the part before it first, then the one after. */
export function diameterAt(parts: readonly RunPart[], index: number): Metres | null {
  const part = parts[index];
  if (!part) return null;
  if (part.part === 'transition') return part.to;
  if (part.diameter !== null) return part.diameter;
  for (const before of parts.slice(0, index).toReversed()) {
    if (before.part === 'transition') return before.to;
    if (before.diameter !== null) return before.diameter;
  }
  for (const after of parts.slice(index + 1)) {
    if (after.part === 'transition') return after.from;
    if (after.diameter !== null) return after.diameter;
  }
  return null;
}
