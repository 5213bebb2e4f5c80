import { describe, expect, it } from 'vitest';
import { tellsOfDanger } from '#commands/workings/danger-heard.ts';

// Invented lines, as a caller or an apprentice might say them; what each must bring follows the dangers of the knowledge base.
const dangers = `kids feel sick and sleepy every time the furnace is on
customer got a shock from the fan switch what should she do now
kids are dizzy what should they do
the switch bit me
smells like something is cooking in the fan, plastic
carbon monoxide alarm is sounding
co detector going off in the hall
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
huele a plastico derretido`.split('\n');

const harmless = `fan louder than before
mirror stays foggy
there is a faint hum at night
I am sick of the noise, which fan for 8x10
110 fan 4 in flex 20 ft 3 elbows roof cap what do I get
30 inch door 3/4 gap 110 cfm gas water heater in the hall
el espejo se queda empañado
hace mucho ruido
se fundio el foco`.split('\n');

describe('a line told to /ask', () => {
  it.each(dangers)('stops: %s', (line) => {
    expect(tellsOfDanger(line)).toBe(true);
  });

  it.each(harmless)('goes on: %s', (line) => {
    expect(tellsOfDanger(line)).toBe(false);
  });
});
