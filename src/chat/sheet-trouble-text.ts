import type { SheetTrouble } from '#store/sheet-trouble.ts';
import type { Language } from '#words/language.ts';
import { sheetTroubles } from '#words/sheet-troubles.ts';

/** Why a sheet did not take what was to be written on it, as a person is told. */
export const sheetTroubleText = ({ code, sheet, message }: SheetTrouble, language: Language = 'english'): string =>
  language === 'english' ? message : sheetTroubles[language][code](sheet);
