import type { QuestionWords } from '#words/question-words.ts';

/** The questions about the duct and where it lies, in Spanish, by their ids. Parts of a run are typed as they are printed. */
export const ductQuestions = {
  'duct-run': {
    prompt:
      '¿Cómo es el ducto, del extractor hasta afuera? Una parte a la vez, o todo: 14 ft 4 in flex; 2 x elbow 90; wall cap.',
    why: 'Cada pie, codo y salida quita presión. El largo como está tendido, no en línea recta: un ducto colgado es más largo.',
    accepts:
      'partes con ; entre ellas: un largo (14 ft 4 in flex compressed 15 %), piezas (2 x elbow 90), reducer 5 to 4 in, una salida (wall cap)',
    brief: 'Ducto del extractor hasta afuera, parte por parte',
    because:
      'Se toma un tramo común: de 6 a 25 ft de ducto flexible de 4 in, dos codos y una salida de pared; de la práctica común.',
    growing: {
      refused: (said) =>
        `Esa parte no se entendió: “${said}”. Empiece en el extractor y dé una como 14 ft 4 in flex, 2 x elbow 90 o wall cap.`,
      soFar: (draft) => `Hasta ahora: ${draft}. ¿Qué sigue? Diga listo después de la última parte.`,
      choices: {
        'elbow 90': 'Codo de 90°',
        'elbow 45': 'Codo de 45°',
        'wall cap': 'Salida de pared (final)',
        'roof cap': 'Salida de techo (final)',
        done: 'Listo',
      },
      ended: /^(?:listo|hecho|terminado|es todo|eso es todo|ya)$/i,
    },
  },
  altitude: {
    prompt: '¿A qué altura sobre el mar está la casa?',
    why: 'El aire delgado pesa menos: lo sienten el extractor y el ducto, así que el caudal casi no cambia, pero las presiones sí.',
    accepts: 'una altura sobre el mar, por ejemplo 5000 ft o 1500 m',
    brief: 'Altura sobre el mar',
    because: 'Se calcula al nivel del mar.',
  },
  'duct-diameter': {
    prompt: '¿Cuál es el diámetro interior del ducto?',
    why: 'Un ducto ancho lleva el aire más despacio y tiene más pared que lo enfría, así que suda antes.',
    accepts: 'una medida, por ejemplo 4 in o 100 mm',
    brief: 'Diámetro interior del ducto',
    because: 'El ducto de un extractor de baño casi siempre es de 4 in; de la práctica común.',
  },
  'attic-duct-length': {
    prompt: '¿Cuánto ducto pasa por lo frío, como está tendido?',
    why: 'El aire se enfría con cada pie; un ducto largo suda donde uno corto queda seco.',
    accepts: 'un largo, por ejemplo 14 ft o 4.3 m',
    brief: 'Largo del ducto en el ático u otro espacio frío',
    because: 'Son comunes tramos de 6 a 25 ft; de la práctica común.',
  },
  'duct-insulation': {
    prompt: '¿Qué aislante tiene el ducto? La R de la etiqueta, o ninguno.',
    why: 'Un ducto desnudo en un ático frío suda desde su primer pie. Un forro apretado da menos de lo que dice su etiqueta.',
    accepts: 'un valor de aislante, por ejemplo R-8 o RSI 1.4, o ninguno',
    brief: 'Aislante del ducto',
    because: 'Se toma como desnudo, el peor caso, hasta que alguien mire.',
  },
  'attic-temperature': {
    prompt: '¿Qué tanto frío hace alrededor del ducto?',
    why: 'El agua se junta donde la pared del ducto está más fría que el punto de rocío del aire de adentro. Piense en una noche fría.',
    accepts: 'una temperatura, por ejemplo 68 °F o 20 °C',
    brief: 'Temperatura alrededor del ducto en una noche fría',
    because: 'Un ático ventilado está un poco por encima de la temperatura de afuera.',
  },
  'insulation-wanted': {
    prompt: '¿Con qué R se va a forrar el ducto? Ninguno donde queda dentro de la parte caliente de la casa.',
    why: 'Un ducto desnudo en lo frío suda. El número cuenta con el forro ya puesto, no como viene en el rollo.',
    accepts: 'un valor de aislante, por ejemplo R-8 o RSI 1.4, o ninguno',
    brief: 'Aislante que se quiere en el ducto, o ninguno',
    because: 'Se toma R-8, lo que pide la norma de campo fuera de la parte caliente de la casa.',
  },
  'duct-kind': {
    prompt: '¿Qué clase de ducto?',
    why: 'El flexible quita el doble de presión que el tubo liso cuando está bien estirado, y muchas veces más cuando está flojo.',
    brief: 'Clase de ducto',
    because: 'El flexible es el ducto común, y el peor para calcular.',
    choices: { smooth: 'Tubo liso', spiral: 'Tubo espiral', flex: 'Flexible', 'foil-flex': 'Flexible de aluminio' },
    hints: { flex: 'plástico sobre alambre', 'foil-flex': 'o aluminio semirrígido' },
  },
  elbows: {
    prompt: '¿Cuántos codos va a tener?',
    why: 'Cada codo cuesta lo que varios pies de ducto.',
    accepts: 'un número entero, por ejemplo 3',
    brief: 'Codos en el tramo',
    because: 'Lo común son dos codos: uno en el extractor, uno en la salida.',
  },
} as const satisfies Readonly<Record<string, QuestionWords>>;
