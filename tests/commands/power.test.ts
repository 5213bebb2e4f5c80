import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import power from '#commands/power.ts';
import { wiringQuestion } from '#commands/questions/wiring.ts';
import {
  type ObservationId,
  observations,
  type PowerRule,
  plannedObservations,
  powerRulesAt,
  restsOn,
} from '#knowledge/circuit-rules.ts';
import { job, settled, words } from './settled-wiring.ts';
import { findingOf, once, talked } from './talked.ts';

const planRules = Object.entries(powerRulesAt('plan')) as [string, PowerRule][];
const workedOut = (rule: PowerRule) =>
  Object.keys(rule.applies).some((fact) => observations[fact as ObservationId].seen === 'worked-out');
const rows = (answer: ReturnType<typeof once>) =>
  answer.reply?.findings.flatMap(({ table }) => table?.rows ?? []) ?? [];

describe('what is not known stops the job', () => {
  it('and never asks for more: with nothing told the answer is stop', () => {
    const answer = once(power);
    expect(answer).toMatchObject({ status: 'stopped', missing: [], problems: [] });
    expect(answer.reply?.headline).toMatch(/^\d+ things stop this job until somebody finds out\.$/);
    expect(findingOf(answer, 'find-out-first').says).toContain('counts as the dangerous answer');
    expect(answer.reply?.assumed?.join(' ')).toMatch(/not known/i);
  });

  it('each fact made unknown keeps every rule speaking that spoke before', () => {
    const spoken = (facts: Readonly<Record<string, string>>) => {
      const answer = job(facts);
      const shown = answer.reply?.findings.map(({ says }) => says.split(' Decides:')[0]) ?? [];
      return new Set([...shown, ...rows(answer).map(([, says]) => says)]);
    };
    const danger = { ...settled, 'fan-ground': 'none', 'wiring-kind': 'aluminium', 'who-wires': 'not-settled' };
    for (const fact of ['fan-ground', 'wiring-kind', 'who-wires'] as const) {
      expect(job({ ...danger, [fact]: "don't know" }).status, fact).toBe('stopped');
      expect(spoken({ ...settled, [fact]: '?' }).size, fact).toBeGreaterThanOrEqual(spoken(settled).size);
    }
  });

  it('takes a bare “yes” for the lesser answer where the better one has to be proven', () => {
    const read = (id: ObservationId, text: string) => wiringQuestion(id).read(text, 'inch-pound');
    expect(read('fan-ground', 'yes')).toEqual({ value: 'present-not-proven' });
    expect(read('gfci-protection', 'Yes')).toEqual({ value: 'not-tested' });
    expect(read('switch-box-neutral', 'yes')).toHaveProperty('rejected');
    expect(read('wiring-kind', 'aluminum')).toEqual({ value: 'aluminium' });
  });

  it('asks nothing that only an opened box tells without saying so', () => {
    for (const id of plannedObservations.filter((each) => observations[each].seen === 'opened-box')) {
      expect(wiringQuestion(id).prompt).toContain('box proven dead');
    }
  });
});

describe('every rule of the planning stage speaks through the command', () => {
  for (const [id, rule] of planRules.filter(([, each]) => !workedOut(each))) {
    it(`${id} (${rule.source})`, () => {
      const match = Object.fromEntries(Object.entries(rule.applies).map(([fact, [first]]) => [fact, first as string]));
      const answer = job({ ...settled, ...match });
      const finding = answer.reply?.findings.find((each) => each.id === id);
      const row = rows(answer).find(([, says]) => says === rule.says);
      expect(finding?.weight ?? row?.[0]?.toLowerCase()).toBe(rule.weight);
      if (finding) expect(finding.says.startsWith(rule.says)).toBe(true);
      if (rule.weight === 'stop') expect(answer.status).toBe('stopped');
      if (finding && rule.weight === 'stop' && restsOn(rule) === 'forum')
        expect(finding.says).toContain('a code forum');
    });
  }
});

describe('the answer', () => {
  it('without a stop is still no permission', () => {
    const answer = job(settled, 'fan-amps=0.3', 'breaker=15', 'thinnest-wire=14', 'control-amps=5');
    expect(answer.status).toBe('answered');
    expect(answer.reply?.headline).toBe('Nothing told here stops this job. That is a reminder, not permission.');
  });

  it('leads with the stop, says who decides and what it rests on', () => {
    const answer = job({ ...settled, 'fan-ground': 'none' });
    const [first] = answer.reply?.findings ?? [];
    expect(first?.id).toBe('no-ground');
    expect(first?.says).toMatch(/^Stop\. .* Decides: licensed electrician\. Rests on a code forum/);
    expect(first?.working).toContainEqual({ what: 'Whether there is an equipment ground at the fan', value: 'No' });
  });

  it('always ends with how dead is proven and who decides, and never calls anything fine or safe', () => {
    const answers = fc.record(
      Object.fromEntries(
        plannedObservations.map((id) => [
          id,
          fc.constantFrom(...observations[id].options.map((option) => option.id), "don't know"),
        ]),
      ),
      { requiredKeys: [] },
    );
    const amount = (name: string, ...values: readonly string[]) =>
      fc.constantFrom(`${name}=?`, ...values.map((value) => `${name}=${value}`));
    const numbers = fc.tuple(
      amount('fan-watts', '30 W', '150 W'),
      amount('heater-watts', '1500 W', 'none'),
      amount('lamp-watts', '60 W'),
      amount('breaker', '15', '20'),
      amount('thinnest-wire', '14', '12', '16'),
      amount('control-amps', '5', '15'),
      amount('control-minimum', '25 W', 'none'),
      amount('fan-watts-low', '4 W'),
    );
    fc.assert(
      fc.property(answers, numbers, (facts, given) => {
        const answer = job(facts as Record<string, string>, ...given);
        const findings = answer.reply?.findings ?? [];
        expect(findings.length).toBeLessThanOrEqual(12);
        expect(findings.slice(-2).map(({ id }) => id)).toEqual(['prove-dead', 'who-decides']);
        const weights = findings.map(({ weight }) => weight);
        expect(weights).not.toContain('good');
        expect(weights.lastIndexOf('stop')).toBeLessThanOrEqual(weights.filter((each) => each === 'stop').length - 1);
        expect(answer.status).toBe(weights.includes('stop') ? 'stopped' : 'answered');
        expect(findings.map(({ says }) => says).join(' ')).not.toMatch(/\b(?:is|are) (?:safe|fine|ok)\b/i);
        expect(answer.missing).toEqual([]);
      }),
      { seed: 1, numRuns: 150 },
    );
  });

  it('tells of the tester, the controls and the pairs in one breath', () => {
    const { says } = findingOf(once(power), 'prove-dead');
    for (const word of ['on or calling', 'locked', 'before and after', 'every pair', 'every box', 'other position']) {
      expect(says).toContain(word);
    }
  });

  it('works when its example is pasted', () => {
    expect(once(power, ...power.example.split(' ')).status).toBe('stopped');
  });
});

describe('slips are answered with a sentence', () => {
  it.each([
    ['fan-ground=perhaps', /not one of these/],
    ['switch-box-neutral=yes', /same circuit/],
    ['breaker=-15', /.+/],
    ['thinnest-wire=9', /14 AWG/],
    ['heater-watts=lots', /.+/],
    ['teapot=1', /no “teapot”/],
  ])('%s', (word, says) => {
    const answer = once(power, word);
    expect(answer.status).toBe('needs-answers');
    expect(answer.problems[0]?.says).toMatch(says);
  });
});

describe('a talk about the wiring', () => {
  it('asks from the fan to the panel and ends with the stop', async () => {
    expect(
      await talked(
        power,
        `power ${words(settled)
          .filter((word) => !/^(?:fan-ground|who-wires|unit-kind|trouble-signs)/.test(word))
          .join(' ')}`,
        'toaster',
        'fan only',
        'why',
        'yes',
        'none',
        'back',
        "don't know",
        'licensed',
        '30 W',
        "don't know",
        '14',
        '5',
        'none',
        '30',
      ),
    ).toMatchInlineSnapshot(`
      "
      you: power fan-place=elsewhere insulation-near=clear control-wanted=countdown-timer circuit-serves=this-unit-only switch-controls=fan-only switch-places=one control-needs=neutral control-marking=motor-rated control-output=relay-or-mechanical motor-kind=ac control-place=outside cable-work=none label-wire-temperature=none-given switch-box-neutral=same-circuit switch-box-ground=yes wiring-kind=copper-cable wiring-era=1985-on
      bot: Where the fan sits, seen from the tub or shower: Farther off than that.
           The control that is wanted for the fan: Electronic countdown timer.
           When the house was wired: 1985 or later.
           What wiring feeds the fan: Copper cable.
           Whether the switch box holds a neutral of the same circuit: Yes, of the same circuit.
           Whether the switch box holds a ground: Yes.
           Whether insulation touches, covers or comes within 3 in of the housing: No, kept clear.
           What the fan's circuit feeds besides the fan: Nothing else.
           What the fan's wall switch works: The fan alone.
           From how many places the fan is switched, and where power comes in: One.
           What the new control's leaflet asks for in the box: A neutral.
           What load the new control is rated for: A motor load in amps or horsepower.
           Whether the new control switches by relay or by an electronic output: Relay or mechanical contact.
           What kind of motor the fan has: Ordinary AC motor.
           Whether the control would sit inside the tub or shower space: No, outside.
           Whether cable is run or extended: None.
           What supply wire temperature the unit's label asks for: None, or 60 °C.
           What is going in?
             1  Fan only
             2  Fan with light
             3  Fan with heater
             4  Fan with light and heater
             5  Paddle fan or hanging light
      you: toaster
      bot: “toaster” is not one of these. Pick Fan only, Fan with light, Fan with heater, Fan with light and
           heater or Paddle fan or hanging light.
           What is going in?
             1  Fan only
             2  Fan with light
             3  Fan with heater
             4  Fan with light and heater
             5  Paddle fan or hanging light
      you: fan only
      bot: What kind of fan is going in: Fan only.
           Is there a ground at the fan? Answer only from a box proven dead; never open one to find out.
             1  Yes, continuity proven
             2  There is a wire, not proven
             3  No
             4  Only the armor of old cable
             5  No, but a rod or water pipe is proposed
      you: why
      bot: The ground trips the breaker when the housing goes live. Answer only from a box proven dead; do not
           open one to find out.
           Is there a ground at the fan? Answer only from a box proven dead; never open one to find out.
             1  Yes, continuity proven
             2  There is a wire, not proven
             3  No
             4  Only the armor of old cable
             5  No, but a rod or water pipe is proposed
      you: yes
      bot: Whether there is an equipment ground at the fan: There is a wire, not proven.
           Any sign of trouble on that circuit?
             1  None
             2  Warm plate, flicker, hot smell or scorch
             3  A GFCI that will not reset
      you: none
      bot: Signs of trouble on the circuit: None.
           Who may do the wiring here?
             1  A licensed electrician does it
             2  Local law lets this crew do it
             3  Not settled, or permit still open
      you: back
      bot: Took back: Signs of trouble on the circuit.
           Any sign of trouble on that circuit?
             1  None
             2  Warm plate, flicker, hot smell or scorch
             3  A GFCI that will not reset
      you: don't know
      bot: Signs of trouble on the circuit: Taken as a sign of trouble until somebody has looked and asked.
           Who may do the wiring here?
             1  A licensed electrician does it
             2  Local law lets this crew do it
             3  Not settled, or permit still open
      you: licensed
      bot: Who may alter wiring at this address: A licensed electrician does it.
           How many watts does the fan draw? The label says; leave the light out.
      you: 30 W
      bot: Watts the fan draws, without its light: 30 W.
           What is the breaker of the circuit rated?
      you: don't know
      bot: Breaker of the fan’s circuit: Nothing is judged against the breaker until it is read.
           What is the thinnest wire on the circuit? Read it off the cable sheath, or in a box proven dead.
             1  14 AWG
             2  12 AWG
             3  10 AWG or thicker
             4  16 AWG or thinner
      you: 14
      bot: Thinnest wire on the circuit: 14 AWG.
           How many amps of motor load is the new control rated for?
      you: 5
      bot: Motor rating of the new control: 5 A.
           What is the least load the new control needs? Its leaflet says, or none.
      you: none
      bot: Least load the new control needs: none.
           How many watts does the fan take at its lowest speed?
      you: 30
      bot: Watts of the fan at its lowest speed: 30 W.

           1 thing stops this job.

           STOP:    Do not power the fan until the ground is proven continuous and bonded to housing, box and
                    green lead. Decides: licensed electrician. Rests on the code from memory, not read in
                    print.
           Advice:  The unit draws 0.3 to 0.5 A; by this sum it takes a breaker of 15 A or more (its 14 AWG
                    wire takes 15 A at most), and the label goes before the sum.
           Advice:  The control is to switch 0.3 to 0.5 A and may take 4 A of motor; its marking still has to
                    say motor; it needs no least load.
           Caution: Figure the box fill with this control: two allowances however deep it is. Then see that its
                    depth goes in. Decides: lead.
           Caution: Read the breaker and the wire size, all along the circuit. One piece of 14 AWG on 20 A is a
                    stop. Decides: licensed electrician.
           Caution: Ask about hot smells, flicker and a GFCI that will not reset. Any of them stops the job.
                    Decides: licensed electrician.
           Advice:  Follow the label and the local rule. The national GFCI rule for bathrooms covers plug
                    sockets, not a wired fan outside the tub or shower; local rules may ask for more. Decides:
                    lead.
           Advice:  One switch, one fan: a plain switch, a countdown timer or a humidity sensor can all work
                    here. Decides: anyone on the job.
           Advice:  Read the table too: 4 of advice.
           Advice:  Told, but with the other answers no rule turns on it: whether the new control switches by
                    relay or by an electronic output (Relay or mechanical contact); whether the switch box
                    holds a ground (Yes).
           Caution: Prove it dead before touching: every control that feeds the fan on or calling, breaker open
                    and locked, then a contact meter, proved before and after, on every pair of wires in every
                    box opened. Test again with each control in its other position. A qualified person tests.
           Caution: A licensed electrician, local code and the inspector decide. This is a reminder, not
                    permission.
      "
    `);
  });
});
