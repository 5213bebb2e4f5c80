import { findingsInWords } from '#diagnosis/findings-in-words.ts';
import { type PreparedWords, preparedWords } from '#diagnosis/phrases.ts';
import { englishCallbackWords } from '#knowledge/callback-words.ts';
import type { Fact } from './line.ts';

/** Which command a line asks for: words that speak for it, and how much. */

type Cue = readonly [RegExp, number];

const run = '(?:flex|duct|pipe|spiral|smooth|rigid)';

const cues: Readonly<Record<string, readonly Cue[]>> = {
  size: [
    [/\b(?:what|which|how big|how large|how small)\b[^.?]*\b(?:size|cfm|fan)\b/, 2],
    [/\bhow (?:much|many)\b[^.?]*\b(?:cfm|air|l\/s|airflow)\b/, 3],
    [
      /\b(?:what size|fan size|size (?:of )?(?:a )?fan|how big a fan|smallest fan|minimum|required (?:airflow|ventilation|exhaust)|ventilation (?:requirement|rate)|exhaust rate|tell me the cfm|which fan|wants? (?:the )?(?:cfm|airflow)|(?:cfm|airflow|l\/s|m3\/h) (?:needed|required|for)|needs? (?:the )?(?:cfm|airflow|l\/s)|what (?:airflow|cfm|should (?:we|i) (?:order|look|get|be)))\b/,
      3,
    ],
    [/\b(?:enough|ok|okay) for an?\b/, 3],
    [
      /\b(?:wants?|needs?) an? (?:new |quiet |quieter |bath |bathroom )*fan\b|\bhow (?:many|much) (?:cfm|air) (?:does|do|would|will) (?:that|it|this|he|she|they|we|i) (?:take|need|want)/,
      3,
    ],
    [/\bbath(?:room)?\b/, 1],
    [/\b(?:toilet|tub)\b/, 2],
  ],
  duct: [
    [
      /\bwhat (?:do|will|does|would|can) (?:i|it|we|that|this|the fan|they) (?:get|move|deliver|really|actually|pull)/,
      4,
    ],
    [
      /\b(?:deliver|delivered|delivers|lose|loss|lost|left|pressure drop|real cfm|making it|gets out|keep up|fatter)\b/,
      2,
    ],
    [/\b(?:roof cap|roof jack|wall cap|soffit|reducer)\b/, 3],
    [/\b(?:elbow|flex|duct|spiral|rigid|smooth)\b/, 1.5],
    [/\b(?:real|actual|delivered) (?:cfm|airflow|air|flow|l\/s)\b|\bcomes out\b|\bend up with\b|\blosing\b/, 2],
  ],
  reach: [
    [new RegExp(String.raw`\bhow (?:far|long)\b[^.?]*\b(?:${run}|go)\b`), 5],
    [/\bhow (?:far|long) (?:can|could|may|of a)\b/, 4],
    [/\bhow far\b|\b(?:further|farther|furthest|farthest|longest)\b|\b(?:what|which) (?:distance|length)\b/, 6],
    [/\breach\b/, 5],
    [/\blimit\b/, 3],
    [/\b(?:allowable|allowed|permissible|permitted|acceptable)\b[^.?]*\b(?:length|run|distance)\b/, 7],
    [/\bhow many (?:feet|ft|metres|meters|m)\b/, 8],
    [
      /\b(?:max(?:imum)?|longest|limit|furthest|farthest)\b[^.?]*\b(?:run|length|duct|flex|smooth|rigid|spiral|pipe|foil|distance|ft|feet|m|met(?:er|re)s|go)\b/,
      7,
    ],
    [/\bmax(?:imum)? ?(?:[?.!,]|$)/, 7],
    [/\bhow much (?:\S+ ){0,4}(?:flex|duct|pipe|rigid|smooth|spiral|foil) (?:can|could|may)\b/, 7],
    [/\b(?:my limit|max(?:imum)? (?:run|ft|length|feet|m)|longest (?:run|duct|flex))\b/, 5],
  ],
  runtime: [
    [
      /\bhow long\b(?![^.?]*\b(?:of a duct|can (?:i|we) run|can the duct)\b)[^.?]*\b(?:leave|keep|on|fans?|run|running|clears?|dry|dries)\b/,
      5,
    ],
    [
      /\b(?:run[ -]?time|run[ -]?on|timer|min to run|minutes to run|dry again|squeegee|fan time|clear the (?:steam|mirror|room)|afterwards?|(?:dry|drying|clear|clearing) time)\b/,
      5,
    ],
    [/\bmin\b[^.?]{0,12}\bshower|\bshower[^.?]{0,24}\bmin\b/, 4],
    [/\bmin(?:utes)? ?\?/, 5],
    [/\bhow (?:many minutes|many min|much time)\b/, 6],
    [/\b(?:keep|leave|run|stay)\b[^.?]*\bhow long\b/, 5],
    [/\bhow long (?:does|do|should|must|will|would) (?:\S+ ){0,6}(?:need|take|run|stay|be on|keep|leave)\b/, 4],
    [/\bhow long(?: (?:to|do|does|should|must|till|until|before|after)\b|[ ?.!]*$)/, 2],
    [
      /\b(?:stays?|leave it|left|kept?|keep it) (?:running|on)\b|\b(?:switch|turn|shut)s? (?:it|the (?:fan|thing)|fan)? ?off\b/,
      3,
    ],
    [/\bafter (?:a |the |each |every |her |his |their )?(?:\w+ )?showers?\b/, 2],
    [
      /\b(?:dry|clear)s? (?:when|again|by)\b|\bwhen (?:is|will|does|can) (?:it|the (?:room|bath\w*|mirror|walls?|fan)|they|she|he|we|i)\b|\btill (?:the )?mirror\b/,
      4,
    ],
    [/\b(?:min(?:utes)?|time) (?:to|until|till|for) (?:\w+ ){0,3}(?:clear|dry|vent|defog)/, 6],
  ],
  sweat: [
    [/\b(?:sweat\w*|condens\w*)\b/, 7],
    [/\b(?:drip\w*|frost\w*|water in the duct|water (?:will )?(?:run|come)|keep it dry)\b/, 1],
    // Drops are asked of a duct, and complained of anywhere else.
    [/^(?=.*\b(?:duct|attic|loft|pipe|flex|insulat\w*|r ?-? ?\d|rsi|deg[fc]?)\b).*\b(?:drip\w*|frost\w*|water)\b/, 3],
    [/\b(?:r-?value|insulat\w*|wrap\w*|loft)\b/, 1.5],
    [/\battic\b/, 1],
    [/\b(?:rsi|r ?-? ?\d)/, 3],
    [/\bdeg[fc]?\b/, 1],
  ],
  makeup: [
    [
      /\b(?:make-?up|starv\w*|negative pressure|backdraft\w*|natural draft|blower door|cfm50|transfer grille|depressuri\w*|flue)\b/,
      5,
    ],
    [/\bundercut\b/, 2],
    [/\b(?:gap|door)\b/, 3],
    [
      /\b(?:combustion|fireplace|wood stove|natural draft|(?:gas|oil|propane) (?:furnace|boiler|water heater)|transfer air|co alarm|carbon monoxide)\b/,
      4,
    ],
    [/\bcut off\b|\bplenty\b/, 1],
    [/\bat 50 pa\b|\b(?:pull|suck)\w* on the\b|\bair supposed to come\b/, 5],
  ],
  boxfill: [
    [/\b(?:box ?fill|over ?full|too full|too many wires|wire nuts?|awg|octagon|clamps?|conductors?)\b/, 4],
    [/\b(?:in3|cm3|ml)\b/, 3],
    [
      /\bbox\b(?=[^.]*\b(?:wires?|grounds?|switch|cables?|fit)\b)|\b(?:wires?|grounds?|switch|cables?|fit)\b(?=[^.]*\bbox\b)/,
      4,
    ],
    [/\b(?:14|12|10) ?[/-] ?[23]\b/, 5],
    [/\b\d+ ?x ?(?:14|12)\b/, 2],
    [/\bgrounds?\b/, 2],
    [/\b(?:romex|gang|box)\b/, 1.5],
  ],
  measure: [
    [/\b(?:bag|bags)\b/, 5],
    [
      /\b(?:flow ?box|(?<!range )hood \d+|flow hood|with the hood|hood (?:says|shows|reads)|anemometer|traverse|tissue holds|stopwatch)\b/,
      7,
    ],
    [/\b(?:gal|liter)\b/, 3],
    [
      /\b(?<!range |kitchen |wall |roof |draft |louvered )hood (?:reading|reading|said|showed|showing|gave|at|got|was|were)\b|\b(?:fpm|mps|vane)\b/,
      7,
    ],
    [/\b(?:test|pass|reading)\b/, 2],
    [/\bhow does the measurement\b/, 3],
  ],
  cost: [
    [/\b(?:costs?|electric(?:ity)? bill|kwh|money|yearly|therm|hdd|fortune|a year)\b/, 6],
    [/\$|\bcent\b|\bwatt\b/, 3],
    [
      /\b(?:expensive|cheap|her bill|his bill|the bill|power bill|to run|annual|operating|hours? a day|per day|pricey)\b/,
      3,
    ],
  ],
  power: [
    [
      /\b(?:gfci|neutral|circuit|breaker|wiring|knob and tube|dedicated|amp|electrician|ungrounded|aluminum wir\w*)\b/,
      5,
    ],
    [
      /\b(?:hook|wire|tie|connect)\w* (?:it |the fan |a (?:new )?(?:exhaust )?fan |this |that )?(?:up|in|into|to)?\b/,
      2,
    ],
    [/\bswitch loop\b|\bno ground\b|(?<!\bwater )\bheater\b(?!.*\b(?:draft|gas|water)\b)/, 5],
    [/\b(?:allowed|legal|code|required|rated|listed|can i|can we|may i)\b/, 1],
    [
      /^(?=.*\b(?:can|may|could|ok|okay|allowed|legal|safe|code|gfci)\b).*(?:\bfan\b[^.?]*\b(?:over|above|in|inside|next to|near|beside)\b[^.?]*\b(?:shower|tub)\b|\b(?:over|above|in|inside|near) (?:the |a )?(?:shower|tub)\b[^.?]*\bfan\b)/,
      3,
    ],
    [/\b(?:dimmer|(?:humidity|motion|occupancy) (?:sensor|switch)|spring timer)\b/, 3],
  ],
  callback: [
    [/\bcallback\b|\bwarranty\b/, 9],
    [/\b(?:trips?|tripping|tripped)\b|\btak(?:es|ing) (?:forever|ages|way too long|too long|so long)\b/, 7],
    [
      /(?<!\b(?:wants?|needs?|likes?|prefers?) (?:\w+ ){0,4})\b(?:doesn't|doesnt|does not|won't|wont|isn't|isnt|never|quit|quits|stopped|can't|cant)(?: \w+)? (?:spin|run|turn|work|start|com|clear|shut|stop|clos|open|pull)\w*/,
      5,
    ],
    [/\b(?:reports?|reported)\b/, 1.5],
    [/\bstill (?:fog\w*|wet|steamy|smells?|loud|noisy)\b/, 3],
    [
      /\b(?:loud\w*|noisy|noise|hum(?:s|ming)?|rattl\w*|squeal\w*|grind\w*|buzz\w*|weak|stopped|smell\w*|odor|musty|vibrat\w*|complain\w*|unhappy|won't|wont|doesn't work|stains?|mold\w*|mildew|flicker\w*|burning|leak\w*|shut(?:s|ting)? (?:itself )?off|turns? itself|whistl\w*|clatter\w*|chirp\w*|flap\w*)\b/,
      5,
    ],
    [
      /\b(?:cold air|cold draft|draft coming|fogs?|fogged|foggy|steam won't|not? clear\w* (?:the )?steam|no suction|won't stick|what could that be|blows down|by itself)\b/,
      5,
    ],
    [
      /\b(?:customer|tenant|resident|owner|homeowner|lady|she|he|they) (?:says?|said|reports?|reported|complains?|called|calls|tells)\b|\bgot a call\b/,
      2,
    ],
    [
      /\b(?:we|i|you) (?:just )?(?:put in|installed|swapped|replaced|fitted|left|hung)\b|\b(?:last|this) week\b|\bweeks? ago\b|\bsince (?:the|we|you)\b/,
      2,
    ],
  ],
  parts: [
    [
      /\b(?:parts|materials?|shopping|supplies|take-?off|take off|(?:\w+ )?list\b(?! price)|what (?:all )?(?:do|will|would|should) (?:i|we|they) (?:need|have) to (?:buy|get|bring|order|pick up|grab|load|haul|take)|what (?:do|should) (?:i|we) (?:bring|buy|order|grab|pick up|load)|(?:on|in|for|off|off of|from|out of) (?:the |my |our )?(?:truck|van)\b|suppl(?:y|ies) (?:house|run|counter)|how much (?:foil )?tape|how many (?:hangers|straps|screws)|requisition|bill of materials)\b/,
      9,
    ],
    [/\b(?:tape|screws|hangers|straps|joists?|bring|buy)\b/, 3],
    [/\bsupply run\b|\bwhat all\b/, 6],
    [
      /\bwhat (?:all )?(?:do|will|would|should) (?:i|we|they) (?:need|take|load|grab|bring|order|buy|get|put) (?:for|on|in)\b/,
      4,
    ],
    [/\bwhat (?:all )?(?:do|will|would) (?:i|we) need[ ?.!]*$/, 3],
    // A room told by its floor asks for air, not for parts.
    [/\b(?:sqft|ceiling|toilet)\b/, -4],
  ],
  plan: [
    [
      /\b(?:whole (?:job|plan)|full (?:job|plan)|job plan|plan (?:for|of) (?:the|this|a) (?:job|bath\w*|house)|plan (?:the|this) (?:whole )?(?:job|swap|install\w*)|everything for)\b/,
      12,
    ],
  ],
};

/** Facts that speak for a command more than for another. */
const belongs: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  size: { 'room-length': 2, 'room-area': 2, 'ceiling-height': 1.5, fixtures: 2, running: 1 },
  duct: { 'duct-run': 4, 'fan-curve': 1, 'fan-settings': 1, 'airflow-needed': 0.5 },
  reach: { 'duct-kind': 1, 'duct-diameter': 1, 'airflow-needed': 1, 'fan-curve': 0.5 },
  runtime: {
    'shower-minutes': 2,
    'room-length': 1,
    'room-area': 1,
    'house-humidity': 1,
    'delivered-airflow': 0.5,
    'measured-airflow': 0.5,
  },
  sweat: { 'attic-temperature': 1.5, 'duct-insulation': 1.5, 'attic-duct-length': 0.5 },
  makeup: { 'door-gap': 1.5, 'door-width': 1.5, 'house-leakage': 3, 'transfer-grille': 3 },
  boxfill: { conductors: 2, box: 2, devices: 0.5, grounds: 1 },
  measure: { 'hood-reading': 4, 'bag-volume': 2, 'fill-times': 1, 'box-pressure': 2 },
  cost: { 'fan-watts': 1, 'hours-per-day': 2, 'degree-days': 2, 'heating-price': 2 },
  power: {
    'fan-place': 2,
    'wiring-kind': 5,
    'control-wanted': 1,
    'unit-kind': 1,
    'switch-box-neutral': 4,
    'fan-ground': 3,
    breaker: 3,
    'heater-watts': 3,
  },
  callback: {},
  parts: { 'duct-run': 4, 'joist-spacing': 3 },
  plan: {},
};

/** A line led by the name of a command is meant for it, unless everything else speaks against. */
const led: Readonly<Record<string, number>> = { duct: 3, size: 4, power: 4, measure: 5, plan: 6 };
const ledBy = (command: string, line: string): number =>
  new RegExp(
    String.raw`^\/?${command === 'runtime' ? 'run[ -]?time' : command === 'boxfill' ? 'box ?fill' : command}\b(?! (?:the|it|room)\b)`,
  ).test(line)
    ? (led[command] ?? 8)
    : 0;

/** What each sign of trouble speaks for a callback. */
const heardWeight = 1.25;

/** A number that finds no place in a reading speaks against it, up to this many. */
const mostLoose = 4;
/** Down to this: what is left is still offered, with the numbers it could not place named. */
const stillRead = 2;

let prepared: PreparedWords | undefined;
const complaints = (): PreparedWords => {
  prepared ??= preparedWords(englishCallbackWords);
  return prepared;
};
/** Signs of trouble a customer would tell, heard as a callback hears them; more than two say no more. */
const complaintsHeard = (said: string): number =>
  Math.min(2, findingsInWords(complaints(), said).seen.filter(({ confidence }) => confidence === 'clear').length);

/** A sign of trouble in anybody's words, and what of a fan's it may be told of. */
const trouble =
  /\b(?:weird|strange|funny|noise|noises|noisy|sounds?|stuck|dead|broke|broken|worse|weak\w*|smok\w*|spark\w*|shocks?|shocked|tingl\w*|buzz\w*|click\w*|tick\w*|clunk\w*|knock\w*|scrap\w*|squeak\w*|screech\w*|thump\w*|bang\w*|roar\w*|howl\w*|whin\w*|whistl\w*|drone\w*|popping|pops|forever|ages|flutter\w*|stinks?|stinky|sewer|sewage|musty|smell\w*|odou?r\w*|wet|damp|drip\w*|leak\w*|stain\w*|puddle\w*|peel\w*|bubbl\w*|mold\w*|mould\w*|mildew\w*|frost\w*|icicles?|fog\w*|steamy|draft|drafts|drafty|bugs?|birds?|mice|wasps?|flicker\w*|dim|wobbl\w*|shak\w*|sagging|loose|fell|falling|tripp\w*|trips|quit|quits|died|dies|stop(?:p?ed|s)|burn(?:t|ing|ed)?|hot|nothing|hangs?|lingers?|loud\w*|low|less|poor|barely|hardly|black (?:spots?|stuff|marks)|no (?:air|airflow|flow|suction|pull|power)|won't|wont|doesn't|doesnt|isn't|never|keeps|stays|by itself|on its own|water (?:is |comes |came |runs? )?\w+ (?:from|out|down|through|in|on)|running down)\b/;
const ofTheFan =
  /\b(?:fan|fans|vent|grille|exhaust|duct|flap|damper|switch|gfci|breaker|light|mirror|steam|water|air|smell\w*|noise|flow|airflow|mold|ceiling|paint|walls?|motor|hood|outside|cap|window|bath(?:room)?|it|she|he|tenant|customer|owner)\b/;
/** Things that are no part of a bath: what ails them is another's trade. */
const elsewhere =
  /\b(?:trucks?|vans?|cars?|radio|phone|printer|computer|laptop|tv|coffee|internet|wifi|dog|knee|tires?|mower|fridge|toaster|microwave|dishwasher)\b/;

/** Trouble that is a fan's even where nobody names one. */
const fanTrouble =
  /\b(?:loud\w*|nois\w*|rattl\w*|hum(?:s|ming)?|buzz\w*|squeal\w*|squeak\w*|grind\w*|whistl\w*|vibrat\w*|flap\w*|click\w*|clunk\w*|suction|weak|stinks?|reeks?|no (?:pull|draw)|(?:shut|turn)s? (?:itself )?off|damp|draft\w*|stain\w*)\b/;
/** Whoever asks for a quantity or a permission does not complain. */
const asks =
  /\b(?:how (?:much|many|long|far|big|large)|what (?:size|cfm|fan|do|does|will|would)|which|can (?:i|we|you)|may i|allowed|legal|should|cost\w*|need(?:s|ed)?|enough|will (?:it|the|this|that|my)|list|max(?:imum)?)\b/;

/** A line without one of these is not about a bath fan, whatever its numbers. */
const ofTheTrade =
  /\b(?:fans?|bath\w*|powder|showers?|tub|toilet|ducts?|flex|foil|pipe|spiral|smooth|rigid|elbow|cap|jack|hood|soffit|room|ceilings?|sqft|m2|cfm|l\/s|m3\/h|attic|loft|insulat\w*|sweat\w*|condens\w*|drip\w*|door|gap|undercut|make-?up|grille|wires?|wiring|box\w*|switch\w*|timer|gfci|breaker|neutral|ground|conductors?|in3|cable|gang|bag|sec|anemometer|fpm|pa|watt|kwh|hdd|steam|fog\w*|mirror|mold\w*|vent\w*|exhaust|backdraft|motor|aluminum|knob|sones?|reach|size|cost|runtime|callback|parts|measure|power|plan|sweat|octagon|clamps?|cubic|[1-9]\d? ?(?:x|by) ?\d|\d{1,2}\/[23])\b/;

const complains = (line: string): boolean =>
  (fanTrouble.test(line) || (trouble.test(line) && ofTheFan.test(line))) && !asks.test(line);

interface Fit {
  /** The line made even, and as it was typed. */
  readonly line: string;
  readonly said: string;
  readonly facts: readonly Fact[];
  readonly loose: number;
}

/** How well a line fits a command: its words, the facts it would take, and the numbers it could do nothing with. */
export function scoreOf(command: string, { line, said, facts, loose }: Fit): number {
  const heard = command === 'callback' ? complaintsHeard(said) : 0;
  if (!ofTheTrade.test(line) && (elsewhere.test(line) || !(complains(line) || heard > 0))) return 0;
  const spoken = (cues[command] ?? []).reduce((sum, [pattern, weight]) => sum + (pattern.test(line) ? weight : 0), 0);
  const fits = Object.entries(belongs[command] ?? {}).filter(([id]) => facts.some((each) => each.id === id));
  const about = ledBy(command, line) + spoken + fits.reduce((sum, [, weight]) => sum + weight, 0);
  if (command === 'callback') return about + heardWeight * heard + (complains(line) ? (/\d/.test(line) ? 1 : 4) : 0);
  return Math.max(Math.min(about, stillRead), about - Math.min(loose, mostLoose));
}
