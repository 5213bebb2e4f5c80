import type { OtherLanguage } from '#words/language.ts';

/** What an answer that is printed in English comes to, for whoever reads another language: its numbers, and each stop. */
export interface InShort {
  readonly size: (needed: string) => string;
  readonly delivered: Readonly<
    Record<'good' | 'advice' | 'caution' | 'stop', (flow: string, low: string, high: string) => string>
  >;
  readonly reach: (length: string) => string;
  readonly reachSure: (length: string) => string;
  readonly reachNone: string;
  readonly staysDry: string;
  readonly mayStillSweat: string;
  readonly sweatsFrom: (distance: string) => string;
  readonly wrap: (insulation: string) => string;
  readonly door: Readonly<Record<'good' | 'advice' | 'caution' | 'stop', (pressure: string) => string>>;
  readonly gap: (height: string) => string;
  readonly measured: (flow: string, low: string, high: string) => string;
  readonly cost: (dollars: string) => string;
  readonly boxVolume: (volume: string) => string;
  readonly everyoneOut: string;
  readonly flames: string;
  readonly wiringStops: (count: number) => string;
  readonly otherStops: (count: number) => string;
  readonly cautions: (count: number) => string;
  readonly rest: string;
}

export const inShortWords: Readonly<Record<OtherLanguage, InShort>> = {
  spanish: {
    size: (needed) => `Este baño necesita ${needed} que salgan de verdad.`,
    delivered: {
      good: (flow, low, high) => `Saldrán unos ${flow} de este ducto, casi siempre de ${low} a ${high}: alcanza.`,
      advice: (flow, low, high) => `Saldrán unos ${flow} de este ducto, casi siempre de ${low} a ${high}.`,
      caution: (flow, low, high) =>
        `Saldrán unos ${flow} de este ducto, casi siempre de ${low} a ${high}: no es seguro que alcance.`,
      stop: () => 'ALTO: no ponga este extractor en este ducto; no puede empujar nada de aire.',
    },
    reach: (length) => `Tienda como mucho ${length} de este ducto.`,
    reachSure: (length) => `Para estar seguro con todo lo que no se sabe: ${length}.`,
    reachNone: 'Ningún largo de este ducto alcanza: use una medida más grande.',
    staysDry: 'En marcha pareja el ducto queda seco.',
    mayStillSweat: 'Aun así puede sudar: dele caída hacia afuera y no deje partes bajas.',
    sweatsFrom: (distance) =>
      `El ducto suda desde ${distance} del extractor: dele caída hacia afuera y no deje partes bajas.`,
    wrap: (insulation) => `Según la cuenta, con aislante de ${insulation} quedaría seco en marcha pareja.`,
    door: {
      good: (pressure) => `La puerta cerrada toma ${pressure}.`,
      advice: (pressure) => `La puerta cerrada toma ${pressure}: justo, pero el extractor lo aguanta.`,
      caution: (pressure) => `La puerta cerrada toma ${pressure}: más de lo que un extractor de baño puede dar.`,
      stop: (pressure) => `La puerta cerrada toma ${pressure}.`,
    },
    gap: (height) =>
      `Según la cuenta bastaría una luz bajo la puerta de ${height}: mida el caudal con la puerta abierta y cerrada.`,
    measured: (flow, low, high) => `Se midieron unos ${flow}, en algún punto de ${low} a ${high}.`,
    cost: (dollars) => `Un año cuesta unos $${dollars}, como mucho.`,
    boxVolume: (volume) => `La caja tiene ${volume}.`,
    everyoneOut:
      'ALTO: todos afuera ya; llamen a los bomberos desde afuera; nadie vuelve a entrar hasta que ellos lo digan.',
    flames:
      'ALTO: deje el extractor nuevo apagado (OFF) y con candado hasta que una persona capacitada haya revisado lo que quema gas, petróleo o leña. Ningún número de aquí dice que sea seguro.',
    wiringStops: (count) =>
      `ALTO: no conecte nada todavía; ${count === 1 ? 'una regla para' : `${count} reglas paran`} el trabajo hasta que decida un electricista con licencia.`,
    otherStops: (count) =>
      `ALTO: ${count === 1 ? 'algo para' : `${count} cosas paran`} el trabajo. Muéstreselo a su jefe antes de seguir.`,
    cautions: (count) =>
      `Hay ${count === 1 ? 'una precaución' : `${count} precauciones`} abajo, en inglés: que su jefe las lea con usted.`,
    rest: 'El detalle de esta página está en inglés.',
  },
};
