/** The program cannot start or go on as it was asked to. The message is one plain sentence for whoever started it. */
export class StartTrouble extends Error {
  override readonly name = 'StartTrouble';
}
