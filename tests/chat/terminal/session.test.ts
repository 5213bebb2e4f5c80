import { describe, expect, it } from 'vitest';
import type { Command } from '#chat/command.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import duct from '#commands/duct.ts';
import help from '#commands/help.ts';
import job from '#commands/job.ts';
import size from '#commands/size.ts';
import { crew } from '../../store/workbench.ts';

const commands: readonly Command[] = [size, duct, job, help];

function sitting(store = crew(), who = 'ann') {
  const session = terminalSession({
    store,
    commands,
    who,
    paper: { width: 87, colour: false },
    drawn: async (command, { chart }) => (chart ? `charts/${command}.png` : undefined),
  });
  const say = async (...lines: readonly string[]): Promise<string> => {
    let said = '';
    for (const line of lines) said = await session.say(line);
    return said;
  };
  return { session, say };
}

const bath = ['size', '9 ft', '8 ft', '8 ft', 'none', '1'];

describe('after an answer', () => {
  it('the working can be asked for, until there is another answer', async () => {
    const { say } = sitting();
    expect(await say('working')).toBe('There is no answer to show the working of yet. Ask first, such as with size.');
    await say(...bath);
    const working = await say('working');
    expect(working).toContain('By floor area');
    expect(await say('/working')).toBe(working);
    await say('job show');
    expect(await say('Working')).toBe(working);
  });

  it('a word to the session is one at an open question too, where the question could not take it', async () => {
    const { say } = sitting();
    await say(...bath);
    const working = await say('working');
    const asked = await say('duct');
    expect(await say('working')).toBe(`${working}\n\n${asked}`);
    expect(await say('go on')).toBe(asked);
    expect(await say('change 2')).toContain('no answer here to change');
    await say('stop', 'job open Ann’s', 'size');
    expect(await say('9 ft', 'change 1')).toContain('Now: 9 ft (2.74 m).');
    expect(await say('10 ft')).toContain('Room length: 10 ft');
  });

  it('an answer can be changed by its number or its name', async () => {
    const { say } = sitting();
    expect(await say('change')).toBe('There is no answer here to change. Ask first, such as with size.');
    await say(...bath);
    expect(await say('change')).toContain('  1  Room length (room-length): 9 ft (2.74 m)');
    expect(await say('change 99')).toContain('Which answer?');
    expect(await say('change 1')).toBe('Now: 9 ft (2.74 m).\nHow long is the room, wall to wall?');
    expect(await say('10 ft')).toContain('This room needs 80 cfm');
    expect(await say('change Room-Width', '9 ft')).toContain('This room needs 90 cfm');
  });

  it('back takes back the last thing said', async () => {
    const { say } = sitting();
    expect(await say(...bath, 'back')).toMatch(/^Took back: How the fan runs\.\nHow will the fan run\?/);
  });

  it('the chart is named, and what could be asked next', async () => {
    const { say } = sitting();
    const said = await say(
      'duct fan-curve=110 collar=4 duct-run="10 ft 4 in flex; wall cap" airflow-needed=dk',
      'none',
      'dk',
    );
    expect(said).toContain('Chart: charts/duct.png\n');
    expect(said).toMatch(/\nWhat does the room need\? Type size\.$/);
  });
});

describe('a question left for another command', () => {
  it('can be come back to', async () => {
    const { say } = sitting();
    await say('duct', '110', '4 in', '10 ft 4 in flex; wall cap');
    expect(await say('/job show')).toContain('3 answers');
    expect(await say('go on')).toContain('How much air must it move?');
  });

  it('is offered again by name after the other answer', async () => {
    const { say } = sitting();
    const said = await say('duct', '110', '/size', ...bath.slice(1));
    expect(said.replace(/\s+/g, ' ')).toContain('Type go on to return to duct.');
    expect(await say('go on')).toContain('collar');
  });

  it('is one’s own: another person at the same records has none', async () => {
    const store = crew();
    await sitting(store, 'ann').say('size', '9 ft');
    expect(sitting(store, 'bo').session.greeting()).not.toContain('You were asked');
    expect(sitting(store, 'ann').session.greeting()).toContain('You were asked, for size: How wide is it?');
  });
});

describe('a typed number', () => {
  it('picks the choice with that number, and several where several may be picked', async () => {
    const { say } = sitting();
    await say('size', '9 ft', '8 ft', '8 ft');
    expect(await say('1, 3')).toContain('Fixtures in the room: Toilet, Tub.');
    expect(await say('back', '2 4')).toContain('Fixtures in the room: Shower, Jetted tub.');
    expect(await say('back', '1 9')).toContain('did not fit');
  });

  it('that stands for no choice is read as an answer', async () => {
    const { say } = sitting();
    expect(await say('size', '9', '8', '8', 'none', '3')).toContain('“3” is not one of these.');
  });
});

describe('Tab', () => {
  const complete = async (line: string, ...before: readonly string[]) => {
    const { session, say } = sitting();
    await say(...before);
    return session.completions(line);
  };

  it('completes commands, with or without a slash, and their actions', async () => {
    expect(await complete('')).toEqual([['size ', 'duct ', 'job ', 'help '], '']);
    expect(await complete('si')).toEqual([['size '], 'si']);
    expect(await complete('/D')).toEqual([['/duct '], '/D']);
    expect(await complete('job ')).toEqual([
      ['open ', 'show ', 'list ', 'undo ', 'close ', 'causes ', 'export ', 'import ', 'erase '],
      '',
    ]);
    expect(await complete('job l')).toEqual([['list '], 'l']);
    expect(await complete('bogus x')).toEqual([[], 'bogus x']);
  });

  it('completes the options not given yet, and the choices of one', async () => {
    expect(await complete('size room-')).toEqual([['room-length=', 'room-width=', 'room-area='], 'room-']);
    expect(await complete('size room-length="8 ft" room-')).toEqual([['room-width=', 'room-area='], 'room-']);
    expect(await complete('size running=c')).toEqual([['continuous '], 'c']);
    expect(await complete('duct collar=')).toEqual([[], '']);
  });

  it('completes the choices of a question, after a comma too, and the words that always do', async () => {
    const room = ['size', '9', '8', '8'];
    expect(await complete('To', ...room)).toEqual([['Toilet'], 'To']);
    expect(await complete('Toilet, St', ...room)).toEqual([['Steam shower'], 'St']);
    expect(await complete('st', ...room)).toEqual([['Steam shower', 'stop'], 'st']);
    expect(await complete('', 'size')).toEqual([["don't know", 'why', 'back', 'stop'], '']);
    expect(await complete('10', 'duct', '110', '4 in')).toEqual([['10 ft 4 in flex', '10 ft 4 in smooth'], '10']);
    expect(await complete('/si', ...room)).toEqual([['/size '], '/si']);
  });
});

describe('a whole command line typed where a question stands', () => {
  it('begins that command, and the question waits', async () => {
    const { say } = sitting();
    expect(await say('size', 'duct collar="4 in"')).toMatch(/fan’s label say/);
    expect(await say('stop', 'go on')).toMatch(/How long is the room/);
  });

  it('does so too where it names what is kept', async () => {
    const { say } = sitting();
    expect(await say('size', 'job list')).not.toMatch(/cannot read/);
    expect(await say('go on')).toMatch(/How long is the room/);
  });
});

describe('what belongs to a question where none stands', () => {
  it.each(['stop', 'why', 'don’t know'])('%s is answered as that', async (line) => {
    expect(await sitting().say(line)).toMatch(/Nothing is being asked|No question/);
  });
});
