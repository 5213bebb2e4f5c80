/** What a line says of a carbon monoxide alarm that is no alarm. */
export interface AlarmSpokenOf {
  /** The line without the words that only say that there is one, or none. */
  readonly rest: string;
  /** It chirps: a low battery or the end of its life most often, and nobody knows which from afar. */
  readonly chirps: boolean;
}

const alarm =
  '(?:(?:co|carbon monoxide|monoxide|smoke and co) (?:alarms?|detectors?|sensors?)|(?:alarmas?|detector(?:es)?|sensor(?:es)?) de (?:co|monoxido(?: de carbono)?))';
const place =
  '(?: (?:in|on|at|by|near|outside|next to|en|por|junto a|afuera de|cerca de) (?:(?:the|each|every|his|her|their|our|el|la|los|las|cada|su) )?(?:upstairs |downstairs |living |front |back |furnace |boiler |utility )?(?:hall|hallway|landing|bedrooms?|kitchen|basement|room|floor|ceiling|wall|corridor|garage|house|home|stairs|bath|bathroom|door|pasillo|cocina|sala|recamaras?|cuartos?|dormitorios?|sotano|casa|pared|techo|escalera|cochera|bano|puerta))*';
const somebody = '(?:i|we|they|he|she|you|the house|the customer|house|customer|the apartment|la casa|el cliente)';

/** Whole clauses that say only that an alarm is there, or that none is, or ask whether one is wanted. */
const presence = [
  `(?:there is|there s|there are|theres) (?:already )?(?:a|an|one|two|no|also a)?(?: (?:working|tested|new|good|fitted))* ?${alarm}(?: (?:fitted|installed|mounted|there|too))?${place}`,
  `(?:${somebody} )?(?:has|have|had|got|ve got|has got|does not have|do not have|doesn t have|don t have) (?:a|an|one|two|no)?(?: (?:working|tested|new|good))* ?${alarm}(?: (?:fitted|installed|mounted))?${place}`,
  `(?:do|does|should) ${somebody} (?:need|have to have|want) (?:a|an|the) ${alarm}${place}`,
  `(?:is|are) (?:a|an|the)? ?${alarm} (?:needed|required|fitted|installed)${place}`,
  `(?:si |ya |tambien )*(?:no )?(?:hay|tenemos|tiene|tienen|tengo) (?:una?|dos|unas|unos)? ?${alarm}(?: (?:instalad[ao]|nuev[ao]|probad[ao]))?${place}`,
].map((clause) => new RegExp(`^(?:(?:and|but|also|y|pero) )?${clause}$`));

/** Whatever an alarm does. Where one of these stands anywhere in the line, an alarm named in it is one that went off. */
const active =
  /\b(?:off|(?:came|comes|coming|is|lights?|stay|stays|turned) on|sound\w*|beep\w*|bip\w*|ring\w*|rang|chirp\w*|scream\w*|blar\w*|blast\w*|trigger\w*|trips?|tripp\w*|activat\w*|alert\w*|alarm(?:ed|ing)|flash\w*|ppm|reads?|reading|shows?|says?|said|again|keeps?|kept|woke|wakes|evacuat\w*|suena\w*|sono|sonando|sonaron|pit(?:a|an|o|ando|ido|idos)|chill\w*|dispar\w*|activ[ao]\w*|avis\w*|marca\w*|prend\w*|otra vez|desperto)\b/;

const chirping =
  /\bchirp\w*\b|\bchirria\w*\b|\b(?:pita|pitido|bip|beeps?) (?:una vez )?(?:cada|every|once (?:a|every)|una vez por) (?:(?:\d+|few|rato|tanto|couple of|unos|pocos) ?)*(?:seconds?|secs?|minutes?|mins?|segundos?|minutos?|rato|tanto)?/;
/** Louder than a chirp, or more of them: what it does in earnest. */
const earnest =
  /\b(?:going off|goes off|went off|sound\w*|ring\w*|rang|scream\w*|blar\w*|trigger\w*|alarm(?:ed|ing)|constant\w*|continuous\w*|non ?stop|loud\w*|(?:four|4|five|5) (?:beeps?|chirps?|times)|suena\w*|sono|sonando|no para|sin parar|fuerte|(?:cuatro|4) (?:pitidos|veces))\b/;

const folded = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** Sorts what a line says of an alarm: one that only hangs there from one that chirps and from one that went off. */
export function alarmSpokenOf(line: string): AlarmSpokenOf {
  const said = folded(line.slice(0, 2000));
  if (!new RegExp(`\\b${alarm}\\b`).test(said)) return { rest: line, chirps: false };
  const clauses = line.split(/([.,;!?\n]+)/);
  const isChirp = (clause: string) => chirping.test(clause) && !earnest.test(said);
  if (isChirp(said)) {
    // Everything but the alarm and its chirp is heard as before: somebody ill beside it is somebody ill.
    const about = new RegExp(`\\b${alarm}\\b|${chirping.source}`, 'g');
    const rest = clauses.map((clause) => (folded(clause).match(about) ? folded(clause).replace(about, ' ') : clause));
    return { rest: rest.join(''), chirps: true };
  }
  if (active.test(said)) return { rest: line, chirps: false };
  const rest = clauses.filter((clause) => !presence.some((pattern) => pattern.test(folded(clause)))).join('');
  return { rest, chirps: false };
}
