import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AnswerCommand } from '#chat/command.ts';
import { type Session, terminalSession } from '#chat/terminal/session.ts';
import duct from '#commands/duct.ts';
import size from '#commands/size.ts';
import { storeAt } from '../../store/workbench.ts';

/** A good answer to every question of a command, in the order asked, for going on to the next. */
const walks: readonly (readonly [AnswerCommand<unknown>, readonly (readonly [id: string, good: string])[]])[] = [
  [
    size as AnswerCommand<unknown>,
    [
      ['room-length', '8 ft'],
      ['room-width', '5 ft'],
      ['ceiling-height', '8 ft'],
      ['fixtures', 'toilet, tub'],
      ['toilet-compartment', 'no'],
      ['running', '1'],
    ],
  ],
  [
    duct as AnswerCommand<unknown>,
    [
      ['fan-curve', '84@0.1 66@0.25'],
      ['collar', '4 in'],
      ['duct-run', '14 ft 4 in flex; wall cap'],
      ['airflow-needed', '50'],
      ['fan-settings', 'none'],
      ['rated-sones', '1'],
    ],
  ],
];

/** Nothing here answers any question. */
const hopeless: readonly (readonly [what: string, typed: string])[] = [
  ['10,000 characters', 'x'.repeat(10_000)],
  ['10,000 digits', '9'.repeat(10_000)],
  ['10,000 spaced words', 'ab '.repeat(3_333)],
  ['an emoji', '🙂'],
  ['many emoji', '👩‍🔧'.repeat(200)],
  ['a formula', '=1+1'],
  ['a call', 'ones(3000,3000)'],
  ['a call of ours', 'createUnit("x")'],
  ['a power tower', '9^9^9^9'],
  ['a wrong unit', '14 kg'],
  ['volts', '120 V'],
  ['zero diameter', '0 in'],
  ['a negative', '-4 in'],
  ['infinity', 'Infinity ft'],
  ['not a number', 'NaN'],
  ['too much', '1e300'],
  ['a reversed reducer', 'reducer 4 to 6 in; wall cap'],
  ['a duct of no diameter', '14 ft 0 in flex; wall cap'],
  ['NUL', '\0'],
  ['controls', '\u0001\u0002\u0007\u0008\u001b\u007f\u0085\u009b'],
  ['an escape', '\x1b[2J\x1b[31mhello\x1b]0;title\x07'],
  ['a reversed line', '\u202egnorw'],
  ['a prototype', '__proto__'],
  ['a constructor', 'constructor'],
  ['a lone half of a sign', '\ud83d'],
  ['markup', '<script>alert(1)</script>'],
  ['a mention', '@everyone <@123456789012345678>'],
  ['a path', '../../etc/passwd'],
  ['JSON', '{"value":1}'],
  ['a query', "'; DROP TABLE facts; --"],
  ['only signs', '; ; , . @ = " \' %'],
];

function sitting(command: AnswerCommand<unknown>) {
  const store = storeAt().scoped('terminal');
  const session = terminalSession({
    store,
    commands: [command],
    who: 'ann',
    paper: { width: 87, colour: false },
    drawn: async () => undefined,
  });
  const facts = () => [...store.newestFacts(1).keys()];
  return { session, facts };
}

const questionOf = (command: AnswerCommand<unknown>, id: string) =>
  command.takes.find((question) => question.id === id) as AnswerCommand<unknown>['takes'][number];

function proper(said: string): void {
  expect(said).not.toMatch(/[^\P{Cc}\n]/u);
  expect(said).not.toMatch(/\bat .*\.(?:ts|js):\d+|undefined|\[object|NaN\b(?!”)/);
  for (const line of said.split('\n')) expect(line.length).toBeLessThanOrEqual(120);
}

describe.each(walks)('bad input at every prompt of %#', (command, walk) => {
  it(`gets a sentence and the same question again, and ${command.name} goes on`, async () => {
    const { session, facts } = sitting(command);
    await session.say(command.name);
    for (const [id, good] of walk) {
      const { prompt } = questionOf(command, id);
      const again = prompt.split(' ').slice(-3).join(' ');
      for (const [what, typed] of hopeless) {
        const said = await session.say(typed);
        proper(said);
        expect(said.replace(/\s+/g, ' '), `${what} at ${id}`).toContain(again);
        expect(said.split('\n')[0], `${what} at ${id}`).not.toContain(again);
        expect(facts(), `${what} at ${id}`).not.toContain(id);
      }
      const empty = await session.say('   ');
      expect(empty.replace(/\s+/g, ' ')).toContain(again);
      await session.say(good);
      expect(facts()).toContain(id);
    }
    expect(session.asking()).toBe(false);
  });
});

const anything = fc.oneof(
  { weight: 3, arbitrary: fc.string({ unit: 'grapheme', maxLength: 60 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 400 }) },
  {
    weight: 3,
    arbitrary: fc
      .array(
        fc.constantFrom(
          ...'4 14 0 -1 1/2 in ft m cm mm " \' @ ; , . x k= % cfm flex smooth elbow 90 wall cap reducer to and done back why = ( ) 1e9'.split(
            ' ',
          ),
        ),
        { maxLength: 12 },
      )
      .map((words) => words.join(' ')),
  },
);

async function heardOut(session: Session, lines: readonly string[]): Promise<void> {
  for (const line of lines) proper(await session.say(line));
}

describe.each(walks)('anything at all typed at %#', (command) => {
  it(`never brings ${command.name} down`, { timeout: 30_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anything, { minLength: 1, maxLength: 12 }), async (lines) => {
        const { session } = sitting(command);
        await session.say(command.name);
        await heardOut(session, lines);
        if (session.asking()) expect(await session.say('stop')).toContain('Stopped.');
      }),
      { seed: 1, numRuns: 40 },
    );
  });
});
