import type { OtherLanguage } from './language.ts';

/** Why a sheet did not take what was to be written on it. In English the records say it themselves. */
export const sheetTroubles: Readonly<
  Record<OtherLanguage, Readonly<Record<'no-such-sheet' | 'closed' | 'full', (sheet: number) => string>>>
> = {
  spanish: {
    'no-such-sheet': (sheet) => `Aquí no hay un trabajo ${sheet}.`,
    closed: (sheet) => `El trabajo ${sheet} está cerrado. Con /job open ${sheet} se abre otra vez.`,
    full: () =>
      'Los registros de esta cuadrilla están llenos, así que no se anotó nada. Borre trabajos viejos, o deje que los cerrados venzan con /crew retention.',
  },
};
