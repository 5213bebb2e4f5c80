import type { CallbackFindingId } from '#knowledge/callback-findings.ts';

/** One kind of danger in plain words of both languages, folded to small letters without accents. */
interface Net {
  readonly signs: readonly CallbackFindingId[];
  readonly says: RegExp;
  /** What makes the same words harmless, anywhere in the clause. */
  readonly unless?: RegExp;
}

const burner =
  'boilers?|furnaces?|water heaters?|heaters?|fireplaces?|wood ?stoves?|chimney|flue|calderas?|calentador(?:es)?|chimeneas?|estufas?';
const smokeOfOthers =
  /\b(?:alarms?|detectors?|sensor(?:es)?|alarmas?|detector(?:es)?|cigar\w*|tobacco|tabaco|weed|pot|neighbou?rs?|vecin[oa]s?|next door|pencil|lapiz|bomb|test|prueba)\b/;

/** Wide on purpose: phrases that name a danger in some order of words nobody has listed. A false alarm costs a question. */
const nets: readonly Net[] = [
  {
    signs: ['spill'],
    says: /\b(?:smell\w*|odou?rs?|fumes?|stinks?|huel\w*|oli[ao]\w*|olor\w*|apesta)\b.{0,25}\bgas\b|\bgas\b.{0,15}\b(?:smell\w*|odou?rs?|fumes?|leak\w*|fuga)\b|\bfuga de gas\b/,
    unless: /\b(?:sewer|septic|drain) gas\b/,
  },
  { signs: ['spill'], says: /\bhead ?aches?\b|\bdolor(?:es)? de cabeza\b|\b(?:duele|dolia) la cabeza\b/ },
  {
    signs: ['spill'],
    says: new RegExp(
      `\\b(?:${burner})\\b.{0,30}\\b(?:smok\\w*|humo|humea\\w*)\\b|\\b(?:smoke|humo)\\b.{0,30}\\b(?:${burner})\\b`,
    ),
  },
  {
    // Fire and smoke: everybody out comes before any breaker.
    signs: ['spill', 'smell'],
    says: /\b(?:on fire|caught fire|flames?|smoke|smoking|fuego|incendio|ardiendo|en llamas|humo|humeando)\b/,
    unless: smokeOfOthers,
  },
  {
    signs: ['smell'],
    says: /\b(?:quemad[oa]s?|chamuscad[oa]s?|kemado|plastico (?:caliente|quemado|derretido)|hot plastic|melting plastic|chisp\w*|corto ?circuito|short ?circuit\w*|arc(?:ing|ed|s))\b/,
    unless: /\b(?:foco|bombillo|bombilla|bulb) (?:se )?(?:quem|fund)|\bse (?:quemo|fundio) el foco\b/,
  },
  {
    signs: ['shock'],
    says: /\bh?ormig(?:u?e|u)\w*|\bcosquilleo\b|\b(?:dio|da|dan|dieron) (?:un |unos )?(?:toques?|calambre|corrientazo|descarga)\b|\b(?:pego|pega) (?:la )?(?:luz|corriente)\b|\btingl\w*\b|\belectrocut\w*\b/,
  },
  {
    signs: ['wet-wiring'],
    says: /\b(?:ceiling|drywall|plaster)\b.{0,20}\b(?:sag\w*|bulg\w*|bow(?:s|ed|ing))\b|\b(?:sag\w*|bulg\w*) (?:wet )?ceiling\b|\b(?:cielo raso|cielo|techo|plafon|tablaroca)\b.{0,20}\b(?:abomb\w*|pande\w*|colg\w*|infl\w*)\b/,
  },
];

/** Something that smelled burnt and does so no more is as grave as one that still does. */
const burntBefore =
  /\b(?:ya no|no longer|not any ?more|used to|antes|ayer|anoche|yesterday|last night|stopped|went away|se quito|ya paso|earlier)\b/;
const burnt = /\b(?:burn(?:t|ed|ing|s)?|scorch\w*|quemad[oa]s?|chamuscad[oa]s?|kemado)\b/;

const denial =
  /\b(?:no|not|never|without|none|neither|nor|isn t|doesn t|don t|didn t|sin|ni|nunca|tampoco|ningun[oa]?)\b/;

const folded = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[’'`-]/g, ' ')
    .replace(/[^\p{L}\p{N}.,;!?\s]/gu, ' ')
    .replace(/ {2,}/g, ' ');

/** The dangers a line tells in words of any order, clause by clause; one that is denied in its clause is not told. */
export function dangersCaught(line: string): ReadonlySet<CallbackFindingId> {
  const clauses = folded(line.slice(0, 2000)).split(/[.,;!?\n]+| (?:but|pero|and|y) /);
  const found = new Set<CallbackFindingId>();
  for (const clause of clauses) {
    for (const { signs, says, unless } of nets) {
      const at = clause.search(says);
      if (at < 0 || unless?.test(clause) || denial.test(clause.slice(0, at))) continue;
      for (const sign of signs) found.add(sign);
    }
  }
  const whole = folded(line.slice(0, 2000));
  if (burnt.test(whole) && burntBefore.test(whole)) found.add('smell');
  return found;
}

/** Somebody hurt, or a conductor that is live though it should be dead: no question about a fan comes before that. */
export function emergencyIn(line: string): 'hurt' | 'live' | undefined {
  const said = folded(line.slice(0, 2000));
  if (
    /\b(?:fell|fall(?:en)?|cai|cayo|caido)\b.{0,25}\b(?:ladder|attic|roof|ceiling|stairs|escalera|atico|techo|tejado)\b|\b(?:unconscious|not breathing|bleeding|passed out|broke (?:a|an|his|her|my) (?:arm|leg|back)|no respira|sangr\w*|inconsciente|se desmayo)\b/.test(
      said,
    )
  )
    return 'hurt';
  const tool =
    'tester|meter|probe|detector|probador|multimetro|wires?|cables?|alambres?|box|caja|switch|apagador|fan|extractor|ventilador|abanico|breaker';
  const off = '(?:breaker|power|switch|disyuntor|luz|corriente|pastilla|taco)';
  if (
    /\b(?:still|todavia|aun|sigue|siguen)\b.{0,30}\b(?:hot|live|energi[sz]ed|power|voltage|voltios?|corriente|viv[oa]s?|energizad[oa]s?|prendid[oa]|prende|marca|reads?|120|240)\b.{0,40}/.test(
      said,
    ) &&
    new RegExp(`\\b(?:${tool})\\b`).test(said) &&
    new RegExp(
      `\\b${off}\\b.{0,20}\\b(?:off|apagad[oa]|bajad[oa])\\b|\\b(?:corte|baje|apague|turned off|shut off|killed)\\b|\\b(?:corriente|live|hot|viv[oa]s)\\b`,
    ).test(said)
  )
    return 'live';
  if (
    /\b(?:breaker|disyuntor|power)\b.{0,25}\b(?:tester|probador|meter|multimetro)\b.{0,20}\b(?:marca|reads?|shows?|prende)\b/.test(
      said,
    )
  )
    return 'live';
  if (/\b(?:wires?|cables?|alambres?)\b.{0,15}\b(?:live|viv[oa]s?|energizad[oa]s?)\b/.test(said)) return 'live';
  return undefined;
}
