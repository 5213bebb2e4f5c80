import { inEach } from './in-each.ts';

/** What is said where it is not plain which job an answer belongs to. */
export const whichJobWords = inEach(
  {
    prompt: (named: string, open: string) => `The line names ${named}. Open here is ${open}. Which job is it about?`,
    why: 'What is said of one house must not be worked out for another. Nothing is noted before you say.',
    brief: 'Which job it is about',
    because: 'A sheet of its own: nothing on the other one changes.',
    fresh: (named: string) => `New sheet: ${named}`,
    called: (named: string, sheet: number) => `Job ${sheet} is called ${named} now. /job open opens another.`,
    openedFor: (open: string, before: string) =>
      `${open} is open for it now. ${before} was open here, and is unchanged.`,
    takenTo: (open: string, before: string) => `This is on ${open} now. On ${before} it no longer counts.`,
    lastUsed: (open: string, day: string) =>
      `This goes on ${open}, last used on ${day}. Another customer or address? Say “another job”.`,
    complaintStands: (open: string) =>
      `This goes on ${open}, which holds a complaint already. Another customer or address? Say “another job”.`,
    anotherJob: 'Another job',
  },
  {
    prompt: (named, open) => `La línea nombra ${named}. Aquí está abierto: ${open}. ¿De cuál trabajo se trata?`,
    why: 'Lo dicho de una casa no se debe calcular para otra. No se anota nada antes de que lo diga.',
    brief: 'De cuál trabajo se trata',
    because: 'Una hoja aparte: en la otra no cambia nada.',
    fresh: (named) => `Hoja nueva: ${named}`,
    called: (named, sheet) => `El trabajo ${sheet} se llama ahora ${named}. Con /job open se abre otro.`,
    openedFor: (open, before) => `Abierto ahora para esto: ${open}. Antes estaba abierto ${before}, y queda igual.`,
    takenTo: (open, before) => `Esto está ahora en: ${open}. En ${before} ya no cuenta.`,
    lastUsed: (open, day) =>
      `Esto va en: ${open}, usado por última vez el ${day}. ¿Otro cliente u otra dirección? Diga “otro trabajo”.`,
    complaintStands: (open) =>
      `Esto va en: ${open}, que ya tiene una queja. ¿Otro cliente u otra dirección? Diga “otro trabajo”.`,
    anotherJob: 'Otro trabajo',
  },
);
