import type { Action, Command } from '#chat/command.ts';
import { actionsInSpanish } from './actions.ts';

/** What each command tells, in Spanish; at most 100 characters, the platform's limit. */
const spanish: Readonly<Record<string, string>> = {
  demo: 'Conocer el programa en cinco minutos con una casa inventada (en inglés).',
  plan: 'Planear un cambio de principio a fin, en el orden del trabajo.',
  ask: 'Preguntar con sus palabras: se lee como un comando, que pregunta solo lo que falta.',
  lookup: 'Buscar cualquier regla, tabla, pieza, causa, paso o término con pocas palabras.',
  size: 'Cuánto aire necesita el cuarto, y por qué.',
  duct: 'Cuánto aire da de verdad un extractor por este ducto, y qué lo frena más.',
  reach: 'Hasta dónde puede llegar un ducto, según la tabla y según el cálculo.',
  runtime: 'Cuánto tiempo debe andar el extractor después de una ducha.',
  sweat: 'Si el ducto suda por dentro en un ático frío, y qué aislante lo evita.',
  makeup: 'Por dónde entra el aire de reposición, y qué pide un aparato que quema combustible.',
  measure: 'Medir el caudal en la rejilla, y qué prueba la medición.',
  boxfill: 'Si caben los alambres en la caja, con la cuenta del código.',
  power: 'Qué reglas eléctricas aplican a este extractor, y quién puede hacer el trabajo.',
  cost: 'Cuánto cuesta andar el extractor en un año.',
  parts: 'La lista de piezas: ducto, cinta, tornillos, flejes, y si cabe en el hueco.',
  swap: 'Recorrer el cambio paso a paso, con los puntos que se firman.',
  handoff: 'Hacer la hoja para quien vive ahí y el registro para el archivo.',
  callback: 'De una queja a la causa más probable, la revisión que la prueba y el arreglo.',
  fan: 'Los extractores de la cuadrilla: agregar, comparar, exportar.',
  job: 'Abrir, nombrar, mostrar, cerrar o borrar la hoja de un trabajo.',
  crew: 'Quién es de la cuadrilla, quién firma qué, y sus ajustes.',
  help: 'Qué preguntar, en el orden de un trabajo, con un ejemplo de cada cosa.',
};

/** A command with its words in every language: what it tells, and what its actions do and take. */
export function inEveryLanguage(command: Command): Command {
  const summary = spanish[command.name];
  const told = summary === undefined ? command : { ...command, summaries: { spanish: summary } };
  return told.kind === 'answer' ? told : { ...told, actions: told.actions.map((each) => actionIn(told.name, each)) };
}

function actionIn(command: string, action: Action): Action {
  const words = actionsInSpanish[command];
  const own = words?.actions[action.name];
  if (own === undefined) return action;
  return {
    ...action,
    summaries: { spanish: own.says },
    options: action.options.map((option) => {
      const brief = own.options?.[option.id] ?? words?.options?.[option.id];
      return brief === undefined ? option : { ...option, briefs: { spanish: brief } };
    }),
  };
}
