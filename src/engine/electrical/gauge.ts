/** The wire sizes box fill is figured for, thinnest first, in American Wire Gauge: the smaller the number, the thicker the wire. */
export const gauges = [18, 16, 14, 12, 10, 8, 6] as const;
export type Gauge = (typeof gauges)[number];

/**
 * Whether a wire size is one that is figured by free space for each wire. Thicker wire, 4 AWG and up, is sized another way.
 *
 * @source NFPA 70 (National Electrical Code), 314.16 and 314.28
 */
export function isGauge(awg: number): awg is Gauge {
  return gauges.some((gauge) => gauge === awg);
}

/**
 * The thickest of some wires: the one with the smallest gauge number. Nothing when there are no wires.
 *
 * @source own working
 */
export function thickest<Size extends Gauge>(wires: readonly Size[]): Size | undefined {
  return wires.toSorted((a, b) => a - b)[0];
}
