import { describe, expect, it } from 'vitest';
import type { AnswerCommand } from '#chat/command.ts';
import { begin, hear } from '#chat/conversation.ts';
import type { Screen } from '#chat/screen.ts';
import { type Heard, recalledTalk } from '#chat/talk.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import callback from '#commands/callback.ts';
import duct from '#commands/duct.ts';
import makeup from '#commands/makeup.ts';
import type { ScopedStore } from '#store/store.ts';
import { crew } from '../../store/workbench.ts';
import { askedIn, ladder } from './crew.ts';

const commands = [callback, makeup, duct] as readonly AnswerCommand<unknown>[];

const begun = (store: ScopedStore, command: unknown, given: Readonly<Record<string, string>>): Screen =>
  begin(store, command as AnswerCommand<unknown>, given, ladder);

function goOn(store: ScopedStore, screen: Screen, heard: string | Heard): Screen {
  const talk = recalledTalk(store, commands, screen.talk ?? '');
  if (!talk) throw new Error('there is no such talk');
  const said = typeof heard === 'string' ? { answers: { [screen.asking?.question.id ?? 'none']: heard } } : heard;
  return hear(store, talk, said, ladder.who);
}

const seenAll = { seen: 'whoosh, noise-new, small, sp-high, flow-mid', 'confirmed-cause': 'smallduct' };

describe('a value that could not be read', () => {
  it('is asked again before there is an answer, though nothing else asks for it', () => {
    const store = crew();
    const screen = begun(store, callback, { ...seenAll, 'measured-airflow': 'plenty' });
    expect(screen.notes).toEqual([expect.stringMatching(/plenty/)]);
    expect(screen.reply).toBeUndefined();
    expect(askedIn(screen)).toBe('measured-airflow');
    const again = goOn(store, screen, 'a lot');
    expect(askedIn(again)).toBe('measured-airflow');
    expect(goOn(store, again, '40 cfm').reply?.headline).toMatch(/^Closed/);
  });

  it('is not made up for by what the sheet said before, and what that is stands beside it', () => {
    const store = crew();
    begun(store, callback, { ...seenAll, 'measured-airflow': '80 cfm' });
    const screen = begun(store, callback, { 'measured-airflow': '8o cfm!' });
    expect(askedIn(screen)).toBe('measured-airflow');
    expect(screen.asking?.now).toMatch(/^80 cfm/);
  });

  it('that nobody knows lets the answer come, and says so on the sheet', () => {
    const store = crew();
    const screen = begun(store, callback, { ...seenAll, 'measured-airflow': 'plenty' });
    expect(goOn(store, screen, { turn: 'not-known' }).reply).toBeDefined();
    expect(store.newestFacts(1).get('measured-airflow')).toMatchObject({ how: 'unknown' });
  });

  it('is still asked after going back and over a change of another', () => {
    const store = crew();
    const screen = begun(store, callback, { ...seenAll, 'measured-airflow': 'plenty' });
    expect(askedIn(goOn(store, screen, { turn: 'back' }))).toBe('measured-airflow');
    const changing = goOn(store, screen, { change: 'seen' });
    expect(askedIn(changing)).toBe('seen');
    expect(askedIn(goOn(store, changing, 'fog'))).toBe('measured-airflow');
  });

  it('of a matter of safety is asked before the others', () => {
    const store = crew();
    const screen = begun(store, makeup, {
      'house-leakage': 'leaky',
      'other-exhausts': 'loads',
      'spillage-seen': 'perhaps so',
      'carbon-monoxide-alarm': 'purple',
    });
    expect(screen.notes).toHaveLength(4);
    const order: (string | undefined)[] = [askedIn(screen)];
    let now = goOn(store, screen, 'no');
    order.push(askedIn(now));
    now = goOn(store, now, 'no');
    order.push(askedIn(now));
    expect(new Set(order.slice(0, 2))).toEqual(new Set(['spillage-seen', 'carbon-monoxide-alarm']));
    expect(['house-leakage', 'other-exhausts']).toContain(order[2]);
  });

  it('never holds a stop back', () => {
    const screen = begun(crew(), callback, { complaint: 'burning smell from the fan', 'measured-airflow': 'plenty' });
    expect(screen.reply?.findings[0]).toMatchObject({ id: 'danger', weight: 'stop' });
    expect(screen.notes).toEqual([expect.stringMatching(/plenty/)]);
  });
});

describe('at the prompt of the terminal', () => {
  const sitting = (language?: 'spanish') =>
    terminalSession({
      store: crew(),
      commands,
      who: 'ann',
      language,
      paper: { width: 200, colour: false },
      drawn: async () => undefined,
    });
  const all = 'seen="whoosh, small" confirmed-cause=smallduct';

  it('a flag of the shell is left out, and said to be', async () => {
    const said = await sitting().say(`callback ${all} measured-airflow=40 cfm --json --units=both`);
    expect(said).toMatch(/^Left out: --json, --units=both\. It is for the shell only/);
    expect(said).toContain('Closed: ');
    expect(await sitting('spanish').say(`callback ${all} --json`)).toMatch(/^Se dejó fuera: --json\. Es solo para la/);
  });

  it('beside a flag too a value that could not be read is asked again', async () => {
    const said = await sitting().say(`callback ${all} measured-airflow=plenty --json`);
    expect(said).toContain('“plenty”');
    expect(said).not.toContain('Closed: ');
    expect(said).toMatch(/\n.*measured.*\?/i);
  });

  it('a value under a misspelt or repeated name is asked for by the right one', async () => {
    for (const given of ['measured-airlow=40', 'measured-airflow=40 measured-airflow=50']) {
      const session = sitting();
      expect(await session.say(`callback ${all} ${given}`), given).not.toContain('Closed: ');
      expect(await session.say('45 cfm'), given).toContain('Closed: ');
    }
  });
});
