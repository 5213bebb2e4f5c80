import type { GrilleReadings } from '#engine/measuring/measured-airflow.ts';
import type { Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { fieldMethods, methodTrust } from '#knowledge/field-methods.ts';
import type { Citation } from '#knowledge/sources.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { airflow, airSpeed, openingArea, percentage } from '#quantity/kinds.ts';
import { fromSi } from '#quantity/unit-factors.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, metresPerSecond, ratio } from '#quantity/units.ts';
import { fineFlow } from './fine.ts';

/** The publication each method follows. */
export const methodCitations: Readonly<Record<GrilleReadings['method'], Citation>> = {
  bag: airflowMethods['timed-bag'].citation,
  box: airflowMethods['flow-box'].citation,
  traverse: airflowMethods['grille-traverse'].citation,
  hood: airflowMethods['flow-hood'].citation,
};

const figures = (value: number, count = 5): string => Number(value.toPrecision(count)).toString();
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const meanSum = (values: readonly number[]): string =>
  values.length === 1 ? '' : `(${values.map((each) => figures(each, 4)).join(' + ')}) ÷ ${values.length}`;

const meanStep = (what: string, values: readonly number[], value: string): Step => {
  const how = meanSum(values);
  return { what, ...(how === '' ? {} : { how }), value };
};

/** From the readings to the airflow and its band, line by line. */
export function measuringSteps(
  readings: GrilleReadings,
  measured: Estimate<CubicMetresPerSecond>,
  units: UnitSystem,
): Step[] {
  const band: Step = {
    what: 'Band of the method',
    value: `${fineFlow(measured.low, units)} to ${fineFlow(measured.high, units)}`,
  };
  switch (readings.method) {
    case 'bag':
      return [...bagSteps(readings, measured, units), band];
    case 'box':
      return [...boxSteps(readings, measured, units), band];
    case 'traverse':
      return [...traverseSteps(readings, measured, units), band];
    case 'hood':
      return [...hoodSteps(readings, measured, units), band];
  }
}

type Of<Method extends GrilleReadings['method']> = Extract<GrilleReadings, { method: Method }>;

function bagSteps({ volume, times }: Of<'bag'>, measured: Estimate<CubicMetresPerSecond>, units: UnitSystem): Step[] {
  const time = mean(times);
  const { reaction, fullness } = fieldMethods.bag;
  const spread =
    times.length < 2
      ? 0
      : 2 * Math.sqrt(times.reduce((sum, each) => sum + (each - time) ** 2, 0) / (times.length - 1) / times.length);
  const off = Math.hypot(reaction.value, spread);
  const metric = units === 'metric';
  const held = (cubic: number) =>
    metric ? `${figures(cubic * 1000)} L` : `${figures(fromSi(cubic, 'ft^3', 'm^3'))} cu ft`;
  const over = (cubic: number, seconds: number) =>
    metric ? `${held(cubic)} ÷ ${figures(seconds)} s` : `60 × ${held(cubic)} ÷ ${figures(seconds)} s`;
  return [
    meanStep('Mean time', times, `${figures(time)} s`),
    { what: 'Volume of the full bag', value: held(volume.typical) },
    {
      what: 'Airflow',
      how: over(volume.typical, time),
      value: fineFlow(measured.typical, units),
      source: methodCitations.bag,
    },
    {
      what: 'How far the mean time may be off: the watch, and twice the scatter of the readings',
      how: `√(${reaction.value}² + ${figures(spread, 3)}²)`,
      value: `${figures(off, 3)} s`,
      source: reaction.citation,
    },
    {
      what: `At least: bag only ${percentage.showShort(fullness.estimate.low, units)} full and the time that much longer`,
      how: over(volume.low, time + off),
      value: fineFlow(measured.low, units),
      source: fullness.citation,
    },
    {
      what: `At most: bag ${percentage.showShort(fullness.estimate.high, units)} full and the time that much shorter`,
      how: over(volume.high, time - off),
      value: fineFlow(measured.high, units),
      source: fullness.citation,
    },
  ];
}

function boxSteps(
  { opening, pressures }: Of<'box'>,
  measured: Estimate<CubicMetresPerSecond>,
  units: UnitSystem,
): Step[] {
  const pressure = mean(pressures);
  const { constant, error, gauge } = fieldMethods.box;
  const off = Math.max(gauge.least, gauge.share * pressure);
  const metric = units === 'metric';
  const area = metric ? `${figures(opening * 1e4)} cm²` : `${figures(fromSi(opening, 'in^2', 'm^2'))} sq in`;
  const factor = figures(constant.value * (metric ? 0.1 : fromSi(1, 'cfm', 'm^3/s') / fromSi(1, 'in^2', 'm^2')), 4);
  const sum = (at: number) => `${factor} × ${area} × √${figures(at)}`;
  const share = percentage.showShort(error.value, units);
  return [
    meanStep('Mean pressure in the box', pressures, `${figures(pressure)} Pa`),
    { what: 'Opening of the box', value: openingArea.show(opening, units) },
    {
      what: 'Airflow',
      how: sum(pressure),
      value: fineFlow(measured.typical, units),
      source: methodCitations.box,
    },
    { what: 'How far the gauge may be off', value: `${figures(off, 3)} Pa`, source: gauge.citation },
    {
      what: `At least: gauge that much high, box ${share} off`,
      how: `${sum(pressure - off)} × ${figures(1 - error.value)}`,
      value: fineFlow(measured.low, units),
      source: error.citation,
    },
    {
      what: `At most: gauge that much low, box ${share} off`,
      how: `${sum(pressure + off)} × ${figures(1 + error.value)}`,
      value: fineFlow(measured.high, units),
      source: error.citation,
    },
  ];
}

function traverseSteps(
  { velocities, faceArea, openShare }: Of<'traverse'>,
  measured: Estimate<CubicMetresPerSecond>,
  units: UnitSystem,
): Step[] {
  const metric = units === 'metric';
  const speed = (value: number) => (metric ? value : fromSi(value, 'fpm', 'm/s'));
  const average = mean(velocities.map(speed));
  const { error } = fieldMethods.traverse;
  const area = metric ? `${figures(faceArea)} m²` : `${figures(fromSi(faceArea, 'ft^2', 'm^2'))} sq ft`;
  const sum = (share: number, off: number) =>
    `${figures(average)} ${metric ? 'm/s' : 'fpm'} × ${area} × ${percentage.showShort(ratio(share), units)}${off === 0 ? '' : ` × ${figures(1 + off)}`}${metric ? ' × 1000' : ''}`;
  return [
    meanStep(
      'Mean speed over the face',
      velocities.map(speed),
      airSpeed.show(metresPerSecond(mean(velocities)), units),
    ),
    { what: 'Face of the grille', value: openingArea.show(faceArea, units) },
    {
      what: 'Airflow',
      how: sum(openShare.typical, 0),
      value: fineFlow(measured.typical, units),
      source: methodCitations.traverse,
    },
    {
      what: `At least: grille least open, ${percentage.showShort(error.value, units)} off`,
      how: sum(openShare.low, -error.value),
      value: fineFlow(measured.low, units),
      source: error.citation,
    },
    {
      what: `At most: grille most open, ${percentage.showShort(error.value, units)} off`,
      how: sum(openShare.high, error.value),
      value: fineFlow(measured.high, units),
      source: error.citation,
    },
  ];
}

function hoodSteps(
  { airflows, powered }: Of<'hood'>,
  measured: Estimate<CubicMetresPerSecond>,
  units: UnitSystem,
): Step[] {
  const { of } = airflow.scale(units);
  const error = powered ? methodTrust.hood.powered : methodTrust.hood.unpowered;
  const { citation } = powered ? fieldMethods.hood.powered : fieldMethods.hood.unpowered;
  return [
    meanStep('Mean of the readings', airflows.map(of), fineFlow(measured.typical, units)),
    {
      what: powered ? 'Error of a hood with its own fan' : 'Error of a hood without a fan of its own',
      how: `${fineFlow(measured.typical, units)} × ${figures(error)}`,
      value: `${fineFlow(cubicMetresPerSecond(measured.high - measured.typical), units)} either way`,
      source: citation,
    },
  ];
}
