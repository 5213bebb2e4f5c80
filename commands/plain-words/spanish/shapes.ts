/**
 * Spanish names the thing before its number, "flex de 4", "techo de 9 pies"; English reads the number first. Each shape turns
 * one such piece round, in braces, so that nothing in it is read twice. No number is dropped but of basins, showers,
 * windows and speeds, which nothing counts, and none gets a unit it was not given but the width of a duct, which everybody says bare.
 */

type Shape = readonly [pattern: RegExp, english: (...groups: readonly string[]) => string];

const number = String.raw`(?<![\d./-])\d+(?:\.\d+)?(?:[ -]\d+\/\d+)?(?![\d/])|(?<![\d./-])\d+\/\d+(?![\d/])`;
const n = `(${number})`;
const lengthUnit = 'ft|in|mm|cm|m';
const measure = String.raw`((?:${number})(?: ?(?:${lengthUnit}))?(?![\d/a-z]))`;
const long = String.raw`((?:${number}) ?(?:ft|m))\b`;

const duct =
  '((?:ducto |tubo |manguera )?(?:flex(?:ible)?|acordeon|foil|liso|rigido|de lamina|galvanizado|espiral)(?: de aluminio| galvanizado| liso| flexible)?|ducto|tubo|conducto|manguera|tuberia|pvc)';

function kindOf(said = ''): string {
  if (/foil|aluminio/.test(said)) return 'foil flex';
  if (/flex|acordeon|manguera/.test(said)) return 'flex';
  if (/espiral/.test(said)) return 'spiral';
  if (/liso|pvc/.test(said)) return 'smooth';
  return /rigido|lamina|galvanizado/.test(said) ? 'rigid' : 'duct';
}

/** A width as a duct has it: in inches where nobody said a unit and it is a duct's in inches. */
const widthOf = (said = ''): string =>
  /[a-z]/.test(said)
    ? said
    : Number(said) >= 3 && Number(said) <= 14
      ? `${said} in`
      : Number(said) >= 75
        ? `${said} mm`
        : said;

const fixtures: Readonly<Record<string, string>> = {
  regaderas: 'showers',
  duchas: 'showers',
  tinas: 'tubs',
  excusados: 'toilets',
  inodoros: 'toilets',
};

const of = '(?: de| es de| del| a| en)*';
const filler = '(?: es| son| esta| tiene| mide| dice| marca| nominal| nuevo| de| del| a| al| como| unos| unas)*';

export const shapes: readonly Shape[] = [
  // "Reducción de 6 a 4"
  [
    new RegExp(
      String.raw`\b(?:reduccion|reductor|reduce|reducido|se reduce|baja)(?: de)? ${measure} a ${measure}`,
      'g',
    ),
    (from, to) => `, reducer ${widthOf(from)} to ${widthOf(to)},`,
  ],
  // "20 pies de flex de 4", "6 m de ducto flexible de 100 mm"
  [
    new RegExp(String.raw`${long} (?:de )?(?:largo de |recorrido de )?${duct}(?: de| del)? ${measure}(?! ?ft\b)`, 'g'),
    (length, kind, width) => `, ${widthOf(width)} ${kindOf(kind)} ${length},`,
  ],
  // "20 pies de ducto de 4 flexible" is told by its size first: "flex de 4, 20 pies"
  [
    new RegExp(
      String.raw`\b${duct}(?: de| del)? ${measure},? (?:de |con |son |y |por |unos )*${long}(?: de largo)?`,
      'g',
    ),
    (kind, width, length) => `, ${widthOf(width)} ${kindOf(kind)} ${length},`,
  ],
  [
    new RegExp(String.raw`${measure} (?:de )?${duct}(?: de)? ${long}`, 'g'),
    (width, kind, length) => `, ${widthOf(width)} ${kindOf(kind)} ${length},`,
  ],
  [
    new RegExp(String.raw`${long} (?:de )?${duct}\b(?! de \d)`, 'g'),
    (length, kind) => `, ${length} of ${kindOf(kind)}`,
  ],
  [
    new RegExp(String.raw`\b${duct}( sin aislante| sin aislar| sin forro)?(?: de| del) ${measure}`, 'g'),
    (kind, bare, width) => `${widthOf(width)} ${kindOf(kind)}${bare ? ' uninsulated' : ''}`,
  ],
  // Fan and its number; how many speeds it has is no airflow.
  [
    /\b(?:de )?(?:[2-5] )?velocidades(?: de| a)? (\d{2,3}(?:(?:, | y | o |\/)\d{2,3})+)(?: (cfm|l\/s))?/g,
    (flows, unit) => `speeds ${flows.replace(/ [yo] |\//g, ', ')}${unit === undefined ? '' : ` ${unit}`}`,
  ],
  [/\b(?:de )?[2-5] velocidades\b/g, () => 'of several speeds'],
  // Windows are not counted.
  [/(?<![\d./-])[1-5] ventanas?\b/g, () => ''],
  [
    new RegExp(
      String.raw`\b(?:extractor|ventilador|abanico)(?: de bano)?${filler} (\d{2,3})(?: ?(cfm|l\/s|m3\/h))?(?![\d/]|\.\d| ?(?:${lengthUnit}|x|por|%|min|sec|w|watts?|sones?|amps|hours|cents|degrees|years|anos)\b)`,
      'g',
    ),
    (flow, unit) => `${flow}${unit === undefined ? '' : ` ${unit}`} fan`,
  ],
  [
    /\b(?:uno|uno de|el de|a|con|con uno de|con un) (\d{2,3}) (cfm|l\/s|m3\/h)\b/g,
    (flow, unit) => `at ${flow} ${unit}`,
  ],
  [
    new RegExp(
      String.raw`(?<=flex\}|duct\}|rigid\}|smooth\}|spiral\}) a (\d{2,3})(?![\d/]|\.\d| ?(?:${lengthUnit}|%|min|sec)\b)`,
      'g',
    ),
    (flow) => `at ${flow}`,
  ],
  // "Un 110 con flex", "el 80": so a crew calls a fan.
  [
    /\b(?:un|el|uno|uno de|el de|del) ((?:[3-9]\d|[1-4]\d\d))(?= (?:con|y|por|en|a traves|da|me da)\b|, )/g,
    (flow) => `${flow} fan`,
  ],
  // Room, ceiling, door, gap
  [
    new RegExp(
      String.raw`\b(bano|cuarto)(?: de bano)?${filler} (${number}) ?(${lengthUnit})? ?(?:por|x) ?(${number})(?: ?(${lengthUnit})\b)?(?: ?(?:por|x) ?(${number})(?: ?(${lengthUnit})\b)?)?`,
      'g',
    ),
    (_, a, unitA, b, unitB, c, unitC) =>
      `${a}${unitA ? ` ${unitA}` : ''} x ${b}${unitB ? ` ${unitB}` : ''}${c ? ` x ${c}${unitC ? ` ${unitC}` : ''}` : ''} bath`,
  ],
  [
    new RegExp(
      String.raw`(?<!salida de |salida por el |tapa de |campana de |salida al )\b(?:techo|cielo raso|cielo|plafon|altura)(?: del techo| del cielo raso)?${filler} ${measure}`,
      'g',
    ),
    (height) => `${height} ceiling,`,
  ],
  [new RegExp(String.raw`${measure} (?:de alto|de altura)`, 'g'), (height) => `${height} ceiling,`],
  [
    new RegExp(
      String.raw`\b(?:luz|hueco|rendija|espacio|abertura|claro|separacion)(?: (?:bajo|debajo de|abajo de|de) (?:la )?puerta| abajo| debajo)?${filler} ${measure}`,
      'g',
    ),
    (gap) => `${gap} gap`,
  ],
  [
    new RegExp(
      String.raw`${measure} (?:de (?:luz|hueco|rendija|espacio|claro)(?: (?:bajo|debajo de|abajo de) la puerta| abajo)?|(?:bajo|debajo de|abajo de) la puerta)`,
      'g',
    ),
    (gap) => `${gap} gap under the door`,
  ],
  [new RegExp(String.raw`\bpuerta(?: del bano)?${filler} ${measure}`, 'g'), (width) => `${width} door`],
  [
    /\bvigas?(?: a| cada| de| separadas)* (\d+(?:\.\d+)?)(?: (in|mm|cm))?/g,
    (apart, unit) => `joists ${apart}${unit === undefined ? '' : ` ${unit}`} on center`,
  ],
  // Boxes and wires
  [
    new RegExp(
      String.raw`\bcaja(?: (cuadrada|octagonal|octogonal|redonda))?(?: de metal| metalica)?${of} ${n}(?: in)? ?(?:por|x) ?${n}(?: in)?(?: ?(?:por|x) ?${n}(?: in)?)?(?: (cuadrada|octagonal|octogonal|redonda))?`,
      'g',
    ),
    (before, a, b, c, after) => {
      const shape = before ?? after ?? '';
      const kind = /^oct/.test(shape)
        ? ' octagon'
        : shape === 'redonda'
          ? ' round'
          : shape === 'cuadrada'
            ? ' square'
            : '';
      return `${a} x ${b}${c ? ` x ${c}` : ''}${kind} box`;
    },
  ],
  [
    /\bcaja(?: (?:de plastico|plastica|de metal|metalica|sencilla|doble))?(?: de| es de| dice| marca)* (\d{1,2}(?:\.\d+)?)(?: (?:cubic inches|pulgadas))?(?! ?(?:x|por|cm3|ml|\/|-|cables|alambres)\b|[\d./])/g,
    (volume) => `${volume} cubic inch box`,
  ],
  [
    /(?<![\d./-])(1[024]) (?:por )?([23])(?= con tierra| mas tierra| y tierra| cables?\b)/g,
    (gauge, count) => `${gauge}/${count}`,
  ],
  [
    /(?<![\d./-])(\d{1,2}) (?:cables?|alambres?|romex)(?: de| del| nm)* (1[024]) ?[/-] ?([23])(?![\d/])/g,
    (count, gauge, wires) => `${count} ${gauge}/${wires}`,
  ],
  [
    /(?<![\d./-])(\d{1,2}) (?:cables?|alambres?|hilos|conductores)(?: de| del| numero| calibre| #)* ?#?(1[0248]|16|[68])(?: awg)?(?![\d/]| ?(?:por|x)\b)/g,
    (count, gauge) => `${count} wires #${gauge}`,
  ],
  // Fixtures are not counted, so their number is not one that found no place.
  [
    /(?<![\d./-])([2-4]) (regaderas|duchas|tinas|excusados|inodoros|lavabos|lavamanos)\b/g,
    (_, what) => fixtures[what] ?? '',
  ],
  // Shower, bag, humidity, attic
  [
    /\b(?:regadera|ducha|duchas|regaderazo|banarse|bano)(?: es| son| dura| duran| de| como| unos)+ (\d+(?:\.\d+)?) min\b/g,
    (minutes) => `${minutes} min shower`,
  ],
  [/(?<![\d./-])(\d+(?:\.\d+)?) min de (?:regadera|ducha|bano)\b/g, (minutes) => `${minutes} min shower`],
  [/\bbolsa(?: de basura)?(?: de| es de)* (\d+(?:\.\d+)?) (gal|liters)\b/g, (volume, unit) => `${volume} ${unit} bag`],
  [
    /\bhumedad (?:de|en|adentro de) (?:la )?casa(?: de| del| al| es| esta)* (\d+(?:\.\d+)?) ?%?/g,
    (share) => `house humidity ${share} %`,
  ],
  [
    /\b(?:casa|la casa)(?: al| con| esta al)* (\d+(?:\.\d+)?) ?%(?: de humedad)?/g,
    (share) => `house humidity ${share} %`,
  ],
  [/\bhumedad(?: de| del| al| es)* (\d+(?:\.\d+)?) ?%?/g, (share) => `humidity ${share} %`],
  [
    /\b(?:atico|desvan|entretecho)(?: a| de| esta a| en| es| con| baja a| llega a)* (-?\d+(?:\.\d+)?) ?(?:degrees )?([fc])?\b(?! ?(?:ft|in|m|mm|cm)\b)/g,
    (degrees, scale) => `attic ${degrees} degrees${scale ? ` ${scale.toUpperCase()}` : ''}`,
  ],
  [
    /(?<![\d./])(-?\d+(?:\.\d+)?) ?(?:degrees )?([fc])? en el (?:atico|desvan|entretecho)\b/g,
    (degrees, scale) => `attic ${degrees} degrees${scale ? ` ${scale.toUpperCase()}` : ''}`,
  ],
  [/(?<=\d)(?: ?(?:ft|in|m|mm|cm))?(?: ?por ?)(?=\d)/g, () => ' x '],
];
