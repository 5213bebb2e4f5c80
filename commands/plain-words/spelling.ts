import { distance } from 'fastest-levenshtein';
import { plainWords } from './common-words.ts';
import { numberWords } from './spoken-numbers.ts';

/** Short forms and slips too short or too far off to be found by their letters. */
const shortForms: Readonly<Record<string, string>> = {
  bth: 'bath',
  bthrm: 'bathroom',
  bathrm: 'bathroom',
  bdrm: 'bedroom',
  rm: 'room',
  ba: 'bath',
  clg: 'ceiling',
  alum: 'aluminum',
  galv: 'galvanized',
  adj: 'adjustable',
  nat: 'natural',
  bom: 'materials',
  mx: 'max',
  feets: 'feet',
  lid: 'ceiling',
  ceil: 'ceiling',
  ht: 'high',
  hgt: 'high',
  wc: 'toilet',
  loo: 'toilet',
  commode: 'toilet',
  shwr: 'shower',
  shr: 'shower',
  bathtub: 'tub',
  flx: 'flex',
  rigd: 'rigid',
  pipng: 'pipe',
  el: 'elbow',
  els: 'elbows',
  ell: 'elbow',
  ells: 'elbows',
  elb: 'elbow',
  elbos: 'elbows',
  elbo: 'elbow',
  fn: 'fan',
  meas: 'measured',
  msrd: 'measured',
  req: 'required',
  reqd: 'required',
  "req'd": 'required',
  temp: 'temperature',
  del: 'delivered',
  deliv: 'delivered',
  dia: 'diameter',
  diam: 'diameter',
  insul: 'insulated',
  uninsul: 'uninsulated',
  gnd: 'ground',
  gnds: 'grounds',
  grnd: 'ground',
  grnds: 'grounds',
  grd: 'ground',
  sw: 'switch',
  dev: 'device',
  devs: 'devices',
  oct: 'octagon',
  sq: 'square',
  cond: 'conductors',
  recep: 'receptacle',
  mtr: 'meter',
  ninty: 'ninety',
  nintey: 'ninety',
  nintys: 'nineties',
  ninties: 'nineties',
  eigthy: 'eighty',
  seventey: 'seventy',
  fifity: 'fifty',
  fity: 'fifty',
  forteen: 'fourteen',
  fiveteen: 'fifteen',
  fiften: 'fifteen',
  twelv: 'twelve',
  twelfe: 'twelve',
  tweny: 'twenty',
  twentey: 'twenty',
  thrity: 'thirty',
  thirthy: 'thirty',
  hundered: 'hundred',
  hundrd: 'hundred',
  fule: 'fuel',
  ani: 'any',
  wid: 'with',
  gvo: 'go',
  gall: 'gallon',
  galls: 'gallons',
  mn: 'min',
  mns: 'min',
  mnt: 'min',
  yr: 'year',
  yrs: 'years',
  thru: 'through',
  enuf: 'enough',
  wat: 'what',
  wats: "what's",
  wht: 'what',
  dose: 'does',
  cowl: 'cap',
  termination: 'cap',
  aluminium: 'aluminum',
  alu: 'aluminum',
  hite: 'height',
  rom: 'room',
  bx: 'box',
  inc: 'inch',
  ensuite: 'bathroom',
  u: 'you',
  lng: 'long',
  fr: 'for',
  hw: 'how',
  hwo: 'how',
  celling: 'ceiling',
  deap: 'deep',
  cmf: 'cfm',
  cts: 'cents',
  cnts: 'cents',
  scnds: 'seconds',
  scnd: 'second',
  watss: 'watts',
  nede: 'need',
  undr: 'under',
  clnce: 'clearance',
  resi: 'residential',
  cheep: 'cheap',
  kichen: 'kitchen',
  fogy: 'foggy',
  noisey: 'noisy',
  lowd: 'loud',
  exh: 'exhaust',
  elec: 'electric',
  vol: 'volume',
  len: 'length',
  lgth: 'length',
};

/** The words of the trade and of asking: what a slip of the fingers most likely meant. */
const tradeWords = `
bath bathroom room whirlpool jacuzzi ceiling toilet shower showers jetted steam tub separate square feet foot inch inches wide long high tall sloped
fan fans cfm airflow air needed needs need required delivers delivered deliver delivering moving moves measured measure measuring measures
really actually actual getting gets rated rating label carton marked selector setting settings speed speeds
duct ducts ducting flex flexible foil rigid smooth spiral metal pipe elbow elbows bend reducer increaser roof wall cap jack soffit hood damper
louver screen collar compressed squeezed slack stretched run running length maximum limit longest far metres meters
attic sweat sweats sweating condensation condense condensate drip drips insulated insulation uninsulated wrap wrapped bare degrees temperature outside unheated
humidity humid relative exhaust house percent minutes minute seconds hours hour timer fog fogged foggy mirror squeegee wipe
door undercut gap clearance under makeup transfer grille hallway natural draft water heater furnace boiler fireplace fuel burning appliance appliances combustion propane compartment backdraft suction pull pulling range dryer blower
knob box wires wire conductors cables cable ground grounds switch switches device devices clamp clamps inside internal gauge cubic octagon stamped
connectors receptacle dimmer sensor leads plastic gang smallest volume fill single canadian code
bag garbage gallon liter litre test tissue flow grille pressure hole stopwatch empty emptied anemometer
cost costs costing electricity electric year yearly watts therm degree days price energy bill furnace efficient
height heater material materials parts circuit neutral wiring aluminum joists breaker electrician dedicated hours
noisy noise noises rattling buzzing humming grinding squealing leaking dripping loud rattle rattles startup callback complaint smells smell cold blows steam weak stopped squeal hums humming vibrates leaks musty
width widths height opening openings fixture fixtures deep check leakage boiler
what size how much many does will would should with without what's enough drops before after keep leave kept everything tell minimum through
`
  .trim()
  .split(/\s+/);

const known: ReadonlySet<string> = new Set([...tradeWords, ...plainWords, ...numberWords, ...Object.keys(shortForms)]);
const targets: readonly string[] = [...new Set(tradeWords.filter((word) => word.length > 2))];

/** What stands behind a number is most likely its unit. */
const unitWords =
  'inch inches feet foot watt gallon gallons minute minutes second seconds degree degrees percent watts litre litres liter liters metre metres meter meters hours hour cent cents'.split(
    ' ',
  );

/** A unit written without its vowels: "scnds", "cnts", "mnts". */
const withoutVowels = (word: string): string => `${word[0]}${word.slice(1).replace(/[aeiou]/g, '')}`;

/** How many slips of the fingers lie between two words; two letters swapped count as one. */
function slips(word: string, meant: string): number {
  let least = distance(word, meant);
  for (let at = 0; at + 1 < word.length && least > 1; at += 1) {
    const swapped = `${word.slice(0, at)}${word[at + 1]}${word[at]}${word.slice(at + 2)}`;
    least = Math.min(least, 1 + distance(swapped, meant));
  }
  return least;
}

const allowed = (letters: number): number => (letters < 3 ? 0 : letters < 7 ? 1 : 2);

function respelt(word: string, counted: boolean): string {
  const short = Object.hasOwn(shortForms, word) ? shortForms[word] : undefined;
  if (short !== undefined) return short;
  const plain = word.endsWith("'s") ? word.slice(0, -2) : word;
  if (plain.includes("'")) return word;
  if (
    known.has(plain) ||
    (plain.endsWith('s') && known.has(plain.slice(0, -1))) ||
    known.has(`${plain}s`) ||
    stems(plain).some((stem) => known.has(stem)) ||
    plain.length < 3 ||
    plain.length > 20
  )
    return word;
  if (plain.endsWith('in') && stems(`${plain}g`).some((stem) => known.has(stem))) return `${plain}g`;
  const unit =
    counted && plain.length > 3
      ? unitWords.find((meant) => slips(plain, meant) <= 1 || withoutVowels(meant) === plain)
      : undefined;
  if (unit !== undefined) return unit;
  const near = targets
    .filter((meant) => Math.abs(meant.length - plain.length) <= allowed(plain.length))
    .map((meant) => ({
      meant,
      far: single(meant) === single(plain) ? 0.5 : slips(plain, meant),
      head: meant[0] === plain[0] ? 0 : 1,
    }))
    // A word of three letters says too little to swap one of them for another: only a missing or a swapped letter is mended.
    .filter(
      ({ meant, far }) =>
        far <= allowed(plain.length) && (plain.length > 3 || meant.length === 4 || swaps(plain, meant)),
    )
    .filter(({ head, far, meant }) => head === 0 || far <= 1 || swaps(plain.slice(0, 2), meant.slice(0, 2)))
    .sort((one, other) => one.far - other.far || one.head - other.head);
  const [best] = near;
  return best === undefined ? word : best.meant;
}

/** What a word may be made of: "looking" and "stopped" of "look" and "stop". */
function stems(word: string): readonly string[] {
  const [, stem] = /^(.{3,}?)(?:ing|ed|er|ers|est|ly)$/.exec(word) ?? [];
  return stem === undefined ? [] : [stem, `${stem}e`, stem.replace(/(.)\1$/, '$1')];
}

/** With each doubled letter once: to double one, or not to, is the least of slips. */
const single = (word: string): string => word.replace(/(.)\1/g, '$1');

const swaps = (word: string, meant: string): boolean =>
  word.length === meant.length && [...word].sort().join('') === [...meant].sort().join('');

/** A line in lower case with the slips of the fingers mended. Nothing that has a digit in it is touched. */
export const respelled = (line: string): string =>
  line.replace(/(?<![\p{L}\d'])\p{L}[\p{L}']*(?![\p{L}\d])/gu, (word, at: number, whole: string) =>
    respelt(word, /\d[ -]?$/.test(whole.slice(Math.max(0, at - 2), at))),
  );
