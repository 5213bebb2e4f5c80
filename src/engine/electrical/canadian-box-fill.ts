import { within } from '#quantity/meets.ts';
import { type CubicMetres, cubicMetres, type Metres, type SquareMetres } from '#quantity/units.ts';
import type { SupportFitting } from './box-contents.ts';
import { thickest } from './gauge.ts';

/** The wire sizes of the Canadian table. Thinner fixture wires are counted at the thinnest of these when they count. */
export type CanadianGauge = 14 | 12 | 10 | 8 | 6;

export interface CanadianConductors {
  readonly count: number;
  readonly awg: CanadianGauge;
  readonly kind: 'spliced-or-terminated' | 'through' | 'pigtail';
}

/** One box and what is in it. Bare and bonding wires and cable clamps are not asked for: that code does not count them. */
export interface CanadianBoxFillInput {
  /** Marked or listed volume; absent when nobody knows it. */
  readonly volume?: CubicMetres;
  readonly conductors: readonly CanadianConductors[];
  /** 18 and 16 AWG leads, which are left out only when they feed a light mounted on this very box. */
  readonly fixtureWires: { readonly count: number; readonly lightOnThisBox: boolean };
  readonly supportFittings: readonly SupportFitting[];
  readonly insulatedConnectors: { readonly count: number; readonly largestAwg: CanadianGauge };
  /** Flush devices, each on one strap, with their depth behind the strap and the thickest wire landed on them. */
  readonly devices: readonly {
    readonly count: number;
    readonly depth: Metres;
    readonly largestAwg?: CanadianGauge;
  }[];
}

export interface CanadianBoxRules {
  readonly freeSpace: Readonly<Record<CanadianGauge, CubicMetres>>;
  /** How many connectors make one conductor. */
  readonly connectorsPerConductor: number;
  readonly conductorsPerDevice: number;
  readonly conductorsPerFitting: number;
  /** A device deeper than this takes room by its depth instead of by conductors. */
  readonly deepDevice: { readonly deeperThan: Metres; readonly spacePerDepth: SquareMetres };
}

interface CanadianFillLine {
  readonly what:
    | CanadianConductors['kind']
    | 'fixture-wire'
    | 'connectors'
    | 'devices'
    | 'deep-devices'
    | SupportFitting;
  readonly count: number;
  /** Conductors this line stands for. */
  readonly conductors: number;
  readonly total: CubicMetres;
}

export interface CanadianBoxFill {
  readonly lines: readonly CanadianFillLine[];
  readonly needed: CubicMetres;
  readonly room:
    | { readonly known: true; readonly available: CubicMetres; readonly left: CubicMetres; readonly fits: boolean }
    | { readonly known: false };
}

/**
 * The room that everything in a box needs under the Canadian code, which counts otherwise than the American one.
 *
 * needed = Σ conductors × free space + Σ deep devices × depth × space per depth
 *
 * A wire running through is one; pigtails none; every full pair of insulated connectors one, of the thickest wire under
 * them; studs and hickeys one each and devices two each, of the thickest wire in the box. A deep device is charged by its
 * depth instead. Volumes in m³; the table is printed in millilitres. For 14 to 6 AWG.
 *
 * @source CSA C22.1 (Canadian Electrical Code, Part I), rule 12-3034 and table 22
 */
export function canadianBoxFill(input: CanadianBoxFillInput, rules: CanadianBoxRules): CanadianBoxFill {
  const line = (
    what: CanadianFillLine['what'],
    awg: CanadianGauge,
    { count, conductors }: { count: number; conductors: number },
  ): CanadianFillLine => ({ what, count, conductors, total: cubicMetres(conductors * rules.freeSpace[awg]) });

  const present = [...input.conductors.map(({ count, awg }) => ({ count, largestAwg: awg })), ...input.devices].flatMap(
    ({ count, largestAwg }) => (count > 0 && largestAwg !== undefined ? [largestAwg] : []),
  );
  const thickestInBox = thickest(present) ?? 14;
  const { fixtureWires, insulatedConnectors } = input;
  const counted = fixtureWires.lightOnThisBox ? 0 : fixtureWires.count;
  const pairs = Math.floor(insulatedConnectors.count / rules.connectorsPerConductor);
  const lines = [
    ...input.conductors.map(({ kind, awg, count }) =>
      line(kind, awg, { count, conductors: kind === 'pigtail' ? 0 : count }),
    ),
    line('fixture-wire', 14, { count: fixtureWires.count, conductors: counted }),
    ...[...new Set(input.supportFittings)].map((fitting) => {
      const count = input.supportFittings.filter((other) => other === fitting).length;
      return line(fitting, thickestInBox, { count, conductors: count * rules.conductorsPerFitting });
    }),
    line('connectors', insulatedConnectors.largestAwg, { count: insulatedConnectors.count, conductors: pairs }),
    ...input.devices.map(({ count, depth }): CanadianFillLine => {
      const { deeperThan, spacePerDepth } = rules.deepDevice;
      return depth > deeperThan
        ? { what: 'deep-devices', count, conductors: 0, total: cubicMetres(count * depth * spacePerDepth) }
        : line('devices', thickestInBox, { count, conductors: count * rules.conductorsPerDevice });
    }),
  ].filter(({ count }) => count > 0);
  const needed = cubicMetres(lines.reduce((sum, { total }) => sum + total, 0));
  const { volume } = input;
  return {
    lines,
    needed,
    room:
      volume === undefined
        ? { known: false }
        : { known: true, available: volume, left: cubicMetres(volume - needed), fits: within(needed, volume) },
  };
}
