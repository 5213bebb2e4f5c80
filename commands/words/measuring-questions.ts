import type { QuestionWords } from '#words/question-words.ts';

const noReadings = { 'no readings': 'sin lecturas' };
const readingsSuchAs = (example: string): string => `una o más lecturas con comas, por ejemplo ${example}`;

/** The questions about measuring at the grille, in Spanish, by their ids. */
export const measuringQuestions = {
  method: {
    prompt: '¿Cómo se midió el caudal?',
    why: 'Cada manera yerra lo suyo; la respuesta dice hasta dónde se puede confiar.',
    brief: 'Cómo se midió el caudal',
    because: 'Una bolsa es lo que tienen casi todas las cuadrillas.',
    choices: {
      bag: 'Bolsa y cronómetro',
      'flow-box': 'Caja de flujo',
      traverse: 'Velocidades sobre la rejilla',
      hood: 'Campana de medición',
    },
    hints: {
      'flow-box': 'una caja sobre la rejilla con una abertura y un manómetro',
      traverse: 'un anemómetro que se pasa por su cara',
      hood: 'muestra el caudal mismo',
    },
    also: { bag: ['bolsa'], traverse: ['anemómetro', 'anemometro'], hood: ['campana'] },
  },
  'bag-volume': {
    prompt: '¿Cuánto le cabe a la bolsa? El número de su empaque.',
    why: 'Volumen entre tiempo es el caudal. Una bolsa casi nunca se llena hasta el número de su empaque; el margen lo toma en cuenta.',
    accepts: 'un volumen, por ejemplo 55 gal o 208 L',
    brief: 'Volumen de la bolsa',
    because: 'Sin el volumen una bolsa no dice nada; 55 gal o más sirve para un extractor de baño.',
  },
  'fill-times': {
    prompt: '¿Cuántos segundos cada vez, con la puerta cerrada? Cinco veces, con comas.',
    why: 'Un tiempo puede errar medio segundo; vale la pena el promedio de cinco.',
    accepts: readingsSuchAs('6.2, 6.0, 6.4 s'),
    brief: 'Segundos para llenar o vaciar la bolsa, cada vez',
    because: 'No se leyó nada, así que no hay nada medido.',
    shown: noReadings,
  },
  'box-opening': {
    prompt: '¿Qué tan grande es la abertura de la caja de flujo?',
    why: 'Abertura y presión hacen el caudal.',
    accepts: 'un área, por ejemplo 30 sq in o 190 cm2',
    brief: 'Área de la abertura de la caja de flujo',
    because: 'Sin la abertura una caja de flujo no dice nada.',
  },
  'box-pressure': {
    prompt: '¿Qué lee el manómetro dentro de la caja de flujo, con la puerta cerrada? Varias lecturas con comas.',
    why: 'La presión en la caja dice qué tan rápido pasa el aire por su abertura.',
    accepts: readingsSuchAs('3.9, 4.1, 4.0 Pa'),
    brief: 'Presión en la caja de flujo, cada lectura',
    because: 'No se leyó nada, así que no hay nada medido.',
    shown: noReadings,
  },
  'grille-area': {
    prompt: '¿Qué tan grande es la cara de la rejilla sobre la que se leyeron las velocidades?',
    why: 'Velocidad por área abierta es el caudal.',
    accepts: 'un área, por ejemplo 30 sq in o 190 cm2',
    brief: 'Área de la cara de la rejilla del extractor',
    because: 'Sin el área, las velocidades no dicen ningún caudal.',
  },
  'grille-velocities': {
    prompt:
      '¿Qué velocidades del aire se leyeron sobre la cara de la rejilla, con la puerta cerrada? Por lo menos cinco lugares, con comas.',
    why: 'El aire no entra parejo; cuenta el promedio sobre la cara.',
    accepts: readingsSuchAs('180, 220, 200, 190, 210 fpm'),
    brief: 'Velocidades del aire sobre la cara de la rejilla',
    because: 'No se leyó nada, así que no hay nada medido.',
    shown: noReadings,
  },
  'free-share': {
    prompt: '¿Cuánto de esa cara está abierto? 100 % si el área que se dio es la abierta misma.',
    why: 'Las barras de la rejilla se llevan su parte.',
    accepts: 'un porcentaje, por ejemplo 15 %',
    brief: 'Parte abierta de la rejilla del extractor',
    because: 'Las rejillas estampadas de baño casi siempre están abiertas del 50 al 70 %; de la práctica común.',
  },
  'hood-reading': {
    prompt: '¿Qué muestra la campana de medición, con la puerta cerrada? Varias lecturas con comas.',
    why: 'El promedio de unas pocas lecturas empareja las ráfagas.',
    accepts: readingsSuchAs('72, 74, 73 cfm'),
    brief: 'Caudal que muestra la campana, cada lectura',
    because: 'No se leyó nada, así que no hay nada medido.',
    shown: noReadings,
  },
  'hood-powered': {
    prompt: '¿Tiene la campana de medición su propio soplador que compensa su resistencia?',
    why: 'Las campanas sin él leen mal los extractores de baño hasta por una cuarta parte; con él, por unos pocos por ciento.',
    brief: 'Campana de medición con soplador propio',
    because: 'Se toma como campana sin soplador propio, que yerra más.',
  },
} as const satisfies Readonly<Record<string, QuestionWords>>;
