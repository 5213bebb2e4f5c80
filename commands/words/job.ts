import { inEach } from '#words/in-each.ts';

const some = (count: number, one: string, several = `${one}s`): string => `${count} ${count === 1 ? one : several}`;

/** What is told of job sheets. */
export const jobWords = inEach(
  {
    called: (number: number, name: string | null) =>
      name === null ? `Job ${number} (no name yet)` : `Job ${number}, ${name}`,
    missing: (name: string) => `There is no job “${name}” here. /job list shows them.`,
    openClean: (called: string) => `${called} is open here. Nothing is on it yet.`,
    openAgain: (called: string, answers: number) =>
      `${called} is open here again, with ${some(answers, 'answer')} on it.`,
    nothingYet: (called: string) => `${called}: nothing is on it yet. Try /size or /duct.`,
    answers: (called: string, count: number) => `${called}: ${some(count, 'answer')}.`,
    onTheSheet: { title: 'On the sheet', columns: ['what', 'answer', 'how known', 'by'] as readonly string[] },
    how: {
      measured: 'measured',
      label: 'read off the label',
      estimated: 'estimated',
      told: 'as told',
      unknown: 'not known',
    },
    dontKnow: 'don’t know',
    understood: 'What was understood',
    noneNamedSo: (state: 'open' | 'closed' | undefined) =>
      `No ${state === undefined ? '' : `${state} `}job has that in its name.`,
    none: (state: 'open' | 'closed' | undefined) =>
      `There are no ${state === undefined ? '' : `${state} `}jobs. /job open starts one.`,
    listed: (count: number, state: 'open' | 'closed' | undefined, all: boolean, demo: boolean) => {
      const kind = state === undefined ? '' : `${state} `;
      const newest = all ? some(count, `${kind}job`) : `The newest ${count} ${kind}jobs`;
      return `${newest}, newest first${demo ? ', and the demo house, which counts nowhere' : ''}.`;
    },
    jobs: {
      title: 'Jobs',
      columns: ['no.', 'name', 'state', 'opened', 'last used', 'answers'] as readonly string[],
      noName: '(no name)',
      states: { open: 'open', closed: 'closed' },
    },
    nothingToUndo: (called: string) => `${called}: there is nothing to take back.`,
    tookBack: (what: string, said: string, before: string | undefined) =>
      `Took back: ${what} (${said}). ${before === undefined ? 'It is unanswered again.' : `It is ${before} again.`}`,
    closed: (called: string, number: number) =>
      `${called} is closed. The next question here starts on a clean sheet; /job open ${number} brings this one back.`,
    noYear: (said: string) => `“${said}” is not a year. Give one such as 2026.`,
    notErased: (called: string, number: number) =>
      `Nothing was erased. To erase ${called} for good, give sure=${number}.`,
    erased: (number: number) =>
      `Job ${number} is erased. Backups made before today still hold it until they are deleted.`,
    didYouMean: (called: readonly string[]) => `Did you mean ${called.join(', or ')}? Nothing is opened yet.`,
    isItAnother: 'Is it another job? Open it again with new=yes behind its name, and it gets a sheet of its own.',
    openJob: (number: number) => `Open job ${number}`,
    exportedCsv: (called: string) =>
      `${called}: everything on it is in the file, a row for each thing. Times are in UTC.`,
    exported: (called: string) => `${called}: everything on it is in the file. /job import reads it back.`,
    noCause: (year: string) =>
      `No callback of ${year} has a confirmed cause yet. Record one with /callback confirmed-cause.`,
    causes: {
      headline: (count: number, year: string) => `${some(count, 'callback')} of ${year} with a confirmed cause.`,
      title: (year: string) => `What the callbacks of ${year} were`,
      columns: ['cause', 'how many', 'jobs'] as readonly string[],
      job: (number: number) => `job ${number}`,
      andMore: ' and more',
      chart: (year: string, most: number | undefined) =>
        `Causes of the callbacks of ${year}${most === undefined ? '' : `, the ${most} most frequent`}`,
      x: 'callbacks with this cause',
      y: 'cause',
      of: (count: number, total: number) => `${count} of ${total}`,
    },
  },
  {
    called: (number, name) => (name === null ? `Trabajo ${number} (sin nombre)` : `Trabajo ${number}, ${name}`),
    missing: (name) => `Aquí no hay ningún trabajo “${name}”. /job list los muestra.`,
    openClean: (called) => `${called} está abierto aquí. Todavía no tiene nada.`,
    openAgain: (called, answers) => `${called} está abierto aquí otra vez, con ${some(answers, 'respuesta')}.`,
    nothingYet: (called) => `${called}: todavía no tiene nada. Pruebe /size o /duct.`,
    answers: (called, count) => `${called}: ${some(count, 'respuesta')}.`,
    onTheSheet: { title: 'En la hoja', columns: ['qué', 'respuesta', 'cómo se sabe', 'por'] },
    how: {
      measured: 'medido',
      label: 'leído de la etiqueta',
      estimated: 'calculado a ojo',
      told: 'dicho',
      unknown: 'no se sabe',
    },
    dontKnow: 'no sé',
    understood: 'Lo que se entendió',
    noneNamedSo: (state) =>
      `Ningún trabajo ${state === undefined ? '' : state === 'open' ? 'abierto ' : 'cerrado '}tiene eso en el nombre.`,
    none: (state) =>
      `No hay trabajos${state === undefined ? '' : state === 'open' ? ' abiertos' : ' cerrados'}. /job open empieza uno.`,
    listed: (count, state, all, demo) => {
      const kind = state === undefined ? '' : state === 'open' ? ' abierto' : ' cerrado';
      const jobs = count === 1 ? `trabajo${kind}` : `trabajos${kind === '' ? '' : `${kind}s`}`;
      const newest = all ? `${count} ${jobs}` : `Los ${count} ${jobs} más nuevos`;
      return `${newest}, primero el más nuevo${demo ? ', y la casa de muestra, que no cuenta' : ''}.`;
    },
    jobs: {
      title: 'Trabajos',
      columns: ['n.º', 'nombre', 'estado', 'empezado', 'último uso', 'respuestas'],
      noName: '(sin nombre)',
      states: { open: 'abierto', closed: 'cerrado' },
    },
    nothingToUndo: (called) => `${called}: no hay nada que quitar.`,
    tookBack: (what, said, before) =>
      `Se quitó: ${what} (${said}). ${before === undefined ? 'Otra vez falta responder.' : `Otra vez vale ${before}.`}`,
    closed: (called, number) =>
      `${called} está cerrado. La próxima pregunta aquí empieza en una hoja limpia; /job open ${number} trae esta de vuelta.`,
    noYear: (said) => `“${said}” no es un año. Dé uno, por ejemplo 2026.`,
    notErased: (called, number) => `No se borró nada. Para borrar ${called} para siempre, dé sure=${number}.`,
    erased: (number) =>
      `El trabajo ${number} está borrado. Las copias de antes de hoy todavía lo tienen hasta que se borren.`,
    didYouMean: (called) => `¿Quiso decir ${called.join(', o ')}? Todavía no se abrió nada.`,
    isItAnother: '¿Es otro trabajo? Ábralo otra vez con new=yes después del nombre, y tiene su propia hoja.',
    openJob: (number) => `Abrir el trabajo ${number}`,
    exportedCsv: (called) => `${called}: todo está en el archivo, una fila por cada cosa. Las horas son de UTC.`,
    exported: (called) => `${called}: todo está en el archivo. /job import lo lee otra vez.`,
    noCause: (year) =>
      `Ninguna queja de ${year} tiene todavía una causa confirmada. Anote una con /callback confirmed-cause.`,
    causes: {
      headline: (count, year) => `${some(count, 'queja')} de ${year} con causa confirmada.`,
      title: (year) => `En qué acabaron las quejas de ${year}`,
      columns: ['causa', 'cuántos', 'trabajos'],
      job: (number) => `trabajo ${number}`,
      andMore: ' y más',
      chart: (year, most) =>
        `Causas de las quejas de ${year}${most === undefined ? '' : `, las ${most} más frecuentes`}`,
      x: 'quejas con esta causa',
      y: 'causa',
      of: (count, total) => `${count} de ${total}`,
    },
  },
);
