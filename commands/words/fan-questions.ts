import type { QuestionWords } from '#words/question-words.ts';

const airflowTaken = 'un caudal, por ejemplo 80 cfm o 38 L/s';

/** The questions about the fan and the air it moves, in Spanish, by their ids. */
export const fanQuestions = {
  'fan-curve': {
    prompt:
      '¿Qué dice la etiqueta del extractor? Dé sus puntos nominales, caudal a presión estática, por ejemplo 84@0.1 66@0.25. Si solo se sabe el número del empaque, con eso basta.',
    why: 'El número del empaque es lo que el extractor mueve contra casi nada. Dos puntos nominales dicen cómo aguanta un ducto de verdad.',
    accepts:
      'puntos de la etiqueta, caudal a presión estática (84@0.1 66@0.25); o el único número del empaque (110); o constant 110 to 0.3',
    brief: 'Puntos nominales del extractor, o el número del empaque',
    because: 'Se toma un extractor de 80 cfm de marca desconocida; lea la etiqueta antes de confiar en esto.',
  },
  collar: {
    prompt: '¿Cuál es el diámetro del cuello de salida del extractor?',
    why: 'Un cuello más ancho que el ducto se reduce ahí mismo, y los puntos de la etiqueta se midieron con el cuello de su propio tamaño.',
    accepts: 'una medida, por ejemplo 4 in o 100 mm',
    brief: 'Diámetro del cuello de salida del extractor',
    because: 'Se toma tan ancho como el ducto que empieza ahí; mídalo, porque uno más ancho se reduce.',
  },
  'airflow-needed': {
    prompt: '¿Cuánto aire tiene que mover? Con /size se calcula según el cuarto.',
    why: 'Lo que da el extractor se compara con esto, y según esto se escogen la velocidad y los arreglos.',
    accepts: airflowTaken,
    brief: 'Caudal que necesita el cuarto',
    because: 'No se compara con ninguna necesidad; /size calcula una.',
  },
  'fan-settings': {
    prompt: '¿Tiene el extractor un selector? Dé sus caudales, o ninguno.',
    why: 'Con selector, la posición correcta es la más silenciosa que todavía mueve suficiente, y eso se puede decir antes de cortar el cielo raso.',
    accepts: 'caudales con comas, por ejemplo 50, 80, 110, o ninguno',
    brief: 'Caudales del selector',
    because: 'Se toma como extractor de una sola velocidad.',
  },
  'rated-sones': {
    prompt: '¿Cuántos sones dice la etiqueta?',
    why: 'El ruido de la etiqueta se mide casi sin ducto; con él se puede decir entre qué límites estará el ruido en este ducto.',
    accepts: 'un ruido en sones, por ejemplo 1.5 sones',
    brief: 'Sones de la etiqueta',
    because: 'Sin el dato de ruido no se puede decir ningún ruido.',
  },
  'fan-setting': {
    prompt: '¿En qué posición está el extractor?',
    why: 'Un extractor con selector mueve lo que deja su posición, no lo que dice su número más grande.',
    accepts: 'el caudal de la posición, por ejemplo 80 cfm, o su nombre como se dio con los puntos, por ejemplo low',
    brief: 'Posición del extractor en uso',
    because: 'Se toma que el extractor anda como dicen sus puntos o el número del empaque.',
  },
  'measured-airflow': {
    prompt: '¿Qué caudal se midió en la rejilla?',
    why: 'Una medición vale más que toda predicción.',
    accepts: airflowTaken,
    brief: 'Caudal medido en la rejilla',
    because: 'No se ha medido nada.',
  },
  'delivered-airflow': {
    prompt: '¿Cuánto aire mueve de verdad el extractor? El número que da /duct o una medición, no el del empaque.',
    why: 'El tiempo de marcha, el ducto que suda, el aire de reposición y el costo van según el aire que se mueve de verdad.',
    accepts: airflowTaken,
    brief: 'Caudal que se da de verdad',
    because:
      'En casas habitadas casi todos los extractores de baño movían de 20 a 80 cfm; /duct o una prueba con bolsa lo dice.',
  },
} as const satisfies Readonly<Record<string, QuestionWords>>;
