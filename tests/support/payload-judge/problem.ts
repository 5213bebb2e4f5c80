/** Which reader of the payload objected. */
type Objector =
  /** The schemas of the package `discord-api-spec`. */
  | 'schema'
  /** The platform's own OpenAPI description, where a copy of it is at hand. */
  | 'description'
  /** A limit the platform documents in words only. */
  | 'limit'
  /** A rule of this project that the platform does not share. */
  | 'house';

/** Something wrong with a payload the bot sent. */
export interface Problem {
  /** Where, as keys joined by dots: `data.components.0.components.1.custom_id`. Empty for the payload as a whole. */
  readonly at: string;
  /** What is wrong and what would be right. */
  readonly says: string;
  readonly by: Objector;
  /** Whether the platform would refuse the payload. When false it accepts it and the crew sees something else than meant. */
  readonly refused: boolean;
  /** The platform's own error number, where it has one of its own for this. */
  readonly code?: number;
}

type Where = string | number;

/** Joins keys to the place they lead to, skipping empty ones. */
export const place = (...keys: readonly Where[]): string => keys.filter((key) => key !== '').join('.');

/** A payload the platform refuses for a limit that no schema states. */
export const overLimit = (at: string, says: string): Problem => ({ at, says, by: 'limit', refused: true });

/** A payload the platform accepts and then shows otherwise than meant. */
export const lostOnArrival = (at: string, says: string): Problem => ({ at, says, by: 'limit', refused: false });

/** A payload the platform accepts and this project does not. */
export const againstHouseRules = (at: string, says: string): Problem => ({ at, says, by: 'house', refused: false });

/** One line for a person reading a failed test. */
export const asLine = ({ at, says, by, refused }: Problem): string =>
  `${at || '(whole payload)'}: ${says} [${by}${refused ? '' : ', not refused by the platform'}]`;
