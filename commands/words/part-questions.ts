import type { QuestionWords } from '#words/question-words.ts';

/** The questions about what fits into the ceiling and what goes on the truck, in Spanish, by their ids. */
export const partQuestions = {
  'housing-size': {
    prompt: '¿Qué medidas tiene la carcasa del extractor nuevo: largo, ancho y alto?',
    why: 'Decide el hueco que se corta, si entra entre las vigas, y si cabe bajo un piso.',
    accepts: '2 o 3 lados con x entre ellos, por ejemplo 10-1/4 x 10-1/2 x 7-5/8 in',
    brief: 'Carcasa del extractor nuevo, largo x ancho x alto',
    because: 'Sin las medidas de la carcasa no se puede decir el hueco ni si cabe.',
  },
  'joist-spacing': {
    prompt: '¿A qué distancia están las vigas, de centro a centro?',
    why: 'Nunca se corta una viga, una cercha ni un patín para que entre una carcasa; tiene que caber en el espacio libre.',
    accepts: 'una medida, por ejemplo 16 in o 400 mm',
    brief: 'Distancia entre vigas, de centro a centro',
    because: 'Mídala antes de pedir el extractor; la carcasa tiene que caber en el espacio libre.',
  },
  'joist-kind': {
    prompt: '¿Qué son las vigas?',
    why: 'La cuerda de una cercha o el patín de una viga I es más ancho que una viga aserrada y deja un espacio más angosto.',
    brief: 'Qué son las vigas',
    because: 'Se toman como cuerdas de cercha, las más anchas, hasta que alguien mire.',
    choices: { '2x6': '2x6', '2x8': '2x8', '2x10': '2x10', '2x12': '2x12', truss: 'Cercha', 'i-joist': 'Viga I' },
    hints: { truss: 'la cuerda va de plano' },
  },
  'above-ceiling': {
    prompt: '¿Qué hay encima del cielo raso?',
    why: 'Bajo un piso la carcasa tiene que caber en la altura de las vigas; en un ático puede sobresalir.',
    brief: 'Qué hay encima del cielo raso',
    because: 'Se toma como un piso encima, sin espacio sobre las vigas.',
    choices: { attic: 'Ático abierto', floor: 'Un piso o la cubierta del techo' },
    hints: { floor: 'sin espacio encima de las vigas' },
  },
  'old-opening': {
    prompt: '¿Qué medidas tiene el hueco que deja el extractor viejo?',
    why: 'Un hueco más grande que la carcasa nueva se ve, a menos que la rejilla nueva cubra su borde.',
    accepts: '2 lados con x entre ellos, por ejemplo 9 x 9-1/4 in',
    brief: 'Hueco que deja el extractor viejo, largo x ancho',
    because: 'Mídalo antes de pedir el extractor: un hueco más grande que la rejilla hay que resanarlo.',
  },
  'grille-size': {
    prompt: '¿Qué medidas tiene la rejilla del extractor nuevo?',
    why: 'Tiene que cubrir el borde del hueco en todos los lados.',
    accepts: '2 lados con x entre ellos, por ejemplo 13 x 14 in',
    brief: 'Rejilla del extractor nuevo, largo x ancho',
    because: 'Sin ella no se puede decir si la rejilla cubre el hueco viejo.',
  },
  'cable-length': {
    prompt: '¿Qué largo tiene el cable nuevo, como va a ir tendido?',
    why: 'El cable se cuenta como va, hacia arriba, de lado y hacia abajo.',
    accepts: 'un largo, por ejemplo 14 ft o 4.3 m',
    brief: 'Cable nuevo, como va a ir tendido',
    because: 'No hay cable nuevo en la lista hasta que se sepa su largo.',
  },
} as const satisfies Readonly<Record<string, QuestionWords>>;
