import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { checklists } from '#knowledge/checklists.ts';
import { openStore } from '#store/store.ts';
import { hired } from '../../support/whole-swap/crew.ts';
import { wholeDay } from '../../support/whole-swap/day.ts';
import { complaintsAbout } from '../../support/whole-swap/deeds.ts';
import { dice } from '../../support/whole-swap/dice.ts';
import { openTerminal } from '../../support/whole-swap/terminal-place.ts';

const minutes = 60_000;

it(
  'a whole swap by two people at one keyboard, through deaths of the program',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fanwright-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const file = join(folder, 'records.sqlite');
    const terminal = openTerminal(folder, file);
    await hired(terminal.place, { lead: 'Ann', apprentice: 'Ben' });
    let holds = 0;
    const day = await wholeDay(terminal.place, ['Ann', 'Ben'], {
      luck: dice(5),
      revive: terminal.restart,
      async before(who, _, step) {
        if (!step.hold) return;
        expect(who).toBe('Ann');
        holds += 1;
        if (holds === 4) terminal.killNext();
      },
    });
    expect(day.deaths).toBe(1);
    expect((await terminal.place.type('Ben', 'swap next')).headline).toMatch(/closed, by Ann/);
    expect((await terminal.place.type('Ann', 'handoff')).text).toMatch(/\.pdf/);
    expect(await terminal.close()).toBe(0);
    const store = openStore(file);
    onTestFinished(() => store.close());
    const events = store.scoped('terminal').walkEvents(1);
    expect(complaintsAbout(day.deeds, events, checklists.swap.steps)).toEqual([]);
  },
  8 * minutes,
);
