import { commands } from '#commands/index.ts';
import type { AnyQuestion } from '#interview/question.ts';
import type { Dice } from '../support/whole-swap/dice.ts';

/** Words a person may type into any field: some are answers somewhere, most are not. All of it is made up. */
const kinds: Readonly<Record<string, readonly string[]>> = {
  answers: [
    '8 ft',
    '8\'6"',
    '2.4 m',
    '110',
    '84@0.1 66@0.25',
    '4 in',
    '14 ft 4 in flex; 2 x elbow 90; wall cap',
    'toilet, tub',
    'none',
    'yes',
    'no',
    "don't know",
    '50 cfm',
    '1.5 sones',
    '4x14, 2x12',
    'loud hum since Tuesday, the mirror stays fogged',
    'about 8 ft, guess',
    '0',
    '1',
    '2',
    '3',
    'done',
    'back',
    'why',
  ],
  units: [
    '8 parsecs',
    '5 lb',
    '12 V',
    '30 Pa',
    '70 °F',
    '21 C',
    '3 kWh',
    '100 cfm/sq ft',
    'ft',
    '4 in. w.g.',
    '1/0 ft',
  ],
  nonsense: [
    'asdf',
    '?',
    '...',
    '-',
    '_',
    'lorem ipsum dolor',
    'no idea mate',
    ',,,;;;',
    '= = =',
    '@',
    '%',
    '&&',
    '""',
  ],
  numbers: [
    '-5',
    '-0',
    '-12 ft',
    '1e309',
    '-1e309 ft',
    '1e-309',
    '9'.repeat(40),
    '0x10',
    '1,000,000',
    '٣ ft',
    '½',
    '1/0',
    'NaN',
  ],
  dates: ['2026-02-30', '2026-13-01', '1/2/03', '0000-00-00', '2026-11-30', '+275760-09-13', 'yesterday', '1989'],
  long: [
    'x'.repeat(190),
    'ab '.repeat(60),
    `${'9'.repeat(180)} ft`,
    '4 in flex; '.repeat(17),
    '*'.repeat(190),
    '\\'.repeat(150),
  ],
  emoji: ['🙂', '🛁'.repeat(60), '👩‍🔧', '🇺🇸 8 ft', '\ud83d', '\udc00 8 ft', 'é'.normalize('NFD').repeat(90), 'Z̷̛͔a̵l̶g̶o̷'],
  direction: ['\u202e8 ft', 'عرض الغرفة', 'abc\u2066def\u2069', 'אבג 8 ft', '\u200f', '\u061c4 in'],
  invisible: ['\u200b', '8\u200b ft', '\u200d\u200d', '\ufeff8 ft', '\u2060', '\u00ad', '\u3164', '\u00a0', '\u2800'],
  markdown: [
    '**bold**',
    '```ansi\nred```',
    '# big',
    '||hidden||',
    '[a](https://example.com)',
    '> quoted',
    '-# small',
    '~~x~~',
    '`',
    '***',
  ],
  escapes: [
    '\u001b[31mred\u001b[0m',
    '\u001b]0;title\u0007',
    '\u009b2J',
    '\u0000',
    'a\bb',
    '\u001b[2J\u001b[H',
    '\u007f',
    'a\rb',
    '\u0085',
  ],
  mentions: [
    '@everyone',
    '@here',
    '<@123456789012345678>',
    '<@&1>',
    '<#1>',
    '</duct:1>',
    '<t:0:R>',
    '<:a:1>',
    '@everyone 8 ft',
  ],
  json: [
    '{"a":1}',
    '[[[[]]]]',
    '{"__proto__":{"x":1}}',
    'null',
    'undefined',
    'true',
    '__proto__',
    'constructor',
    'toString',
  ],
  sql: ["'; DROP TABLE facts; --", '" OR 1=1', '%', '_%', 'a\\%', "x' UNION SELECT * FROM talks --", '?1', ':name'],
  formulas: ['=1+1', '+cmd|x!A1', '@SUM(A1)', '-2+3', '\t=1'],
  lines: ['8 ft\n5 ft', '\n', '\r\n\r\n', 'a\nb\nc\nd\ne\nf', '8\u2028ft', 'x\u2029y'],
  words: [
    '/duct',
    'stop',
    'cancel',
    'quit',
    'help',
    '/help',
    'size room-length=8',
    'change 1',
    'working',
    'go on',
    'undo',
  ],
};

const kindNames = Object.keys(kinds);

/** Anything at all. */
export const anything = (chance: Dice): string => {
  const text = chance.oneOf(kinds[chance.oneOf(kindNames)] as readonly string[]);
  return chance.chance(0.15) ? `${text} ${chance.oneOf(kinds[chance.oneOf(kindNames)] as readonly string[])}` : text;
};

/** What the commands' own examples give, by the name of the option: answers that are understood. */
const examples = new Map<string, readonly string[]>();
for (const { example } of commands) {
  for (const [, id = '', quoted, bare] of example.matchAll(/([a-z][a-z-]*)=(?:"([^"]*)"|(\S+))/g)) {
    examples.set(id, [...(examples.get(id) ?? []), quoted ?? bare ?? '']);
  }
}

const questions: ReadonlyMap<string, AnyQuestion> = new Map(
  commands.flatMap((command) =>
    command.kind === 'answer' ? command.takes.map((each) => [each.id, each] as const) : [],
  ),
);

/** Something that may well be understood as an answer to the question of this name. */
function fitting(id: string, chance: Dice): string {
  const widget = questions.get(id)?.widget;
  const choices = widget && widget.kind !== 'text' ? widget.choices.map((choice) => choice.id) : [];
  const typed = widget?.kind === 'text' ? [widget.placeholder] : [];
  const known = [...choices, ...typed, ...(examples.get(id) ?? []), "don't know"];
  return chance.oneOf(known.length > 1 ? known : (kinds['answers'] as readonly string[]));
}

/** What somebody types where this is asked: more often than not an answer, else anything. */
export const typedFor = (id: string, chance: Dice): string =>
  chance.chance(0.6) ? fitting(id, chance) : anything(chance);
