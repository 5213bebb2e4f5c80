import { describe, expect, it } from 'vitest';
import type { Command } from '#chat/command.ts';
import { terminal } from '#chat/terminal/terminal.ts';
import help from '#commands/help.ts';
import job from '#commands/job.ts';
import size from '#commands/size.ts';
import { storeAt } from '../../store/workbench.ts';
import { kept, piped } from './streams.ts';

async function typed(lines: readonly string[], commands: readonly Command[] = [size, job, help], store = storeAt()) {
  const output = kept();
  const given = { store: store.scoped('terminal'), commands, who: 'ann', environment: {} };
  const code = await terminal(given, { input: piped(...lines), output });
  return { code, out: output.text() };
}

describe('a terminal fed from a pipe', () => {
  it('greets in three lines, prints each line it read, and ends with the input', async () => {
    const { code, out } = await typed(['job list']);
    expect(code).toBe(0);
    expect(out).toBe(
      [
        'Fanwright: what a bathroom fan will really move, and what the room needs.',
        'Type size (air a room needs), duct (what a fan delivers), or help for the rest.',
        'At a question: the answer, or don’t know, why, back, stop. To leave: quit.',
        'New here? Type demo: an invented house, and a whole job in five minutes.',
        '',
        '> job list',
        'There are no open jobs. /job open starts one.',
        '',
        '',
      ].join('\n'),
    );
  });

  it.each(['quit', 'exit', ' BYE ', '/quit'])('%j leaves, at a question too', async (word) => {
    const { out } = await typed(['size', word, 'help']);
    expect(out).not.toContain('Commands');
    expect(out).toContain('The question stays open.');
  });

  it('knows the question again after a restart, and offers to go on', async () => {
    const store = storeAt();
    await typed(['size', '8 ft'], undefined, store);
    const { out } = await typed(['go on', '5 ft'], undefined, store);
    expect(out).toContain('You were asked, for size: How wide is it? Type go on to answer it.');
    expect(out).toContain('Room width: 5 ft (1.52 m).');
  });

  it('takes a command all the same, so that a script runs whatever was left open', async () => {
    const store = storeAt();
    await typed(['size', '8 ft'], undefined, store);
    const { out } = await typed(['size room-width=5', '8'], undefined, store);
    expect(out).toContain('How high is the ceiling?');
  });

  it('does not offer what was stopped', async () => {
    const store = storeAt();
    await typed(['size', '8 ft', 'stop'], undefined, store);
    const { out } = await typed(['go on'], undefined, store);
    expect(out).not.toContain('You were asked');
    expect(out).toContain('No question is waiting for an answer.');
  });

  it('survives a slip of ours, says so, and ends with 1', async () => {
    const broken: Command = {
      ...help,
      name: 'broken',
      actions: [
        {
          name: '',
          summary: '',
          options: [],
          act() {
            throw new TypeError('nothing is there');
          },
        },
      ],
    };
    const { code, out } = await typed(['broken', 'job list'], [broken, job]);
    expect(out).toContain('Something of ours went wrong, and that line was not answered: nothing is there');
    expect(out).toContain('There are no open jobs.');
    expect(out).not.toMatch(/^\s+at /m);
    expect(code).toBe(1);
  });

  it('prints no escape and no control character, whatever is typed', async () => {
    const nasty = '\x1b[31mred\x07 \u009b5n \u202eesrever';
    const { out } = await typed([nasty, 'size', nasty, `job open ${nasty}`, `/job open ${nasty}`, '/job show']);
    for (const line of out.split('\n')) expect(line).not.toMatch(/[\p{Cc}\u202e]/u);
  });
});
