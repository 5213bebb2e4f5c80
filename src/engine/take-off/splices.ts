/** What is joined in the boxes: each group of wires under one connector is a splice. */
export interface SpliceCount {
  readonly splices: number;
  /** Connectors carried over and above, for the ones that drop into the insulation. */
  readonly spare: number;
}

/**
 * The wire connectors to bring.
 *
 * n = splices + spare;  none when nothing is spliced
 *
 * @source common practice, no source
 */
export function wireConnectors({ splices, spare }: SpliceCount): number {
  return splices === 0 ? 0 : splices + spare;
}
