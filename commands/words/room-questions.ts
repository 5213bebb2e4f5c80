import type { QuestionWords } from '#words/question-words.ts';

/** The questions about the room, and what a plan covers, in Spanish, by their ids. */
export const roomQuestions = {
  'plan-covers': {
    prompt: '¿Qué debe abarcar el plan? Deje fuera lo que no aplique a este trabajo.',
    why: 'Cada parte hace sus propias preguntas; la que se deja fuera no hace ninguna. Se puede agregar después, y no se pierde nada de lo respondido.',
    brief: 'Partes del plan',
    because: 'Se planea el trabajo entero.',
    choices: {
      'air-needed': 'Aire que necesita el cuarto',
      duct: 'Extractor y ducto',
      'make-up': 'Aire de reposición y combustión',
      'run-time': 'Tiempo de marcha',
      sweat: 'Ducto que suda',
      'wiring-rules': 'Cableado y control',
      'wiring-room': 'Espacio en la caja',
      cost: 'Costo de uso',
      parts: 'Piezas',
    },
  },
  'room-length': {
    prompt: '¿Qué largo tiene el cuarto, de pared a pared?',
    why: 'El área del piso decide cuánto aire necesita el cuarto. Mida en el piso, sin los clósets.',
    accepts: 'un largo, por ejemplo 8 ft 6 in o 2.6 m',
    brief: 'Largo del cuarto',
    because: 'El baño chico común mide 5 ft por 8 ft; de la práctica común.',
  },
  'room-width': {
    prompt: '¿Qué ancho tiene?',
    why: 'El área del piso decide cuánto aire necesita el cuarto.',
    accepts: 'un ancho, por ejemplo 8 ft 6 in o 2.6 m',
    brief: 'Ancho del cuarto',
    because: 'El baño chico común mide 5 ft por 8 ft; de la práctica común.',
  },
  'room-area': {
    prompt: '¿Cuál es el área del piso?',
    why: 'Se da en vez de largo y ancho, para un cuarto que no es rectangular.',
    accepts: 'un área, por ejemplo 54 sq ft o 5 m2',
    brief: 'Área del piso, en vez de largo y ancho',
    because: 'El baño chico común mide 5 ft por 8 ft; de la práctica común.',
  },
  'ceiling-height': {
    prompt: '¿Qué alto tiene el cielo raso? Si es inclinado, el promedio.',
    why: 'Por encima de 8 ft el cuarto guarda más aire de lo que dice su piso, así que se calcula por volumen.',
    accepts: 'una altura, por ejemplo 8 ft o 2.4 m',
    brief: 'Altura del cielo raso',
    because: 'Casi todas las casas tienen cielo raso de 8 ft; de la práctica común.',
  },
  fixtures: {
    prompt: '¿Qué hay en el cuarto? Una ducha sobre una tina cuenta una vez, como tina.',
    why: 'Un cuarto de más de 100 sq ft se calcula por sus muebles de baño, y una tina de hidromasaje o una ducha de vapor pide más en cualquier tamaño.',
    brief: 'Muebles de baño en el cuarto',
    because: 'Un inodoro y una tina con ducha encima son el par de siempre.',
    choices: {
      toilet: 'Inodoro',
      shower: 'Ducha',
      tub: 'Tina',
      'jetted-tub': 'Tina de hidromasaje',
      'steam-shower': 'Ducha de vapor',
    },
    hints: {
      tub: 'con o sin ducha encima',
      'steam-shower': 'cerrada hasta el cielo raso, con generador de vapor',
    },
    also: { toilet: ['excusado', 'taza', 'wc'], tub: ['bañera', 'banera'], shower: ['regadera'] },
  },
  'toilet-compartment': {
    prompt: '¿Está el inodoro detrás de su propia puerta?',
    why: 'Un inodoro en su propio cuarto cerrado necesita su propio extractor o una ventana que abra: el extractor del cuarto principal no le llega.',
    brief: 'Inodoro detrás de su propia puerta',
    because: 'Casi todos los inodoros están en el cuarto mismo; mire antes de comprar el extractor.',
  },
  running: {
    prompt: '¿Cómo va a andar el extractor?',
    why: 'Un extractor que nunca para puede mover menos aire que uno que se enciende para la ducha; entonces tiene que ser muy silencioso.',
    brief: 'Cómo anda el extractor',
    because: 'Casi todos los extractores de baño se encienden cuando hacen falta.',
    choices: { 'on-demand': 'Cuando se usa el cuarto', continuous: 'Todo el tiempo' },
    hints: {
      'on-demand': 'interruptor, temporizador o control de humedad',
      continuous: 'velocidad baja de día y de noche',
    },
  },
} as const satisfies Readonly<Record<string, QuestionWords>>;
