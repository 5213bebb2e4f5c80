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
import { groundsCounted } from './box-grounds.ts';
import type { BoxCount, BoxInputs, CountLine } from './box-inputs.ts';

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
    devices: inputs.devices.map(({ count, gangs, awg }) => ({
      count: count * gangs,
      largestAwg: listedSize(awg),
      depth: inputs.deviceDepth ?? metres(0),
    })),
  };
}

const freeSpaceOf = (awg: Gauge) => canadianConductorVolumes[`awg-${listedSize(awg)}`];

/** What that code counts for nothing, told all the same, and the terminal blocks, which it does not name. */
function unnamedLines({ internalClamps, terminalBlocks, ...inputs }: BoxInputs): readonly CountLine[] {
  const grounds = groundsCounted(inputs).count;
  const nothing = (what: string, count: number): CountLine => ({
    what,
    count,
    allowances: 0,
    each: cubicInches(0),
    total: cubicInches(0),
    rule: cite(canadianBoxRules['bare-wire']),
  });
  return [
    ...terminalBlocks.wires.map(({ count, awg }): CountLine => {
      const each = inCubicInches(freeSpaceOf(awg).freeSpace);
      const rule = canadianBoxRules['terminal-block'];
      const allowances = count * rule.conductors;
      return {
        what: 'Terminal blocks',
        count,
        allowances,
        each,
        total: cubicInches(allowances * each),
        rule: cite(rule),
      };
    }),
    ...(grounds > 0 ? [nothing('Ground wires', grounds)] : []),
    ...(internalClamps ? [nothing('Clamps inside', 1)] : []),
  ];
}

/** Box fill by the Canadian code, told in the cubic inches the boxes are marked with. */
export function canadianCount(inputs: BoxInputs): BoxCount {
  const fill = canadianBoxFill(contentsOf(inputs), canadianBoxFillRules);
  const named = fill.lines.map(({ what, count, conductors, total }): CountLine => {
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
  });
  const unnamed = unnamedLines(inputs);
  return {
    edition: 'canada',
    editionKnown: true,
    lines: [...named, ...unnamed],
    needed: cubicInches(unnamed.reduce((sum, { total }) => sum + total, inCubicInches(fill.needed) as number)),
    freeSpace(awg) {
      const volume = freeSpaceOf(awg);
      return { volume: inCubicInches(volume.freeSpace), citation: cite(volume) };
    },
    printed: { unit: 'mL', of: (volume) => toSi(volume, 'in^3', 'cm^3') },
  };
}
