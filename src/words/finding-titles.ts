import type { OtherLanguage } from './language.ts';

/** The headings over the working of findings, by their ids. In English the id itself serves. */
export const findingTitles: Readonly<Record<OtherLanguage, Readonly<Record<string, string>>>> = {
  spanish: {
    'at-the-swap': 'en el cambio del extractor',
    'by-the-numbers': 'según los números',
    danger: 'peligro',
    'likely-cause': 'causa probable',
    'next-check': 'próxima revisión',
    'not-enough': 'aún no alcanza',
    recorded: 'anotado',
    remedy: 'arreglo',
    repair: 'reparación',
    'rule-out': 'descartar primero',
    'tell-customer': 'para el cliente',
    'two-causes': 'dos causas',
  },
};
