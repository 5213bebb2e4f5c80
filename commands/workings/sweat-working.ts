import { condensationStart } from '#engine/condensation/condensation-start.ts';
import {
  airConductivity,
  airTemperature,
  airViscosity,
  ductCooling,
  wallTemperature,
} from '#engine/condensation/duct-cooling.ts';
import { type PieceInPlace, piecesInPlace } from '#engine/condensation/duct-pieces.ts';
import { type ExhaustDuct, exhaustAir, exhaustDewPoint } from '#engine/condensation/exhaust-duct.ts';
import { moistAirDensity } from '#engine/psychrometrics/moist-air.ts';
import { saturationPressure } from '#engine/psychrometrics/saturation-pressure.ts';
import type { Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { ductCondensationDefaults, moistureMethods } from '#knowledge/moisture.ts';
import { airflow, distance, ductDiameter, insulation, relativeHumidity, temperature } from '#quantity/kinds.ts';
import { fromSi } from '#quantity/unit-factors.ts';
import {
  type Celsius,
  celsius,
  inEach,
  type Metres,
  metres,
  ratio,
  type SquareMetreKelvinsPerWatt,
  squareMetreKelvinsPerWatt,
} from '#quantity/units.ts';
import type { ColdRun, SweatInputs } from './sweat-duct.ts';

/** A temperature to a tenth, and a resistance to a hundredth: whole degrees would not add up. */
const fine = (value: Celsius, units: UnitSystem): string => {
  const { unit, of } = temperature.scale(units);
  return `${of(value).toFixed(1)} ${unit}`;
};
const degrees = (kelvins: number, units: UnitSystem): string =>
  (units === 'metric' ? kelvins : kelvins * 1.8).toFixed(2);
const perLength = (perMetre: number, units: UnitSystem): string =>
  (units === 'metric' ? perMetre : perMetre * 0.3048).toFixed(6);
const resistance = (value: number, units: UnitSystem): string => {
  const { unit, of } = insulation.scale(units);
  const number = of(squareMetreKelvinsPerWatt(value)).toFixed(units === 'metric' ? 4 : 3);
  return units === 'metric' ? `${unit} ${number}` : `${unit}-${number}`;
};
const number = (text: string): string => text.replace(/^(?:RSI |R-)/, '');

/** The dew point; far below everything for air without vapour. */
export const dewPointOf = (duct: ExhaustDuct): Celsius => {
  const dew = exhaustDewPoint(duct);
  return dew.found ? dew.temperature : celsius(-100);
};

/** The piece in which the water starts, or the coldest, where none does. */
export function decidingPiece({ duct, pieces }: ColdRun): PieceInPlace {
  const placed = piecesInPlace(duct, pieces);
  const wet = placed.find(({ duct: piece }) => {
    const start = condensationStart(piece);
    return start.found && start.distance <= piece.length;
  });
  const coldest = (piece: ExhaustDuct) => wallTemperature(piece, piece.length);
  return wet ?? placed.reduce((one, other) => (coldest(other.duct) < coldest(one.duct) ? other : one));
}

/** What decides before any duct is looked at: the air and the cold. */
export function airSteps({ delivered }: SweatInputs, { duct }: ColdRun, units: UnitSystem): Step[] {
  const { low, typical, high } = delivered.airflow;
  const full = saturationPressure(duct.exhaustTemperature);
  const { exhaustDampness: dampness } = duct;
  const share = dampness.held === 'relative humidity' ? dampness.relativeHumidity : ratio(0);
  return [
    {
      what: `Delivered airflow, ${delivered.from}`,
      ...(low === high
        ? {}
        : {
            how: `low end of ${airflow.showRangeShort({ low, high }, units)}, most likely ${airflow.showShort(typical, units)}: slow air cools more`,
          }),
      value: airflow.show(low, units),
    },
    {
      what: `Vapor in the exhaust, ${relativeHumidity.showShort(share, units)} at ${fine(duct.exhaustTemperature, units)}`,
      how: `${relativeHumidity.showShort(share, units)} × ${full.toFixed(0)} Pa`,
      value: `${(share * full).toFixed(0)} Pa`,
      source: moistureMethods.psychrometrics.citation,
    },
    {
      what: 'Dew point: saturated air holds that much at',
      how: `table or chart: ${saturationPressure(dewPointOf(duct)).toFixed(0)} Pa fills air of`,
      value: fine(dewPointOf(duct), units),
      source: moistureMethods.psychrometrics.citation,
    },
    { what: 'Around the duct', value: fine(duct.surroundings, units) },
  ];
}

/** How the air cools in one piece. */
export function coolingSteps({ from, duct }: PieceInPlace, units: UnitSystem): Step[] {
  const metric = units === 'metric';
  const cooling = ductCooling(duct);
  const size = ductDiameter.showShort(duct.diameter, units);
  const capacity = metric
    ? `${cooling.heatCapacity.toFixed(2)} W/K`
    : `${fromSi(cooling.heatCapacity, 'BTU/hour/degR', 'W/K').toFixed(2)} Btu/h for each °F`;
  const velocity = duct.airflow / ((Math.PI * duct.diameter ** 2) / 4);
  const density = moistAirDensity(exhaustAir(duct));
  const circumference = Math.PI * duct.diameter;
  const overall = resistance(cooling.overall, units);
  const inSi = metric ? '' : ` = RSI ${cooling.insideFilm.toFixed(4)}`;
  return [
    ...(from > 0
      ? [
          {
            what: `Air that enters the ${size} piece, ${distance.showShort(from, units)} from the fan`,
            value: fine(duct.exhaustTemperature, units),
          },
        ]
      : []),
    {
      what: `Reynolds number of the air in the ${size} duct`,
      how: `${velocity.toFixed(3)} m/s × ${duct.diameter.toFixed(4)} m × ${density.toFixed(3)} kg/m³ ÷ ${airViscosity} Pa·s`,
      value: cooling.reynoldsNumber.toFixed(0),
      source: moistureMethods['duct-film'].citation,
    },
    {
      what: 'Film of air inside it',
      how:
        cooling.nusseltNumber > 3.66
          ? `${duct.diameter.toFixed(4)} m ÷ (0.023 × ${cooling.reynoldsNumber.toFixed(0)}^0.8 × 0.71^0.3 × ${airConductivity} W/m·K)${inSi}`
          : `${duct.diameter.toFixed(4)} m ÷ (3.66 × ${airConductivity} W/m·K)${inSi}, slow air`,
      value: resistance(cooling.insideFilm, units),
      source: moistureMethods['duct-film'].citation,
    },
    {
      what: 'With the wrap and the film outside',
      how: `${number(resistance(cooling.insideFilm, units))} + ${number(resistance(duct.insulation, units))} + ${number(resistance(duct.outsideFilm, units))}`,
      value: overall,
      source: ductCondensationDefaults['outside-film'].citation,
    },
    {
      what: 'Heat the air gives up for each degree',
      how: metric
        ? `${duct.airflow.toFixed(5)} m³/s × ${(cooling.heatCapacity / duct.airflow).toFixed(0)} J/(m³·K)`
        : `${fromSi(duct.airflow, 'cfm', 'm^3/s').toFixed(1)} cfm × ${(fromSi(cooling.heatCapacity, 'BTU/hour/degR', 'W/K') / fromSi(duct.airflow, 'cfm', 'm^3/s')).toFixed(4)} Btu/h, 60 minutes × weight × specific heat of damp air`,
      value: capacity,
      source: moistureMethods.psychrometrics.citation,
    },
    {
      what: 'Share of the difference lost along the duct',
      how: metric
        ? `${circumference.toFixed(4)} m round ÷ (${number(overall)} × ${cooling.heatCapacity.toFixed(2)})`
        : `${fromSi(circumference, 'ft', 'm').toFixed(4)} ft round ÷ (${number(overall)} × ${fromSi(cooling.heatCapacity, 'BTU/hour/degR', 'W/K').toFixed(2)})`,
      value: inEach(
        units,
        (system) => `${perLength(cooling.perMetre, system)} a ${system === 'metric' ? 'meter' : 'foot'}`,
      ),
      source: moistureMethods['duct-cooling'].citation,
    },
    {
      what: 'Wall where the air enters',
      how: `${fine(duct.exhaustTemperature, units)} − ${degrees(duct.exhaustTemperature - duct.surroundings, units)} × ${number(resistance(cooling.insideFilm, units))} ÷ ${number(overall)}`,
      value: fine(wallTemperature(duct, metres(0)), units),
      source: moistureMethods['duct-cooling'].citation,
    },
  ];
}

/** Where in its piece the wall meets the dew point. */
export function startSteps({ from, duct }: PieceInPlace, total: Metres, units: UnitSystem): Step[] {
  const metric = units === 'metric';
  const start = condensationStart(duct);
  const dew = dewPointOf(duct);
  const wall = wallTemperature(duct, metres(0));
  const { perMetre } = ductCooling(duct);
  const source = moistureMethods['duct-cooling'].citation;
  const length: Step = { what: 'Duct in the cold', value: distance.showShort(total, units) };
  if (!start.found) return [{ what: 'The wall never falls to the dew point', value: 'stays dry', source }, length];
  if (start.distance === 0)
    return [{ what: 'The wall is under the dew point at once', value: 'wet from there', source }, length];
  const from0 = from > 0 ? `, from ${distance.showShort(from, units)}` : '';
  return [
    {
      what: `The wall meets the dew point after${from0}`,
      how: `ln(${degrees(wall - duct.surroundings, units)} ÷ ${degrees(dew - duct.surroundings, units)}) ÷ ${perLength(perMetre, units)}`,
      value: metric ? `${start.distance.toFixed(2)} m` : `${fromSi(start.distance, 'ft', 'm').toFixed(1)} ft`,
      source,
    },
    length,
  ];
}

/** The same duct with the least wrap that keeps it dry: its coldest wall just meets the dew point. */
export function insulatedSteps(run: ColdRun, wrap: SquareMetreKelvinsPerWatt, units: UnitSystem): Step[] {
  const piece = decidingPiece({ ...run, duct: { ...run.duct, insulation: wrap } });
  const { duct } = piece;
  const { perMetre, insideFilm, overall } = ductCooling(duct);
  const metric = units === 'metric';
  const air = airTemperature(duct, duct.length);
  const source = moistureMethods['duct-cooling'].citation;
  const spread = degrees(duct.exhaustTemperature - duct.surroundings, units);
  const lengthText = metric ? duct.length.toFixed(2) : fromSi(duct.length, 'ft', 'm').toFixed(2);
  return [
    ...coolingSteps(piece, units),
    {
      what: 'Air at the far end',
      how: `${fine(duct.surroundings, units)} + ${spread} × e^(−${perLength(perMetre, units)} × ${lengthText})`,
      value: fine(air, units),
      source,
    },
    {
      what: 'Wall at the far end, which must not be under the dew point',
      how: `${fine(air, units)} − ${degrees(air - duct.surroundings, units)} × ${number(resistance(insideFilm, units))} ÷ ${number(resistance(overall, units))}`,
      value: fine(wallTemperature(duct, duct.length), units),
      source,
    },
  ];
}
