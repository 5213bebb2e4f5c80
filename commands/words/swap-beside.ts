import { inEach } from '#words/in-each.ts';

/** What /swap works out beside a step from what the sheet knows. */
export const besideWords = inEach(
  {
    needed: (need: string) => `${need} is needed, shown by the low end of the reading.`,
    measuredOnSheet: (airflow: string) => `/measure came to ${airflow}. Left empty, that is recorded.`,
    measureIt: '/measure works out mean and low end from your readings, with the error of the method.',
    needUnknown: 'What the room needs is not on the sheet. /size works it out.',
    onlyAgreed: 'What the room needs is not on the sheet, only what was agreed counts. /size works it out.',
    agreedAndNeed: (agreed: string, need: string) => `${agreed} was agreed, and the room needs ${need}.`,
    agreedLess: (agreed: string, need: string) =>
      `${agreed} is less than the ${need} the room needs. It takes a reason, and the papers tell it.`,
    methods: {
      'powered-hood': 'a flow hood with a fan of its own',
      hood: 'a flow hood without a fan',
      'flow-box': 'a flow box',
      traverse: 'readings across the grille',
      bag: 'a timed bag',
    } as Readonly<Record<string, string>>,
    errsBy: {
      'powered-hood': 'A flow hood with a fan of its own',
      hood: 'A flow hood without a fan',
      'flow-box': 'A flow box',
      traverse: 'Reading speeds over the grille',
      bag: 'A timed bag',
    } as Readonly<Record<string, string>>,
    methodNotSaid: 'No method is said, and a flow hood without a fan',
    lowEndTooHigh: (by: string, errs: string, mean: string, atBest: string, written: string) =>
      `${by} errs by ${errs} or more: the low end of ${mean} is ${atBest} at best, not ${written}. ${atBest} is recorded and counts; /measure works it out.`,
    lowEndAtBest: 'Low end at best',
    otherWay: (then: string, now: string) =>
      ` Measured then with ${then} and now with ${now}, so both errors stand between them.`,
    beforeAndNow: (before: string, now: string) => `Before the work it moved ${before}, now ${now}.`,
    whereToLook:
      'Look for tape on the fan’s flap, a hood flap that sticks, a crushed or slack duct and a shut-in door; measure again.',
    notCompared: 'Not compared with a prediction',
    notPredicted: 'Not compared with a prediction: the sheet says that fan or duct is not known. /duct takes them.',
    doorUnknown: 'Predicted as if the door let in all the air; /makeup takes the gap under it.',
    boxLeftOut: 'What the flow box holds back is left out: /measure box-opening counts it.',
    atSetting: (at: string) => ` Reckoned at ${at}, the setting on the sheet.`,
    atFastest: (at: string) =>
      ` Reckoned at ${at}, its fastest; the sheet names no setting. Give /duct fan-setting where it runs slower.`,
    notCounted: (box: string) => `The ${box} is not counted`,
    otherBox: (known: boolean, command: string) =>
      `The box counted on the sheet ${known ? 'is' : 'may be'} another one, so this one is not worked out. /${command} counts it.`,
    lacking: (room: string) => `${room} is lacking`,
    onlyLeft: (room: string) => `only ${room} is left`,
    written: (written: string, count: string) =>
      `${written} was written; by the count on the sheet ${count}. That is recorded.`,
    runTimeNot: 'Run time not worked out',
    reckoned: {
      list: 'Reckoned with the airflow measured on this list.',
      measured: 'Reckoned with the airflow measured on the sheet.',
      told: 'Reckoned with the airflow given on the sheet, until it is measured.',
      'not known': 'The airflow is not known: reckoned with what such fans mostly move. Measure it.',
      computed: 'Reckoned with the airflow worked out from fan and duct, until it is measured.',
    },
    setNoTime: (set: string) => `Set to ${set}; no time will do here.`,
    setTooShort: (set: string, wanted: string) =>
      `Set to ${set}, and about ${wanted} is needed. Set it longer, or find out why less must do.`,
    setRight: (set: string, wanted: string) => `Set to ${set}; about ${wanted} was worked out.`,
    hangers: (count: number, flex: string, metal: string) =>
      `The run on the sheet takes ${count} ${count === 1 ? 'hanger' : 'hangers'}: every ${flex} of flex and ${metal} of metal.`,
    tape: (joints: number, tape: string) =>
      `Seal ${joints} ${joints === 1 ? 'joint' : 'joints'}, collar and hood among them: ${tape} of foil tape, waste included.`,
    screws: (joints: number, screws: number) =>
      `The run on the sheet has ${joints} ${joints === 1 ? 'joint' : 'joints'}, collar and hood among them, and takes ${screws} ${screws === 1 ? 'screw' : 'screws'}.`,
    bands: (bands: number) => `The run on the sheet takes ${bands} ${bands === 1 ? 'band' : 'bands'}.`,
    notCountedOut: 'Not counted out',
    partsNotListed: 'Parts not listed',
    lacks: (what: string, briefs: string, command: string) =>
      `${what}: the sheet lacks ${briefs}. /${command} asks for it.`,
    granted: (briefs: string, command: string) =>
      `Not on the sheet, and taken for granted: ${briefs}. /${command} shows what each is taken as.`,
  },
  {
    needed: (need) => `Hacen falta ${need}, mostrados por el extremo bajo de la lectura.`,
    measuredOnSheet: (airflow) => `/measure dio ${airflow}. Si se deja vacío, se anota eso.`,
    measureIt: '/measure calcula promedio y extremo bajo de sus lecturas, con el error del método.',
    needUnknown: 'Lo que necesita el cuarto no está en la hoja. /size lo calcula.',
    onlyAgreed: 'Lo que necesita el cuarto no está en la hoja, solo cuenta lo acordado. /size lo calcula.',
    agreedAndNeed: (agreed, need) => `Se acordó ${agreed}, y el cuarto necesita ${need}.`,
    agreedLess: (agreed, need) =>
      `${agreed} es menos que ${need}, lo que necesita el cuarto. Hace falta una razón, y los papeles la dicen.`,
    methods: {
      'powered-hood': 'una campana de medición con soplador propio',
      hood: 'una campana de medición sin soplador',
      'flow-box': 'una caja de flujo',
      traverse: 'lecturas sobre la rejilla',
      bag: 'una bolsa con cronómetro',
    },
    errsBy: {
      'powered-hood': 'Una campana de medición con soplador propio',
      hood: 'Una campana de medición sin soplador',
      'flow-box': 'Una caja de flujo',
      traverse: 'Leer velocidades sobre la rejilla',
      bag: 'Una bolsa con cronómetro',
    },
    methodNotSaid: 'No se dijo el método, y una campana de medición sin soplador',
    lowEndTooHigh: (by, errs, mean, atBest, written) =>
      `${by} yerra por ${errs} o más: el extremo bajo de ${mean} es cuando mucho ${atBest}, no ${written}. Se anota y cuenta ${atBest}; /measure lo calcula.`,
    lowEndAtBest: 'Extremo bajo cuando mucho',
    otherWay: (then, now) =>
      ` Antes se midió con ${then} y ahora con ${now}, así que entre los dos están ambos errores.`,
    beforeAndNow: (before, now) => `Antes del trabajo movía ${before}, ahora ${now}.`,
    whereToLook:
      'Busque cinta en la aleta del extractor, una aleta de la salida que se atora, un ducto aplastado o flojo y una puerta sin hueco; mida otra vez.',
    notCompared: 'No se comparó con una predicción',
    notPredicted:
      'No se comparó con una predicción: la hoja dice que no se sabe del extractor o del ducto. /duct los pide.',
    doorUnknown: 'Se predijo como si la puerta dejara entrar todo el aire; /makeup pide el hueco debajo de ella.',
    boxLeftOut: 'Lo que frena la caja de flujo queda fuera: /measure box-opening lo cuenta.',
    atSetting: (at) => ` Calculado en ${at}, la posición que dice la hoja.`,
    atFastest: (at) =>
      ` Calculado en ${at}, la más rápida; la hoja no nombra ninguna posición. Dé /duct fan-setting si anda más despacio.`,
    notCounted: (box) => `No está contada la caja ${box}`,
    otherBox: (known, command) =>
      `La caja contada en la hoja ${known ? 'es' : 'puede ser'} otra, así que esta no se calculó. /${command} la cuenta.`,
    lacking: (room) => `faltan ${room}`,
    onlyLeft: (room) => `solo quedan ${room}`,
    written: (written, count) => `Se escribió ${written}; según la cuenta de la hoja ${count}. Se anota eso.`,
    runTimeNot: 'Tiempo de marcha sin calcular',
    reckoned: {
      list: 'Calculado con el caudal medido en esta lista.',
      measured: 'Calculado con el caudal medido en la hoja.',
      told: 'Calculado con el caudal que da la hoja, hasta que se mida.',
      'not known': 'No se sabe el caudal: calculado con lo que mueven casi siempre estos extractores. Mídalo.',
      computed: 'Calculado con el caudal que sale de extractor y ducto, hasta que se mida.',
    },
    setNoTime: (set) => `Puesto en ${set}; aquí no alcanza ningún tiempo.`,
    setTooShort: (set, wanted) =>
      `Puesto en ${set}, y hacen falta unos ${wanted}. Ponga más tiempo, o averigüe por qué tiene que bastar menos.`,
    setRight: (set, wanted) => `Puesto en ${set}; se calcularon unos ${wanted}.`,
    hangers: (count, flex, metal) =>
      `El tramo de la hoja lleva ${count} ${count === 1 ? 'soporte' : 'soportes'}: uno cada ${flex} de flexible y cada ${metal} de metal.`,
    tape: (joints, tape) =>
      `Selle ${joints} ${joints === 1 ? 'junta' : 'juntas'}, con las del cuello y de la salida: ${tape} de cinta de aluminio, con el desperdicio.`,
    screws: (joints, screws) =>
      `El tramo de la hoja tiene ${joints} ${joints === 1 ? 'junta' : 'juntas'}, con las del cuello y de la salida, y lleva ${screws} ${screws === 1 ? 'tornillo' : 'tornillos'}.`,
    bands: (bands) => `El tramo de la hoja lleva ${bands} ${bands === 1 ? 'abrazadera' : 'abrazaderas'}.`,
    notCountedOut: 'Sin contar',
    partsNotListed: 'Piezas sin lista',
    lacks: (what, briefs, command) => `${what}: en la hoja falta ${briefs}. /${command} lo pregunta.`,
    granted: (briefs, command) =>
      `No está en la hoja, y se dio por supuesto: ${briefs}. /${command} muestra cómo se toma cada cosa.`,
  },
);

export type BesideWords = (typeof besideWords)['english'];
