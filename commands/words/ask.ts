import { inEach } from '#words/in-each.ts';

/** What /ask says of how it read a line. The facts themselves stand as they are put to the command. */
export const askWords = inEach(
  {
    and: 'and',
    or: 'or',
    readAs: (what: string) => `Read as ${what}.`,
    chirpHeard:
      'An alarm that sounds in full, anyone who feels ill, or any doubt: everyone outside first, and call the fire service from there.',
    dangerHeard: 'Read as callback, for the danger in it. The rest was left for later.',
    /** What cannot wait for a question. */
    emergencies: {
      hurt: {
        headline: 'Call the emergency services now.',
        says: 'Call the emergency services now, and do what they say. Do not move whoever fell unless staying there is worse; touch nobody who may still hold a live part. Whoever hit the head, or got a shock, sees a doctor today even if all feels well. The job stops until the lead is there.',
      },
      live: {
        headline: 'Treat it as live. Touch nothing.',
        says: 'Treat it as live and touch nothing: a wire can be fed from another breaker, and a tester that was not proved tells nothing. Step away, keep others out, and call the person on your crew qualified for electrical work, or a licensed electrician. Nothing goes on before that person has found what feeds it and proved it dead.',
      },
    },
    noFacts: ' No facts were found in it.',
    notPlaced: (items: string, several: boolean) =>
      `I could not place ${items}. Nothing was made of ${several ? 'them' : 'it'}.`,
    ifYouMeant: (other: string) => `If you meant ${other}, ask again with as=${other}.`,
    collarTaken: (collar: string) =>
      `Nobody said the fan’s collar: taken as ${collar}, as the duct at the fan. Say it if it is another.`,
    canBeRead: (readings: string, again: string) =>
      `This can be read as ${readings}. Say which: ask again with ${again}.`,
    asOr: ' or as ',
    nearest: 'The nearest readings',
    columns: ['as', 'what it answers', 'what was understood', 'not placed'],
    nothingUnderstood: 'no facts',
    nothing: 'nothing',
    /** Facts that go by a shorter name than their question. */
    names: { 'fan-curve': 'fan', 'duct-run': 'duct' } as Readonly<Record<string, string>>,
    press: (command: string) => `Read as ${command}`,
    /** Of units nobody said, and of what was taken back in the same breath. */
    reading: {
      noUnit: (said: string, unit: string) => `${said} has no unit: read as ${unit}.`,
      noUnitHigh: (said: string, unit: string) => `A ceiling of ${said} has no unit: read as ${unit}.`,
      noUnitFlow: (said: string) => `${said} has no unit: read as cfm. Say L/s if it is that.`,
      /** Of a line in Spanish, words that nobody here knows. */
      notKnown: (words: string) => `Not known here, and left out: ${words}.`,
      takenBack: (old: string, instead: string) => `${old} was taken back: read as ${instead}.`,
      units: { mm: 'millimetres', cm: 'centimetres', m: 'metres', in: 'inches' } as Readonly<Record<string, string>>,
    },
    notRead: (commands: string) =>
      `That could not be read as a question about a bath fan. Say the room, the fan or the duct, such as: 110 fan 4 in flex 20 ft 3 elbows roof cap. Or name a command: ${commands}. If it is about smoke, gas, a shock, a live wire or somebody hurt: touch nothing, keep everybody clear and call the emergency services.`,
  },
  {
    and: 'y',
    or: 'o',
    readAs: (what) => `Se leyó como ${what}.`,
    chirpHeard:
      'Si la alarma suena de lleno, si alguien se siente mal, o ante la duda: primero todos afuera, y llamen a los bomberos desde ahí.',
    dangerHeard: 'Se leyó como callback, por el peligro que dice. Lo demás se dejó para después.',
    emergencies: {
      hurt: {
        headline: 'Llame a emergencias ahora.',
        says: 'Llame a emergencias ahora, y haga lo que le digan. No mueva a quien cayó, salvo que quedarse ahí sea peor; no toque a nadie que pueda seguir agarrado a algo con corriente. Quien se golpeó la cabeza o recibió una descarga ve hoy a un médico aunque se sienta bien. El trabajo se para hasta que llegue el jefe.',
      },
      live: {
        headline: 'Trátelo como con corriente. No toque nada.',
        says: 'Trátelo como con corriente y no toque nada: un alambre puede venir de otro disyuntor, y un probador sin comprobar no dice nada. Retírese, no deje pasar a nadie, y llame a la persona calificada en electricidad de su cuadrilla o a un electricista con licencia. Nada sigue antes de que esa persona halle de dónde viene y compruebe que no hay tensión.',
      },
    },
    noFacts: ' No se halló ningún dato.',
    notPlaced: (items, several) =>
      several ? `No supe dónde poner ${items}. No se usaron.` : `No supe dónde poner ${items}. No se usó.`,
    ifYouMeant: (other) => `Si quería ${other}, pregunte otra vez con as=${other}.`,
    collarTaken: (collar) =>
      `Nadie dijo el cuello del extractor: se toma ${collar}, como el ducto junto al extractor. Dígalo si es otro.`,
    canBeRead: (readings, again) => `Esto puede leerse como ${readings}. Diga cuál: pregunte otra vez con ${again}.`,
    asOr: ' o como ',
    nearest: 'Las lecturas más cercanas',
    columns: ['como', 'lo que responde', 'lo que se entendió', 'sin lugar'],
    nothingUnderstood: 'ningún dato',
    nothing: 'nada',
    names: { 'fan-curve': 'extractor', 'duct-run': 'ducto' },
    press: (command) => `Leer como ${command}`,
    reading: {
      noUnit: (said, unit) => `${said} no tiene unidad: se leyó como ${unit}.`,
      noUnitHigh: (said, unit) => `Un cielo raso de ${said} no tiene unidad: se leyó como ${unit}.`,
      noUnitFlow: (said) => `${said} no tiene unidad: se leyó como cfm. Diga L/s si es eso.`,
      notKnown: (words) => `No se conoce aquí, y se dejó fuera: ${words}.`,
      takenBack: (old, instead) => `Se corrigió ${old}: se leyó como ${instead}.`,
      units: { mm: 'milímetros', cm: 'centímetros', m: 'metros', in: 'pulgadas' },
    },
    notRead: (commands) =>
      `No se pudo leer como una pregunta sobre un extractor de baño. Diga el cuarto, el extractor o el ducto, por ejemplo: extractor de 110, 20 pies de flex de 4, tres codos, salida de techo. O nombre un comando: ${commands}. Si se trata de humo, gas, un toque, un alambre con corriente o alguien herido: no toque nada, aleje a todos y llame a emergencias.`,
  },
);

export type ReadingWords = (typeof askWords)['english']['reading'];
