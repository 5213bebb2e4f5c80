import { distance } from 'fastest-levenshtein';

/** Short forms and slips too short or too far off to be found by their letters. */
const shortForms: Readonly<Record<string, string>> = {
  bth: 'bath',
  bthrm: 'bathroom',
  bathrm: 'bathroom',
  bdrm: 'bedroom',
  rm: 'room',
  ba: 'bath',
  clg: 'ceiling',
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
  ani: 'any',
  wid: 'with',
  gvo: 'go',
  mn: 'min',
  mns: 'min',
  mnt: 'min',
  yr: 'year',
  yrs: 'years',
  thru: 'through',
  enuf: 'enough',
  wat: 'what',
  wats: 'watts',
  u: 'you',
  lng: 'long',
  fr: 'for',
  hw: 'how',
  hwo: 'how',
  nede: 'need',
  undr: 'under',
  clnce: 'clearance',
  resi: 'residential',
  cheep: 'cheap',
  kichen: 'kitchen',
  fogy: 'foggy',
  noisey: 'noisy',
  lowd: 'loud',
};

/** The words of the trade and of asking: what a slip of the fingers most likely meant. */
const tradeWords = `
bath bathroom room ceiling toilet shower showers jetted steam tub separate square feet foot inch inches wide long high tall sloped
fan fans cfm airflow air needed needs need required delivers delivered deliver delivering moving moves measured measure measuring measures
really actually actual getting gets rated rating label carton marked selector setting settings speed speeds
duct ducts ducting flex flexible foil rigid smooth spiral metal pipe elbow elbows bend reducer increaser roof wall cap jack soffit hood damper
louver screen collar compressed squeezed slack stretched run running length maximum limit longest far metres meters
attic sweat sweats sweating condensation condense condensate drip drips insulated insulation uninsulated wrap wrapped bare degrees temperature outside unheated
humidity humid relative exhaust house percent minutes minute seconds hours hour timer fog fogged foggy mirror squeegee wipe
door undercut gap clearance under makeup transfer grille hallway natural draft water heater furnace fireplace backdraft suction pull pulling range dryer blower
box wires wire conductors cables cable ground grounds switch switches device devices clamp clamps inside internal gauge cubic octagon stamped
connectors receptacle dimmer sensor leads plastic gang smallest volume fill single canadian code
bag garbage gallon liter litre test tissue flow grille pressure hole stopwatch empty emptied anemometer
cost costs costing electricity electric year yearly watts therm degree days price energy bill furnace efficient
noisy loud rattle rattles startup callback complaint smells smell cold blows steam weak stopped squeal hums humming vibrates leaks musty
what size how much many does will would should with without what's enough drops before after keep leave kept everything tell minimum through
`
  .trim()
  .split(/\s+/);

/** Common words that are near a word of the trade and are not one of its slips. */
const plainWords = `
well feel feed fell fall call tall ball mall hall full fully fuel fool told hold cold cool could good food wood mood door floor poor pool tool
than that then them they this there these those their where were here have has had been being from when while which who whom whose why
just like likes look looks make makes made take takes took taken give gives given goes going gone come comes came back both best rest next last
past part parts party port sort short shirt shot shop show shows shown slow low own down town and any all are ask but can did for get got her him his
its let may new nor not now off old one our out own per put ran saw say see set she sir six ten the too try two use via was way yes yet you your
bad bit big bill call case cast cost dont doing done each easy else even ever every few find fine fits first four free gets guess guys hard head help hour idea into job keep kept kind
know late later least left less line list live load local lost lots main master match mean means might mind more most move much must name near never nice night
number okay once only open order other over page people piece plan please point pretty put quick quite rate read ready real right
said same says seems sell sent side since sits size some soon spot still such sure swap swear takes talk team tell tenant tends thanks thing think third tight time tiny today
told tomorrow top total trick true turn type unit until upstairs upper used using usual very view wait walk want wants warm wash week went west what wide wife window winter wire wish wonder
word work works world worse worth wrong year years yet ideas happy unhappy sensible steady stay stays shaft share shared shelf stall stable start started state step stick stop store story
story strong stuff style summer sun super swears table neighbor neighbour cooking condo board somebody someone customer customers builder inspector owner whenever nobody leaving punch monster
hoping fatter bigger smaller honest honestly across around about above below between behind along against almost already also always another because believe better
basically carpet supposed enough either ends end enter exact except existing extra face fact fair family fast field flat flue folks forget form found front gave
lead leads light lights lot maid mate most mould needed noise north notice opened pack paid pain paper pass path pick picked place plain plus pulls push pushes quiet rain
ran rest rises safe save school seal sealed second series serve sheet ship sign simple sink site slopes small snow sold south space stand stays suit supply surface
tape task tech test tile tiles today tone toward trim truck trunk twice unless upon vent vents vented waste weather whole within wont worry write yard zero heads morning
crew scrunched maybe thirty forty fifty loss lose lower lets latch lift leak leaks meets meet mess mile mine mini miss moist month wet
flat float flame flash fresh fridge frame gate gas gets glass grab great green grey guest guide happen heat heats heated height hello holds hose hot hung hurt ice
keeps key kid kids kit knob knew landing large laundry law layer lean learn house houses mouse rule rules rude ripe rope role cup cut cat car cop tap map lap gap nap rap
hat had bat mat pat rat sat fat eat tea sea jam ham ram bag beg bog bug fun fin ban man pan tan van wan can den men pen hen boy toy joy buy guy lay pay ray
during around allowed happens actual goes sits house's says they've sounds reaches average bottom closer closest code codes coming compare compared correct double drawn drive else's equal favor grill grilled guessing handle horizontal vertical kinda lately mostly nights oven paint panel pretty quote replaced replacing return returns second self sense short shorter single sitting sloped slopes smart smooth straight swapped trying turning twelve under venting vertical waiting walls wires works dryers wetter drier days dry sags sag tube cube cubes tubes pulls hears sees tried cheap neat seat beat meat deep depth sharp share
`
  .trim()
  .split(/\s+/);

const known: ReadonlySet<string> = new Set([...tradeWords, ...plainWords, ...Object.keys(shortForms)]);
const targets: readonly string[] = [...new Set(tradeWords.filter((word) => word.length > 2))];

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

function respelt(word: string): string {
  const short = Object.hasOwn(shortForms, word) ? shortForms[word] : undefined;
  if (short !== undefined) return short;
  const plain = word.endsWith("'s") ? word.slice(0, -2) : word;
  if (plain.includes("'")) return word;
  if (
    known.has(plain) ||
    (plain.endsWith('s') && known.has(plain.slice(0, -1))) ||
    plain.length < 3 ||
    plain.length > 20
  )
    return word;
  const near = targets
    .filter((meant) => Math.abs(meant.length - plain.length) <= allowed(plain.length))
    .map((meant) => ({ meant, far: slips(plain, meant), head: meant[0] === plain[0] ? 0 : 1 }))
    // A word of three letters says too little to swap one of them for another: only a missing or a swapped letter is mended.
    .filter(
      ({ meant, far }) =>
        far <= allowed(plain.length) && (plain.length > 3 || meant.length === 4 || swaps(plain, meant)),
    )
    .filter(({ head, far, meant }) => head === 0 || far === 1 || swaps(plain.slice(0, 2), meant.slice(0, 2)))
    .sort((one, other) => one.far - other.far || one.head - other.head);
  const [best] = near;
  return best === undefined ? word : best.meant;
}

const swaps = (word: string, meant: string): boolean =>
  word.length === meant.length && [...word].sort().join('') === [...meant].sort().join('');

/** A line in lower case with the slips of the fingers mended. Nothing that has a digit in it is touched. */
export const respelled = (line: string): string =>
  line.replace(/(?<![\p{L}\d'])\p{L}[\p{L}']*(?![\p{L}\d])/gu, (word) => respelt(word));
