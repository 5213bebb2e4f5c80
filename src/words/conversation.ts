import { inEach } from './in-each.ts';

/** What a conversation says of itself: taken back, not known, moved on. */
export const conversationWords = inEach(
  {
    dontKnow: 'don’t know',
    dontKnowTaken: (instead: string) => `don’t know, taken as ${instead}`,
    standIn: (brief: string, instead: string | undefined, because: string) =>
      `${brief}: ${instead === undefined ? '' : `taken as ${instead}. `}${because}`,
    notKnown: (briefs: string) => `Not known: ${briefs}`,
    tookBack: (brief: string) => `Took back: ${brief}.`,
    nothingToTakeBack: 'There is nothing of this talk to take back.',
    noSuchAnswer: 'There is no such answer to change.',
    nothingAsked: 'Nothing is being asked just now.',
    stoppedMeanwhile: (command: string) => `This was stopped a moment ago. /${command} begins it again.`,
    answeredMeanwhile: 'Somebody answered this a moment ago. Here is where it stands.',
    jobClosed: (sheet: number) => `Job ${sheet} is closed, so nothing was noted. /job open ${sheet} opens it again.`,
    managersOnly: 'Only people who may manage this server can change that. Ask one of them.',
  },
  {
    dontKnow: 'no sé',
    dontKnowTaken: (instead) => `no sé, se toma ${instead}`,
    standIn: (brief, instead, because) => `${brief}: ${instead === undefined ? '' : `se toma ${instead}. `}${because}`,
    notKnown: (briefs) => `No se sabe: ${briefs}`,
    tookBack: (brief) => `Se quitó: ${brief}.`,
    nothingToTakeBack: 'No hay nada de esta conversación que quitar.',
    noSuchAnswer: 'No hay tal respuesta que cambiar.',
    nothingAsked: 'Ahora no se pregunta nada.',
    stoppedMeanwhile: (command) => `Esto se detuvo hace un momento. Con /${command} empieza de nuevo.`,
    answeredMeanwhile: 'Alguien respondió esto hace un momento. Así está ahora.',
    jobClosed: (sheet) =>
      `El trabajo ${sheet} está cerrado, así que no se anotó nada. Con /job open ${sheet} se abre otra vez.`,
    managersOnly: 'Solo quien administra este servidor puede cambiar eso. Pídaselo.',
  },
);
