import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hear } from '#chat/conversation.ts';
import { recalledTalk, screenOf } from '#chat/talk.ts';
import { crew, folder, storeAt } from '../../store/workbench.ts';
import { askedIn, commands, ducting, ladder, sizing, started, talkIn, turns } from './crew.ts';

const back = { turn: 'back' } as const;
const why = { turn: 'why' } as const;
const notKnown = { turn: 'not-known' } as const;

describe('a command that is begun', () => {
  it('asks first what the sheet lacks', () => {
    const store = crew();
    expect(askedIn(started(store, sizing))).toBe('room-length');
    turns(store, started(store, sizing), '8 ft', '5 ft');
    expect(askedIn(started(store, sizing))).toBe('ceiling-height');
  });

  it('keeps what was given at once, reads it back, and names all that will not do', () => {
    const store = crew();
    const screen = started(store, sizing, {
      'room-length': '8-6',
      'room-width': 'wide',
      'ceiling-height': '0',
      fixtures: 'toilet',
    });
    expect(screen.noted).toEqual([
      { id: 'room-length', brief: 'Room length', shown: '8 ft 6 in (2.59 m)' },
      { id: 'fixtures', brief: 'Fixtures in the room', shown: 'Toilet' },
    ]);
    expect(screen.notes).toEqual([
      expect.stringMatching(/^Room width: I cannot read “wide”/),
      expect.stringMatching(/^Ceiling height: Zero will not do/),
    ]);
    expect(askedIn(screen)).toBe('room-width');
    expect([...store.newestFacts(1).keys()]).toEqual(['room-length', 'fixtures']);
  });

  it('passes over what it does not take', () => {
    const store = crew();
    expect(started(store, sizing, { collar: '4 in', constructor: 'x' } as Record<string, string>).notes).toEqual([]);
    expect(store.newestFacts(1).size).toBe(0);
  });

  it('is answered at once where the sheet has everything', () => {
    const store = crew();
    const all = {
      'room-length': '8',
      'room-width': '5',
      'ceiling-height': '8',
      fixtures: 'none',
      running: 'on-demand',
    };
    const screen = started(store, sizing, all);
    expect(askedIn(screen)).toBeUndefined();
    expect(screen.reply?.headline).toBe('This room needs 50 cfm (23.6 L/s).');
    expect(screen.given?.map(({ id }) => id)).toEqual(Object.keys(all));
  });
});

describe('an answer', () => {
  it('is noted with what was typed, how it is known and by whom', () => {
    const store = crew();
    turns(store, started(store, sizing), 'about 8 ft');
    expect(store.newestFacts(1).get('room-length')).toMatchObject({
      typed: 'about 8 ft',
      units: 'inch-pound',
      how: 'estimated',
      who: 'apprentice',
    });
  });

  it('that will not do is refused in a sentence, and the same is asked again', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), 'banana');
    expect(screen.notes).toEqual(['I cannot read “banana”; I need a length, such as 8 ft 6 in or 2.6 m.']);
    expect(screen.noted).toEqual([]);
    expect(askedIn(screen)).toBe('room-length');
    expect(store.factHistory(1)).toEqual([]);
  });

  it('of nobody knowing is an answer, with what is taken and why', () => {
    const store = crew();
    const pressed = turns(store, started(store, sizing), notKnown);
    expect(pressed.notes).toEqual([
      'Room length: taken as 7 to 10 ft (2.13 to 3.05 m), most likely 8 ft. The common small bath is 5 ft by 8 ft; from common practice.',
    ]);
    expect(askedIn(pressed)).toBe('room-width');
    const typed = turns(store, pressed, 'dunno');
    expect(askedIn(typed)).toBe('ceiling-height');
    expect(store.newestFacts(1).get('room-width')).toMatchObject({ how: 'unknown', value: null });
  });

  it('may come for several questions at once; those that will do are kept', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), { answers: { 'room-length': '9', 'room-width': 'x' } });
    expect(screen.notes).toEqual([expect.stringMatching(/^Room width: I cannot read “x”/)]);
    expect(screen.noted?.map(({ id }) => id)).toEqual(['room-length']);
    expect(screen.asking?.questions.map(({ id }) => id)).toEqual(['room-width']);
  });

  it('left empty in a form of several is asked again without a word', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), { answers: { 'room-length': '9', 'room-width': ' ' } });
    expect(screen.notes).toEqual([]);
    expect(askedIn(screen)).toBe('room-width');
  });

  it('to a question that is not there changes nothing', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), { answers: { collar: '4', constructor: '5' } });
    expect(askedIn(screen)).toBe('room-length');
    expect(store.factHistory(1)).toEqual([]);
  });
});

describe('why', () => {
  it('says why it is asked, and asks again', () => {
    const store = crew();
    for (const said of [why, 'why', 'Why?'] as const) {
      const screen = turns(store, started(store, sizing), said);
      expect(screen.notes).toEqual([
        'The floor area sets how much air the room needs. Measure at the floor, closets left out.',
      ]);
      expect(askedIn(screen)).toBe('room-length');
    }
  });
});

describe('back', () => {
  it('takes back the last answer of this talk, and asks it again', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), '8 ft', '5 ft', back);
    expect(screen.notes).toEqual(['Took back: Room width.']);
    expect(askedIn(screen)).toBe('room-width');
    expect(askedIn(turns(store, screen, 'back'))).toBe('room-length');
  });

  it('has an end', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), '8 ft', back, back);
    expect(screen.notes).toEqual(['There is nothing of this talk to take back.']);
    expect(askedIn(screen)).toBe('room-length');
    expect(started(store, sizing).asking?.canGoBack).toBe(false);
  });

  it('never reaches an answer of an earlier talk', () => {
    const store = crew();
    turns(store, started(store, sizing), '8 ft', '5 ft');
    const screen = turns(store, started(store, sizing), '9 ft', back, back);
    expect(screen.notes).toEqual(['There is nothing of this talk to take back.']);
    expect([...store.newestFacts(1).keys()]).toEqual(['room-length', 'room-width']);
  });

  it('leaves alone an answer that somebody has given anew since', () => {
    const store = crew();
    const mine = turns(store, started(store, sizing), '8 ft', '5 ft');
    store.addFact(1, {
      fact: 'room-width',
      typed: '6 ft',
      units: 'inch-pound',
      value: 1,
      how: 'measured',
      who: 'lead',
    });
    const screen = turns(store, mine, back);
    expect(screen.notes).toEqual(['Took back: Room length.']);
    expect(store.newestFacts(1).get('room-width')?.typed).toBe('6 ft');
  });

  it('passes over an answer that was taken back from the job sheet already', () => {
    const store = crew();
    store.currentSheet(ladder);
    store.addFact(1, { fact: 'room-width', typed: '4 ft', units: 'inch-pound', value: 1, how: 'told', who: 'office' });
    const mine = turns(store, started(store, sizing, { 'room-width': '5 ft' }), '8 ft');
    store.retractNewest(1, { who: 'lead', fact: 'room-length' });
    turns(store, mine, back);
    // The width of this talk went; that of the office counts again.
    expect(store.newestFacts(1).get('room-width')?.typed).toBe('4 ft');
    expect(turns(store, mine, back).notes).toEqual(['There is nothing of this talk to take back.']);
  });

  it('after the answer undoes the last thing said', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), '8', '5', '8', 'none', 'when the room is used', back);
    expect(askedIn(screen)).toBe('running');
  });
});

describe('a change', () => {
  const answered = () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), '8', '5', '8', 'none', 'on demand');
    return { store, screen };
  };

  it('asks the one question again, saying what stands now, and goes on to the answer', () => {
    const { store, screen } = answered();
    const asked = turns(store, screen, { change: 'room-length' });
    expect(askedIn(asked)).toBe('room-length');
    expect(asked.asking?.now).toBe('8 ft (2.44 m)');
    const again = turns(store, asked, '15 ft');
    expect(again.reply?.headline).toBe('This room needs 75 cfm (35.4 L/s).');
    expect(store.factHistory(1).filter(({ fact }) => fact === 'room-length')).toHaveLength(2);
  });

  it('can be thought better of', () => {
    const { store, screen } = answered();
    const kept = turns(store, screen, { change: 'room-length' }, back);
    expect(kept.reply?.headline).toBe(screen.reply?.headline);
    expect(store.factHistory(1).filter(({ fact }) => fact === 'room-length')).toHaveLength(1);
  });

  it('can be undone, and the answer before counts again', () => {
    const { store, screen } = answered();
    const undone = turns(store, screen, { change: 'room-length' }, '15 ft', back);
    expect(undone.notes).toEqual(['Took back: Room length.']);
    expect(undone.reply?.headline).toBe(screen.reply?.headline);
  });

  it('that leads another way asks what is then lacking', () => {
    const { store, screen } = answered();
    expect(askedIn(turns(store, screen, { change: 'fixtures' }, 'toilet'))).toBe('toilet-compartment');
  });

  it('of something else is refused', () => {
    const { store, screen } = answered();
    const refused = turns(store, screen, { change: 'collar' });
    expect(refused.notes).toEqual(['There is no such answer to change.']);
    expect(refused.reply).toBeDefined();
  });
});

describe('a run of duct built part by part', () => {
  const fan = { 'fan-curve': '84@0.1 66@0.25', collar: '4 in' };

  it('grows with each part, and ends with the cap', () => {
    const store = crew();
    let screen = turns(store, started(store, ducting, fan), '10 ft 4 in flex');
    expect(screen.asking?.prompt).toBe('So far: 10 ft 4 in flex. What comes next? Say done after the last part.');
    expect(store.newestFacts(1).has('duct-run')).toBe(false);
    screen = turns(store, screen, '2 x elbow 90', 'wall cap');
    expect(store.newestFacts(1).get('duct-run')?.typed).toBe('10 ft 4 in flex; 2 x elbow 90; wall cap');
    expect(askedIn(screen)).toBe('airflow-needed');
  });

  it('loses its last part by back, and then the answer before it', () => {
    const store = crew();
    const screen = turns(store, started(store, ducting, fan), '10 ft 4 in flex', 'elbow 90', back);
    expect(screen.asking?.prompt).toContain('So far: 10 ft 4 in flex.');
    const empty = turns(store, screen, back);
    expect(empty.asking?.prompt).toMatch(/^What is the duct/);
    expect(askedIn(turns(store, empty, back))).toBe('collar');
  });

  it('keeps its parts when one is not understood', () => {
    const store = crew();
    const screen = turns(store, started(store, ducting, fan), '10 ft 4 in flex', 'a banana');
    expect(screen.notes[0]).toContain('is not understood');
    expect(screen.asking?.prompt).toContain('So far: 10 ft 4 in flex.');
  });

  it('is not done before it is begun', () => {
    const store = crew();
    const screen = turns(store, started(store, ducting, fan), 'done');
    expect(screen.notes).toEqual(['Nothing is in the run yet. Start at the fan, such as 14 ft 4 in flex.']);
  });

  it('is given up for “don’t know”', () => {
    const store = crew();
    const screen = turns(store, started(store, ducting, fan), '10 ft 4 in flex', 'don’t know');
    expect(askedIn(screen)).toBe('airflow-needed');
    expect(store.newestFacts(1).get('duct-run')).toMatchObject({ how: 'unknown' });
  });

  it('takes all at once too', () => {
    const store = crew();
    const screen = turns(store, started(store, ducting, fan), '14 ft 4 in flex; 2 x elbow 90');
    expect(askedIn(screen)).toBe('airflow-needed');
  });

  it('is started afresh by a change, and the old run stands until the new one is done', () => {
    const store = crew();
    const answered = turns(store, started(store, ducting, fan), '5 ft 4 in smooth; wall cap', 'dk', 'none', 'dk');
    const changing = turns(store, answered, { change: 'duct-run' }, '9 ft 4 in flex');
    expect(store.newestFacts(1).get('duct-run')?.typed).toBe('5 ft 4 in smooth; wall cap');
    const done = turns(store, changing, 'roof cap');
    expect(store.newestFacts(1).get('duct-run')?.typed).toBe('9 ft 4 in flex; roof cap');
    expect(done.reply).toBeDefined();
  });
});

describe('a restart', () => {
  it('in the middle of a growing answer loses nothing', () => {
    const file = join(folder(), 'records.sqlite');
    let store = storeAt(file);
    const before = turns(
      store.scoped('crew'),
      started(store.scoped('crew'), ducting, { 'fan-curve': '110' }),
      '4 in',
      '10 ft 4 in flex',
      'elbow 90',
    );
    store.close();
    store = storeAt(file);
    const after = store.scoped('crew');
    const screen = screenOf(after, talkIn(after, before));
    expect(screen).toEqual({ ...before, notes: [], noted: [] });
    const on = turns(after, screen, back, 'elbow 45', 'wall cap');
    expect(after.newestFacts(1).get('duct-run')?.typed).toBe('10 ft 4 in flex; elbow 45; wall cap');
    expect(askedIn(on)).toBe('airflow-needed');
    store.close();
  });
});

describe('two people on one talk', () => {
  it('the one who comes late is shown where it stands, and changes nothing', () => {
    const store = crew();
    const screen = started(store, sizing);
    const stale = talkIn(store, screen);
    turns(store, screen, '8 ft');
    const late = hear(store, stale, { answers: { 'room-length': '12 ft' } }, 'lead');
    expect(late.notes).toEqual(['Somebody answered this a moment ago. Here is where it stands.']);
    expect(askedIn(late)).toBe('room-width');
    expect(late.revision).toBe(talkIn(store, screen).revision);
    expect(store.factHistory(1).map(({ typed }) => typed)).toEqual(['8 ft']);
    expect(askedIn(turns(store, late, '5 ft'))).toBe('ceiling-height');
  });

  it('each answers in turn, and each answer carries its name', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), '8 ft');
    hear(store, talkIn(store, screen), { answers: { 'room-width': '5 ft' } }, 'lead');
    expect(store.factHistory(1).map(({ who }) => who)).toEqual(['apprentice', 'lead']);
  });

  it('two talks on one sheet share the answers', () => {
    const store = crew();
    const mine = started(store, sizing);
    turns(store, started(store, sizing), '8 ft', '5 ft');
    expect(askedIn(screenOf(store, talkIn(store, mine)))).toBe('ceiling-height');
  });
});

describe('a sheet closed underneath', () => {
  it('takes no answer, says so, and goes on when it is opened again', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), '8 ft');
    store.closeSheet(1, { who: 'lead' });
    const refused = turns(store, screen, '5 ft');
    expect(refused.notes).toEqual(['Job 1 is closed, so nothing was noted. /job open 1 opens it again.']);
    expect(askedIn(refused)).toBe('room-width');
    expect(turns(store, screen, back).notes).toEqual(refused.notes);
    store.reopenSheet(1, { who: 'lead' });
    expect(askedIn(turns(store, screen, '5 ft'))).toBe('ceiling-height');
  });
});

describe('a talk that is not there', () => {
  it('is not recalled: unknown, of another crew, or of a command that is gone', () => {
    const store = storeAt();
    const { talk } = started(store.scoped('one'), sizing);
    expect(recalledTalk(store.scoped('one'), commands, talk ?? '')).toBeDefined();
    expect(recalledTalk(store.scoped('two'), commands, talk ?? '')).toBeUndefined();
    expect(recalledTalk(store.scoped('one'), commands, 'nosuchtalk')).toBeUndefined();
    expect(recalledTalk(store.scoped('one'), [ducting], talk ?? '')).toBeUndefined();
  });
});

describe('a talk that was stopped', () => {
  it('is not recalled, and takes nothing more from whoever still holds it', () => {
    const store = crew();
    const screen = turns(store, started(store, sizing), '8 ft');
    const held = talkIn(store, screen);
    store.endTalk(held.id);
    expect(recalledTalk(store, commands, held.id)).toBeUndefined();
    const late = hear(store, held, { answers: { 'room-width': '5 ft' } }, 'lead');
    expect(late.notes).toEqual(['This was stopped a moment ago. /size begins it again.']);
    expect([...store.newestFacts(1).keys()]).toEqual(['room-length']);
  });
});

describe('the crew’s own settings', () => {
  it('stand in where the sheet is silent, and the units decide how numbers read', () => {
    const store = crew();
    store.saveSetting('units', { value: 'metric', who: 'lead' });
    store.saveSetting('usual:ceiling-height', { value: '2.4', who: 'lead' });
    const screen = turns(store, started(store, sizing), '3', '2.5');
    expect(screen.noted).toEqual([{ id: 'room-width', brief: 'Room width', shown: '2.5 m (8 ft 2 in)' }]);
    expect(askedIn(screen)).toBe('fixtures');
  });
});
