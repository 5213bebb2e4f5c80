import { evenMarks } from '../questions/run-grammar.ts';
import { respelled } from './spelling.ts';
import { withDigits } from './spoken-numbers.ts';

/** A number as it stands in a line made even: `8`, `0.25`, `1/2`, `7-1/2`. */
export const number = String.raw`(?<![\d./])(?:\d+\/\d+|\d+(?:\.\d+)?(?:[ -]\d+\/\d+)?(?![\d/]))`;
/** A length with its unit, feet and inches together. */
export const length = String.raw`(?:${number} ft(?: ${number} in)?|${number} (?:in|mm|cm|m))\b`;
/** Not the beginning of a length, a temperature or a time: a bare number here stands for an airflow. */
const noUnit = String.raw`(?![\d./-])(?! ?(?:ft|in|mm|cm|m|sqft|m2|%|deg|degf|degc|min|sec|hr|gal|liter|watt|in3|cm3|ml|awg|pa|x|elbow|sone|hdd|cent|\$|year|by)\b)(?! ?%)`;
export const airflow = String.raw`(?<![\d./$-])\d+(?:\.\d+)?(?: (?:cfm|l/s|m3/h)\b|${noUnit})`;

const unit = (words: string): RegExp => new RegExp(String.raw`(?<=\d)[ -]*(?:${words})(?![a-z\d])\.?`, 'g');

/** Units after a number, each made one word. */
const units: readonly (readonly [RegExp, string])[] = [
  [/(?<![a-z])c\.? ?f\.? ?m\.?(?![a-z0-9])/g, ' cfm '],
  [/(?<=\d) *-?cfm(?![a-z0-9])/g, ' cfm '],
  [unit('cubic feet per minute|cubic feet a minute|cubes a minute'), ' cfm '],
  [unit(String.raw`l ?\/ ?s(?:ec)?|lps|lit(?:er|re)s? ?(?:per|a|\/) ?sec(?:ond)?|liters? per second`), ' l/s '],
  [unit(String.raw`m3 ?\/ ?h(?:r)?|cubic met(?:er|re)s? (?:per|an) hour`), ' m3/h '],
  [
    unit(
      String.raw`sq(?:uare)?\.? ?-?(?:f(?:ee|oo)?t|ft)\.?|sf|ft2|ft\^2|square foot(?:er)?|squares?(?= (?:bath|room))`,
    ),
    ' sqft ',
  ],
  [unit(String.raw`sq(?:uare)?\.? ?(?:m|met(?:er|re)s?)|m2|m\^2`), ' m2 '],
  [
    unit(String.raw`cubic ?inch(?:es)?|cubic ?in|cu(?:bic)?\.? ?in(?:ch(?:es)?)?|in3|cubes?|cube inch(?:es)?|cu|ci`),
    ' in3 ',
  ],
  [unit(String.raw`cubic centimet(?:er|re)s|cm3|cc`), ' cm3 '],
  [unit('millilit(?:er|re)s|ml'), ' ml '],
  [unit(String.raw`millimet(?:er|re)s?|mm`), ' mm '],
  [unit(String.raw`centimet(?:er|re)s?|cm`), ' cm '],
  [unit(String.raw`met(?:er|re)s?|m`), ' m '],
  [/(?<=\d) *'/g, ' ft '],
  [/(?<=\d) *"/g, ' in '],
  [unit(String.raw`f(?:ee|oo)t|ft`), ' ft '],
  [unit(String.raw`inch(?:es)?`), ' in '],
  [unit(String.raw`in(?! (?:the|a|an|my|our|this|that|there|here|it|all|attic|summer|winter)\b)`), ' in '],
  [unit(String.raw`percent|per cent|pct|%`), ' % '],
  [unit(String.raw`(?:° ?|degrees? |deg\.? )?(?:c|celsius|centigrade)`), ' degc '],
  [unit(String.raw`(?:° ?|degrees? |deg\.? )?(?:f|fahrenheit)`), ' degf '],
  [unit(String.raw`°|degrees?(?! ?days?)|deg`), ' deg '],
  [unit(String.raw`minutes?|mins?|min`), ' min '],
  [unit(String.raw`seconds?|secs?|s(?! of)`), ' sec '],
  [unit(String.raw`hours?|hrs?|h`), ' hr '],
  [unit(String.raw`gallons?|gals?`), ' gal '],
  [unit(String.raw`lit(?:er|re)s?|ltrs?|l(?! ?/)`), ' liter '],
  [unit(String.raw`pascals?|pa`), ' pa '],
  [unit(String.raw`watts?|w(?! ?\/| (?:a|an|the|ground|clamps?|with|\d))`), ' watt '],
  [unit(String.raw`cents?|¢`), ' cent '],
  [unit(String.raw`sones?`), ' sone '],
  [unit(String.raw`awg|gauge|ga`), ' awg '],
  [unit(String.raw`amps?|a(?= (?:breaker|circuit))`), ' amp '],
  [unit(String.raw`(?:heating )?degree[ -]days?|hdd(?:65)?|degree days? a year`), ' hdd '],
];

/** Ninety-degree bends by their many names; "90" alone is one only where marks stand around it. */
const bends: readonly (readonly [RegExp, string])[] = [
  [/\b(90|45)[ -]*(?:degrees?|deg|°)?[ -]*(?:elbows?|bends?|els?)\b/g, ' elbow $1 '],
  [/\b(90|45)(?:'s|s)\b/g, ' elbow $1 '],
  [/\b(an?|[1-9]) (90|45)(?= ?(?:and|then|into|to|out|plus|[,;+]|$))/g, '$1 elbow $2 '],
  [/\belbows\b/g, 'elbow'],
  [/(?<=[/;,] ?)(90|45)(?= ?(?:[/;,]|$))/g, ' elbow $1 '],
  [/\banother (?=elbow)/g, 'an '],
  [/(\d) ?(?:x|of those) (?=elbow)/g, '$1 '],
];

/** A line of plain words made even: lower case, digits, mended spelling, one name for each unit. */
export function evened(line: string): string {
  let text = withDigits(respelled(evenMarks(line)))
    .replace(/\btoo (?=90|45)/g, '2 ')
    .replace(/(\d),(?=\d{3}(?!\d))/g, '$1')
    .replace(/(?<![\d,.])(\d,\d{1,2}|\d{2},\d)(?![\d,])/g, (decimal) => decimal.replace(',', '.'))
    .replace(/(?<![\d.])\.(?=\d)/g, '0.')
    .replace(/(\d)\.(?=\s|$)/g, '$1 .')
    .replace(/(\d) ni\b/g, '$1 in')
    .replace(/(\d) ?['] ?-? ?(\d+(?:-\d+\/\d+)?) ?"/g, '$1 ft $2 in ')
    .replace(/\bw\/ ?o\b/g, 'without')
    .replace(/\bw\/ ?/g, 'with ');
  for (const [pattern, name] of [...bends, ...units]) text = text.replace(pattern, name);
  return text
    .replace(/\s+/g, ' ')
    .replace(/(\d ft) (?:and )?(?=\d+(?:[ -]\d+\/\d+)? in\b)/g, '$1 ')
    .trim();
}
