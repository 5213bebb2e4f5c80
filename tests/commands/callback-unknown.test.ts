import { describe, expect, it } from 'vitest';
import { oneShot } from '#chat/one-shot.ts';
import { terminalSession } from '#chat/terminal/session.ts';
import callback from '#commands/callback.ts';
import { dangerOf } from '#diagnosis/dangers.ts';
import { nextCheck } from '#diagnosis/next-check.ts';
import {
  type CallbackFindingId,
  callbackFindings,
  callbackVariables,
  isVariable,
  type VariableId,
} from '#knowledge/callback-findings.ts';
import { callbackDangers } from '#knowledge/callback-scale.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import { openStore } from '#store/store.ts';
import type { Language } from '#words/language.ts';
import { reasoning } from '../diagnosis/reasoning-at-hand.ts';

type CheckId = CallbackFindingId | VariableId;

/** Every check whose answer may tell of a danger. */
const dangerChecks = [...reasoning.findingIds, ...reasoning.variableIds].filter((id) => dangerOf(id, reasoning));
const sameDanger = (id: CheckId) =>
  dangerChecks.filter((other) => dangerOf(other, reasoning) === dangerOf(id, reasoning));
/** Signs that lead through all families of causes. */
const complaints = [
  'hum',
  'rattle',
  'fog',
  'stain',
  'drip',
  'weak',
  'tissue',
  'draught',
  'light-ok',
  'intermit',
  'never-off',
];
const dangerAt = (id: CheckId) => dangerOf(id, reasoning) ?? expect.unreachable(`${id} tells of no danger`);
const asksToLeaveAlone = (id: CheckId): boolean =>
  (isVariable(id) ? callbackVariables[id] : callbackFindings[id]).leavesAlone;
const askedAs = (id: CheckId, language: Language) =>
  isVariable(id) ? callbackTexts[language].variables[id].question : callbackTexts[language].findings[id].question;

/** How a talk comes to each of the danger checks that are asked of somebody on the phone. */
const waysThere: readonly (readonly [CheckId, seen: string, context: string])[] = [
  ['wheel', 'loud', 'none'],
  ['spill', 'loud', 'combustion'],
  ['cut-hot', 'hum', 'none'],
  ['drip-use', 'stain', 'none'],
  ['wet-wiring', 'stain', 'none'],
  ['trips', 'stain', 'none'],
  ['gfci-wet', 'stain', 'old-unit'],
  ['smell', 'flow-ok', 'recent-swap'],
  ['gfci-now', 'light-ok', 'recent-swap'],
  ['breaker', 'others-dead', 'recent-swap'],
];

const spoken = {
  english: { no: 'no', dontKnow: "don't know", enough: 'enough' },
  spanish: { no: 'no', dontKnow: 'no sé', enough: 'responder ya' },
} as const;

const lined = (text: string): string => text.replace(/\s+/g, ' ');

async function talkUpTo(id: CheckId, seen: string, context: string, language: Language) {
  const store = openStore(':memory:');
  const session = terminalSession({
    store: store.scoped('test'),
    commands: [callback],
    who: 'apprentice',
    language,
    paper: { width: 200, colour: false },
    drawn: async () => undefined,
  });
  let said = await session.say(`callback seen="${seen}" context="${context}"`);
  for (let turn = 0; turn < 25 && !lined(said).includes(askedAs(id, language)); turn += 1) {
    expect(session.asking(), `${id} is asked before the talk is over`).toBe(true);
    said = await session.say(lined(said).includes(askedAs('wheel', language)) ? 'turns' : spoken[language].no);
  }
  return session;
}

/** Every check but those that leave the fan alone, as it is asked. */
const asksForMore = (language: Language): readonly string[] =>
  [...reasoning.findingIds, ...reasoning.variableIds]
    .filter((id) => !asksToLeaveAlone(id))
    .map((id) => askedAs(id, language));

describe.each(['english', 'spanish'] as const)('a danger nobody can say anything to, in %s', (language) => {
  it.each(waysThere)('%s: first what to do until it is known, then nothing that has the fan run', async (...way) => {
    const [id] = way;
    const session = await talkUpTo(...way, language);
    const { untilKnown } = callbackTexts[language].dangers[dangerAt(id)];
    let said = await session.say(spoken[language].dontKnow);
    expect(lined(said)).toContain(untilKnown);
    if (callbackDangers[dangerAt(id)].unknownStops) expect(session.asking()).toBe(false);
    for (let turn = 0; turn < 25 && session.asking(); turn += 1) {
      for (const question of asksForMore(language)) expect(lined(said)).not.toContain(question);
      const isSameDanger = sameDanger(id).some((other) => lined(said).includes(askedAs(other, language)));
      said = await session.say(spoken[language][isSameDanger ? 'dontKnow' : 'no']);
    }
    expect(lined(said)).toContain(untilKnown);
    expect(lined(said)).not.toMatch(/prove it first|pruébelo primero/);
  });

  it.each(waysThere)('%s: to stop the asking there is not to say no', async (...way) => {
    const [id] = way;
    const session = await talkUpTo(...way, language);
    const said = await session.say(spoken[language].enough);
    expect(session.asking()).toBe(false);
    expect(lined(said)).toContain(callbackTexts[language].dangers[dangerAt(id)].untilKnown);
  });

  it.each(dangerChecks)('%s that cannot be checked is told before everything else', (id) => {
    const { untilKnown } = callbackTexts[language].dangers[dangerAt(id)];
    const { reply } = oneShot(callback, ['seen=fog', `cannot-check=${id}`], { units: 'inch-pound', language });
    const stops = callbackDangers[dangerAt(id)].unknownStops;
    expect(reply?.findings[0]).toMatchObject({ id: 'danger', weight: stops ? 'stop' : 'caution', check: id });
    expect(reply?.findings[0]?.says.startsWith(untilKnown)).toBe(true);
    expect(reply?.findings.map((finding) => finding.id)).not.toContain('remedy');
    expect(reply?.findings.find((finding) => finding.id === 'next-check')).toMatchObject({ check: id });
    expect(reply?.suggestions).toEqual([]);
  });
});

describe('while a danger is not known', () => {
  it.each(dangerChecks)('%s: nothing is proposed that has the fan run, switched or touched', (id) => {
    for (const seen of complaints) {
      const notSeen: string[] = [];
      for (let turn = 0; turn < 25; turn += 1) {
        const next = nextCheck(reasoning, { seen: [seen], notSeen, cannotCheck: [id], deadProven: true });
        if (next.kind === 'stopped') expect(callbackDangers[dangerAt(id)].unknownStops).toBe(true);
        if (next.kind !== 'check') {
          if (next.kind !== 'stopped') expect(next.waiting).toEqual([]);
          break;
        }
        for (const each of [next.check, ...next.others]) {
          expect(asksToLeaveAlone(each.id), `${each.id} after ${seen}`).toBe(true);
        }
        // What trips is told by the word for all of it: that is never said no to here.
        if (next.check.id === 'trips') break;
        notSeen.push(next.check.id);
      }
    }
  });

  it('what is left to ask takes neither a ladder nor a running fan', () => {
    for (const [id, { leavesAlone, power, from, how }] of Object.entries(callbackFindings)) {
      if (!leavesAlone) continue;
      expect(['phone', 'floor', 'outside'], id).toContain(from);
      expect(power, id).toBe('any');
      expect(how, id).not.toMatch(/fan running|switched on|to be tried|to be run|by hand|press/i);
    }
  });

  it('a vague sign nobody can say does not silence the danger behind it', () => {
    expect(nextCheck(reasoning, { seen: ['smells'], cannotCheck: ['odour', 'odour-own'] })).toMatchObject({
      kind: 'check',
      check: { id: 'smell' },
    });
    const next = nextCheck(reasoning, { seen: ['stain'], cannotCheck: ['drip'] });
    expect(next).toMatchObject({ kind: 'check', check: { id: 'drip-use' }, because: 'danger' });
  });

  it('a danger that was told is told once, by its own order', () => {
    const { reply } = oneShot(callback, ['seen=breaker', 'cannot-check=gfci-now'], { units: 'inch-pound' });
    expect(reply?.findings.filter(({ id }) => id === 'danger')).toHaveLength(1);
    expect(reply?.findings[0]?.says).toMatch(/^Leave it tripped/);
  });

  it('nobody is kept in the house by one order beside the one to leave', () => {
    const { reply } = oneShot(callback, ['seen=spill', 'cannot-check=smell'], { units: 'inch-pound' });
    const [out, other] = reply?.findings.filter(({ id }) => id === 'danger') ?? [];
    expect(out?.says).toMatch(/^Everyone outside now/);
    expect(other?.says).toMatch(/^Once outside, tell the fire service that this is not known/);
  });

  it('a callback is not closed over a stop, and over a caution only with what to do said first', () => {
    const closing = (id: string) =>
      oneShot(callback, ['seen=fog', `cannot-check=${id}`, 'confirmed-cause=bearing'], { units: 'inch-pound' }).reply
        ?.findings ?? [];
    expect(closing('spill').map(({ id }) => id)).not.toContain('recorded');
    expect(closing('trips').map(({ id }) => id)).toEqual(['danger', 'recorded']);
  });

  it('an answer that comes later lets the asking go on', () => {
    const unknown = { seen: ['fog'], cannotCheck: ['smell'] };
    expect(nextCheck(reasoning, unknown)).toMatchObject({ kind: 'stopped' });
    expect(nextCheck(reasoning, { ...unknown, notSeen: ['smell'] }).kind).toBe('check');
  });
});
