import { describe, expect, it } from 'vitest';
import { oneShot } from '#chat/one-shot.ts';
import { wordsOf } from '#chat/options.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import { commands } from '#commands/index.ts';
import type { Reply } from '#findings/reply.ts';
import type { UnitSystem } from '#quantity/units.ts';
import { crew } from '../store/workbench.ts';

// Houses and fans are the examples of the commands; all are invented.

const answering = commands.filter((command) => command.kind === 'answer');

function replyTo(name: string, units: UnitSystem): Reply {
  const command = answering.find((each) => each.name === name);
  const answer = command && oneShot(command, wordsOf(command.example), { units });
  if (!answer?.reply) throw new Error(`${name} does not answer its own example`);
  return answer.reply;
}

/** Every sentence, cell and line of working of a reply. */
const textsOf = ({ headline, findings, tables = [], assumed = [], assumedBecause = [], chart }: Reply): string[] => [
  headline,
  ...findings.flatMap(({ says, working, value }) => [
    says,
    ...working.flatMap(({ what, how = '', value: is }) => [what, how, is]),
    value?.shown ?? '',
  ]),
  ...[...findings.flatMap(({ table }) => table ?? []), ...tables].flatMap(({ columns, rows }) =>
    [columns, ...rows].flat(),
  ),
  ...assumed,
  ...assumedBecause,
  chart?.alt ?? '',
];

/** Inch-pound numbers and what follows them: written here anew, so that the law is not the program judging itself. */
const inchPound =
  /(?<![\w.,/=“-])(?:R-\d+(?:\.\d+)?|[-−]?\d[\d./,]*[ -](?:cfm50|cfm|in\. w\.g\.|fpm|°F·d|°F|Btu\/h|sq ft|sq in|cu ft|cu in|gal|ft|lb|in(?= |[.,;:)]|$)(?! (?:the|a|an|any|all|each|every|this|that|its|one)\b)))(?![\w·])(?=(.{0,60}))/gs;

/** The metric in brackets, at once or behind the rest of a range or of a unit made of two. */
const metricNext =
  /^(?:\/\w+|-\w+| (?:of fall for each|to|or|and|for each|per|a) [^()]{1,24}| \d+(?: \d\/\d)? in)?\s\((?:RSI )?[-−]?\d/;

/** Numbers without their metric beside them. What is quoted is as somebody typed it; a bracket behind a metric number is its twin. */
const lonely = (text: string): string[] =>
  [
    ...text
      .replace(/“[^”]*”/g, '')
      .replace(/(?<=\d (?:kg|mm|m|m²|m³)) \([^)]*\)/g, '')
      .matchAll(inchPound),
  ]
    .filter(([, after = '']) => !metricNext.test(after))
    .map(([found]) => found);

/** The same without any metric in brackets. */
const withoutMetric = (text: string): string =>
  text.replace(
    / \((?:RSI )?[-−]?[\d.,]+(?:(?: to| or) (?:RSI )?[-−]?[\d.,]+)?[^()\d]*?(?:[mc]?m[²³]?|L(?:\/s)?|m\/s|Pa|W|K|kWh?|kg|MJ|°C|K·d|km\/h|at 50 Pa|per m²?|meter|\d)\)/g,
    '',
  );

describe('a crew that reads both systems', () => {
  it.each(answering.map(({ name }) => name))('finds the metric beside every number of /%s', (name) => {
    expect(textsOf(replyTo(name, 'both')).flatMap(lonely)).toEqual([]);
  });

  it.each(answering.map(({ name }) => name))(
    'reads what an inch-pound crew reads in /%s, but for the brackets',
    (name) => {
      expect(textsOf(replyTo(name, 'both')).map(withoutMetric)).toEqual(
        textsOf(replyTo(name, 'inch-pound')).map(withoutMetric),
      );
    },
  );

  it('finds it where jobs, steps and rules are told as well, and is told who it is', async () => {
    const session = terminalSession({
      store: crew(),
      commands,
      who: 'ana',
      paper: { width: 400, colour: false },
      drawn: async () => undefined,
    });
    expect(await session.say('crew set units=both')).toContain('both: inch-pound first, metric in brackets');
    await session.say('job open 12 Sample Street');
    const said = [];
    for (const line of [
      'swap start list=swap',
      'swap next',
      'lookup joist bay',
      'lookup pitch to outside',
      'lookup backdraft',
    ])
      said.push(await session.say(line));
    expect(said.join('\n').split('\n').flatMap(lonely)).toEqual([]);
    expect(said[2]).toContain('14-1/2 in (368 mm) wide');
    const box = await session.say('boxfill box="18 in3"');
    expect(box).toContain('18 cu in (295 cm³).');
    const run = await session.say('/duct duct-run="14 ft 6 in flex; 8 ft 6 in 4 in smooth; wall cap"');
    expect(run).toContain('14 ft (4.27 m) 6 in (152 mm) flex; 8 ft 6 in (2.59 m) 4 in (102 mm) smooth; wall cap.');
  });

  it('types inch-pound numbers bare', async () => {
    const size = answering.find(({ name }) => name === 'size');
    const words = ['room-length=9', 'room-width=6', 'ceiling-height=8', 'fixtures=toilet'];
    const told = (units: UnitSystem) => size && oneShot(size, words, { units }).reply?.headline;
    expect(told('both')).toBe(told('inch-pound'));
  });

  it('finds fault where there is some', () => {
    expect(lonely('Keep 3 in off, and 54 cfm.')).toHaveLength(2);
    expect(lonely('54 cfm (25.5 L/s) and R-8 (RSI 1.41)')).toEqual([]);
    expect(withoutMetric('54 cfm (25.5 L/s), 14 ft (4.27 m) of 4 in (102 mm)')).toBe('54 cfm, 14 ft of 4 in');
  });
});
