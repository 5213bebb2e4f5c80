import { inEach } from '#words/in-each.ts';

interface Titled {
  readonly title: string;
  readonly spanish?: unknown;
}

const same = (kind: string): string => kind;

/** What stands around an entry that was looked up. What the entry says has its words from the knowledge. */
export const lookupWords = inEach(
  {
    kind: same,
    /** The name of an entry, with a mark where it is not told in the language of the reply. */
    titled: ({ title }: Titled): string => title,
    showAll: (count: number) => `Show all ${count} figures`,
    readAs: (words: string) => `Read as “${words}”.`,
    about: { title: 'About it', columns: ['what', 'it says'] as readonly string[] },
    kindIs: 'Kind',
    edition: 'Edition',
    goOn: 'Go on with',
    usedBy: 'Used by',
    /** Said in Spanish where something stays in English. */
    printed: undefined as readonly [label: string, says: string] | undefined,
    figures: 'Figures',
    firstFigures: (shown: number, all: number) => `Figures, the first ${shown} of ${all}`,
    figureColumns: ['what', 'figure'] as readonly string[],
    source: 'source',
    sources: {
      title: 'Where it comes from',
      columns: ['no.', 'source', 'place', 'how sure'] as readonly string[],
    },
    sure: {
      practice: 'common practice, no source',
      memory: 'from memory, not checked',
      own: 'worked out here',
      seen: (kind: string) => `seen in print, ${kind}`,
      unseen: (kind: string) => `from memory or not seen in print, ${kind}`,
    },
    chooseOne: (asked: string) => `“${asked}” is found in these. Choose one.`,
    found: { title: 'Found', columns: ['name', 'kind', 'it says'] as readonly string[] },
    nothing: (asked: string) => `Nothing is found for “${asked}”. Try another word, or one of these terms.`,
  },
  {
    kind: (kind) => kindsInSpanish[kind] ?? kind,
    titled: ({ title, spanish }) => (spanish === undefined ? `(inglés) ${title}` : title),
    showAll: (count) => `Mostrar las ${count} cifras`,
    readAs: (words) => `Se leyó como “${words}”.`,
    about: { title: 'Sobre esto', columns: ['qué', 'dice'] },
    kindIs: 'Clase',
    edition: 'Edición',
    goOn: 'Siga con',
    usedBy: 'Lo usa',
    printed: ['Idioma', 'Lo que está en inglés queda como está impreso; la regla impresa es la que vale.'],
    figures: 'Cifras',
    firstFigures: (shown, all) => `Cifras, las primeras ${shown} de ${all}`,
    figureColumns: ['qué', 'cifra'],
    source: 'fuente',
    sources: { title: 'De dónde viene', columns: ['n.º', 'fuente', 'lugar', 'qué tan seguro'] },
    sure: {
      practice: 'práctica común, sin fuente',
      memory: 'de memoria, sin revisar',
      own: 'calculado aquí',
      seen: (kind) => `visto impreso, ${kind}`,
      unseen: (kind) => `de memoria o no visto impreso, ${kind}`,
    },
    chooseOne: (asked) => `“${asked}” está en estos. Escoja uno.`,
    found: { title: 'Hallado', columns: ['nombre', 'clase', 'dice'] },
    nothing: (asked) => `No se halló nada de “${asked}”. Pruebe otra palabra, o uno de estos términos.`,
  },
);

const kindsInSpanish: Readonly<Record<string, string>> = {
  term: 'término',
  rule: 'regla',
  figure: 'cifra',
  study: 'estudio',
  method: 'método',
  cause: 'causa',
  check: 'revisión',
  danger: 'peligro',
  pattern: 'patrón',
  question: 'pregunta',
  table: 'tabla',
  fitting: 'pieza',
  remedy: 'arreglo',
  'wiring rule': 'regla eléctrica',
  material: 'material',
  step: 'paso',
  source: 'fuente',
};
