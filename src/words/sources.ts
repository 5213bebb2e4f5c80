import { inEach } from './in-each.ts';

/** How far a publication can be leaned on. Publications themselves are named as they are printed, in their own language. */
export const sourceWords = inEach(
  {
    kinds: {
      'code text': 'code text',
      agency: 'agency',
      standard: 'standard',
      handbook: 'handbook',
      research: 'research',
      library: 'library',
      'trade press': 'trade press',
      forum: 'forum',
      'own working': 'own working',
      'common practice': 'common practice',
      memory: 'memory',
    },
    /** What is named so by us rather than by a printer; in English as the knowledge has it. */
    ours: {} as Readonly<Record<string, string>>,
    notSeen: 'not seen in print',
  },
  {
    kinds: {
      'code text': 'texto del código',
      agency: 'agencia',
      standard: 'norma',
      handbook: 'manual',
      research: 'investigación',
      library: 'biblioteca de cálculo',
      'trade press': 'prensa del oficio',
      forum: 'foro',
      'own working': 'cálculo propio',
      'common practice': 'práctica común',
      memory: 'de memoria',
    },
    ours: {
      'common-practice': 'Práctica común del oficio; sin fuente publicada.',
      'from-memory': 'De memoria; no comparado con una publicación.',
      'own-working': 'Calculado aquí con una fórmula que se dice.',
    },
    notSeen: 'no vista impresa',
  },
);
