/** What an action of a desk command does, and what its options are about. Options all actions share stand beside them. */
interface ActionWords {
  readonly says: string;
  readonly options?: Readonly<Record<string, string>>;
}

interface DeskWords {
  readonly options?: Readonly<Record<string, string>>;
  readonly actions: Readonly<Record<string, ActionWords>>;
}

const jobNamed = 'el trabajo, por nombre o número; si se omite, el que está abierto aquí';
const person = 'la persona: @ en un servidor, un nombre en la terminal';
const clearTakesAway = 'clear lo quita';

/** The actions of desk commands in Spanish, by command and action; at most 100 characters each, the platform's limit. */
export const actionsInSpanish: Readonly<Record<string, DeskWords>> = {
  demo: {
    actions: {
      '': {
        says: 'Recorrer un trabajo entero en una casa inventada: queja, inspección, extractor, cambio (en inglés).',
        options: { stop: 'dónde mirar, o end para guardar la casa; si se omite, desde el principio' },
      },
    },
  },
  ask: {
    actions: {
      '': {
        says: 'Preguntar con palabras simples: se leen como un comando, que pregunta solo lo que falta.',
        options: {
          text: 'la pregunta, por ejemplo: 110 cfm, 20 pies de flex de 4, 3 codos, salida de techo, qué me da',
          as: 'el comando como se lee, donde cabe más de uno',
        },
      },
    },
  },
  lookup: {
    actions: {
      '': {
        says: 'Buscar una palabra, regla, tabla, pieza, causa o paso, con su fuente.',
        options: {
          words: 'qué buscar, por ejemplo: sone, salida de pared, cuenta de la caja, largo de ducto',
          all: 'yes muestra todas las cifras de una tabla larga',
        },
      },
    },
  },
  swap: {
    options: {
      step: 'el paso, por ejemplo E04; si se omite, el próximo suyo',
      job: 'el trabajo, por número; si se omite, el que está abierto aquí',
      as: 'quién es usted, en un teclado que usan varios',
      value: 'qué anotar, por ejemplo: 6 in, o controls=on hot-neutral=0',
    },
    actions: {
      start: {
        says: 'Hacer la lista de este trabajo con lo que sabe su hoja: pasos, herramientas y equipo de protección.',
        options: { list: 'cuál lista; si se omite, el cambio entero' },
      },
      next: { says: 'Ver el próximo paso que puede hacer: qué hacer, qué buscar, por qué, y qué anotar.' },
      done: {
        says: 'Anotar un paso como hecho, con lo que pide.',
        options: { at: 'cuándo se hizo, si fue antes: 2027-03-31T14:05Z' },
      },
      sign: {
        says: 'Ver en qué se apoya un alto, y firmarlo.',
        options: { confirm: 'yes, cuando haya leído lo que firma' },
      },
      override: {
        says: 'Saltar un paso con una razón. Para jefes; nunca un alto, nunca donde alguien se pueda lastimar.',
        options: { reason: 'por qué', step: 'el paso, por ejemplo E04' },
      },
      note: { says: 'Escribir una nota junto a un paso o al trabajo entero.', options: { says: 'la nota' } },
      stuck: {
        says: 'Decir que no puede seguir: queda en el estado, y se ve quién puede ayudar.',
        options: { says: 'qué lo detiene' },
      },
      photo: {
        says: 'Poner una foto en un paso: una imagen JPEG, PNG, WebP o HEIC de a lo más 10 MB.',
        options: { file: 'la foto' },
      },
      'photo-back': { says: 'Quitar una foto de un paso: la más nueva suya ahí.' },
      back: { says: 'Quitar lo que dice un paso; su respuesta más nueva si no se nombra ninguno.' },
      known: { says: 'Decir lo poco que decide qué pasos hacen falta: de a cinco, primero lo que decide más.' },
      fact: {
        says: 'Anotar una cosa que decide qué pasos hacen falta.',
        options: { fact: 'de qué se trata', is: 'cómo es; unknown si nadie sabe' },
      },
      box: {
        says: 'Nombrar una caja que se va a abrir: cada una se comprueba sin tensión por sí sola.',
        options: { name: 'como le dice la cuadrilla, por ejemplo: switch by the door', kind: 'qué es' },
      },
      pause: { says: 'Poner el trabajo en pausa: con eso termina toda comprobación sin tensión.' },
      resume: { says: 'Seguir después de una pausa.' },
      join: { says: 'Llegar al trabajo. Su propio candado se pone antes de trabajar.' },
      leave: {
        says: 'Irse del trabajo, con el candado ya quitado. Un jefe lo puede decir de alguien que se fue.',
        options: { person: 'quién se fue, si no es usted; para jefes' },
      },
      status: {
        says: 'Ver cuánto va de la lista, los altos que faltan, a quién se espera y qué está fuera de límites.',
      },
      carry: {
        says: 'Hacer una hoja de lo que falta, para un ático sin señal.',
        options: { stage: 'una etapa, por ejemplo duct; todas si se omite' },
      },
    },
  },
  handoff: {
    actions: {
      '': {
        says: 'Hacer la hoja para quien vive ahí y el registro del trabajo, como PDF.',
        options: { job: jobNamed, language: 'de la hoja para quien vive ahí; si se omite, el de usted' },
      },
    },
  },
  fan: {
    options: { name: 'el extractor, por su nombre en el estante' },
    actions: {
      add: {
        says: 'Poner un extractor en el estante de la cuadrilla según lo que dice su etiqueta.',
        options: {
          name: 'cómo le dice la cuadrilla, por ejemplo Hall bath 80',
          'fan-curve': 'Puntos nominales del extractor, o el número del empaque, por ejemplo 84@0.1 66@0.25',
          'fan-settings': 'Caudales del selector, por ejemplo 50, 80, 110',
          collar: 'Diámetro del cuello de salida del extractor, por ejemplo 4 in',
          'rated-sones': 'Sones de la etiqueta, por ejemplo 1.5 sones',
          'fan-watts': 'Vatios que toma el extractor, sin su luz, por ejemplo 30 W',
          'housing-size': 'Carcasa, largo x ancho x alto, por ejemplo 10-1/4 x 10-1/2 x 7-5/8 in',
        },
      },
      list: { says: 'Ver los extractores del estante.', options: { search: 'parte del nombre' } },
      show: { says: 'Ver todo lo que dice la etiqueta de un extractor.' },
      use: { says: 'Poner lo que dice la etiqueta de un extractor en el trabajo abierto aquí, para /duct y lo demás.' },
      compare: {
        says: 'Comparar hasta cuatro extractores en el ducto del trabajo abierto: una gráfica, una tabla.',
        options: {
          first: 'un extractor del estante, o varios con comas',
          second: 'otro extractor del estante',
          third: 'otro extractor del estante',
          fourth: 'otro extractor del estante',
        },
      },
      remove: { says: 'Quitar un extractor del estante. Los trabajos donde se usó conservan lo que tienen.' },
      import: {
        says: 'Poner una lista de extractores en el estante: CSV con las columnas que escribe /fan export.',
        options: { file: 'la ruta de un archivo CSV', csv: 'la lista misma como texto CSV, si es corta' },
      },
      export: { says: 'Llevarse el estante entero como lista CSV para hoja de cálculo.' },
      demo: {
        says: 'Poner en el estante unos extractores inventados para probar, o quitarlos otra vez.',
        options: { what: 'put los pone (lo usual), take los quita' },
      },
    },
  },
  job: {
    options: {
      name: jobNamed,
      search: 'parte del nombre',
      new: 'yes: un trabajo nuevo, aunque otro se llame casi igual',
    },
    actions: {
      open: {
        says: 'Abrir la hoja de un trabajo por nombre o número, o empezar una limpia.',
        options: { name: 'un nombre, por ejemplo 14 Maple St, o el número de un trabajo anterior' },
      },
      show: { says: 'Ver lo que hay en la hoja del trabajo, quién lo dijo y cómo se sabe.' },
      list: {
        says: 'Ver los trabajos de esta cuadrilla, primero el más nuevo.',
        options: { state: 'open (abiertos), closed (cerrados) o all (todos)' },
      },
      undo: { says: 'Quitar la respuesta más nueva de la hoja; vuelve a contar la de antes.' },
      close: { says: 'Cerrar el trabajo abierto aquí. La próxima pregunta empieza en una hoja limpia.' },
      causes: {
        says: 'En qué acabaron las quejas de esta cuadrilla en un año.',
        options: { year: 'el año, por ejemplo 2026' },
      },
      export: {
        says: 'Todo lo de la hoja de un trabajo como archivo: quién lo dijo, cuándo, y también lo que se quitó.',
        options: { as: 'json, que lee /job import (lo usual), o csv para hoja de cálculo' },
      },
      import: {
        says: 'Hacer un trabajo de un archivo que escribió /job export. Ninguna firma en él cuenta aquí.',
        options: { file: 'el archivo JSON que escribió /job export', json: 'lo mismo como texto, si es corto' },
      },
      erase: {
        says: 'Borrar un trabajo para siempre. Nada de él se puede recuperar.',
        options: {
          name: 'el trabajo que se borra, por nombre o número',
          sure: 'escriba otra vez el número del trabajo',
        },
      },
    },
  },
  crew: {
    options: { person },
    actions: {
      show: { says: 'Ver lo que la cuadrilla tiene puesto para sus trabajos, y quién puede firmar qué.' },
      set: {
        says: 'Poner unidades, códigos, zona horaria, nombre y teléfono de la cuadrilla para todo trabajo.',
        options: {
          units: `Unidades: inch-pound (pulgadas y cfm), metric (métricas), o both (las dos); ${clearTakesAway}`,
          'building-code-edition': `Código de construcción y edición; ${clearTakesAway}`,
          'electrical-code-edition': `Edición del código eléctrico; ${clearTakesAway}`,
          altitude: `Altura sobre el mar; ${clearTakesAway}`,
          'attic-temperature': `Temperatura alrededor del ducto en una noche fría; ${clearTakesAway}`,
          'time-zone': `Zona horaria, por ejemplo America/Denver; ${clearTakesAway}`,
          language: `Idioma donde no se sabe el de la persona: English o Español; ${clearTakesAway}`,
          'crew-name': `Nombre de la cuadrilla en la hoja para la casa; ${clearTakesAway}`,
          'crew-phone': `Teléfono en la hoja para la casa; ${clearTakesAway}`,
        },
      },
      add: {
        says: 'Meter a una persona en la cuadrilla como jefe (lead), aprendiz (apprentice) u oficina (office).',
        options: {
          as: 'lead (jefe de cuadrilla), apprentice (aprendiz) u office (oficina)',
          name: 'cómo llaman los registros a la persona',
        },
      },
      remove: {
        says: 'Sacar a una persona de la cuadrilla, o quitarle una parte, por ejemplo lead.',
        options: { as: 'solo esta parte; si se omite, todo' },
      },
      qualify: {
        says: 'Anotar para qué está calificado o tiene licencia alguien, con su número y último día.',
        options: {
          what: 'electrically-qualified, licensed-electrician, certified-renovator o combustion-tester',
          number: 'de la licencia, certificado o registro de capacitación',
          expires: 'el último día que vale, por ejemplo 2027-03-31',
        },
      },
      unqualify: {
        says: 'Quitarle a alguien una calificación.',
        options: { what: 'electrically-qualified, licensed-electrician, certified-renovator o combustion-tester' },
      },
      retention: {
        says: 'Decir cuánto se guardan los trabajos cerrados antes de borrarlos para siempre.',
        options: { keep: 'cuánto después de cerrarlos: 18 months, 2 years, o forever' },
      },
      forget: {
        says: 'Hacer desconocida a una persona en todos los registros: “someone” queda en lugar del nombre.',
        options: { confirm: 'yes, cuando haya leído lo que hace' },
      },
    },
  },
  help: {
    actions: {
      '': {
        says: 'Qué preguntar, en el orden de un trabajo, con un ejemplo de cada cosa.',
        options: { command: 'el comando que se explica; si se omite, todos' },
      },
    },
  },
};
