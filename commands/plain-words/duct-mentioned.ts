import { fittingIds, fittings } from '#knowledge/ducts.ts';
import { fittingPatterns, kindMeant } from '../questions/run-grammar.ts';
import { cutsNumber, without } from './line.ts';
import { decimal, number } from './measures.ts';

/** Parts of a duct as a line mentions them, wherever they stand. */
interface Stretch {
  length?: string;
  size?: string;
  kind?: string;
  state?: string;
}
type Atom =
  | { readonly is: 'length' | 'size' | 'kind' | 'state'; readonly said: string }
  | { readonly is: 'fitting'; readonly id: string; readonly count: number }
  | { readonly is: 'change'; readonly said: string };

interface Placed {
  readonly at: number;
  readonly end: number;
  readonly atom: Atom;
}

export interface DuctMentioned {
  /** The run in the words its question reads; nothing where no length of a known kind was told. */
  readonly run: string | undefined;
  /** The kind, size, length and elbows on their own, for a question that asks for them apart. */
  readonly kind: string | undefined;
  readonly size: string | undefined;
  readonly length: string | undefined;
  readonly elbows: number | undefined;
  /** Whether the line speaks of a run from end to end: an elbow or an outlet. */
  readonly fittings: number;
  /** The line without the parts of a run. */
  readonly withoutRun: string;
  /** The line without the kind, size and elbows. */
  readonly withoutParts: string;
  /** The line without the size and length. */
  readonly withoutStretch: string;
}

const kinds = String.raw`(?:foil |silver |aluminum )?(?:accordion|slinky)(?: (?:stuff|hose|tube|flex))?|(?:foil|alumin(?:i)?um|semi[- ]?rigid|corrugated)(?:[- ]*(?:flex(?:ible)?))?|(?:insulated |wire |vinyl |plastic )?flex(?:ible|y|ie)?|spiral|(?:smooth|rigid|hard|galvanized|galvanised|sheet metal|metal|steel|pvc)(?: pipe)?|pipe`;
/** What a duct does where it gets narrower or wider. */
const changes =
  'reducers?|increasers?|transitions?|reductions?|reduc(?:ed?|es|ing)|increas(?:ed?|es|ing)|chok(?:ed?|es|ing)|neck(?:s|ed|ing)?|step(?:s|ped|ping)?|squeez(?:ed?|es|ing) down|pinch(?:es|ed)?|narrow(?:s|ed|ing)?|taper(?:s|ed|ing)?|bump(?:s|ed)? (?:up|down)|cut down|widen(?:s|ed)?|open(?:s|ed)? up|upsiz(?:ed?|es)|downsiz(?:ed?|es)|(?:drops?|goes|dropped|comes|went) (?:down|up)(?= from)';
const fromTo = String.raw`(?<a>${number}) ?(?<u>in\b|mm\b)? ?(?:to|->|x|-|(?:down|up) to|into) ?(?:an? )?(?<b>${number})(?! ?(?:ft|m|elbow|x|by|cfm|%|l/s|min|90|45)\b) ?(?<v>in\b|mm\b)?`;
/** A size above this is no size in inches. */
const mostInches = 14;
const atoms: readonly (readonly [
  RegExp,
  (groups: Readonly<Record<string, string | undefined>>, said: string, collar: string | undefined) => Atom | undefined,
])[] = [
  [
    new RegExp(
      String.raw`(?:${changes})(?: (?:down|up|in|size|sizes|right|straight|immediately|away|off|at|the|fan|collar|it|is|of|from|coming|out|then))*[:=,]? ?(?:an? |the )?${fromTo}`,
      'g',
    ),
    (groups) => change(groups),
  ],
  [
    new RegExp(
      String.raw`(?:goes|going|went|comes|coming|runs|drops?|dropped|dropping|changes?|changed|starts|switches|switched|moves) (?:(?:down|up|in size|right|straight|immediately|off|at|the|fan|collar|it|is|then) )*from (?:an? )?${fromTo}`,
      'g',
    ),
    // Without a unit a fan may drop from 110 to 80 as well.
    (groups) => (groups['u'] || groups['v'] || Number(groups['a']) <= mostInches ? change(groups) : undefined),
  ],
  [new RegExp(String.raw`${fromTo} ?(?:reducer|increaser|transition|reduction)`, 'g'), (groups) => change(groups)],
  // "They necked it down to 4": from the collar, where one was told.
  [
    new RegExp(
      String.raw`(?:${changes})(?: (?:it|that|this|them|the run|the duct|down|up|in|size|right|straight|away|off|at|the|fan|collar|there|from))* to (?:an? )?(?<b>${number})(?! ?(?:ft|m|elbow|x|by|cfm|%|l/s|min|90|45)\b)(?: (?<v>in|mm)\b)?`,
      'g',
    ),
    ({ b, v }, _, collar) => change({ a: collar?.split(' ')[0], u: collar?.split(' ')[1], b, v }),
  ],
  // "5 in down to 4 in": two sizes with nothing between them but the way.
  [
    new RegExp(
      String.raw`(?<a>${number}) (?<u>in|mm) ?(?:to|->|(?:and |then )?(?:reduce[dr] |necked |choked |stepped |squeezed |cut )?(?:down|up) to|(?:and |then )?(?:reduce[dr]|necked|choked|stepped|squeezed) to) (?:an? )?(?<b>${number}) (?<v>in|mm)\b(?! (?:door|gap|deep|wide|long|high|below|above|of)\b)`,
      'g',
    ),
    (groups) => change(groups),
  ],
  [
    /(?:compressed|compression|squeezed|squashed|scrunched)(?: (?:by|maybe|about|around|at|up|like|roughly|some|an?|down|is|of|to))* ?(?<p>\d+) %|(?<r>\d+) % (?:compressed|compression|squeezed|slack)/g,
    ({ p, r }) => ({ is: 'state', said: `compressed ${p ?? r} %` }),
  ],
  [/\b(?:sloppy|sagging|saggy)\b/g, () => ({ is: 'state', said: 'sloppy' })],
  [/\b(?:slack|left loose|lying loose)\b/g, () => ({ is: 'state', said: 'slack' })],
  [/\b(?:pulled tight|stretched tight|fully stretched|taut)\b/g, () => ({ is: 'state', said: 'pulled tight' })],
  [
    new RegExp(
      String.raw`(?:(?<![\d./])\d{1,2} ?(?:to|or|-) ?)?${number} (?:ft\b(?: ${number} in(?= (?:of )?(?:the |an? )?\d+(?:\.\d+)? (?:in|mm)\b))?|m\b)(?! (?:ceiling|room|hall|bath|high|wide|elevation|altitude|above))`,
      'g',
    ),
    (_, said) => ({ is: 'length', said: said.replace(/ ?(?:to|or) ?/, '-') }),
  ],
  [
    new RegExp(String.raw`(?<![\d./-])[1-9]\d?(?= of (?:the )?(?:\d{1,3} (?:in|mm) )?(?:${kinds})\b)`, 'g'),
    (_, said) => ({ is: 'length', said: `${said} ft` }),
  ],
  // A bare number right behind the duct is its length, and a small one right before or behind its size.
  [
    new RegExp(
      String.raw`(?<=\b(?:in|mm|[3-8]) (?:${kinds})(?: duct)?,? (?:x )?)(?:[5-9]|[1-5]\d)(?=,? (?:(?:\d|an?) (?:elbow|x)|elbow|roof|wall|soffit|and\b)|,|$)`,
      'g',
    ),
    (_, said) => ({ is: 'length', said: `${said} ft` }),
  ],
  [
    new RegExp(String.raw`(?<![\d./-])[3-8](?= (?:${kinds})\b(?! elbow| bend))`, 'g'),
    (_, said) => ({ is: 'size', said: `${said} in` }),
  ],
  [
    new RegExp(String.raw`(?:${number}) (?:in|mm|cm)\b(?! (?:door|gap|deep|undercut|joist))`, 'g'),
    (_, said) => ({ is: 'size', said }),
  ],
  [
    new RegExp(String.raw`\b(?:${kinds})\b`, 'g'),
    (_, said) => ({
      is: 'kind',
      said: foilSaid.test(said) ? 'foil flex' : /accordion|slinky/.test(said) ? 'flex' : said,
    }),
  ],
];

/** Crinkled and shiny, by the names it goes by. */
const foilSaid = /^aluminum$|^(?:foil|silver|aluminum) (?:accordion|slinky)/;

/** The widest and the narrowest duct of a bath fan, in inches and in millimetres. */
const ductSizes = { in: [2, mostInches], mm: [60, 360] } as const;

/** So many of them tell of a change of size, and come before the fittings. */
const changing = 5;

/** A change of size, where both are sizes a duct comes in; else two numbers that stand beside each other by chance. */
function change({ a, u, b, v }: Readonly<Record<string, string | undefined>>): Atom | undefined {
  const unit = v ?? u ?? (Number(a) > 30 ? 'mm' : 'in');
  const [least, most] = ductSizes[unit as 'in' | 'mm'];
  const fits = [a, b].every((size) => Number(decimal(`${size}`)) >= least && Number(decimal(`${size}`)) <= most);
  if (!fits || a === b) return undefined;
  return { is: 'change', said: `${Number(a) < Number(b) ? 'increaser' : 'reducer'} ${a} to ${b} ${unit}` };
}

/** The names of fittings, longest first, each with a word a line must have for it to be there. */
const fittingsByName = fittingIds
  .flatMap((id) => fittings[id].names.map((name) => ({ id, name, word: /[a-z]+/.exec(name)?.[0] ?? name })))
  .sort((one, other) => other.name.length - one.name.length)
  .flatMap(({ id, name, word }) => fittingPatterns([[id, [name]]]).map(([, pattern]) => ({ id, word, pattern })));
const ends: readonly string[] = ['roof-cap', 'wall-cap', 'soffit-fitting', 'louvered-hood', 'exit-bare'];

/** "4 in smooth 90 cfm": the number belongs to the air. */
const airBehind = /^ ?(?:cfm|l\/s|m3\/h|fan|unit|watt)\b/;

/** Fittings by the names they go by; the size behind one is left for the duct it may belong to. */
function fittingsIn(line: string): readonly Placed[] {
  const found: Placed[] = [];
  const possible = fittingsByName.filter(({ word }) => line.includes(word.replace(/s$/, '')));
  for (let at = 0; at < line.length; at += 1) {
    if (!/[a-z\d]/.test(line[at] as string) || /[a-z\d.]/.test(line[at - 1] ?? ' ')) continue;
    for (const { id, word, pattern } of possible) {
      // Most names begin nowhere near: that is cheaper seen than tried.
      const named = line.indexOf(word.replace(/s$/, ''), at);
      if (named < 0 || named - at > 24) continue;
      pattern.lastIndex = at;
      const match = pattern.exec(line);
      const { count, before, size } = match?.groups ?? {};
      if (
        !match ||
        before !== undefined ||
        !/[a-z]/.test(match[0]) ||
        /^(?:an? )?(?:exit|outlet|hood|screen)s?$/.test(match[0]) ||
        (/[a-z] ?(?:90|45)$/.test(match[0]) && airBehind.test(line.slice(at + match[0].length)))
      )
        continue;
      const whole =
        size === undefined ? match[0] : match[0].slice(0, match[0].lastIndexOf(size)).replace(/[\s,]*(?:at)?\s*$/, '');
      const none = /\b(?:no|without(?: an?| any)?|zero) $/.test(line.slice(Math.max(0, at - 14), at));
      found.push({
        at,
        end: at + whole.length,
        atom: { is: 'fitting', id, count: none ? 0 : count === undefined || /^an?$/.test(count) ? 1 : Number(count) },
      });
      at += whole.length - 1;
      break;
    }
  }
  return found;
}

function placedIn(line: string, collar: string | undefined): readonly Placed[] {
  let left = line;
  const placed: Placed[] = [];
  const take = (list: readonly Placed[]) => {
    for (const each of list) {
      placed.push(each);
      left = without(left, each.at, each.end);
    }
  };
  for (const each of atoms.slice(0, changing)) take(found(left, each, collar));
  take(fittingsIn(left));
  for (const each of atoms.slice(changing)) take(found(left, each, collar));
  const inOrder = placed.sort((one, other) => one.at - other.at);
  // "The old pipe up there is foil flex": the pipe is no duct of its own where it has no size and another kind is told.
  const kindsTold = inOrder.filter(({ atom }) => atom.is === 'kind');
  return inOrder.filter(
    (each) =>
      !kindsTold.includes(each) ||
      !/^(?:metal |hard )?pipe$/.test('said' in each.atom ? each.atom.said : '') ||
      kindsTold.length === 1 ||
      !/\b(?:the|that|this|old|existing|her|his|their|our|my|a) $/.test(line.slice(0, each.at)),
  );
}

const found = (line: string, [pattern, meaning]: (typeof atoms)[number], collar?: string): readonly Placed[] =>
  [...line.matchAll(pattern)].flatMap((match) => {
    const end = match.index + match[0].length;
    const atom = cutsNumber(line, match.index, end) ? undefined : meaning(match.groups ?? {}, match[0], collar);
    return atom === undefined ? [] : [{ at: match.index, end, atom }];
  });

const fittingText = (id: string, count: number): string => {
  const [name = 'elbow'] = fittings[id as keyof typeof fittings].names;
  return ends.includes(id)
    ? name
    : `${count} x ${id === 'elbow-90' ? 'elbow 90' : id === 'elbow-45' ? 'elbow 45' : name}`;
};

/** The duct a line mentions, in the order from the fan to outdoors: the outlet last, wherever it was named. */
export function ductMentioned(line: string, collar?: string): DuctMentioned {
  const placed = placedIn(line, collar);
  const stretches: Stretch[] = [];
  const order: (Stretch | string | { readonly id: string; readonly count: number })[] = [];
  const last: string[] = [];
  let open: Stretch | undefined;
  const stretchFor = (key: keyof Stretch): Stretch => {
    if (open === undefined || (open[key] !== undefined && key !== 'state')) {
      open = {};
      stretches.push(open);
      order.push(open);
    }
    return open;
  };
  for (const { atom, end } of placed) {
    const long = stretches.filter((each) => each.length !== undefined);
    if (atom.is === 'fitting' && atom.count === 0) open = undefined;
    else if (atom.is === 'fitting') {
      if (ends.includes(atom.id)) last.push(fittingText(atom.id, atom.count));
      else {
        const before = order.at(-1);
        const same = typeof before === 'object' && 'id' in before && before.id === atom.id ? before.count : 0;
        if (same > 0) order.pop();
        const fitting = { id: atom.id, count: atom.count + same };
        // What sits between two stretches told before it comes before the last of them.
        if (/^ ?between\b/.test(line.slice(end)) && long.length > 1 && order.at(-1) === long.at(-1))
          order.splice(-1, 0, fitting);
        else order.push(fitting);
      }
      open = undefined;
    } else if (atom.is === 'change') {
      order.push(atom.said);
      open = undefined;
    } else if (atom.is === 'state') (stretches.at(-1) ?? stretchFor('state')).state = atom.said;
    else stretchFor(atom.is)[atom.is] = atom.said;
  }
  const kind = stretches.find((each) => each.kind !== undefined)?.kind;
  const size = stretches.find((each) => each.size !== undefined)?.size;
  const long = stretches.filter((each) => each.length !== undefined);
  const squeezed = stretches.find((each) => each.length === undefined && each.state !== undefined)?.state;
  const run =
    kind !== undefined && size !== undefined && long.length > 0
      ? [...order, ...last.slice(0, 1)]
          .flatMap((each) => {
            if (typeof each === 'string') return [each];
            if ('id' in each) return [fittingText(each.id, each.count)];
            if (each.length === undefined) return [];
            const state = each.state ?? squeezed;
            return [
              `${each.length} ${each.size ?? size} ${each.kind ?? kind}${state === undefined ? '' : ` ${state}`}`,
            ];
          })
          .join('; ')
      : undefined;
  const blotted = (keep: (placed: Placed) => boolean) =>
    placed.filter(keep).reduce((text, { at, end }) => without(text, at, end), line);
  const elbows = placed.flatMap(({ atom }) =>
    atom.is === 'fitting' && /elbow|bend/.test(atom.id) ? [atom.count] : [],
  );
  const firstOf = (is: Atom['is']) => placed.find(({ atom }) => atom.is === is);
  return {
    run,
    kind: kind === undefined ? undefined : kindMeant(kind),
    size,
    length: long.length === 1 ? long[0]?.length : undefined,
    elbows: elbows.length === 0 ? undefined : elbows.reduce((sum, count) => sum + count, 0),
    fittings: placed.filter(({ atom }) => atom.is === 'fitting').length,
    withoutRun: run === undefined ? line : blotted(({ atom }) => atom.is !== 'size' || used(stretches, atom.said)),
    withoutParts: blotted((each) => each.atom.is === 'fitting' || each === firstOf('size') || each === firstOf('kind')),
    withoutStretch: blotted((each) => each === firstOf('size') || (long.length === 1 && each.atom.is === 'length')),
  };
}

/** A size on its own beside the run counts as said where the run is of that size. */
const used = (stretches: readonly Stretch[], size: string): boolean =>
  stretches.some(
    (each) => each.length !== undefined && (each.size ?? stretches.find((one) => one.size)?.size) === size,
  );
