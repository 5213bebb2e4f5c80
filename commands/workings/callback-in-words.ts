import { isCallbackFinding, isVariable } from '#knowledge/callback-findings.ts';
import { isContext } from '#knowledge/callback-scale.ts';
import { callbackTexts } from '#knowledge/callback-texts.ts';
import type { Language } from '#words/language.ts';

/** A finding, a variable or a context in a few words. */
export const inWords = (id: string, language: Language): string => {
  const { findings, variables, contexts } = callbackTexts[language];
  if (isCallbackFinding(id)) return findings[id].short;
  if (isVariable(id)) return variables[id].short;
  return isContext(id) ? contexts[id].name : id;
};
