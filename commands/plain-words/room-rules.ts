import { type Fact, fact, type Rule, rule } from './line.ts';
import { length, number } from './measures.ts';

const side = String.raw`(?:${length}|${number})`;
const unitOf = (said: string | undefined): string | undefined => /(?:ft|in|mm|cm|m)$/.exec(said ?? '')?.[0];
/** A side with the unit of the other where it has none; without one where neither has. */
const sided = (said: string | undefined, other: string | undefined): string => {
  const borrowed = unitOf(said) === undefined ? unitOf(other) : undefined;
  return borrowed === undefined ? `${said}` : `${said} ${borrowed === 'in' && other?.includes('ft') ? 'ft' : borrowed}`;
};

const room: Rule = rule(
  String.raw`(?<!\d[ -]?)(?<a>${side})(?: (?:long|wide|deep))? ?(?:x|×|\*|by) ?(?<b>${side})(?: (?:long|wide|deep))?(?: ?(?:x|×|\*|by) ?(?<c>${side}))?(?! ?(?:in |mm )?(?:transfer|grille|joist|hole|opening|cutout))(?<!\b(?:grille|opening|housing|hole) [^,;]{0,24})`,
  ({ a, b, c }) => [
    ...fact('room-length', sided(a, b ?? c)),
    ...fact('room-width', sided(b, a ?? c)),
    ...(c === undefined ? [] : fact('ceiling-height', sided(c, b))),
  ],
);

/** Not the beginning of what is no height. */
const noHeight = String.raw`(?! ?(?:min|sec|hr|cfm|l/s|m3/h|%|degf|degc|deg|sqft|m2|elbow|watt|x|by)\b)(?! ?%)`;

export const roomRules: readonly Rule[] = [
  room,
  rule(
    String.raw`\bl(?:ength)?(?: is| of)?[:= ]+(?<a>${side})[ ,;.]*(?:and )?(?:the |room |bath(?:room)? )*w(?:idth)?(?: is| of)?[:= ]+(?<b>${side})(?:[ ,;.]*(?:and )?h(?:eight|igh)?(?: is| of)?[:= ]+(?<c>${side}))?`,
    ({ a, b, c }) => [
      ...fact('room-length', sided(a, b)),
      ...fact('room-width', sided(b, a)),
      ...(c === undefined ? [] : fact('ceiling-height', `${c}`)),
    ],
  ),
  rule(
    String.raw`\bw(?:idth)?(?: is| of)?[:= ]+(?<b>${side})[ ,;.]*(?:and )?(?:the |room |bath(?:room)? )*l(?:ength)?(?: is| of)?[:= ]+(?<a>${side})`,
    ({ a, b }) => [...fact('room-length', sided(a, b)), ...fact('room-width', sided(b, a))],
  ),
  rule(
    String.raw`(?<a>${side}) (?:long|deep|in length),? ?(?:and |by |x )?(?<b>${side}) (?:wide|across|in width)`,
    ({ a, b }) => [...fact('room-length', sided(a, b)), ...fact('room-width', sided(b, a))],
  ),
  rule(
    String.raw`(?<b>${side}) (?:wide|across|in width),? ?(?:and |by |x )?(?<a>${side}) (?:long|deep|in length)`,
    ({ a, b }) => [...fact('room-length', sided(a, b)), ...fact('room-width', sided(b, a))],
  ),
  rule(String.raw`(?<a>${number}) (?<u>sqft|m2)`, ({ a, u }) =>
    fact('room-area', `${a} ${u === 'm2' ? 'm2' : 'sq ft'}`),
  ),
  rule(
    String.raw`(?<!\d ?- ?)(?<h>${side})(?: (?:high|tall|flat))? ?-?(?:ceiling|ceilings)\b(?! ${number}(?: (?:ft|in|m|mm|cm)\b|,|;|$))`,
    ({ h }) => fact('ceiling-height', `${h}`),
  ),
  rule(
    String.raw`(?:ceilings?|vaulted|sloped|slopes|cathedral)\b[^\d.;~]{0,36}?(?<h>${side})(?! ?- ?\d)${noHeight}`,
    ({ h }) => fact('ceiling-height', `${h}`),
  ),
  rule(String.raw`(?<h>${side}) (?:up )?(?:to|at) (?:the |her |his )?ceiling`, ({ h }) =>
    fact('ceiling-height', `${h}`),
  ),
  rule(String.raw`(?<!\d ?- ?)(?<h>${side}) (?:ceiling|high|tall)`, ({ h }) => fact('ceiling-height', `${h}`)),
  rule(String.raw`\bheight(?: (?:of|is|at|about))*[:=,]? ?(?<h>${side})${noHeight}`, ({ h }) =>
    fact('ceiling-height', `${h}`),
  ),
  // What is as high as a room and nothing else is said of, in a line that told the floor.
  rule(
    String.raw`(?<=~.*)(?<!\d ?- ?)(?<h>(?:[7-9]|1[0-2])(?:\.5)? ft(?: \d+ in)?|2\.\d+ m)(?! ?(?:of|duct|run|flex|smooth|rigid|spiral|pipe|foil|from|to|away|below|above|long|wide|deep|x|by|\d)\b)`,
    ({ h }) => fact('ceiling-height', `${h}`),
  ),
  // A height told right behind the floor, as in "7x9, 8 ft".
  rule(
    String.raw`(?<=~ ?,? (?:bath(?:room)?,? |room,? )?)(?<h>(?:[7-9]|1[0-2])(?:\.5)? ft)\b(?! (?:of|duct|run|flex|\d+ (?:in|mm)|[3-8] (?:flex|smooth|rigid|pipe))\b)`,
    ({ h }) => fact('ceiling-height', `${h}`),
  ),
];

const said = (line: string, words: RegExp): boolean =>
  [...line.matchAll(new RegExp(words.source, 'g'))].some(
    ({ index }) =>
      !/\b(?:no|without|without an?|not an?|never an?|isn't an?|isnt an?|isn't any|no longer an?|don't have an?|doesn't have an?) (?:separate |stand[ -]?alone |walk[ -]in |real |actual )?$/.test(
        line.slice(0, index),
      ),
  );

/** "Bath" names the room, unless it stands in a list of what is in it. */
const bathIsTub =
  /\bwith (?:an? |the |1 )?bath(?:,| and| plus|,? with)? (?:and )?(?:an? |the |1 )?(?:shower|toilet|basin|sink)\b|\b(?:an?|1) bath,? (?:and )?(?:an?|1) (?:shower|toilet)\b|\b(?:toilet|shower|basin|sink), (?:an? |1 )?bath(?= ?(?:[;.]|$|,(?! ?\d)|and (?:an? )?(?:toilet|shower|basin|sink)))|[,;:] ?bath, (?:an? )?(?:shower|toilet)\b|\b(?:toilet|shower),? (?:and|or|plus|&|\+) (?:an? )?bath\b|(?:^|[,;:] ?|\bwith (?:an? )?)bath,? (?:and|plus|&|\+) (?:an? )?(?:toilet|shower)\b/;

/** Fixtures are words, not numbers; each is found once, and "no tub" is none. */
export function fixturesSaid(line: string): readonly Fact[] {
  const jetted = /\b(?:jetted|jet|jacuzzi|whirlpool|spa|hot tub|hydromassage)(?: (?:bath ?)?tub| bath)?\b/;
  const steam = /\bsteam(?: (?:shower|room|unit))\b/;
  const both =
    /(?<!\/ ?)\b(?:tub ?[/-] ?shower(?! ?\/)|shower ?[/-] ?tub(?! ?\/)|(?:tub|shower) (?:and |& )?(?:shower|tub) combo|combo (?:tub|shower)|shower (?:over|above|in) (?:the |a )?tub|tub with (?:a )?shower)\b/;
  const plain = line.replace(new RegExp(jetted.source, 'g'), ' ').replace(new RegExp(steam.source, 'g'), ' ');
  const combined = both.test(plain);
  const found = [
    said(line, /\btoilets?\b(?! (?:compartment|room)(?: ?[:=]| (?:is )?(?:no|yes|none)\b))|\bwater closet\b/)
      ? 'toilet'
      : '',
    !combined && said(plain, /\bshowers?\b/) ? 'shower' : '',
    combined || said(plain, /\b(?:bath ?)?tubs?\b/) || bathIsTub.test(plain) ? 'tub' : '',
    said(line, jetted) ? 'jetted-tub' : '',
    said(line, steam) ? 'steam-shower' : '',
  ].filter((id) => id !== '');
  const together =
    /\b(?:toilet|water closet)(?:'s)?\b[^.;,]{0,16}\b(?:not|isn'?t|ain'?t|never)\b[^.;,]{0,28}\b(?:own|compartment|separate|closet|closed off|room|walled off|behind an?)\b|\b(?:no|without an?y?|isn'?t an?y?|not an?) (?:separate |own |real )?(?:toilet |water )?(?:compartment|closet|toilet room)\b|\btoilet\b[^.;,]{0,20}\b(?:same room|out in the open|in the open|in with|in the main (?:room|part|bath))\b/.test(
      line,
    );
  const apart =
    !together &&
    /\b(?:toilet|water closet)\b[^.;]{0,24}\b(?:own (?:little )?(?:door|room)|door of its own|behind (?:a|its|the|another) (?:separate |closed )?door|compartment|separate room|closet|closed off)|\btoilet room\b(?! ?[:=]? ?no\b)|\b(?:toilet|water) closet (?:room|of its own)\b|\bseparate toilet\b/.test(
      line,
    );
  return [
    ...(found.length === 0 ? [] : fact('fixtures', found.join(', '))),
    ...(apart || together ? fact('toilet-compartment', apart ? 'yes' : 'no') : []),
  ];
}

/** Switched on for whoever is in the room. */
const onDemand =
  /\bon[ -]demand\b|\bintermittent(?:ly)?\b|\bas needed\b|\b(?:off|on|by|from|with|using) (?:of )?(?:the |a |an? ordinary |its )?(?:wall|light|plain|regular|toggle) ?switch\b|\b(?:only|just|run(?:s|ning)?|on|use[ds]?)\b[^.;,]{0,16}\bwhen(?:ever)?\b[^.;,]{0,24}\b(?:in there|in it|in the (?:room|bath\w*)|using|uses?|used|in use|shower\w*|bath(?:es|ing)|occupied|home)\b|\bwhile (?:in use|occupied)\b|\b(?:spot|switched) (?:use|ventilation|operation)\b/;
/** "Left on" with nothing said of when it ends. */
const leftOn =
  /\b(?:left|leave|leaves|leaving|stays?|kept|keep|keeps) (?:it |this one |the fan |that )?on\b(?! (?:a |the )?(?:low|high|wall|switch|timer|after|afterwards?|during|while|when|for|until|till|before|with|top|\d)\b)(?! ?(?:after|during|while|when|for|until|till|the (?:wall|light|switch)|\d))/;

/** How the fan runs, where only one way is told. */
export function runningSaid(line: string): readonly Fact[] {
  const [demand, always] = [onDemand.test(line), alwaysOn.test(line) || leftOn.test(line)];
  return demand === always ? [] : fact('running', always ? 'continuous' : 'on demand');
}

export const alwaysOn =
  /\b(?:always[ -]on|all the time|(?:a?round|all around) the clock|(?:all )?day and (?:all )?night|night and day|all day,? every day|continuous(?:ly)?|24 ?\/ ?7|24 hr(?: a day)?|constantly|nonstop|non-stop|never off|runs? all day)\b/;
