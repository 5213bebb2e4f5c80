import type { QuestionWords } from '#words/question-words.ts';

const counted = (example: string): string => `cantidad x calibre, por ejemplo ${example}, o ninguno`;

/** The questions about what is in an electrical box, in Spanish, by their ids. */
export const boxQuestions = {
  box: {
    prompt: '¿Qué caja es? Las pulgadas cúbicas marcadas adentro, o su medida y forma.',
    why: 'Cada caja tiene tanto espacio y nada más. Las de plástico están marcadas; las de metal comunes están en una lista por medida y profundidad.',
    accepts: 'un volumen marcado (21 in3) o una caja de metal común (4 x 1-1/2 square); un aro después de +',
    brief: 'Caja (sus pulgadas cúbicas, o su medida y forma)',
    because: 'Nadie sabe el espacio de la caja, así que no se puede decir que quepa nada.',
  },
  conductors: {
    prompt: '¿Qué alambres aislados llegan y terminan en esta caja? Cuente solo en una caja comprobada sin tensión.',
    why: 'Cada alambre vivo, neutro o de interruptor que llega cuenta uno, según su calibre. Las tierras y los alambres que pasan de largo se preguntan aparte.',
    accepts: 'cantidad x calibre, por ejemplo 4x14, 2x12; o cables, por ejemplo 3 x 14/2 with ground',
    brief: 'Alambres aislados que terminan en la caja (cantidad x calibre)',
    because: 'Nadie ha contado los alambres, así que no se puede decir que quepa nada.',
  },
  serves: {
    prompt: '¿Para qué es la caja?',
    why: 'Los alambres propios de un extractor siempre cuentan. Solo bajo el domo de una lámpara se pueden dejar fuera alambres delgados.',
    brief: 'Para qué sirve la caja',
    because: 'Se toma como la caja del extractor, cuyos alambres cuentan todos, hasta que alguien diga para qué es.',
    choices: {
      fan: 'El extractor',
      switch: 'Un interruptor, temporizador o sensor',
      light: 'Una lámpara en la caja',
      other: 'Solo empalmes, u otra cosa',
    },
    hints: { fan: 'sus propios alambres llegan a esta caja' },
  },
  grounds: {
    prompt: '¿Cuántos alambres desnudos o verdes llegan, y qué calibre tiene el más grueso?',
    why: 'Los alambres de tierra cuentan juntos: hasta cuatro como un alambre, según el más grueso. Desde el código de 2020 cada uno más agrega un cuarto.',
    accepts: counted('3x14'),
    brief: 'Alambres de tierra que llegan (cantidad x el más grueso)',
    because: 'Se cuenta sin alambres de tierra, a menos que los traigan los cables.',
  },
  devices: {
    prompt:
      '¿Qué interruptores, temporizadores o tomacorrientes hay en la caja? Cuéntelos según el alambre más grueso de cada uno.',
    why: 'Cada uno con su propio puente cuenta dos alambres, o dos por cada espacio cuando es más ancho que uno.',
    accepts:
      'cantidad x alambre más grueso, por ejemplo 1x14; 1x14 2-gang para uno que ocupa dos espacios juntos; o ninguno',
    brief: 'Interruptores, temporizadores, tomacorrientes (cantidad x alambre más grueso)',
    because: 'Se cuenta sin ninguno.',
  },
  clamps: {
    prompt: '¿Sujetan los cables unas abrazaderas dentro de la caja?',
    why: 'Las abrazaderas de adentro ocupan el espacio de un alambre, todas juntas. Los conectores que sujetan afuera no ocupan nada.',
    brief: 'Abrazaderas de cable dentro de la caja',
    because: 'Se cuenta sin abrazaderas; mire, porque las de adentro ocupan el espacio de un alambre más.',
    choices: { internal: 'Sí, adentro', none: 'Ninguna adentro' },
    hints: { none: 'o conectores que sujetan afuera' },
  },
  'fixture-wires': {
    prompt: '¿Cuántos alambres propios del extractor o de la lámpara llegan a esta caja, y de qué calibre?',
    why: 'Cada alambre propio de un extractor o lámpara cuenta un alambre de su calibre: los delgados ocupan menos espacio, pero algo ocupan.',
    accepts: counted('2x18'),
    brief: 'Alambres propios del extractor o lámpara (cantidad x calibre)',
    because: 'Se cuenta sin alambres propios de extractor o lámpara, y se dice aparte lo que ocuparían dos.',
  },
  canopy: {
    prompt: '¿Cubre la caja el domo de una lámpara?',
    why: 'Bajo un domo así se pueden dejar fuera hasta cuatro alambres más delgados que 14 AWG. Un extractor no tiene ninguno.',
    brief: 'Caja bajo el domo de una lámpara',
    because: 'Se toma como sin domo, así que cuentan todos los alambres.',
  },
  'box-extras': {
    prompt: '¿Hay algo más en la caja?',
    why: 'Cada una de estas cosas cambia la cuenta; una caja sencilla no tiene ninguna.',
    brief: 'Qué más hay en la caja',
    because: 'Se cuenta sin nada más en la caja.',
    choices: {
      'pass-through': 'Alambres que pasan de largo',
      loops: 'Lazos largos de alambre',
      'support-fittings': 'Espárrago o hickey',
      'terminal-blocks': 'Regleta de terminales',
      pigtails: 'Colas',
    },
    hints: { loops: '12 in o más, sin cortar' },
  },
  'pass-through': {
    prompt: '¿Qué alambres pasan por la caja sin cortarse?',
    why: 'Un alambre que pasa derecho cuenta uno.',
    accepts: counted('2x12'),
    brief: 'Alambres que pasan sin cortarse (cantidad x calibre)',
    because: 'Se cuenta sin alambres que pasen de largo.',
  },
  loops: {
    prompt: '¿Qué alambres sin cortar tienen un lazo de 12 in o más en la caja?',
    why: 'Un lazo largo se puede cortar y empalmar después, así que cuenta dos.',
    accepts: counted('1x12'),
    brief: 'Alambres sin cortar con lazo de 12 in o más (cantidad x calibre)',
    because: 'Se cuenta sin lazos largos.',
  },
  'support-fittings': {
    prompt: '¿Qué piezas de soporte hay en la caja?',
    why: 'Un espárrago de lámpara cuenta un alambre y un hickey otro, según el alambre más grueso de la caja.',
    brief: 'Espárrago de lámpara o hickey en la caja',
    because: 'Se cuenta sin espárrago ni hickey.',
    choices: { stud: 'Espárrago', hickey: 'Pieza hickey' },
    hints: {
      stud: 'el poste con rosca del que cuelga una lámpara',
      hickey: 'la unión entre el espárrago y el tubo de la lámpara',
    },
  },
  'terminal-blocks': {
    prompt: '¿Cuántas regletas de terminales hay en la caja, y qué calibre tiene su alambre más grueso?',
    why: 'Desde el código de 2023 cada regleta cuenta un alambre.',
    accepts: counted('1x14'),
    brief: 'Regletas de terminales (cantidad x alambre más grueso)',
    because: 'Se cuenta sin regletas.',
  },
  pigtails: {
    prompt: '¿Cuántas colas hay, alambres cortos que nunca salen de la caja?',
    why: 'No cuentan nada, pero el alambre más grueso de la caja decide lo que cuentan abrazaderas y espárragos.',
    accepts: counted('3x14'),
    brief: 'Colas que nunca salen de la caja (cantidad x calibre)',
    because: 'Se cuenta sin colas, que según el código no ocupan espacio.',
  },
  'wire-connectors': {
    prompt: '¿Cuántos conectores de alambre hay en la caja, y qué calibre tiene el alambre más grueso en ellos?',
    why: 'El código canadiense cuenta cada par de conectores tapados como un alambre.',
    accepts: counted('4x14'),
    brief: 'Conectores de alambre en la caja (Canadá, cantidad x alambre más grueso)',
    because: 'El código canadiense cuenta cada par como un alambre, así que se dice aparte lo que pueden ocupar.',
  },
  'device-depth': {
    prompt: '¿Qué tan hondo es el interruptor o temporizador más hondo detrás de su puente?',
    why: 'El código canadiense cobra por su profundidad un aparato más hondo que 2.54 cm (1 in).',
    accepts: 'una medida, por ejemplo 3/4 in o 20 mm',
    brief: 'Profundidad del aparato más hondo detrás de su puente (Canadá)',
    because:
      'Un aparato más hondo que 1 in ocupa más según el código canadiense, así que se dice aparte lo que ocupa uno hondo.',
  },
} as const satisfies Readonly<Record<string, QuestionWords>>;
