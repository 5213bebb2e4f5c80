import type { QuestionWords } from '#words/question-words.ts';

const current = 'una corriente, por ejemplo 15 A';
const power = 'una potencia, por ejemplo 30 W';

/** The questions about watts and amps, and what they cost, in Spanish, by their ids. */
export const loadQuestions = {
  'fan-watts': {
    prompt: '¿Cuántos vatios toma el extractor? Lo dice la etiqueta; deje fuera la luz.',
    why: 'Vatios y horas hacen la electricidad; vatios y caudal dicen si el extractor gasta poco, como pide el código.',
    accepts: power,
    brief: 'Vatios que toma el extractor, sin su luz',
    because: 'Los extractores de baño toman desde 5 W los que menos gastan hasta 100 W los viejos; de memoria.',
  },
  'fan-amps': {
    prompt: '¿Cuántos amperios dice la etiqueta del extractor?',
    why: 'Un motor toma más amperios de lo que dicen sus vatios. Los amperios de la etiqueta van antes que cualquier cuenta.',
    accepts: current,
    brief: 'Amperios del extractor',
    because: 'Se calcula con los vatios del extractor.',
  },
  'heater-watts': {
    prompt: '¿Cuántos vatios tiene el calefactor?',
    why: 'Un calefactor llena un circuito él solo: 1500 W toman 12.5 A.',
    accepts: `${power}, o ninguna`,
    brief: 'Vatios del calefactor',
    because: 'La carga no se puede sumar sin los vatios del calefactor.',
  },
  'lamp-watts': {
    prompt: '¿Cuántos vatios tienen las lámparas de la unidad?',
    why: 'Un control que maneja extractor y lámpara juntos conmuta los dos.',
    accepts: `${power}, o ninguna`,
    brief: 'Vatios de las lámparas de la unidad',
    because: 'La carga no se puede sumar sin los vatios de las lámparas.',
  },
  'other-fixed-load': {
    prompt: '¿Cuántos amperios toma el otro equipo fijo del circuito, todo junto?',
    why: 'El equipo fijo puede tomar la mitad de un circuito que también alimenta lámparas o enchufes.',
    accepts: `${current}, o ninguna`,
    brief: 'Amperios de otro equipo fijo en el circuito',
    because: 'Sin eso no se puede decir su parte del circuito.',
  },
  breaker: {
    prompt: '¿De cuánto es el disyuntor del circuito?',
    why: 'Alambre y carga se comparan con él. El número está en su palanca.',
    accepts: current,
    brief: 'Disyuntor del circuito del extractor',
    because: 'No se compara nada con el disyuntor hasta que se lea.',
  },
  'thinnest-wire': {
    prompt:
      '¿Cuál es el alambre más delgado del circuito? Léalo en la cubierta del cable, o en una caja comprobada sin tensión.',
    why: 'Un tramo delgado en cualquier parte limita el disyuntor: el cobre de 14 AWG lleva 15 A, el de 12 AWG 20 A, el de 10 AWG 30 A.',
    brief: 'Alambre más delgado del circuito',
    because: 'Se toma como demasiado delgado hasta que se lea.',
    choices: { 10: '10 AWG o más grueso', 12: '12 AWG', 14: '14 AWG', 16: '16 AWG o más delgado' },
  },
  'control-amps': {
    prompt: '¿Para cuántos amperios de motor es el control nuevo?',
    why: 'Un extractor es un motor: un límite de lámpara en vatios no dice nada de él.',
    accepts: current,
    brief: 'Límite de motor del control nuevo',
    because: 'No se compara nada con el límite del control hasta que se lea.',
  },
  'control-minimum': {
    prompt: '¿Cuál es la carga mínima que necesita el control nuevo? Lo dice su hoja, o ninguna.',
    why: 'Con una carga muy chica, un control electrónico puede parpadear, quedarse encendido o no arrancar nunca.',
    accepts: `${power}, o ninguna`,
    brief: 'Carga mínima que necesita el control nuevo',
    because: 'No se compara nada con la carga mínima hasta que se lea la hoja.',
  },
  'fan-watts-low': {
    prompt: '¿Cuántos vatios toma el extractor en su velocidad más baja?',
    why: 'Su velocidad más baja decide si un control electrónico se sostiene, no el número del empaque.',
    accepts: power,
    brief: 'Vatios del extractor en su velocidad más baja',
    because: 'No se compara nada con la carga mínima hasta que se sepa.',
  },
  'hours-per-day': {
    prompt: '¿Cuánto anda el extractor en un día común?',
    why: 'El costo va con las horas. /runtime dice cuánto necesita cada ducha.',
    accepts: 'un tiempo por día, por ejemplo 2 h',
    brief: 'Horas que anda el extractor al día',
    because: 'Media hora para una ducha rápida, cuatro para una familia; cálculo propio.',
  },
  'degree-days': {
    prompt: '¿Qué tan frío es el lugar? Sus grados-día de calefacción al año, base 65 °F o 18 °C.',
    why: 'El aire que se saca hay que calentarlo otra vez; los grados-día dicen qué tan larga y fría es la temporada de calefacción.',
    accepts: 'un número de grados-día de calefacción, por ejemplo 5400 HDD65 o 3000 K·d',
    brief: 'Grados-día de calefacción al año',
    because: 'Del sur caliente al norte frío del país; de memoria.',
  },
  'electricity-price': {
    prompt: '¿Cuánto cuesta la electricidad? Según el recibo.',
    why: 'Convierte los kilovatios-hora en dinero.',
    accepts: 'un precio por kWh, por ejemplo $0.16 per kWh',
    brief: 'Precio de la electricidad por kilovatio-hora',
    because: 'Una suposición de memoria; léalo en el recibo.',
  },
  'heating-price': {
    prompt:
      '¿Cuánto cuesta el combustible de la calefacción? Según el recibo, por therm; con calefacción eléctrica o bomba de calor, por kWh.',
    why: 'El aire que se saca hay que calentarlo otra vez, con esto.',
    accepts: 'un precio por therm, kWh o GJ, por ejemplo $1.40 per therm o $0.16 per kWh',
    brief: 'Precio del combustible de calefacción, por therm, kWh o GJ',
    because: 'Una suposición de memoria; léalo en el recibo.',
  },
  'heating-efficiency': {
    prompt:
      '¿Cuánta de la energía del combustible llega a los cuartos? El rendimiento de la calefacción; una bomba de calor da más de lo que toma.',
    why: 'Una calefacción mala quema más para el mismo calor.',
    accepts: 'un rendimiento, por ejemplo 80 %',
    brief: 'Rendimiento de la calefacción',
    because: 'De una caldera vieja a una de condensación; de memoria.',
  },
} as const satisfies Readonly<Record<string, QuestionWords>>;
