import { inEach } from '#words/in-each.ts';

/** What /handoff says beside the papers it makes. */
export const handoffWords = inEach(
  {
    noSuchJob: 'There is no such job here. /job list shows them.',
    whichLanguage: 'Name the language of the occupant’s page: english or spanish.',
    job: (number: number) => `job ${number}`,
    papers: (job: string) => `Two papers for ${job}: one for the occupant, one for the file.`,
    noList: 'No list was walked on this job, so the record says nothing of the work.',
    notClosed: (list: string, done: number, of: number) =>
      `${list} is not closed: ${done} of ${of}. Both papers say so.`,
    readFirst: 'Read both pages before they leave your hands.',
    /** Said where the record for the file is in another language than the reply. */
    recordIn: '',
  },
  {
    noSuchJob: 'Aquí no hay tal trabajo. /job list los muestra.',
    whichLanguage: 'Diga el idioma de la hoja para quien vive ahí: english o spanish.',
    job: (number) => `el trabajo ${number}`,
    papers: (job) => `Dos papeles para ${job}: uno para quien vive ahí, uno para el archivo.`,
    noList: 'En este trabajo no se recorrió ninguna lista, así que el registro no dice nada de la obra.',
    notClosed: (list, done, of) => `Lista sin cerrar: ${list}, ${done} de ${of}. Los dos papeles lo dicen.`,
    readFirst: 'Lea las dos páginas antes de soltarlas.',
    recordIn: 'El registro para el archivo está en inglés, para la oficina y el inspector.',
  },
);
