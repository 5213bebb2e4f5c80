import {
  type CanadianBoxFillInput,
  type CanadianGauge,
  canadianBoxFill,
} from '#engine/electrical/canadian-box-fill.ts';
import { type Gauge, thickest } from '#engine/electrical/gauge.ts';
import { canadianBoxFillRules, canadianBoxRules, canadianConductorVolumes } from '#knowledge/canadian-box-rules.ts';
import { cite } from '#knowledge/sources.ts';
import { fromSi, toSi } from '#quantity/unit-factors.ts';
import { type CubicInches, type CubicMetres, cubicInches, cubicMetres, metres } from '#quantity/units.ts';
import { insulatedIn, type WireList } from '../questions/wire-list-reading.ts';
import type { BoxCount, BoxInputs } from './box-inputs.ts';

const inCubicInches = (volume: CubicMetres): CubicInches => cubicInches(fromSi(volume, 'in^3', 'm^3'));

const tidy = (value: number): number => Number(value.toFixed(4));

/** Millilitres for each centimetre of depth, as printed. */
const spacePerDepth = tidy(canadianBoxFillRules.deepDevice.spacePerDepth * 1e4);

/** The Canadian table begins at 14 AWG; a thinner wire is counted at that, the careful way. */
const listedSize = (awg: Gauge): CanadianGauge => (awg === 18 || awg === 16 ? 14 : awg);

const lineWords: Readonly<Record<string, readonly [words: string, rule: keyof typeof canadianBoxRules]>> = {
  'spliced-or-terminated': ['Wires ending here', 'conductor'],
  through: ['Wires running through', 'conductor'],
  pigtail: ['Pigtails', 'pigtail'],
  'fixture-wire': ['Leads of the fan or light', 'fixture-wire'],
  connectors: ['Wire connectors, by pairs', 'connectors'],
  devices: ['Switches, timers, receptacles', 'device'],
  'deep-devices': ['Deep switches or timers, by depth', 'deep-device'],
  stud: ['Fixture stud', 'support-fitting'],
  hickey: ['Hickey', 'support-fitting'],
};

/** A long loop is counted as two wires running through: the rule does not name it, and this is the careful reading. */
function contentsOf(inputs: BoxInputs): CanadianBoxFillInput {
  const kind = (list: WireList, as: 'spliced-or-terminated' | 'through' | 'pigtail', times = 1) =>
    insulatedIn(list).map(({ count, awg }) => ({ count: count * times, awg: listedSize(awg), kind: as }));
  const leads = insulatedIn(inputs.fixtureWires);
  const connectors = insulatedIn(inputs.connectors);
  return {
    conductors: [
      ...kind(inputs.conductors, 'spliced-or-terminated'),
      ...kind({ wires: leads.filter(({ awg }) => awg <= 14), cables: [] }, 'spliced-or-terminated'),
      ...kind(inputs.passThrough, 'through'),
      ...kind(inputs.loops, 'through', 2),
      ...kind(inputs.pigtails, 'pigtail'),
    ],
    fixtureWires: {
      count: leads.filter(({ awg }) => awg > 14).reduce((sum, { count }) => sum + count, 0),
      lightOnThisBox: inputs.serves === 'light',
    },
    supportFittings: inputs.supportFittings,
    insulatedConnectors: {
      count: connectors.reduce((sum, { count }) => sum + count, 0),
      largestAwg: listedSize(thickest(connectors.map(({ awg }) => awg)) ?? 14),
    },
    devices: inputs.devices.map(({ count, gangs }) => ({
      count: count * gangs,
      depth: inputs.deviceDepth ?? metres(0),
    })),
  };
}

/** Box fill by the Canadian code, told in the cubic inches the boxes are marked with. */
export function canadianCount(inputs: BoxInputs): BoxCount {
  const fill = canadianBoxFill(contentsOf(inputs), canadianBoxFillRules);
  return {
    edition: 'canada',
    editionKnown: true,
    lines: fill.lines.map(({ what, count, conductors, total }) => {
      const [words, rule] = lineWords[what] ?? [what, 'conductor'];
      return {
        what: words,
        count,
        allowances: conductors,
        each: inCubicInches(cubicMetres(conductors === 0 ? total : total / conductors)),
        total: inCubicInches(total),
        ...(what === 'deep-devices'
          ? { how: `${count} × ${tidy((inputs.deviceDepth ?? 0) * 100)} cm × ${spacePerDepth} mL` }
          : {}),
        rule: cite(canadianBoxRules[rule]),
      };
    }),
    needed: inCubicInches(fill.needed),
    freeSpace(awg) {
      const volume = canadianConductorVolumes[`awg-${listedSize(awg)}`];
      return { volume: inCubicInches(volume.freeSpace), citation: cite(volume) };
    },
    canopyRefused: inputs.canopy && inputs.serves === 'fan',
    printed: { unit: 'mL', of: (volume) => toSi(volume, 'in^3', 'cm^3') },
  };
}
