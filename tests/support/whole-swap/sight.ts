/** One thing a form asks for. */
export interface Asked {
  /** The id the answer goes under. */
  readonly id: string;
  readonly label: string;
  /** What it takes, as it is told to whoever fills it in. */
  readonly accepts: string;
  /** Labels of the choices, where it is picked. */
  readonly choices: readonly string[];
  readonly optional: boolean;
}

/** What one person sees after doing something, whatever it is shown on. */
export interface Sight {
  readonly headline: string;
  /** All that can be read. */
  readonly text: string;
  /** Labels of what can be pressed. */
  readonly presses: readonly string[];
  /** The form it opened, if it did. */
  readonly form?: readonly Asked[];
  /** Nothing was done, and the text says why. */
  readonly refused: boolean;
}

/** Where a list is walked: a server, a terminal, or the desk behind both. Everything resolves once it is acknowledged. */
export interface Place<Seen extends Sight = Sight> {
  /** `swap next`, with these options. */
  type(who: string, words: string, given?: Readonly<Record<string, string>>): Promise<Seen>;
  press(who: string, on: Seen, label: string): Promise<Seen>;
  /** Fills in and sends a form. A photo is named; the place sends one of that name. */
  fill(who: string, on: Seen, values: Readonly<Record<string, string>>): Promise<Seen>;
}
