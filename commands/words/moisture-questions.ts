import type { QuestionWords } from '#words/question-words.ts';

const humidityTaken = 'una humedad relativa, por ejemplo 55 %';

/** The questions about showers, damp air and warmth, in Spanish, by their ids. */
export const moistureQuestions = {
  'shower-minutes': {
    prompt: '¿Cuánto dura la ducha más larga, o todas las que van seguidas?',
    why: 'Cada minuto de agua caliente pone más vapor en el cuarto. Una ducha tras otra cuenta como una larga.',
    accepts: 'un tiempo, por ejemplo 20 min',
    brief: 'Duración de la ducha, o de todas las seguidas',
    because: 'Dos estudios con medidores hallaron 7.8 y 8.2 minutos en promedio.',
  },
  'house-humidity': {
    prompt: '¿Qué humedad tiene la casa, fuera del baño?',
    why: 'El extractor solo puede secar el cuarto tanto como el aire de la casa que jala. Un higrómetro barato en el pasillo lo dice.',
    accepts: humidityTaken,
    brief: 'Humedad relativa de la casa',
    because: 'El rango que se recomienda para viviendas, y su punto medio.',
  },
  'house-temperature': {
    prompt: '¿Qué temperatura tiene la casa?',
    why: 'El aire caliente con la misma humedad lleva más agua, y un baño caliente se seca antes.',
    accepts: 'una temperatura, por ejemplo 70 °F o 21 °C',
    brief: 'Temperatura de la casa',
    because: 'Cuartos comunes con calefacción.',
  },
  'fan-during-shower': {
    prompt: '¿Anda el extractor también durante la ducha?',
    why: 'Un extractor que arranca con el agua evita que el vapor llegue a las paredes; el que arranca después tiene que sacarlo todo.',
    brief: 'Extractor encendido durante la ducha',
    because: 'Casi todos los extractores se encienden con la luz; la tabla dice cuánto cuesta dejarlo apagado.',
  },
  'wipe-down': {
    prompt: '¿Pasa alguien un jalador por las paredes mojadas después de la ducha?',
    why: 'El agua que queda en paredes y cortina es lo que más tiempo ocupa al extractor; lo que se quita a mano no hay que soplarlo.',
    brief: 'Paredes mojadas secadas con jalador después de la ducha',
    because: 'Casi nadie lo hace.',
  },
  'bathroom-temperature': {
    prompt: '¿Qué temperatura tiene el baño justo después de una ducha?',
    why: 'Lo que más pesa de todo lo que se adivina: cada grado más seca el cuarto antes.',
    accepts: 'una temperatura, por ejemplo 68 °F o 20 °C',
    brief: 'Temperatura del baño después de una ducha',
    because:
      'Una ducha sube el cuarto unos pocos kelvin por encima de la casa. Es lo que más pesa de lo que no se sabe en el cálculo.',
  },
  'mirror-wall': {
    prompt: '¿Cuelga el espejo de una pared exterior?',
    why: 'Un espejo frío se empaña más y se aclara después.',
    brief: 'Pared de la que cuelga el espejo',
    because: 'Casi todos cuelgan de una pared interior.',
    choices: { inside: 'Pared interior', outside: 'Pared exterior' },
  },
  'exhaust-humidity': {
    prompt: '¿Qué tan húmedo es el aire que entra al extractor durante una ducha?',
    why: 'Decide a qué temperatura se junta agua en el ducto. Cerca de 100 % se moja cualquier ducto frío.',
    accepts: humidityTaken,
    brief: 'Humedad relativa del aire que sale',
    because:
      'Seco al final de la marcha, casi saturado mientras corre la ducha. El aire saturado moja cualquier ducto frío.',
  },
  'exhaust-temperature': {
    prompt: '¿Qué temperatura tiene ese aire?',
    why: 'Con la misma lectura de humedad, el aire más caliente lleva más agua, así que moja antes un ducto frío.',
    accepts: 'una temperatura, por ejemplo 68 °F o 20 °C',
    brief: 'Temperatura del aire que sale',
    because: 'Aire del cuarto durante una ducha y después.',
  },
} as const satisfies Readonly<Record<string, QuestionWords>>;
