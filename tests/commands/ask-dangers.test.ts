import { describe, expect, it } from 'vitest';
import callback from '#commands/callback.ts';
import { heardIn, tellsOfDanger } from '#commands/workings/danger-heard.ts';
import { emergencyIn } from '#commands/workings/danger-net.ts';
import { emergencyReply } from '#commands/workings/emergency.ts';
import { once, talked } from './talked.ts';

// Invented lines, as a caller or an apprentice might say them; what each must bring follows the dangers of the knowledge base.
const dangers = `kids feel sick and sleepy every time the furnace is on
customer got a shock from the fan switch what should she do now
kids are dizzy what should they do
the switch bit me
smells like something is cooking in the fan, plastic
carbon monoxide alarm is sounding
co detector going off in the hall
there is a co alarm in the hall and it went off
there is a co alarm in the hall, it keeps beeping
co alarm in the hall
the co alarm went off last night
we have a co alarm and it woke us
hay una alarma de monoxido en el pasillo y suena
co alarm chirping every minute
everybody has headaches when the fan runs
my wife threw up and the furnace is next to the bathroom
smells like rotten eggs
sparks from the switch, 110 fan 4 in flex 20 ft
outlet next to the fan melted
se calienta la placa del apagador
la tapa del apagador quema
huele a kemado y truena
huele a quemado el extractor que hago
huele a huevo podrido
sale humo negro del boiler
suena la alarma de monoxido que hago
huele a gas en el baño
me dio toques el extractor
los niños estan mareados cuando prende el calentador
salen chispas del extractor
huele a plastico derretido
customer smells gas when fan on
smell of gas when the fan runs
we all have headaches since the new fan
she gets headaches when the fan runs
ceiling is sagging and wet round the fan
ceiling bulging under the fan
smoke came out of the fan
olia a quemado pero ya no
antes olia a quemado ayer
ya no huele a quemado
it used to smell burnt but not anymore
se prendio fuego el atico
el calentador tira humo
senti un ormigueo
me pego la luz
el ventilador dio un chispazo
corto circuito al prender
huele raro el ventilador como a plastico caliente`.split('\n');

const harmless = `fan louder than before
mirror stays foggy
there is a faint hum at night
I am sick of the noise, which fan for 8x10
110 fan 4 in flex 20 ft 3 elbows roof cap what do I get
30 inch door 3/4 gap 110 cfm gas water heater in the hall
el espejo se queda empañado
hace mucho ruido
se fundio el foco
there is a co alarm in the hall
There's a carbon monoxide detector on the landing. Mirror stays foggy
fan is loud, we have a co alarm in the kitchen
do we need a co alarm
there is no co alarm in the house
hay una alarma de monóxido en el pasillo
la casa no tiene detector de monoxido
no smoke, no headaches, just loud
fogs the mirror, no gas smell
sewer gas smell from the drain
gas water heater in the hall, 80 cfm, 30 in door
cigarette smoke from next door comes in
no huele a quemado
sin humo, pero suena fuerte`.split('\n');

describe('a line told to /ask', () => {
  it.each(dangers)('stops: %s', (line) => {
    expect(tellsOfDanger(line)).toBe(true);
  });

  it.each(harmless)('goes on: %s', (line) => {
    expect(tellsOfDanger(line)).toBe(false);
  });
});

describe('an alarm for carbon monoxide in a complaint', () => {
  it.each([
    'there is no co alarm in the house, mirror stays foggy',
    'there is a co alarm in the hall, mirror stays foggy',
    'hay una alarma de monóxido en el pasillo',
  ])('that hangs there, or does not, says nothing of fumes: %s', (line) => {
    const { seen, notSeen, unsure } = heardIn(line);
    expect([...seen, ...notSeen, ...unsure].map(({ id }) => id)).not.toContain('spill');
  });

  it.each([
    'co alarm chirps, is that the fan',
    'the carbon monoxide detector is chirping every minute',
    'la alarma de monóxido pita cada minuto',
  ])('that chirps is asked about first, and counts as fumes until somebody says no: %s', async (line) => {
    const [asked = ''] = [await talked(callback, `callback complaint="${line}"`)];
    expect(asked).toMatch(/Has a carbon monoxide alarm\s+sounded/);
    expect(await talked(callback, `callback complaint="${line}"`, "don't know")).toContain('Everyone outside now');
    expect(await talked(callback, `callback complaint="${line}"`, 'yes')).toContain('Everyone outside now');
    expect(once(callback, `complaint=${line}`).reply?.findings[0]?.says).toMatch(/^Everyone outside now/);
    const denied = await talked(callback, `callback complaint="${line}"`, 'no');
    expect(denied).not.toContain('Everyone outside now');
  });

  it('that chirps is tested or replaced, and that is said once fumes are denied', () => {
    const line = 'complaint=co alarm chirps and the mirror fogs';
    const says = (...more: string[]) =>
      once(callback, line, ...more)
        .reply?.findings.filter(({ id }) => id === 'alarm-chirps')
        .map(({ weight }) => weight);
    expect(says('confirmed-cause=bearing')).toEqual(['caution']);
    expect(says()).toEqual([]);
  });

  it.each(['co alarm chirping four times, loud', 'co alarm chirps and everyone has headaches'])(
    'in earnest, or with somebody ill, sends everybody out: %s',
    (line) => {
      expect(heardIn(line).seen.map(({ id }) => id)).toContain('spill');
    },
  );
});

describe('what cannot wait for a question', () => {
  it.each([
    ['breaker off but the tester still reads 120', 'live'],
    ['wires are still hot with the breaker off', 'live'],
    ['ya corte el breaker pero el tester marca 120', 'live'],
    ['corte el breaker y todavia hay corriente', 'live'],
    ['el abanico sigue prendido con el breaker bajado', 'live'],
    ['los cables estan vivos', 'live'],
    ['fell off the ladder and hit my head', 'hurt'],
    ['me cai de la escalera y me golpie la cabeza', 'hurt'],
  ])('%s', (line, kind) => {
    expect(emergencyIn(line)).toBe(kind);
    const { says, weight } = emergencyReply(kind === 'hurt' ? 'hurt' : 'live', 'english').findings[0] ?? {};
    expect(weight).toBe('stop');
    expect(says).toMatch(kind === 'hurt' ? /^Call the emergency services now/ : /^Treat it as live and touch nothing/);
  });

  it('is no line that asks for a number', () => {
    for (const line of harmless) expect(emergencyIn(line), line).toBeUndefined();
  });

  it('orders everybody out before any breaker where there is smoke or fire', () => {
    for (const line of ['smoke came out of the fan', 'se prendio fuego el atico']) {
      const [first] = once(callback, line).reply?.findings ?? [];
      expect(first?.weight).toBe('stop');
      expect(first?.says, line).toMatch(/^Everyone outside/);
    }
  });
});
