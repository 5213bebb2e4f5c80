import type { OtherLanguage } from '#words/language.ts';

/** What another command found, retold beside a step. In English its own sentences serve. */
export interface Retold {
  readonly runTime: {
    readonly never: string;
    readonly moreAir: string;
    readonly run: (time: string) => string;
    readonly usually: (low: string, high: string) => string;
  };
  readonly box: {
    readonly notCounted: string;
    readonly volumeUnknown: (needed: string) => string;
    readonly overfull: (by: string) => string;
    readonly fitsAsTold: (left: string, withAll: string) => string;
    readonly fitsOnlyAsTold: (left: string) => string;
    readonly exactlyFull: string;
    readonly leaves: (left: string) => string;
    readonly contentsNeed: (needed: string) => string;
    readonly countFirst: string;
    readonly takeLarger: (needed: string) => string;
    /** Cautions by their ids; what has none is pointed at. */
    readonly cautions: Readonly<Record<string, string>>;
    readonly oneMore: string;
  };
  readonly measured: {
    readonly enough: (low: string, need: string) => string;
    readonly notShown: (need: string, low: string, high: string) => string;
    readonly tooLittle: (need: string, high: string) => string;
    readonly asPredicted: (predicted: string) => string;
    readonly asPredictedTooLittle: (predicted: string) => string;
    readonly cannotTell: (predicted: string) => string;
    readonly less: (gap: string, predicted: string) => string;
    readonly more: (gap: string, predicted: string) => string;
    /** Where to look first, by how much of the prediction is moved: under half, under four fifths, a little less. */
    readonly look: readonly [string, string, string];
    readonly tooMuch: string;
  };
  readonly duct: {
    readonly fallToOutside: (drop: string) => string;
    readonly fallToTrap: (drop: string) => string;
    readonly noWrap: string;
    readonly noWrapListed: (wanted: string) => string;
    readonly wrap: (thickness: string, area: string, worth: string) => string;
    readonly noRigid: string;
    readonly buyInsulated: (wanted: string) => string;
    readonly nobodySaid: (wanted: string) => string;
  };
  /** Things on the list for the truck, and the words of their sizes and amounts, by the English. */
  readonly parts: Readonly<Record<string, string>>;
}

export const retold: Readonly<Record<OtherLanguage, Retold>> = {
  spanish: {
    runTime: {
      never: 'Ningún tiempo de marcha alcanza. Averigüe por qué antes que nada; /runtime lo dice.',
      moreAir: 'Dele más aire, no más tiempo: haría falta más de una hora. /runtime lo calcula.',
      run: (time) => `Deje andar el extractor unos ${time} después de la ducha; /runtime dice por qué.`,
      usually: (low, high) => ` Casi siempre tarda de ${low} a ${high}.`,
    },
    box: {
      notCounted:
        'No agregue ningún alambre ni cierre esta caja antes de que una persona calificada cuente sus alambres, en una caja comprobada sin tensión.',
      volumeUnknown: (needed) =>
        `No cierre esta caja antes de saber su volumen: tiene que tener por lo menos ${needed}.`,
      overfull: (by) =>
        `No cierre esta caja: está pasada por ${by}. Ponga una caja más grande o un aro de extensión, o saque alambres.`,
      fitsAsTold: (left, withAll) =>
        `Mire antes de cerrar: con lo dicho cabe, y quedan ${left}; quedan ${withAll} si la caja tiene también lo que nadie ha dicho. /boxfill nombra qué.`,
      fitsOnlyAsTold: (left) =>
        `Mire antes de cerrar: con lo dicho cabe, y quedan ${left}, pero no cabe si la caja tiene también lo que nadie ha dicho. /boxfill nombra qué.`,
      exactlyFull: 'La caja está exactamente llena: lleva lo dicho y ni un alambre más.',
      leaves: (left) => `La cuenta deja ${left}. Cuente con /boxfill antes de meter un alambre más.`,
      contentsNeed: (needed) => `El contenido necesita ${needed}; /boxfill muestra la cuenta, y lo que nadie ha dicho.`,
      countFirst: 'Cuente los alambres que terminan en la caja, en una caja comprobada sin tensión.',
      takeLarger: (needed) =>
        `Ponga una caja marcada con ${needed} o más, o agregue un aro de extensión, o reparta los alambres en dos cajas. /boxfill nombra cajas comunes.`,
      cautions: {
        'canopy-refused': 'Cuente todos los alambres propios: aquí ningún domo deja fuera ninguno.',
        'extras-differ':
          'Mire otra vez: lo que se dijo de qué más hay en la caja no concuerda con lo contado. /boxfill dice qué.',
        'device-depth': 'Mida la profundidad del interruptor o temporizador, y diga cuál es. /boxfill dice por qué.',
        'code-edition':
          'Pregunte al inspector qué edición del código eléctrico vale. Se contó con la más estricta de las nombradas, o del NEC si no se nombró ninguna; Canadá cuenta de otra manera.',
        'grounds-differ':
          'Revise los alambres de tierra: los dichos son menos que los que traen los cables. Se contaron los que traen los cables.',
        gangs: 'Los aparatos piden más espacios de los que tiene la caja: no entran lado a lado.',
        'wire-connectors':
          'Cuente también los conectores de alambre: el código canadiense cuenta cada par como un alambre.',
      },
      oneMore: 'Hay una precaución más de esta caja: véala con /boxfill antes de cerrarla.',
    },
    measured: {
      enough: (low, need) => `Suficiente: también el extremo bajo, ${low}, cumple los ${need} que hacen falta.`,
      notShown: (need, low, high) =>
        `No está mostrado que baste: hacen falta ${need}, y esta medición dice cualquier cosa de ${low} a ${high}. Mida mejor, o cuente con que es muy poco.`,
      tooLittle: (need, high) => `Muy poco: hacen falta ${need}, y hasta el extremo alto es ${high}.`,
      asPredicted: (predicted) => `Como se predijo, ${predicted}: el ducto hace lo que dicen su largo y sus codos.`,
      asPredictedTooLittle: (predicted) =>
        `Como se predijo, ${predicted}: el extractor da lo que este ducto le deja. Extractor o ducto es muy chico para lo que hace falta; vea con /duct qué ayudaría.`,
      cannotTell: (predicted) =>
        `Se predijo ${predicted}, pero las dos cifras son muy inciertas para decir si difieren. Lo diría una caja de flujo, una campana con soplador o un ducto mejor conocido.`,
      less: (gap, predicted) =>
        `${gap} menos que los ${predicted} que se predijeron, más de lo que explican los errores.`,
      more: (gap, predicted) =>
        `${gap} más que los ${predicted} que se predijeron, más de lo que explican los errores.`,
      look: [
        'Tan por debajo, busque un ducto tapado o aplastado, una aleta que no abre, o una compuerta con cinta.',
        'Busque ducto flexible colgado o doblado, una aleta que se atora, pelusa en la malla de la salida, o una medida que nadie dijo.',
        'Un poco por debajo: el tramo puede ser más largo, más flojo o con codos más cerrados de lo dicho, o la rejilla está sucia.',
      ],
      tooMuch:
        'Mire si el ducto se soltó del cuello o termina en el ático: un extractor sin nada contra qué empujar mueve más, y moja el techo. También lo hace una posición más alta o un tramo más corto.',
    },
    duct: {
      fallToOutside: (drop) =>
        `Cuelgue un tramo a nivel de modo que caiga ${drop} hacia afuera, y corte el hueco de la salida exterior ese tanto más abajo.`,
      fallToTrap: (drop) =>
        `Deje que la parte a nivel de un tramo al techo caiga desde el extractor hacia una trampa al pie de la subida, 1/4 in por pie: ${drop} si todo fuera a nivel. Lo que se junta en la subida regresa.`,
      noWrap: 'No se quiere forro: eso es solo para ducto dentro de la parte caliente de la casa.',
      noWrapListed: (wanted) =>
        `Ningún forro de la lista vale ${wanted} una vez puesto: pida dos capas, o ducto bajo aislante suelto, y que lo vea el inspector.`,
      wrap: (thickness, area, worth) =>
        `Forre el ducto rígido con manta de ${thickness}, ${area}: ${worth} una vez puesta.`,
      noRigid: 'No hay ducto rígido que forrar.',
      buyInsulated: (wanted) => ` Compre el ducto flexible con aislante de ${wanted}.`,
      nobodySaid: (wanted) => ` Nadie dijo cuánto se quiere: se toma ${wanted}.`,
    },
    parts: {
      'Fan with housing and grille': 'Extractor con carcasa y rejilla',
      'Rigid duct': 'Ducto rígido',
      'Flex duct': 'Ducto flexible',
      'Foil tape': 'Cinta de aluminio',
      'Sheet-metal screws': 'Tornillos de lámina',
      'Bands or clamps': 'Abrazaderas',
      'Hangers or straps': 'Soportes o flejes',
      'Duct wrap': 'Forro para ducto',
      'Wire connectors': 'Conectores de alambre',
      'Cable clamps': 'Conectores de cable',
      Box: 'Caja',
      Cable: 'Cable',
      '90° bend in flex duct, tight or kinked': 'Codo de 90° en ducto flexible, cerrado o doblado',
      '45° bend in flex duct': 'Codo de 45° en ducto flexible',
      '90° bend in flex duct, easy radius': 'Codo de 90° en ducto flexible, amplio',
      '90° stamped elbow, radius 1.5 diameters': 'Codo estampado de 90°, radio 1.5 diámetros',
      '90° adjustable elbow, tight radius': 'Codo ajustable de 90°, radio cerrado',
      '90° five-piece elbow, radius 1.5 diameters': 'Codo de 90° de cinco piezas, radio 1.5 diámetros',
      '90° pleated elbow, radius 1.5 diameters': 'Codo plisado de 90°, radio 1.5 diámetros',
      '90° square elbow without vanes': 'Codo cuadrado de 90° sin guías',
      '45° stamped elbow, radius 1.5 diameters': 'Codo estampado de 45°, radio 1.5 diámetros',
      '45° adjustable elbow': 'Codo ajustable de 45°',
      '45° three-piece elbow, radius 1.5 diameters': 'Codo de 45° de tres piezas, radio 1.5 diámetros',
      '45° pleated elbow, radius 1.5 diameters': 'Codo plisado de 45°, radio 1.5 diámetros',
      '45° square elbow': 'Codo cuadrado de 45°',
      '45° elbow, make not known': 'Codo de 45°, no se sabe de qué clase',
      '90° elbow, make not known': 'Codo de 90°, no se sabe de qué clase',
      'bend or reducer within one diameter of the fan collar':
        'codo o reducción a menos de un diámetro del cuello del extractor',
      'second backdraft damper in the duct': 'segunda compuerta en el ducto',
      'insect or bird screen at the outlet, clean': 'malla contra insectos o pájaros en la salida, limpia',
      'louvered hood, slats partly open': 'salida exterior de persianas, abiertas en parte',
      'roof cap with damper and screen': 'salida de techo con compuerta y malla',
      'soffit fitting': 'pieza en el alero',
      'wall cap with a gravity flap': 'salida de pared con aleta que cae por su peso',
      'bare pipe end': 'punta de tubo desnuda',
      reducer: 'reducción',
      increaser: 'ampliación',
      stick: 'tramo',
      sticks: 'tramos',
      thick: 'de grueso',
      square: 'cuadrada',
      octagon: 'octagonal',
      device: 'para aparatos',
      'with ground': 'con tierra',
      to: 'a',
    },
  },
};
