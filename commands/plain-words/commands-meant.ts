/** Which command a line asks for: words that speak for it, and how much. */

type Cue = readonly [RegExp, number];

const run = '(?:flex|duct|pipe|spiral|smooth|rigid)';

export const cues: Readonly<Record<string, readonly Cue[]>> = {
  size: [
    [/\b(?:what|which|how big|how large|how small)\b[^.?]*\b(?:size|cfm|fan)\b/, 2],
    [/\bhow (?:much|many)\b[^.?]*\b(?:cfm|air|l\/s|airflow)\b/, 3],
    [
      /\b(?:what size|fan size|size (?:of )?(?:a )?fan|how big a fan|smallest fan|minimum|required airflow|tell me the cfm|which fan)\b/,
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
  ],
  reach: [
    [new RegExp(String.raw`\bhow (?:far|long)\b[^.?]*\b(?:${run}|go)\b`), 5],
    [/\bhow (?:far|long) (?:can|could|may|of a)\b/, 4],
    [/\bhow many (?:feet|ft|metres|meters|m)\b/, 8],
    [/\b(?:max(?:imum)?|longest|limit|furthest|farthest)\b[^.?]*\b(?:run|length|duct|flex|ft|feet|m|meters|go)\b/, 7],
    [/\b(?:my limit|max(?:imum)? (?:run|ft|length|feet|m)|longest (?:run|duct|flex))\b/, 5],
  ],
  runtime: [
    [
      /\bhow long\b(?![^.?]*\b(?:of a duct|can (?:i|we) run|can the duct)\b)[^.?]*\b(?:leave|keep|on|fan|run|running|clear|dry)\b/,
      5,
    ],
    [
      /\b(?:run[ -]?time|run[ -]?on|timer|min to run|minutes to run|dry again|squeegee|fan time|clear the (?:steam|mirror|room)|afterwards?)\b/,
      5,
    ],
    [/\bmin\b[^.?]{0,12}\bshower|\bshower[^.?]{0,24}\bmin\b/, 4],
  ],
  sweat: [
    [/\b(?:sweat\w*|condens\w*|drip\w*|frost\w*|water in the duct)\b/, 7],
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
    [/\bgrounds?\b/, 3],
  ],
  measure: [
    [/\b(?:bag|bags)\b/, 5],
    [
      /\b(?:flow ?box|(?<!range )hood \d|flow hood|with the hood|hood (?:says|shows|reads)|anemometer|traverse|tissue holds|stopwatch)\b/,
      7,
    ],
    [/\b(?:gal|liter)\b/, 3],
    [/\b(?:test|pass|reading)\b/, 2],
    [/\bhow does the measurement\b/, 3],
  ],
  cost: [
    [/\b(?:costs?|electric(?:ity)? bill|kwh|money|yearly|therm|hdd|fortune|a year)\b/, 6],
    [/\$|\bcent\b|\bwatt\b/, 3],
  ],
  power: [[/\b(?:gfci|neutral|circuit|breaker|wiring|knob and tube|dedicated|amp)\b/, 5]],
  callback: [
    [/\bcallback\b/, 9],
    [/\bstill (?:fog\w*|wet|steamy|smells?|loud|noisy)\b/, 3],
    [
      /\b(?:loud|noisy|hum(?:s|ming)?|rattl\w*|squeal\w*|grind\w*|buzz\w*|weak|stopped|smell\w*|odor|musty|vibrat\w*|complain\w*|unhappy|won't|doesn't work)\b/,
      5,
    ],
    [/\b(?:cold air|fogs?|fogged|foggy|steam won't|no suction|won't stick|what could that be|blows down)\b/, 5],
  ],
  parts: [[/\b(?:parts|materials|shopping|take-?off|tape|screws|what do i need to buy|bring)\b/, 5]],
};

/** Facts that speak for a command more than for another. */
export const belongs: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  size: { 'room-length': 2, 'room-area': 2, 'ceiling-height': 1.5, fixtures: 2, running: 1 },
  duct: { 'duct-run': 4, 'fan-curve': 1, 'fan-settings': 1, 'airflow-needed': 0.5 },
  reach: { 'duct-kind': 1, 'airflow-needed': 1, 'fan-curve': 0.5 },
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
  measure: { 'bag-volume': 2, 'fill-times': 1, 'box-pressure': 2 },
  cost: { 'fan-watts': 1, 'hours-per-day': 2, 'degree-days': 2, 'heating-price': 2 },
  power: {},
  callback: {},
  parts: {},
};
