import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingsInWords } from '#diagnosis/findings-in-words.ts';
import { preparedWords } from '#diagnosis/phrases.ts';
import { differByAtMost, wordForm } from '#diagnosis/word-forms.ts';
import { englishCallbackWords } from '#knowledge/callback-words.ts';

const words = preparedWords(englishCallbackWords);
const heard = (text: string) => findingsInWords(words, text);
const ids = (all: readonly { readonly id: string }[]) => all.map(({ id }) => id);
const check = (
  text: string,
  expected: { seen?: string[]; notSeen?: string[]; context?: string[]; unsure?: string[] },
) => {
  const { seen, notSeen, context, unsure } = heard(text);
  expect({ seen: ids(seen), notSeen: ids(notSeen), context: ids(context), unsure: ids(unsure) }, text).toEqual({
    seen: [],
    notSeen: [],
    context: [],
    unsure: [],
    ...expected,
  });
};

describe('what a customer says', () => {
  it('is understood, with the words that led to it and what was not understood', () => {
    expect(heard('loud hum since Tuesday and the mirror stays fogged')).toEqual({
      seen: [
        { id: 'hum', words: 'loud hum', confidence: 'clear' },
        { id: 'fog', words: 'stays fogged', confidence: 'clear' },
      ],
      notSeen: [],
      context: [],
      unsure: [],
      notUnderstood: ['since Tuesday'],
    });
  });

  it('in many ways', () => {
    check('sounds like a hair dryer', { seen: ['whoosh'] });
    check('it drips on the vanity after showers in January', { seen: ['drip-cold'], context: ['cold'] });
    check('brown ring around the fan cover', { seen: ['stain'] });
    check('the fan will not shut off since the new humidity switch', {
      seen: ['never-off'],
      context: ['control-upgrade'],
    });
    check('duct fell off in the attic, insulation is soaking wet', { seen: ['duct-off', 'attic-wet'] });
    check('The light works but the fan is dead', { seen: ['light-ok', 'dead'] });
    check('My water heater pilot goes out when the fan and dryer run', {
      seen: ['only-with-others'],
      context: ['combustion'],
    });
    check('hums but wont spin', { seen: ['hum-noturn'] });
    check('cold air comes down and it smells like the neighbors cooking', { seen: ['draught', 'smells', 'odour'] });
  });

  it('as they say it on the phone', () => {
    const said: [string, Parameters<typeof check>[1]][] = [
      ['fan got really loud all of a sudden, like a helicopter, and it shakes', { seen: ['loud', 'rattle'] }],
      ['it runs but you can barely feel any air, paper falls right off', { seen: ['turns', 'weak', 'tissue'] }],
      ['water drips out of the fan on cold mornings', { seen: ['drip', 'drip-cold'] }],
      ['every time it rains there is a drip from the vent', { seen: ['drip-rain'] }],
      ['nothing happens when I flip the switch, the light is fine', { seen: ['dead', 'light-ok'] }],
      ['smells like cigarettes from the apartment next door', { seen: ['odour'], context: ['multi-unit'] }],
      ['cold air pours out of it at night', { seen: ['draught'] }],
      ['it stops by itself after half an hour and then comes back later', { seen: ['cut-hot'] }],
      ['you put it in two weeks ago and the door slams shut', { seen: ['door-slam'], context: ['recent-swap'] }],
      ['the fan only hums, blades dont move', { seen: ['hum-noturn'] }],
      ['black spots on the ceiling in the corner over the tub', { seen: ['mould'], context: ['over-wet'] }],
      ['never shuts off since the new timer', { seen: ['never-off'], context: ['control-upgrade'] }],
      ['it used to clear the steam and now it does not', { seen: ['flow-fell', 'fog'] }],
      ['birds in the vent, scratching in the morning', { seen: ['nest', 'pest-sound'] }],
      ['mirror wont clear unless I open the door', { seen: ['fog', 'inside-door-open'] }],
      ['huele a quemado', { seen: ['smell'] }],
    ];
    for (const [text, expected] of said) check(text, expected);
  });

  it('with slips of the finger', () => {
    check('a terible rattel', { seen: ['rattle'] });
    check('squeels in the mornings', { seen: ['grind'] });
    check('condinsation on the mirrow', { seen: ['fog'] });
    check('the braker trips', { seen: ['breaker'] });
    expect(heard('rattel').seen[0]?.confidence).toBe('probable');
  });

  it('with British and American spelling alike', () => {
    check('mould on the ceiling', { seen: ['mould'] });
    check('mold on the ceiling', { seen: ['mould'] });
    check('a cold draught', { seen: ['draught'] });
    check('a cold draft', { seen: ['draught'] });
  });
});

describe('what a customer denies', () => {
  it('is not seen', () => {
    check("it's not loud, no smell", { notSeen: ['loud', 'smells'] });
    check('no burning smell', { notSeen: ['smell'] });
    check("mirror doesn't fog", { notSeen: ['fog'] });
    check('it never trips the breaker', { notSeen: ['breaker'] });
    check('no hum, rattle or smell', { notSeen: ['hum', 'rattle', 'smells'] });
    check('without any rattle', { notSeen: ['rattle'] });
  });

  it('reaches to the end of the clause and no further', () => {
    check('no smell but it rattles', { seen: ['rattle'], notSeen: ['smells'] });
    check('no smell. It rattles', { seen: ['rattle'], notSeen: ['smells'] });
    check('no smell, it rattles', { seen: ['rattle'], notSeen: ['smells'] });
  });

  it('may be part of the complaint itself', () => {
    check('the fan will not turn on', { seen: ['dead'] });
    check("tissue won't stay on the grille", { seen: ['tissue'] });
    check('no air comes out outside', { seen: ['hood-none'] });
    check('there is no neutral', { seen: ['no-neutral'] });
  });

  it('may be said without a denial, and a denial may turn it round', () => {
    check('the mirror clears', { notSeen: ['fog'] });
    check('the mirror never clears', { seen: ['fog'] });
  });

  it('"not only" denies nothing', () => {
    check('not only a burning smell', { seen: ['smell'] });
  });

  it('not being sure is neither yes nor no', () => {
    check('not sure if there is a burning smell', { unsure: ['smell'] });
    check('it rattles, no wait, no rattle', { unsure: ['rattle'] });
  });
});

describe("a danger in a customer's words", () => {
  it('is heard', () => {
    for (const text of ['CO detector went off last night', 'carbon monoxide alarm', 'soot on the water heater']) {
      expect(ids(heard(text).seen), text).toContain('spill');
    }
    for (const text of ['smells like burning plastic', 'the switch is hot', 'I saw sparks', 'smoke came out of it']) {
      expect(ids(heard(text).seen), text).toContain('smell');
    }
    expect(ids(heard('GFCI trips after every shower').seen)).toEqual(['gfci-wet']);
    expect(ids(heard('water is dripping through the light').seen)).toContain('wet-wiring');
  });

  it('is not heard where another word stands', () => {
    for (const text of [
      'I spoke to my wife',
      'cigarette smoke from next door',
      'the wind blows',
      'gives me a headache, so loud',
    ]) {
      const { seen } = heard(text);
      expect(ids(seen), text).not.toContain('smell');
      expect(ids(seen), text).not.toContain('spill');
      expect(ids(seen), text).not.toContain('trips');
    }
  });
});

describe('words and their forms', () => {
  it('are one word with any ending', () => {
    for (const word of ['fog', 'fogs', 'fogged', 'fogging', 'foggy']) expect(wordForm(word)).toBe('fog');
    for (const word of ['drip', 'drips', 'dripping', 'dripped']) expect(wordForm(word)).toBe('drip');
    for (const word of ['noise', 'noisy', 'noises']) expect(wordForm(word)).toBe('nois');
  });

  it('differ by slips', () => {
    expect(differByAtMost('rattle', 'rattel', 1)).toBe(true);
    expect(differByAtMost('rattle', 'ratle', 1)).toBe(true);
    expect(differByAtMost('rattle', 'bottle', 1)).toBe(false);
  });

  it('never fail, whatever is typed, and say the same each time', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200, unit: 'grapheme' }), (text) => {
        expect(heard(text)).toEqual(heard(text));
      }),
      { seed: 1, numRuns: 200 },
    );
    expect(heard('')).toEqual({ seen: [], notSeen: [], context: [], unsure: [], notUnderstood: [] });
  });

  it('every phrase of the catalogue is heard as what it stands for', () => {
    const strays = Object.entries(englishCallbackWords.findings).flatMap(([id, { yes }]) =>
      yes.filter((phrase) => !ids(heard(phrase).seen).includes(id)).map((phrase) => `${id}: ${phrase}`),
    );
    expect(strays).toEqual([]);
  });
});
