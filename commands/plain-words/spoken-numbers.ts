/** Numbers as they are said: "one ten", "hundred and ten", "point three", "an eighth of an inch", "six and a half". */

const units: Readonly<Record<string, number>> = {
  zero: 0,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
  thirteen: 13,
  fourteen: 14,
  fifteen: 15,
  sixteen: 16,
  seventeen: 17,
  eighteen: 18,
  nineteen: 19,
};
const tens: Readonly<Record<string, number>> = {
  twenty: 20,
  thirty: 30,
  forty: 40,
  fourty: 40,
  fifty: 50,
  sixty: 60,
  seventy: 70,
  eighty: 80,
  ninety: 90,
};
/** Words that are numbers, so that none is taken for a slip of another word. */
export const numberWords: readonly string[] = [
  ...Object.keys(units),
  ...Object.keys(tens),
  ...'hundred thousand half quarter quarters eighth eighths sixteenth sixteenths third point dozen couple pair'.split(
    ' ',
  ),
];

const parts: readonly (readonly [RegExp, string])[] = [
  [/\b(?:a )?half (?:an )?hour\b/g, '30 minutes'],
  [/\b(?:a )?quarter (?:of an )?hour\b/g, '15 minutes'],
  [/(?<!\d )(?<!\bhalf )\b(?:an )?hour(?= and (?:a )?(?:half|quarter))/g, '1 hour'],
  [/\ban hour(?= and)/g, '1 hour'],
  [/\ban inch\b(?! and)(?<!\bof an inch)(?<!(?:half|quarter|eighths?|\/\d+) an inch)/g, '1 inch'],
  [/\ban hour(?= (?:a|per|each|every) day| (?:total|altogether|long|of)\b|'s)/g, '1 hour'],
  [/\bhalf a dozen\b/g, '6'],
  [/\ba dozen\b/g, '12'],
  [/\b(?:a )?(?:couple|pair)(?: of)?\b/g, '2'],
  [/\b(?:three|3)[ -]quarters?\b/g, '3/4'],
  [/\b(?:an?|one) tenth\b(?: of an inch)?/g, '0.1 in'],
  [/\b(?:two|2)[ -]tenths\b(?: of an inch)?/g, '0.2 in'],
  [/\b(?:three|3)[ -]tenths\b(?: of an inch)?/g, '0.3 in'],
  [/\b(?:an?|one|1)[ -]sixteenth\b/g, '1/16'],
  [/\b(?:three|3)[ -]sixteenths?\b/g, '3/16'],
  [/\b(?:five|5)[ -]sixteenths?\b/g, '5/16'],
  [/\b(?:seven|7)[ -]sixteenths?\b/g, '7/16'],
  [/\b(?:nine|9)[ -]sixteenths?\b/g, '9/16'],
  [/\b(?:eleven|11)[ -]sixteenths?\b/g, '11/16'],
  [/\b(?:thirteen|13)[ -]sixteenths?\b/g, '13/16'],
  [/\b(?:fifteen|15)[ -]sixteenths?\b/g, '15/16'],
  [/\b(?:three|3)[ -](?:eighths?)\b/g, '3/8'],
  [/\b(?:five|5)[ -](?:eighths?)\b/g, '5/8'],
  [/\b(?:seven|7)[ -](?:eighths?)\b/g, '7/8'],
  [/(\d\/\d)(?:ths?|rds?|s)\b/g, '$1'],
  [/\b(?:(?:an?|one) )?eighth\b/g, '1/8'],
  [/\b(?:(?:an?|one) )?quarter(?=[ -](?:of an? )?inch\b|")/g, '1/4'],
  [/\b(?:an?|one) quarter\b/g, '1/4'],
  [/(?<!\band a )\bhalf[ -](?:an )?(?=inch\b)/g, '1/2 '],
  [/(?<=\band )a half[ -]?(?=inch\b)/g, '1/2 '],
  [/\b(?:a|one) half\b/g, '1/2'],
];

const digit = Object.keys(units).slice(1, 10).join('|');
const small = Object.keys(units).join('|');
const ten = Object.keys(tens).join('|');
const belowHundred = `(?:(?:${ten})(?:[ -](?:${digit}))?|${small})`;
/** Not of a fitting or a wire: "two ninety degree elbows" are two of them, "two eighteen gauge" as well. */
const notCounted = String.raw`(?![ -](?:${digit}|degrees?|elbows?|bends?|gauge|ga|awg|by)\b)`;

const valueBelowHundred = (said: string): number =>
  said
    .split(/[ -]/)
    .filter((word) => word !== '')
    .reduce((sum, word) => sum + (tens[word] ?? units[word] ?? 0), 0);

const hundreds = new RegExp(
  String.raw`\b(?:(?<count>${digit}|a)[ -])?hundred(?:(?: and)? (?!(?:one|two)[ -](?:ten|${ten}))(?<rest>${belowHundred}))?\b`,
  'g',
);
/** "One ten" is said for 110 and "two fifty" for 250; other pairs stand beside each other by chance. */
const elided = new RegExp(
  String.raw`(?<!\b(?:${ten})[ -])\b(?<count>one|two)[ -](?<rest>(?:ten|${ten})(?:[ -](?:${digit}))?)\b${notCounted}`,
  'g',
);
/** "Fourteen hundred watts", "eighteen hundred at fifty", "five thousand four hundred". */
const teensOfHundreds = new RegExp(
  String.raw`(?<!\b(?:one|two)[ -])\b(?<teens>${Object.keys(units).slice(11).join('|')}|(?:${ten})[ -](?:${digit}))[ -]hundred(?:(?: and)? (?<rest>${belowHundred}))?\b`,
  'g',
);
const thousands = new RegExp(
  String.raw`\b(?<count>${belowHundred}|a|\d{1,2})[ -]thousand(?:(?: and)? (?<more>${digit})[ -]hundred)?(?:(?: and)? (?<rest>${belowHundred}))?\b`,
  'g',
);
const pointed = new RegExp(
  String.raw`(?<whole>\b(?:${belowHundred}|\d+) )?\bpoint (?<tenths>(?:(?:zero|oh|${digit}|\d+)\b(?! point\b) ?)+)`,
  'g',
);
const single = new RegExp(String.raw`\b${belowHundred}\b`, 'g');

/** After these a "one" is a thing, not a number: "this one", "the long one". */
const pronoun =
  /\b(?:this|that|the|which|no|any|every|each|old|new|another|long|short|good|right|wrong|quick|big|small|quiet|first|last|next|other) one\b/g;

/** A "one" that ends its clause and counts nothing named before it: "weird one, the house ...". */
const danglingOne = new RegExp(
  String.raw`(?<=[a-z])(?<!\b(?:elbows?|ells?|els|bends?|turns?|switch|switches|devices?|grounds?|clamps?|wires?|cables?|point|and|or|to|is|are|hundred|thousand|minus|${ten})) one(?=\s*(?:[,.;!?]|$))`,
  'g',
);

/** "With one ninety": an elbow, unless it is the fan or its air. */
const oneElbow =
  /(?<=\b(?:with|w|and|plus|has|have|got|by|around) )(one|two) (ninety|forty[ -]five)(?![ -]?(?:cfm|fan|unit|watts?|degrees?|elbows?|bends?|minutes?|feet|foot|inch|square|l\b))/g;

/** "Two oh five". */
const withZero = new RegExp(String.raw`\b(one|two|three) (?:oh|o) (${digit})\b`, 'g');

/** Between a length and the outlet a "one ninety" is an elbow as well. */
const elbowInRun =
  /(?<=\b(?:feet|foot|ft|inch|flex|smooth|spiral|rigid|pipe|duct),? )(one|two|three) (ninety|forty[ -]five)(?=,? (?:and |then |to |out )?(?:an? |the )?(?:roof|wall|soffit|louver|cap|jack|hood))/g;

/** "Fourteen two" is a cable where wires or their box are spoken of. */
const gauges: Readonly<Record<string, string>> = { fourteen: '14', twelve: '12', ten: '10' };
const saidOfCables =
  /(?<![\d./-])\b(fourteen|twelve|ten|14|12|10)[ -](two|three|2|3)(?=s?\b)(?<!\b(?:number|no\.?|num|on|all|is) (?:fourteen|twelve|ten|14|12|10)[ -](?:two|three|2|3))(?![ -]?(?:inch|in(?! (?:the|there|it|here|an?)\b)|feet|foot|ft)\b)(?! ?[#x])(?! (?:switch\w*|timers?|devices?|yokes?|dimmers?|sensors?|receptacles?|grounds?|egcs?|clamps?|wires?|conductors?|hots?|neutrals?|blacks?|whites?|number|fourteen|twelve|14|12|of)\b)/g;
/** "The twenty seventeen code", "NEC twenty twenty three": years in words. */
const codeYear =
  /(?<=\b(?:nec|code|edition|cycle|on the|under the|by the|the) (?:is |of |the |year |edition )*)twenty[ -](eleven|fourteen|seventeen|twenty(?:[ -](?:three|six))?)\b(?! (?:ft|feet|foot|inch|cfm|wires?|gauge))|\btwenty[ -](eleven|fourteen|seventeen|twenty(?:[ -](?:three|six))?)(?= (?:nec|code|edition|cycle)\b)/g;
const codeYears: Readonly<Record<string, string>> = {
  eleven: '2011',
  fourteen: '2014',
  seventeen: '2017',
  twenty: '2020',
  'twenty three': '2023',
  'twenty six': '2026',
};
const aboutWires = /\b(?:box|boxes|romex|cables?|gang|cubic|cubes?|grounds?)\b/;

/** "One fifty six inch collar": the airflow and then the size, for no duct is a hundred and fifty-six inches wide. */
const airThenSize = new RegExp(
  String.raw`\b((?:(?:one|two)[ -]|hundred[ -](?:and )?)(?:ten|${ten})|(?<!\b(?:ten|${ten})[ -])(?:fifty|sixty|seventy|eighty|ninety))[ -](three|four|five|six|seven|eight)(?=[ -]inch (?:round |metal |insulated )?(?:collar|port|duct|pipe|flex\w*|smooth|spiral|rigid|hard|foil)\b)`,
  'g',
);
/** "Two-ten door": two feet ten. */
const doorOfFeet = /\b(two|three)[ -](ten|eleven)(?=[ -](?:wide )?(?:\w+ )?door\b)/g;

/** A line in lower case with its spoken numbers as digits. */
export function withDigits(line: string): string {
  let text = line
    .replace(/\ban a (?=half|quarter)/g, 'and a ')
    .replace(
      /\b(fif|six|seven|eigh|nine|four|thir) teen\b/g,
      (_, stem: string) => `${stem === 'eigh' ? 'eigh' : stem}teen`,
    )
    .replace(/\b(?:nineties|ninetys|ninety's)\b/g, '90s')
    .replace(/\b(?:forty[ -]fives)\b/g, '45s')
    .replace(/\b(fourteen|twelve|ten)s\b/g, (_, gauge: string) => `${gauges[gauge]}s`)
    .replace(/\bone of (?:those|these|the|them)\b/g, 'some of those')
    .replace(
      codeYear,
      (said, one?: string, other?: string) => codeYears[(one ?? other ?? '').replace('-', ' ')] ?? said,
    )
    .replace(saidOfCables, (said, gauge: string, wires: string) =>
      aboutWires.test(line) ? `${gauges[gauge] ?? gauge}/${wires.startsWith('t') ? units[wires] : wires}` : said,
    )
    .replace(airThenSize, '$1, $2')
    .replace(doorOfFeet, (_, feet: string, inches: string) => `${units[feet]}-${units[inches]}`)
    .replace(danglingOne, ' thing')
    .replace(pronoun, (said) => said.replace(/one$/, 'thing'));
  text = text.replace(oneElbow, (_, count: string, angle: string) => `${count} ${angle} degree elbow`);
  text = text.replace(withZero, (_, count: string, rest: string) => `${units[count]}0${units[rest]}`);
  text = text.replace(elbowInRun, (_, count: string, angle: string) => `${count} ${angle} degree elbow`);
  for (const [pattern, fraction] of parts) text = text.replace(pattern, fraction);
  return text
    .replace(thousands, (...found) => {
      const { count = 'a', more, rest } = found.at(-1) as { count?: string; more?: string; rest?: string };
      const many = count === 'a' ? 1 : /^\d/.test(count) ? Number(count) : valueBelowHundred(count);
      return String(many * 1000 + (units[more ?? ''] ?? 0) * 100 + valueBelowHundred(rest ?? ''));
    })
    .replace(teensOfHundreds, (...found) => {
      const { teens, rest } = found.at(-1) as { teens: string; rest?: string };
      return String(valueBelowHundred(teens) * 100 + valueBelowHundred(rest ?? ''));
    })
    .replace(hundreds, (...found) => {
      const { count, rest } = found.at(-1) as { count?: string; rest?: string };
      return String(
        (count === undefined || count === 'a' ? 1 : (units[count] ?? 1)) * 100 + valueBelowHundred(rest ?? ''),
      );
    })
    .replace(elided, (...found) => {
      const { count, rest } = found.at(-1) as { count: string; rest: string };
      return String((units[count] ?? 0) * 100 + valueBelowHundred(rest));
    })
    .replace(pointed, (...found) => {
      const { whole, tenths } = found.at(-1) as { whole?: string; tenths: string };
      const value = (word: string) => (/^\d/.test(word) ? word : word === 'oh' ? '0' : String(valueBelowHundred(word)));
      return `${whole === undefined ? '0' : value(whole.trim())}.${tenths.trim().split(/ +/).map(value).join('')} `;
    })
    .replace(single, (said) => String(valueBelowHundred(said)))
    .replace(/\b(\d+) and (?:an? )?(\d\/\d)/g, '$1-$2')
    .replace(
      /(?<![\d/-])(?:\b(?:an?|1) )?inch and (?:an? )?(?:half|(\d\/\d))/g,
      (_, part?: string) => ` 1-${part ?? '1/2'} inch`,
    )
    .replace(
      /\b(\d+) hours? and (?:an? )?(?:half|(\d\/\d))/g,
      (_, full: string, part?: string) => `${full}-${part ?? '1/2'} hours`,
    )
    .replace(/\b(\d+) and (?:a )?half\b/g, '$1-1/2')
    .replace(/\b(\d\/\d) (?:of an?|an?) (?=inch)/g, '$1 ')
    .replace(/\bminus (?=\d)/g, '-')
    .replace(/\b(\d+)(?: degrees?)? below(?: zero| 0)?\b(?! \d)/g, '-$1 degrees')
    .replace(/\bbelow 0\b(?! \d)/g, 'below freezing');
}
