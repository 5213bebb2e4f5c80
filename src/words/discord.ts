import { inEach } from './in-each.ts';

/** What Discord alone gives reason to say: buttons gone stale, charts left out, people in a hurry. */
export const discordWords = inEach(
  {
    commandGone: 'This command is no longer here. Type / to see those that are.',
    actionGone: (command: string, action: string) =>
      `/${command} ${action} is no longer here. Type /${command} to see what is.`,
    fromTheSheet:
      'Answered from what this job’s sheet holds already. Change an answer below, or use /job open for a clean sheet.',
    buttonOld: 'This button is out of date. Type / to see what there is.',
    askedWith: (command: string) => `This is asked with /${command}.`,
    startAgain: 'This button is out of date. Start again with a command such as /duct.',
    questionClosed: 'This question is no longer open. Start again with a command such as /duct.',
    notYours: (who: string, command: string) =>
      `This is ${who}’s to answer. Use /${command} for one of your own; the answers so far carry over.`,
    earlierStep: 'That was an earlier step. Here is where it stands.',
    beingChanged: 'An answer is being changed, so there is nothing to show yet. Answer the question, or press Back.',
    nothingAsked: 'Nothing is being asked just now. Type / for a command, or change an answer with the menu.',
    noSuchAnswer: 'There is no such answer here.',
    nothingAskedNow: 'Nothing is being asked just now.',
    nothingFilledIn: 'Nothing was filled in.',
    notOffered: 'That choice is not among the ones offered now.',
    onlyInServers: 'Use this in your crew’s server: a job belongs to a crew.',
    oursFailed: 'Something of ours went wrong. Nothing you answered before is lost; try that once more.',
    notBegun:
      'The program is being stopped and did not get to this. Nothing of it was kept; do it once more in a minute.',
    tooFast: (most: number, span: number, wait: number) =>
      `That was more than ${most} in ${span} seconds, so the last was not taken. Wait ${wait === 1 ? 'a second' : `${wait} seconds`}, then do it once more.`,
    chartNotAllowed: 'The chart is left out. Allow this bot to attach files in this channel to see it.',
    tooManyCharts: 'The chart is left out: too many are being drawn just now.',
    chartFailed: 'The chart is left out: it could not be drawn.',
    chartFollows: 'The chart follows.',
    fileNotAllowed: 'The file is left out. Allow this bot to attach files in this channel to see it.',
    mayNotEmbed: 'If no answer shows below, allow this bot to embed links in this channel.',
    listFile: (name: string) => `${name}, a list for a spreadsheet`,
    paperFile: (title: string) => `${title}, a page to print`,
    records: {
      full: 'The disk is full, so that was not kept. Write it down, tell whoever runs this bot, and try again once there is room.',
      'read-only':
        'The records cannot be written just now, so that was not kept. Write it down and tell whoever runs this bot.',
      corrupt:
        'The records are damaged, so that was not kept. Write it down and tell whoever runs this bot: a backup must be restored.',
      locked: 'The records are busy just now, so that was not kept. Try it again in a moment.',
      other: 'The disk failed, so that was not kept. Write it down and tell whoever runs this bot.',
      before: 'What was kept before is not touched.',
    },
  },
  {
    commandGone: 'Este comando ya no está. Escriba / para ver los que hay.',
    actionGone: (command, action) => `/${command} ${action} ya no está. Escriba /${command} para ver lo que hay.`,
    fromTheSheet:
      'Respondido con lo que ya tiene la hoja de este trabajo. Cambie una respuesta abajo, o use /job open para una hoja limpia.',
    buttonOld: 'Este botón ya no vale. Escriba / para ver lo que hay.',
    askedWith: (command) => `Esto se pregunta con /${command}.`,
    startAgain: 'Este botón ya no vale. Empiece otra vez con un comando como /duct.',
    questionClosed: 'Esta pregunta ya no está abierta. Empiece otra vez con un comando como /duct.',
    notYours: (who, command) =>
      `Esto le toca responderlo a ${who}. Use /${command} para una propia; lo respondido hasta ahora se conserva.`,
    earlierStep: 'Ese era un paso anterior. Así está ahora.',
    beingChanged: 'Se está cambiando una respuesta, así que todavía no hay nada que mostrar. Responda, u oprima Atrás.',
    nothingAsked: 'Ahora no se pregunta nada. Escriba / para un comando, o cambie una respuesta con el menú.',
    noSuchAnswer: 'Aquí no hay tal respuesta.',
    nothingAskedNow: 'Ahora no se pregunta nada.',
    nothingFilledIn: 'No se llenó nada.',
    notOffered: 'Esa opción no está entre las que se ofrecen ahora.',
    onlyInServers: 'Use esto en el servidor de su cuadrilla: un trabajo es de una cuadrilla.',
    oursFailed: 'Falló algo nuestro. No se perdió nada de lo que respondió antes; hágalo otra vez.',
    notBegun:
      'El programa se está deteniendo y no llegó a esto. No se guardó nada de ello; hágalo otra vez en un minuto.',
    tooFast: (most, span, wait) =>
      `Fueron más de ${most} en ${span} segundos, así que lo último no se tomó. Espere ${wait === 1 ? 'un segundo' : `${wait} segundos`} y hágalo otra vez.`,
    chartNotAllowed: 'Falta la gráfica. Para verla, permita que este bot adjunte archivos en este canal.',
    tooManyCharts: 'Falta la gráfica: ahora se dibujan demasiadas.',
    chartFailed: 'Falta la gráfica: no se pudo dibujar.',
    chartFollows: 'La gráfica viene en seguida.',
    fileNotAllowed: 'Falta el archivo. Para verlo, permita que este bot adjunte archivos en este canal.',
    mayNotEmbed: 'Si abajo no se ve ninguna respuesta, permita que este bot inserte enlaces en este canal.',
    listFile: (name) => `${name}, una lista para hoja de cálculo`,
    paperFile: (title) => `${title}, una página para imprimir`,
    records: {
      full: 'El disco está lleno, así que eso no se guardó. Apúntelo, avise a quien maneja este bot, y hágalo otra vez cuando haya lugar.',
      'read-only':
        'Ahora no se puede escribir en los registros, así que eso no se guardó. Apúntelo y avise a quien maneja este bot.',
      corrupt:
        'Los registros están dañados, así que eso no se guardó. Apúntelo y avise a quien maneja este bot: hay que restaurar una copia.',
      locked: 'Los registros están ocupados, así que eso no se guardó. Hágalo otra vez en un momento.',
      other: 'Falló el disco, así que eso no se guardó. Apúntelo y avise a quien maneja este bot.',
      before: 'Lo guardado antes queda como estaba.',
    },
  },
);
