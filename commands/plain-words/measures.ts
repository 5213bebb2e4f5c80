import { evenMarks } from '../questions/run-grammar.ts';
import { fieldsApart } from './form-fields.ts';
import { respelled } from './spelling.ts';
import { withDigits } from './spoken-numbers.ts';

/** A number as it stands in a line made even: `8`, `0.25`, `1/2`, `7-1/2`. */
export const number = String.raw`(?<![\d./])(?:\d+\/\d+|\d+(?:\.\d+)?(?:[ -]\d+\/\d+)?(?![\d/]))`;
/** "7-1/2" as 7.5, for answers that take no fractions. */
export const decimal = (said: string): string =>
  said.replace(/(?:(\d+)[ -])?(\d+)\/(\d+)/g, (_, whole: string | undefined, top: string, bottom: string) =>
    String(Number(whole ?? 0) + Number(top) / Number(bottom)),
  );

/** A length with its unit, feet and inches together. */
export const length = String.raw`(?:${number} ft(?: ${number} in)?|${number} (?:in|mm|cm|m))\b`;
/** Not the beginning of a length, a temperature or a time: a bare number here stands for an airflow. */
export const noUnit = String.raw`(?![\d./-])(?! ?(?:ft|in|mm|cm|m|sqft|m2|%|deg|degf|degc|min|sec|hr|gal|liter|watt|amp|sqin|cm2|fpm|mps|in3|cm3|ml|awg|pa|x|elbow|sone|hdd|kd|k|cent|\$|years?|days?|weeks?|months?|times?|hundred|thousand|volts?|lbs?|by(?! (?:my|our|the|his|her|a)\b))\b)(?! ?%)`;
/** A bare number is an airflow where a bath fan could move it: nobody leaves the unit off a one or a three thousand. */
export const airflow = String.raw`(?<![\d./$-])(?:\d+(?:\.\d+)? (?:cfm|l/s|m3/h)\b|[1-9]\d{1,2}(?:\.\d+)?${noUnit})`;

/** A stop behind a short form belongs to it; behind a whole word it ends the sentence. */
const unit = (words: string): RegExp =>
  new RegExp(
    String.raw`(?<=\d)(?! - )[ -]*(?:${words})(?![a-z\d])(?:(?<![a-z]{5}|feet|foot|inch|watt|amps|hour|cfm)\.)?`,
    'g',
  );

/** Units after a number, each made one word. */
const units: readonly (readonly [RegExp, string])[] = [
  [/(?<=\d) *-?cfm(?![a-z0-9])/g, ' cfm '],
  [/(?<![a-z])c\.? ?f\.? ?m\.?(?![a-z0-9])/g, ' cfm '],
  [unit('cubic feet per minute|cubic feet a minute|cubes a minute'), ' cfm '],
  [unit(String.raw`l ?\/ ?s(?:ec)?|lps|lit(?:er|re)s? ?(?:per|a|\/) ?sec(?:ond)?|liters? per second`), ' l/s '],
  [unit(String.raw`m3 ?\/ ?h(?:r)?|m3h|cmh|cubic met(?:er|re)s? (?:per|an) hour`), ' m3/h '],
  [unit(String.raw`fpm|ft ?\/ ?min|f(?:ee|oo)t (?:per|a) min(?:ute)?`), ' fpm '],
  [unit(String.raw`m ?\/ ?s|met(?:er|re)s? (?:per|a) sec(?:ond)?`), ' mps '],
  [unit(String.raw`sq(?:uare)?\.? ?-?(?:inch(?:es)?|in\b)\.?|in2|in\^2`), ' sqin '],
  [unit(String.raw`sq(?:uare)?\.? ?(?:cm|centimet(?:er|re)s?)|cm2|cm\^2`), ' cm2 '],
  [
    unit(
      String.raw`sq(?:uare)?\.? ?-?(?:f(?:ee|oo)?t|ft)\.?|sf|ft2|ft\^2|square foot(?:er)?|squares?(?= (?:bath|room))`,
    ),
    ' sqft ',
  ],
  [unit(String.raw`sq(?:uare)?\.? ?(?:m|met(?:er|re)s?)|m2|m\^2`), ' m2 '],
  [
    unit(String.raw`cubic ?inch(?:e?s)?|cubic ?in|cu(?:bic)?\.? ?in(?:ch(?:e?s)?)?|in3|cubes?|cube inch(?:e?s)?|cu|ci`),
    ' in3 ',
  ],
  [unit(String.raw`cubic centimet(?:er|re)s|cm3|cc`), ' cm3 '],
  [unit('millilit(?:er|re)s|ml'), ' ml '],
  [unit(String.raw`millimet(?:er|re)s?|mm`), ' mm '],
  [unit(String.raw`centimet(?:er|re)s?|cm`), ' cm '],
  [unit(String.raw`met(?:er|re)s?|m`), ' m '],
  [/(?<=\d) *'/g, ' ft '],
  [/(?<=\d) *"/g, ' in '],
  [unit(String.raw`f(?:ee|oo)t|ft|lf|lin(?:ear|eal)?\.? ?f(?:ee|oo)?t`), ' ft '],
  [unit(String.raw`inch(?:e?s)?`), ' in '],
  [unit(String.raw`in(?! (?:the|a|an|my|our|this|that|there|here|it|all|attic|summer|winter)\b)`), ' in '],
  [unit(String.raw`c(?= ?(?:\/|a |per |each )? ?kwh)`), ' cent '],
  [unit(String.raw`percent|per cent|pct|%`), ' % '],
  [unit(String.raw`(?:° ?|degrees? |deg\.? )?(?:c|celsius|centigrade)`), ' degc '],
  [unit(String.raw`(?:° ?|degrees? |deg\.? )?(?:f|fahrenheit)`), ' degf '],
  [unit(String.raw`°|degrees?(?! ?days?)|deg`), ' deg '],
  [unit(String.raw`minutes?|mins?|min`), ' min '],
  [unit(String.raw`seconds?|secs?|s(?! of)`), ' sec '],
  [unit(String.raw`hours?|hrs?|h`), ' hr '],
  [unit(String.raw`gallons?|galls?|gals?`), ' gal '],
  [unit(String.raw`lit(?:er|re)s?|ltrs?|l(?! ?/)`), ' liter '],
  [unit(String.raw`pascals?|pa`), ' pa '],
  [/(?<=[^/]\d)w(?![a-z\d/])/g, ' watt '],
  [/(?<=\d) w(?= \d+(?:\.\d+)? ?(?:h|hrs?|hours?|mins?|minutes?|c|cents?)\b)/g, ' watt '],
  [unit(String.raw`watts?|w(?! ?\/| (?:a|an|the|ground|clamps?|doors?|with|\d))`), ' watt '],
  [unit(String.raw`cents?|¢`), ' cent '],
  [unit(String.raw`sones?`), ' sone '],
  [unit(String.raw`awg|gauge|ga`), ' awg '],
  [/(?<=\d)a\b/g, ' amp '],
  [/(?<=\d) a(?= ?(?:[,;.)?]|$))/g, ' amp '],
  [/(?<=\.\d+) a\b(?! (?:kwh|kilowatt|kw|therm|day|year|month|unit))/g, ' amp '],
  [unit(String.raw`amperes?|amps?|a(?= (?:breaker|circuit|fuse))`), ' amp '],
  [unit(String.raw`k ?[·*.x-]? ?d(?:ays?)?`), ' kd '],
  [unit(String.raw`(?:heating )?degree[ -]days?|hdd(?:65)?|degree days? a year`), ' hdd '],
];

/** Ninety-degree bends by their many names; "90" alone is one only where marks stand around it. */
const bends: readonly (readonly [RegExp, string])[] = [
  [/\banother (?=90|45|elbow|bend)/g, 'an '],
  [/\b(90|45)[ -]*(?:degrees?|deg|°)?[ -]*(?:elbows?|bends?|turns?|els?)\b/g, ' elbow $1 '],
  [/(?<![\d.])([1-9]) ?[x-] ?(90|45)(?:°|deg\b|'?s\b)?(?![\d.]| ?(?:in|cm|mm|ft|m)\b| ?['"])/g, '$1 elbow $2 '],
  [/\b([1-9]|an?) (90|45) ?(?:degrees?|deg|°)(?= ?(?:[,;]|and\b|ones\b|$))/g, '$1 elbow $2 '],
  [/\b(90|45)(?:'s|s)\b/g, ' elbow $1 '],
  [
    /(?<![\d./-] ?)\b([1-9]) (90|45)(?! ?(?:cfm|l\/s|ft|in|mm|cm|m|fan|unit|fans|x|by|min|sec|deg\w*|watt|%|\d|\/|\.\d|['"°]))\b/g,
    '$1 elbow $2 ',
  ],
  [
    /\b(an?|[1-9]) (90|45)(?= ?(?:and|then|into|to|out|plus|with|between|roof|wall|soffit|louver|[,;+]|$|(?:an?|[1-9]) (?:90|45)\b))/g,
    '$1 elbow $2 ',
  ],
  [/\b(?:an?|1) (?:elbow )?(90|45|elbow) (?:at|on) (?:each|both|either) ends?\b/g, '2 elbow $1'],
  [/\b2 elbow elbow\b/g, '2 elbow'],
  [/\b(an?|[1-9]) turns?\b/g, '$1 elbow'],
  [/(?<!flex |kinked )\bbends?\b(?! at\b(?! all\b))/g, 'elbow'],
  [/\belbows\b/g, 'elbow'],
  [
    /\b(adjustable|stamped|gored|pleated|crimped|mitered|mitred|swivel|segmented|long radius) elbow(?! ?(?:90|45))/g,
    '$1 elbow 90',
  ],
  [/\b(?:no|not any|not (?:a|one) single|not an?|without(?: any| an?)?|never an?) elbow\b/g, '0 elbow'],
  [
    /(?<!(?:\d|\ban?) )\belbow(?:s?[:=] ?| - | ?x ?| )(\d)(?= ?(?:[,;?)]| - |\.(?!\d)|$|and\b|roof\b|wall\b|soffit\b))/g,
    '$1 elbow',
  ],
  [/(\d)- ?(?=elbow)/g, '$1 '],
  [/(?<=[/;,] ?)(90|45)(?= ?(?:[/;,]|$))/g, ' elbow $1 '],
  [/(\d) ?(?:x|of those) (?=elbow)/g, '$1 '],
];

/** A number and the word stuck to it, apart: "8clg", "2el", "20wat". */
const apart = (line: string): string =>
  line
    .replace(/(\d)(?=\p{L}{3})/gu, '$1 ')
    .replace(/(\d)(?=(?:els?|sw|rh|by\d)(?!\p{L}))/gu, '$1 ')
    .replace(/%(?=rh\b)/g, '% ')
    .replace(/\b(fan) w(?= ?[:=])/gi, '$1 watts')
    .replace(/(\d) ?wats?\b/g, '$1 watt');

/** The size of a duct where everything else is metric: "150 flex". */
const bareMetricDuct =
  /(?<![\d.])(80|100|120|125|150|160|200|250|300) (?=(?:foil|flex|spiral|smooth|rigid|pipe|duct)\b)/g;

/** Readings of a bag or a hood with strokes between: "55/57/56". */
const ofReadings = /^(?!.*\b(?:selector|settings?|speeds?)\b).*(?:\bbag\b|(?<!range |wall |roof |kitchen )\bhood\b)/;
const readingsInRow = /(?<![\d/-])\d+(?:\.\d+)?(?: ?\/ ?\d+(?:\.\d+)?){2,}(?![\d/])/g;

/** Where money is spoken of, a c behind a number is no degree. */
const ofMoney = /\$|\b(?:costs?|bill|kwh|electric\w*|year|yearly|annual)\b/;

/** A stop stands by itself, so that the one behind "30 in" is not taken for its abbreviation. */
const sentencesApart = (line: string): string => line.replace(/\. +(?=\p{Lu}(?!n\b|t\b))/gu, ' . ');

/** What stands on lines of its own, with or without a bullet, as clauses of one line. */
const linesJoined = (line: string): string => line.trim().replace(/[ \t]*[\r\n]+\s*(?:[-*•·] *)?/g, '; ');

/** "90 at a tenth and 60 at a quarter": behind a pressure in decimals, a share of an inch at an airflow is one as well. */
const decimalPoint = /\d[^\d,;]{0,8}?(?:@|\bat) ?0?\.\d/;
const shareAtFlow =
  /(\d{2,3}(?: ?c ?f ?m)? ?(?:@|\bat)) ?([13])\/([48]|16)(?: of an)?(?: ?inch\b| in\b| ?")?(?! ?(?:gap|undercut|under))/g;

/** What follows feet and inches said in one breath: "8 foot 2 by", "seven foot six, just a tub". */
const inchesSaid =
  /(?<![\d./])(\d{1,2}) ?(foot|ft|feet) (\d{1,2}(?:[ -]\d\/\d+)?)(?![\d./'"])(?! ?(?:inch|inches|in|ft|feet|foot|mm|cm|m|cfm|l\/s|%|percent|deg\w*|min\w*|sec\w*|hours?|hrs?|gal\w*|watts?|elbows?|ells?|els?|bends?|turns?|awg|gauge|x ?(?:90|45|elbow)|90|45|(?:insulated|semi|foil|flex\w*|smooth|rigid|spiral|hard|metal|galv\w*|pvc|pipe|duct|aluminum|round|sheet)|(?:switch|wire|ground|device|cap|reducer|fan)s?)\b)(?! ?[#@°]| \d)/g;
const feetAndInches = (said: string, feet: string, word: string, inches: string): string =>
  Number.parseInt(inches, 10) < 12 && (word !== 'feet' || Number(feet) < 20) ? `${feet} ft ${inches} in ` : said;

/** "Six feet and eight feet of duct with a 90 between". */
const between = /\b(?:right )?(?:in|at|half ?way) ?between\b(?! (?:the|joists|studs)\b)|\bin the middle\b/g;

/** Behind a pressure "wc" is the water column, and no closet. */
const columnsNamed = (line: string): string =>
  line.replace(/(?<=(?:@|\bat) ?0?\.\d{1,3} ?(?:"|in\.?|inch(?:es)?)? ?)w\.?c\b\.?/g, ' wg');

/** A line of plain words made even: lower case, digits, mended spelling, one name for each unit. */
export function evened(line: string): string {
  let text = withDigits(respelled(columnsNamed(apart(evenMarks(sentencesApart(fieldsApart(linesJoined(line))))))))
    .replace(/\btoo (?=90|45)/g, '2 ')
    .replace(between, 'between')
    .replace(/\b(an?|1|and) (90|45) in (?=\d+ ?(?:ft|feet|foot|m|met(?:er|re)s?)\b|')/g, '$1 $2 elbow within ')
    .replace(/\bwall jacks?\b/g, 'wall cap')
    .replace(/\bspigot(?= |s?\b)/g, 'collar')
    .replace(/\b(\d{1,2}) ?(?:ea\b\.?|each) (?=(?:90|45)\b|elbows?\b|bends?\b|ells?\b)/g, '$1x ')
    .replace(/\b(\d{1,2}) ?@ ?#?(18|16|14|12|10|8|6) ?(?=(?:awg|gauge|ga)\b)/g, '$1x$2 ')
    .replace(
      /\b((?:conductor|wire|ground|egc|device|yoke)s?:? )(\d{1,2}) ?@ ?#?(?=(?:18|16|14|12|10|8|6)\b(?! ?[./\d]))/g,
      '$1$2x',
    )
    .replace(/\bint\.? (?=(?:cable )?clamps?\b)/g, 'internal ')
    .replace(/(?<![\d,])(\d{1,2}),(?=\d{3}(?!\d|,\d))/g, '$1')
    .replace(/(?<![\d,.])(\d,\d{1,2}|\d{2},\d)(?![\d,])/g, (decimal) => decimal.replace(',', '.'))
    .replace(/(?<![\d.])\.(?=\d)/g, '0.')
    .replace(/(\d)\.(?=\s|$)/g, '$1 .')
    .replace(/\b\d+(?:st|nd|rd|th)\b/g, 'nth')
    .replace(/(\d) ni\b/g, '$1 in')
    .replace(
      /(\d) in (?=(?:the|an?|my|our|this|that|there|here|it|all|her|his|their|attic|loft|summer|winter)\b)/g,
      '$1 within ',
    )
    .replace(/\b(\d{1,2}) #?(14|12|10)'?s\b/g, '$1x$2 wires')
    .replace(/(\d\/[234])s\b/g, '$1')
    .replace(/(?<![\d.])(\d+) ?\(\1\)/g, '$1')
    .replace(/\((\d+)\)/g, '$1')
    .replace(
      /(\d) ?(?:ft|') ?(\d{1,2}(?:[ -]\d\/\d+)?)(?![\d"'./]| ?(?:in|inch|inches|ft|feet|foot|mm|cm|m|flex|elbow)\b| (?:x ?)?(?:90|45)(?!\d))(?<=(?:ft|')\d\S*)/g,
      '$1\' $2"',
    )
    .replace(
      /(\bby|(?<![a-z])x) ?(\d+) ?(?:ft|foot|feet) (\d{1,2})(?! ?(?:ft|foot|feet|in|inch|inches|x|by|elbows?)\b)(?![\d"'./])/g,
      '$1 $2\' $3"',
    )
    .replace(/(\d) ?(?:ft|foot|feet) (\d{1,2})(?= (?:by|x|ceilings?|long|wide|high|tall)\b)/g, '$1\' $2"')
    .replace(/(\d) ?['] ?-? ?(\d+(?:-\d+\/\d+)?) ?"/g, '$1 ft $2 in ')
    .replace(/\b(?:those|these|the|our|of) (?!(?:45|90))(\d{2,3})'?s\b/g, 'the $1 fan')
    .replace(
      /(\d) (?:more|extra|additional|full|good|straight|linear|odd|whole|lousy|measly) (?=f(?:ee|oo)?t\b|m\b|met(?:er|re)s?|inch|in\b|min|sec|gal|elbow|bend|90|45)/g,
      '$1 ',
    )
    .replace(
      /(?<!(?:^|[^/\d.])\d+(?:\.\d+)? )\bcfm[:= ]+(\d{2,3})(?= ?(?:[,;?)]|\.(?!\d)|$|and\b|with\b|th(?:ro)?u(?:gh)?\b))/g,
      '$1 cfm',
    )
    .replace(/(?<![\d/.-])(\d{1,2})-(\d{1,2}) ?(x|by) ?(\d{1,2})-(\d{1,2})(?![/\d])/g, '$1 ft $2 in $3 $4 ft $5 in')
    .replace(
      /\b(ceilings?|high|height)(:?) (\d{1,2})-(\d{1,2})(?![/\d]| ?(?:ft|feet|foot|m|')(?![a-z]))/g,
      '$1$2 $3 ft $4 in',
    )
    .replace(/(?<![\d./-])([4-9]|1[0-4])-(\d|1[01]) (?=(?:high|tall|ceilings?)\b)/g, '$1 ft $2 in ')
    .replace(/(?<!\d ?)\bsq(?:uare)?\.? ?f(?:ee|oo)?t[:= ]+(\d{2,3})(?![\d/.]| ?(?:ft|feet|in|x|by|cfm)\b)/g, '$1 sqft')
    .replace(/\b1900 box\b/g, '4 square box')
    .replace(
      /(?:\b(?:number|num|no\.|nr\.?)|(?<=\d |wires? |grounds? )no) ?(?=(?:18|16|14|12|10|8|6)(?:'?s)?\b(?! ?(?:x|by|ft|in|\/|"|')))/g,
      '#',
    )
    .replace(/\br[. ]s[. ]i\b/g, 'rsi')
    .replace(/\b(?:cap|jack|vent|hood) (?:of|on|in|at|through) (?:the )?(roof|wall)\b/g, '$1 cap')
    .replace(/\bcap:? (roof|wall|soffit)(?=\s*(?:[;,.]|$))/g, '$1 cap')
    .replace(/\b(exhaust|house|indoor) hum\b/g, '$1 humidity')
    .replace(/\bw\/ ?o\b/g, 'without')
    .replace(/\bw\/ ?/g, 'with ');
  text = text.replace(inchesSaid, feetAndInches);
  if (decimalPoint.test(text))
    text = text.replace(
      shareAtFlow,
      (_, flow: string, top: string, bottom: string) => `${flow} ${Number(top) / Number(bottom)} in `,
    );
  if (/\bbags?\b/.test(text)) text = text.replace(/(?<=\d) ?g\b/g, ' gal');
  if (ofReadings.test(text)) text = text.replace(readingsInRow, (row) => row.replaceAll('/', ', '));
  if (ofMoney.test(text)) text = text.replace(/(?<=\d)c\b/g, ' cent');
  for (const [pattern, name] of [...bends, ...units]) text = text.replace(pattern, name);
  if (/\d (?:m|mm|l\/s|m3\/h)\b/.test(text) && !/\d (?:ft|in|cfm)\b/.test(text))
    text = text.replace(bareMetricDuct, '$1 mm ');
  return text
    .replace(/\s+/g, ' ')
    .replace(/(\d ft) 0 in\b/g, '$1')
    .replace(/(\d ft) (?:and )?(?=\d+(?:[ -]\d+\/\d+)? in\b)/g, '$1 ')
    .trim();
}
