/** Numbers and units as they are said in Spanish, put into digits and the symbols English is read by. Accents are gone by now. */

const small: Readonly<Record<string, number>> = Object.fromEntries(
  'cero uno dos tres cuatro cinco seis siete ocho nueve diez once doce trece catorce quince dieciseis diecisiete dieciocho diecinueve veinte veintiuno veintidos veintitres veinticuatro veinticinco veintiseis veintisiete veintiocho veintinueve'
    .split(' ')
    .map((word, value) => [word, value]),
);
const tens: Readonly<Record<string, number>> = {
  treinta: 30,
  cuarenta: 40,
  cincuenta: 50,
  sesenta: 60,
  setenta: 70,
  ochenta: 80,
  noventa: 90,
};
const hundreds: Readonly<Record<string, number>> = {
  cien: 100,
  ciento: 100,
  doscientos: 200,
  trescientos: 300,
  cuatrocientos: 400,
  quinientos: 500,
  seiscientos: 600,
  setecientos: 700,
  ochocientos: 800,
  novecientos: 900,
};

const ones = Object.keys(small).slice(1, 10).join('|');
const belowHundred = `(?:(?:${Object.keys(tens).join('|')})(?: y (?:${ones}))?|${Object.keys(small)
  .toSorted((one, other) => other.length - one.length)
  .join('|')})`;
const spoken = new RegExp(
  String.raw`\b(?:(?<thousand>(?:${belowHundred} )?mil)(?: (?:y )?))?(?:(?<hundred>${Object.keys(hundreds).join('|')})(?: (?:y )?(?<rest>${belowHundred}))?|(?<low>${belowHundred}))\b|\b(?<bare>(?:${belowHundred} )?mil)\b`,
  'g',
);

const amountOf = (said: string | undefined): number =>
  (said ?? '').split(/ (?:y )?/).reduce((sum, word) => sum + (tens[word] ?? small[word] ?? 0), 0);
const thousandsIn = (said: string | undefined): number =>
  said === undefined ? 0 : 1000 * (said === 'mil' ? 1 : amountOf(said.replace(/ mil$/, '')));

const fractions: readonly (readonly [RegExp, string])[] = [
  [/\btres cuartos?\b|\b3 cuartos?\b/g, '3/4'],
  [/\bun cuarto de (?=pulgada|hora)/g, '1/4 de '],
  [/\b(?:un|1) octavo\b/g, '1/8'],
  [/\b(?:tres|cinco|siete) octavos\b/g, ''],
  [/\bmedia hora\b/g, '30 minutos'],
  [/\bmedi[ao] (?=pulgada|pie|metro)/g, '1/2 '],
  [/\b(?:una )?(pulgada|hora|pie) y medi[ao]\b/g, '1-1/2 $1'],
  [/\b(?:una )?pulgada y (?:un )?cuarto\b/g, '1-1/4 pulgada'],
];
const eighths: Readonly<Record<string, string>> = { tres: '3/8', cinco: '5/8', siete: '7/8' };

/** Units after a number, each by what English calls it; the longer names first. */
const units: readonly (readonly [string, string])[] = [
  ['pies? cubicos? (?:por|al?) min(?:uto)?s?|pcm', 'cfm'],
  ['litros? (?:por|a|al|/) ?(?:seg(?:undo)?s?|s)|lps', 'l/s'],
  ['metros? cubicos? (?:por|a|la) (?:la )?hora', 'm3/h'],
  ['pies? (?:por|al) min(?:uto)?s?', 'fpm'],
  ['metros? (?:por|al) seg(?:undo)?s?', 'm/s'],
  ['pulgadas? cubicas?|pulg(?:s)?3', 'cubic inches'],
  ['centimetros? cubicos?', 'cm3'],
  ['pulgadas? cuadradas?', 'square inches'],
  ['pies? cuadrados?', 'square feet'],
  ['centimetros? cuadrados?', 'cm2'],
  ['metros? cuadrados?|mts?2', 'm2'],
  ['pies?', 'ft'],
  ['pulgadas?|pulgs?|plgs?|pul', 'in'],
  ['milimetros?', 'mm'],
  ['centimetros?|cms', 'cm'],
  ['metros?|mts?', 'm'],
  ['galones|galon', 'gal'],
  ['litros?|lts?', 'liters'],
  ['segundos?|segs?', 'sec'],
  ['minutos?|mins', 'min'],
  ['horas?|hrs', 'hours'],
  ['grados? (?:c|celsius|centigrados?)|centigrados?', 'degrees C'],
  ['grados? (?:f|fahrenheit|farenheit)|fahrenheit', 'degrees F'],
  ['vatios?|wats?', 'watts'],
  ['amperes|amperios?', 'amps'],
  ['pascales', 'pa'],
  ['por ?ciento', '%'],
  ['centavos?', 'cents'],
  ['grados dia|dias grado', 'degree days'],
];

/** "Veinte pies y medio", "ciento diez", "tres cuartos de pulgada", "2,4 metros" as "20-1/2 ft", "110", "3/4 in", "2.4 m". */
export function figuresIn(line: string): string {
  let text = line.replace(/\b(tres|cinco|siete) octavos\b/g, (_, word: string) => eighths[word] ?? word);
  for (const [said, digits] of fractions) text = text.replace(said, digits);
  text = text
    .replace(spoken, (...found) => {
      const { thousand, hundred, rest, low, bare } = found.at(-1) as Record<string, string | undefined>;
      return String(thousandsIn(thousand ?? bare) + (hundreds[hundred ?? ''] ?? 0) + amountOf(rest) + amountOf(low));
    })
    .replace(/\b(\d+) (?:punto|coma) (\d+)\b/g, '$1.$2')
    .replace(/\b(\d) (metros?|mts?|m) (?:con )?(\d{2})(?=$|[,;]| (?:de|y|por|x)\b)/g, '$1.$3 $2')
    .replace(/(?<![\d,.])(\d{1,3}),(\d{1,2})(?![\d,])/g, '$1.$2')
    .replace(/\b(?:un|una) (?=y medi[ao])/g, '1 ')
    .replace(/(\d+) (pulgadas?|pies?|metros?|pulg|minutos?|horas?|galones) y medi[ao]\b/g, '$1-1/2 $2')
    .replace(/\b(\d+) y medi[ao]\b/g, '$1-1/2')
    .replace(/\b(\d+) y (?:un )?cuarto\b/g, '$1-1/4')
    .replace(/\b(\d+) (?:y )?(?=\d\/\d)/g, '$1-')
    .replace(/(\d\/\d{1,2}) de (?=pulgada|hora)/g, '$1 ')
    .replace(/\b(\d+) (?:grados? )?bajo (?:cero|0)\b/g, '-$1 grados')
    .replace(/\bmenos (?=\d)/g, '-');
  for (const [said, name] of units)
    text = text.replace(new RegExp(String.raw`(?<=\d) ?(?:${said})(?![a-z\d])\.?`, 'g'), ` ${name}`);
  return text.replace(/(\d) grados?\b/g, '$1 degrees');
}
