import { describe, expect, it } from 'vitest';
import { deskFor } from '#chat/desk.ts';
import duct from '#commands/duct.ts';
import job from '#commands/job.ts';
import size from '#commands/size.ts';
import type { NewFact } from '#store/facts.ts';
import { crew } from '../store/workbench.ts';

const told = (fact: string, typed: string, more: Partial<NewFact> = {}): NewFact => ({
  fact,
  typed,
  units: 'inch-pound',
  value: typed,
  how: 'told',
  who: 'ann',
  ...more,
});

/** A desk in one thread, and its actions by name. */
function desk(store = crew(), channel = 'thread-1') {
  const at = deskFor({
    store: () => store,
    speaker: { channel, who: 'ann' },
    commands: [size, duct],
    mayManage: true,
  });
  return (action: string, options: Readonly<Record<string, string>> = {}) => {
    const found = job.actions.find(({ name }) => name === action);
    if (!found) throw new Error(`job has no ${action}`);
    const reply = found.act(at, options);
    if ('start' in reply) throw new Error(`job ${action} begins ${reply.start}`);
    return reply;
  };
}

const rowsOf = (reply: ReturnType<ReturnType<typeof desk>>) => reply.tables?.[0]?.rows;

describe('opening a job', () => {
  it('by a new name starts a clean sheet', () => {
    expect(desk()('open', { name: ' 14  Maple St ' }).headline).toBe(
      'Job 1, 14 Maple St is open here. Nothing is on it yet.',
    );
  });

  it('without a name starts one without', () => {
    const on = desk();
    on('open', { name: '14 Maple St' });
    expect(on('open').headline).toBe('Job 2 (no name yet) is open here. Nothing is on it yet.');
  });

  it('asks which job is meant before it opens another much like it', () => {
    const on = desk();
    on('open', { name: '14 Maple St' });
    for (const name of ['maple', '14 maple', '14 Maple St.', '14 Maple Street']) {
      const reply = on('open', { name });
      expect(reply.headline).toBe('Did you mean Job 1, 14 Maple St? Nothing is opened yet.');
      expect(reply.presses?.[0]?.given).toEqual({ name: '1' });
    }
    expect(on('open', { name: '15 Maple St' }).headline).toContain('Job 2, 15 Maple St is open');
    expect(on('open', { name: 'maple', new: 'yes' }).headline).toContain('Job 3, maple is open');
  });

  it('by the name or number of an earlier one brings it back, closed or not', () => {
    const store = crew();
    const on = desk(store);
    on('open', { name: '14 Maple St' });
    store.addFact(1, told('room-length', '8 ft'));
    on('close');
    expect(on('open', { name: '14 maple st' }).headline).toBe(
      'Job 1, 14 Maple St is open here again, with 1 answer on it.',
    );
    on('open');
    expect(on('open', { name: '#1' }).headline).toContain('Job 1, 14 Maple St');
    expect(on('open', { name: '2' }).headline).toContain('with 0 answers');
  });

  it('by a number that was never given is refused, rather than made a name', () => {
    const store = crew();
    expect(desk(store)('open', { name: '#9' }).headline).toBe('There is no job “#9” here. /job list shows them.');
    expect(desk(store)('open', { name: '9' }).headline).toBe('There is no job “9” here. /job list shows them.');
    expect(store.listSheets({ limit: 9 })).toEqual([]);
  });

  it('in one thread leaves the sheet of another alone', () => {
    const store = crew();
    desk(store, 'one')('open', { name: 'A' });
    desk(store, 'two')('open', { name: 'B' });
    expect(desk(store, 'one')('show').headline).toContain('Job 1, A');
  });
});

describe('showing a job', () => {
  it('lists what is on it: as typed, how known, by whom', () => {
    const store = crew();
    const on = desk(store);
    on('open', { name: 'Attic' });
    store.addFacts(1, [
      told('room-length', '8-6', { how: 'measured' }),
      told('fan-curve', '110', { how: 'label', who: 'bo' }),
      told('ceiling-height', 'dunno', { how: 'unknown', value: null }),
      told('of-a-command-that-is-gone', 'x', { how: 'estimated' }),
    ]);
    const shown = on('show');
    expect(shown.headline).toBe('Job 1, Attic: 4 answers.');
    expect(rowsOf(shown)).toEqual([
      ['Room length', '8-6', 'measured', 'ann'],
      ['Rated points of the fan, or the carton’s number', '110', 'read off the label', 'bo'],
      ['Ceiling height', 'don’t know', 'not known', 'ann'],
      ['of-a-command-that-is-gone', 'x', 'estimated', 'ann'],
    ]);
  });

  it('says so where nothing is on it, or there is no such job', () => {
    expect(desk()('show').headline).toBe('Job 1 (no name yet): nothing is on it yet. Try /size or /duct.');
    expect(desk()('show', { name: 'x'.repeat(100) }).headline).toBe(
      `There is no job “${'x'.repeat(40)}” here. /job list shows them.`,
    );
  });
});

describe('listing jobs', () => {
  it('shows the open ones, newest first, unless told otherwise', () => {
    const on = desk();
    expect(on('list').headline).toBe('There are no open jobs. /job open starts one.');
    for (const name of ['Ash', 'Birch', 'Birch Court']) on('open', { name });
    on('close');
    expect(on('list').headline).toBe('2 open jobs, newest first.');
    expect(rowsOf(on('list'))?.map(([number, name, state]) => [number, name, state])).toEqual([
      ['2', 'Birch', 'open'],
      ['1', 'Ash', 'open'],
    ]);
    expect(rowsOf(on('list', { state: 'closed' }))).toHaveLength(1);
    expect(rowsOf(on('list', { state: 'all', search: 'birch' }))).toHaveLength(2);
    expect(on('list', { search: 'oak' }).headline).toBe('No open job has that in its name.');
  });
});

describe('taking back', () => {
  it('takes the newest answer, and says what counts then', () => {
    const store = crew();
    const on = desk(store);
    on('open', { name: 'Ash' });
    store.addFacts(1, [
      told('room-length', '8 ft'),
      told('room-length', '9 ft'),
      told('room-width', '?', { how: 'unknown', value: null }),
    ]);
    expect(on('undo').headline).toBe('Took back: Room width (don’t know). It is unanswered again.');
    expect(on('undo').headline).toBe('Took back: Room length (9 ft). It is 8 ft again.');
    on('undo');
    expect(on('undo').headline).toBe('Job 1, Ash: there is nothing to take back.');
  });
});

describe('closing', () => {
  it('keeps the sheet, and the next question starts on a clean one', () => {
    const store = crew();
    const on = desk(store);
    on('open', { name: 'Ash' });
    expect(on('close').headline).toBe(
      'Job 1, Ash is closed. The next question here starts on a clean sheet; /job open 1 brings this one back.',
    );
    expect(on('show').headline).toBe('Job 2 (no name yet): nothing is on it yet. Try /size or /duct.');
  });
});

describe('what callbacks turned out to be', () => {
  const closed = (store: ReturnType<typeof crew>, name: string, cause: string) => {
    const { number } = store.openSheet({ channel: name, name, who: 'ann' });
    store.addFact(number, { ...told('confirmed-cause', cause), value: cause });
    return number;
  };

  it('counts the confirmed causes of a year, most frequent first', () => {
    const store = crew();
    closed(store, '14 Maple St', 'bearing');
    closed(store, '3 Elm St', 'bearing');
    closed(store, '9 Oak St', 'smallduct');
    const year = store.listSheets({ limit: 1 })[0]?.openedAt.slice(0, 4) ?? '';
    const { chart, tables = [] } = desk(store)('causes', { year });
    const rows = tables[0]?.rows;
    expect(chart?.bars?.map(({ amount, shown }) => [amount, shown])).toEqual([
      [2, '2 of 3'],
      [1, '1 of 3'],
    ]);
    expect(chart?.alt).toMatch(/^3 callbacks of \d{4} with a confirmed cause\. Worn motor bearing.*: 2/);
    expect(rows?.map(([cause, count]) => [cause, count])).toEqual([
      ['Worn motor bearing or dry sleeve', '2'],
      ['Duct or reducer too small for the fan: it roars', '1'],
    ]);
    expect(desk(store)('causes', { year: '1999' }).headline).toMatch(/^No callback of 1999/);
    expect(desk(store)('causes', { year: 'last' }).headline).toMatch(/is not a year/);
  });
});

describe('taking a job away', () => {
  it('exports everything said, and erases only when the number is given again', () => {
    const store = crew();
    const { number } = store.openSheet({ channel: 'thread-1', name: '14 Maple St', who: 'ann' });
    store.addFact(number, told('collar', '4 in'));
    const file = desk(store)('export').files?.[0];
    expect(file?.type).toBe('application/json');
    expect(file && 'text' in file ? JSON.parse(file.text) : {}).toMatchObject({
      facts: [{ fact: 'collar', typed: '4 in' }],
    });
    expect(desk(store)('erase', { name: '14 Maple St', sure: '99' }).headline).toMatch(/^Nothing was erased/);
    expect(store.findSheet(number)).toBeDefined();
    expect(desk(store)('erase', { name: '14 Maple St', sure: String(number) }).headline).toMatch(/is erased/);
    expect(store.findSheet(number)).toBeUndefined();
  });
});
