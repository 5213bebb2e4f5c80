import { describe, expect, it } from 'vitest';
import { ask, type Interview, offer, take, together } from '#interview/interview.ts';
import { missing, replay } from '#interview/replay.ts';
import { collar, ends, insulated, kind, knowing, length, told, width } from './questions.ts';

/** Asks the length of flex only where the duct is flex, as an apprentice would be asked. */
function* survey(): Interview<{ kind: string; length: unknown; wrap: string; collar: unknown }> {
  const chosen = yield* ask(kind);
  const long = chosen.value === 'flex' ? yield* ask(length) : { value: null };
  const wrap = yield* offer(insulated);
  const wide = yield* take(collar);
  return { kind: chosen.value, length: long.value, wrap: wrap.value, collar: wide.value };
}

const ids = (questions: readonly { readonly id: string }[]) => questions.map(({ id }) => id);

describe('an interview replayed over what is known', () => {
  it('stops at the first question nobody has answered', () => {
    const outcome = replay(survey(), knowing({}), 'conversation');
    expect(outcome).toMatchObject({ complete: false, used: [], request: { urgency: 'need' } });
    expect(outcome.complete || ids(outcome.unanswered)).toEqual(['kind']);
  });

  it('takes the branch the answers lead to', () => {
    const flex = replay(survey(), knowing({ kind: told('flex') }), 'conversation');
    expect(flex.complete || ids(flex.unanswered)).toEqual(['length']);
    const smooth = replay(survey(), knowing({ kind: told('smooth') }), 'conversation');
    expect(smooth.complete || ids(smooth.unanswered)).toEqual(['wrap']);
  });

  it('leaves alone answers to questions it does not ask', () => {
    const outcome = replay(
      survey(),
      knowing({ kind: told('smooth'), wrap: told('yes'), length: told(3) }),
      'conversation',
    );
    expect(outcome).toMatchObject({ complete: true, inputs: { kind: 'smooth', length: null, wrap: 'yes' } });
    expect(ids(outcome.used)).toEqual(['kind', 'wrap']);
  });

  it('asks an offer in conversation, and goes on without it in one-shot use, saying so', () => {
    const known = knowing({ kind: told('smooth') });
    expect(replay(survey(), known, 'conversation').complete).toBe(false);
    const outcome = replay(survey(), known, 'one-shot');
    expect(outcome).toMatchObject({ complete: true, inputs: { wrap: 'no' } });
    expect(outcome.complete && outcome.assumed).toEqual([{ question: insulated, because: 'Bare is the worse case.' }]);
  });

  it('never asks for what it only takes, and does not call that an assumption', () => {
    const outcome = replay(survey(), knowing({ kind: told('smooth'), wrap: told('yes') }), 'conversation');
    expect(outcome).toMatchObject({ complete: true, inputs: { collar: null }, assumed: [] });
  });

  it('goes on with the stand-in where somebody said they do not know, and names it', () => {
    const unknown = { value: length.whenUnknown.value, known: false };
    const outcome = replay(
      survey(),
      knowing({ kind: told('flex'), length: unknown, wrap: told('no') }),
      'conversation',
    );
    expect(outcome).toMatchObject({ complete: true, inputs: { length: length.whenUnknown.value } });
    expect(outcome.complete && ids(outcome.assumed.map(({ question }) => question))).toEqual(['length']);
  });

  it('names a taken answer somebody did not know among the assumptions', () => {
    const known = knowing({ kind: told('smooth'), wrap: told('no'), collar: { value: null, known: false } });
    const outcome = replay(survey(), known, 'conversation');
    expect(outcome.complete && ids(outcome.assumed.map(({ question }) => question))).toEqual(['collar']);
  });

  it('names once what is met twice', () => {
    function* twice(): Interview<unknown> {
      const seen = yield* take(kind);
      return seen.known ? seen.value : (yield* ask(kind)).value;
    }
    const unknown = { value: 'flex', known: false };
    const outcome = replay(twice(), knowing({ kind: unknown }), 'conversation');
    expect(ids(outcome.used)).toEqual(['kind']);
    expect(outcome.complete && outcome.assumed).toHaveLength(1);
    expect(ids(missing(twice(), knowing({})))).toEqual(['kind']);
  });

  it('stops a script that asks without end', () => {
    function* endless(): Interview<never> {
      for (;;) yield* ask(kind);
    }
    expect(() => replay(endless(), knowing({ kind: told('flex') }), 'conversation')).toThrow(/without end/);
  });
});

describe('questions asked together', () => {
  function* size(): Interview<readonly unknown[]> {
    const [long, wide] = yield* together('need', length, width);
    return [long.value, wide.value];
  }

  it('are asked on one screen, less those that are answered', () => {
    const none = replay(size(), knowing({}), 'conversation');
    expect(none.complete || ids(none.unanswered)).toEqual(['length', 'width']);
    const one = replay(size(), knowing({ length: told(3) }), 'conversation');
    expect(one.complete || ids(one.unanswered)).toEqual(['width']);
    expect(ids(one.used)).toEqual(['length']);
  });

  it('give their answers in the order asked', () => {
    const outcome = replay(size(), knowing({ width: told('wide'), length: told('long') }), 'conversation');
    expect(outcome).toMatchObject({ complete: true, inputs: ['long', 'wide'] });
  });
});

describe('what an interview lacks', () => {
  it('is named all at once, following the stand-in where nobody has answered', () => {
    expect(ids(missing(survey(), knowing({})))).toEqual(['kind', 'length']);
  });

  it('follows the answers that are there', () => {
    expect(ids(missing(survey(), knowing({ kind: told('smooth') })))).toEqual([]);
  });

  it('counts a "don’t know" as an answer', () => {
    expect(ids(missing(survey(), knowing({ kind: { value: 'flex', known: false } })))).toEqual(['length']);
  });

  it('holds no offers and nothing that is only taken', () => {
    function* idle(): Interview<unknown> {
      yield* offer(ends);
      return yield* take(collar);
    }
    expect(missing(idle(), knowing({}))).toEqual([]);
  });
});
