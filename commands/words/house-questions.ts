import type { QuestionWords } from '#words/question-words.ts';

const lengthTaken = 'una medida, por ejemplo 3/4 in o 20 mm';
const widthTaken = 'un ancho, por ejemplo 30 in o 760 mm';

const appliances = {
  choices: {
    'natural-draft': 'Campana de tiro (tiro natural)',
    unvented: 'Calefactor sin salida',
    'solid-fuel': 'Chimenea o estufa de leña',
    'induced-draft': 'Calefacción o caldera con soplador de tiro',
    'power-vented': 'Salida con soplador',
    sealed: 'Combustión sellada',
    'kind-unknown': 'Hay uno, no se sabe de qué clase',
  },
  hints: {
    'natural-draft': 'campana o hueco abierto donde el tubo sale del calentador, la caldera o la calefacción',
    unvented: 'calefactor de cuarto o leños de gas, sin ningún tubo',
    'induced-draft': 'un soplador chico al pie de un tubo de metal',
    'power-vented': 'un soplador encima empuja los gases por un solo tubo de plástico',
    sealed: 'un tubo propio para el aire, otro para los gases',
    'kind-unknown': 'gas o petróleo, nadie ha visto cómo sale',
  },
  also: {
    'kind-unknown': ['hay uno', 'sí', 'si', 'gas', 'caldera', 'calentador', 'calentador de agua', 'calefacción'],
  },
};

/** The questions about doors, other exhausts and what burns fuel in the house, in Spanish, by their ids. */
export const houseQuestions = {
  'door-width': {
    prompt: '¿Qué ancho tiene la puerta del baño?',
    why: 'El aire que el extractor saca entra por debajo de la puerta; su ancho y su hueco son la única entrada.',
    accepts: widthTaken,
    brief: 'Ancho de la puerta del baño',
    because: 'Las puertas de baño casi siempre tienen de 24 a 32 in de ancho; de la práctica común.',
  },
  'door-gap': {
    prompt: '¿Qué alto tiene el hueco debajo de la puerta cerrada, desde el piso o desde encima de la alfombra?',
    why: 'Una puerta justa deja sin aire al extractor más fuerte: el hueco quita presión igual que el ducto.',
    accepts: lengthTaken,
    brief: 'Hueco debajo de la puerta cerrada',
    because: 'Son comunes huecos de 1/4 a 1 in; de la práctica común.',
  },
  'transfer-grille': {
    prompt: '¿Hay una rejilla en la puerta o en la pared junto a ella? Su cara, por ejemplo 12 x 6 in, o ninguna.',
    why: 'Una rejilla deja entrar aire junto con el hueco debajo de la puerta; los dos deciden qué tanto tiene que jalar el extractor.',
    accepts: 'un área o dos lados, por ejemplo 12 x 6 in, o ninguna',
    brief: 'Cara de una rejilla en puerta o pared, o ninguna',
    because: 'Se calcula sin rejilla: el hueco debajo de la puerta es la única entrada.',
  },
  'transfer-grille-free-share': {
    prompt: '¿Cuánto de la cara de esa rejilla está abierto?',
    why: 'Las aletas y la malla se llevan el resto; al aire le queda la parte abierta.',
    accepts: 'un porcentaje, por ejemplo 15 %',
    brief: 'Parte abierta de la cara de la rejilla',
    because: 'Las rejillas casi siempre están abiertas del 50 al 75 %; de la práctica común.',
  },
  'hall-door-gap': {
    prompt: '¿Hay una segunda puerta cerrada entre el baño y el resto de la casa? El hueco debajo de ella.',
    why: 'El aire que tiene que pasar dos puertas pierde presión en las dos.',
    accepts: lengthTaken,
    brief: 'Hueco debajo de una segunda puerta en el camino, si la hay',
    because: 'Se calcula sin segunda puerta en el camino.',
  },
  'hall-door-width': {
    prompt: '¿Qué ancho tiene esa segunda puerta?',
    why: 'Su ancho y su hueco hacen la abertura.',
    accepts: widthTaken,
    brief: 'Ancho de la segunda puerta',
    because: 'Las puertas casi siempre tienen de 24 a 36 in de ancho; de la práctica común.',
  },
  'door-open-airflow': {
    prompt: '¿Cuánto mide con la puerta abierta? De la misma manera, en el mismo lugar; o no sé.',
    why: 'Si con la puerta cerrada baja una décima parte o más, al extractor le falta aire. Las dos mediciones dicen más que cualquier hueco.',
    accepts: 'un caudal, por ejemplo 80 cfm o 38 L/s',
    brief: 'Caudal medido igual con la puerta abierta',
    because: 'No se midió con la puerta abierta, así que la parte de la puerta no se puede separar.',
  },
  'carbon-monoxide-alarm': {
    prompt: '¿Hay alarma de monóxido de carbono?',
    why: 'El monóxido de carbono no se huele. La alarma es la última defensa cuando un extractor hace que una chimenea tire al revés.',
    brief: 'Alarma de monóxido de carbono',
    because: 'Nadie lo ha dicho, así que no se cuenta con ninguna.',
    choices: {
      fitted: 'Puesta y probada',
      none: 'Ninguna',
      'not-tested': 'Hay, sin probar',
      sounding: 'Está sonando ahora',
    },
    hints: { fitted: 'se oprimió su botón', sounding: 'primero salga' },
  },
  'fuel-appliances': {
    prompt:
      '¿Qué quema combustible en la casa, con aire de adentro o con salida a través de ella? Calefacción, caldera, calentador de agua, chimenea, estufa, leños de gas.',
    why: 'Un extractor puede jalar los gases de una llama de vuelta a la casa. Aquí nada puede descartarlo; solo se puede decir quién tiene que mirar.',
    brief: 'Aparatos que queman combustible en la casa',
    because: 'Nadie lo ha dicho, así que se cuenta con uno que puede devolver sus gases.',
    ...appliances,
  },
  'appliance-in-bath-zone': {
    prompt: '¿Está alguno de ellos en el baño, o en un clóset que solo abre hacia él?',
    why: 'Ahí toda la fuerza del extractor contra la puerta cerrada actúa sobre la llama, muchas veces lo que siente la casa.',
    brief: 'Aparato que quema combustible en el baño o su clóset',
    because: 'Nadie lo ha dicho, así que se cuenta con uno hasta que un jefe de cuadrilla haya mirado.',
    ...appliances,
  },
  'spillage-seen': {
    prompt: '¿Se ha visto o sentido humo o gas caliente que vuelve por una campana de tiro o una chimenea?',
    why: 'Eso es gas venenoso en la casa ahora, diga lo que diga cualquier cuenta.',
    brief: 'Humo o gas caliente que vuelve a la casa',
    because: 'Nadie ha reportado nada.',
  },
  'carbon-monoxide': {
    prompt: '¿Cuánto lee un medidor de monóxido de carbono, menos lo que lee afuera?',
    why: 'Desde 9 ppm por encima de afuera alguien tiene que hallar la causa; desde 35 ppm todos salen.',
    accepts: 'una lectura, por ejemplo 9 ppm',
    brief: 'Monóxido de carbono por encima de afuera, en ppm',
    because: 'Nadie lo ha medido.',
  },
  'recorded-by': {
    prompt: '¿Quién miró los aparatos que queman combustible?',
    why: 'Solo un jefe de cuadrilla puede anotar que no hay ninguno, o que uno está sellado. Dicho por otro, queda como no sabido.',
    brief: 'Quién miró los aparatos que queman combustible',
    because: 'Nadie ha dicho que haya mirado un jefe de cuadrilla.',
    choices: { lead: 'Un jefe de cuadrilla, en el lugar', other: 'Otra persona' },
    hints: { other: 'el cliente, la oficina, un aprendiz' },
  },
  'sealed-proof': {
    prompt: '¿Qué muestra que el aparato está sellado?',
    why: 'Un aparato sellado toma su aire de afuera por su propio tubo. Cuenta cuando eso se ve, con una foto.',
    brief: 'Qué muestra que un aparato está sellado',
    because: 'Nadie ha dicho qué se vio.',
    choices: { 'two-pipes': 'Se ven dos tubos', 'rating-plate': 'Se ve la placa', nothing: 'No se vio nada' },
    hints: { 'two-pipes': 'uno para el aire que entra, uno para los gases que salen' },
  },
  'attached-garage': {
    prompt: '¿Comparte un garaje una pared o una puerta con la casa?',
    why: 'Una casa con menos presión que afuera jala también del garaje, y con eso los gases de los carros.',
    brief: 'Garaje pegado a la casa',
    because: 'Nadie lo ha dicho, así que se cuenta con un garaje.',
  },
  'house-leakage': {
    prompt:
      '¿Qué tanto se fuga la casa? La cifra de la prueba de hermeticidad con puerta sopladora, caudal a 50 Pa, si la hay.',
    why: 'Todo extractor baja la presión de la casa por debajo de la de afuera; cuánto, depende de qué tan hermética es. Solo lo dice la puerta sopladora.',
    accepts: 'un caudal a 50 Pa, por ejemplo 1200 cfm50 o 566 L/s at 50 Pa',
    brief: 'Cifra de la puerta sopladora: caudal a 50 Pa',
    because:
      'Las casas van de 500 a 4500 cfm50; es demasiado ancho para calcular, así que no se calcula ninguna presión de la casa.',
  },
  'other-exhausts': {
    prompt: '¿Qué más saca aire de la casa? Nombre cada cosa, con su caudal si se sabe: dryer, range hood 300 cfm.',
    why: 'Todos jalan de la casa a la vez. Es la suma lo que puede voltear el tiro de una chimenea.',
    accepts:
      'dryer, range hood, bath fan u open fireplace, con comas, con su caudal si se sabe, por ejemplo range hood 300 cfm, o ninguno',
    brief: 'Otras salidas de aire de la casa',
    because: 'Nadie lo ha dicho; una secadora y una campana de cocina se cuentan solo en el extremo alto.',
    choices: {
      dryer: 'Secadora de ropa',
      'range-hood': 'Campana de cocina',
      'bath-fan': 'Otro extractor de baño',
      'open-fireplace': 'Chimenea abierta',
    },
  },
} as const satisfies Readonly<Record<string, QuestionWords>>;
