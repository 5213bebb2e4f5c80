import { airflowAt } from '#engine/fan/fan-curve.ts';
import type { Opening } from '#engine/pressure/orifice.ts';
import type { Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { ductMethods } from '#knowledge/ducts.ts';
import { doorPressureLimits } from '#knowledge/make-up.ts';
import { moistureMethods } from '#knowledge/moisture.ts';
import { airflow, doorWidth, openingArea, percentage, smallLength } from '#quantity/kinds.ts';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type KilogramsPerCubicMetre,
  type Pascals,
  pascals,
  squareMetres,
} from '#quantity/units.ts';
import type { DoorResult, GapThatDoes } from './makeup-result.ts';

const orifice = moistureMethods.orifice.citation;
const figures = (value: number, count = 4): string => Number(value.toPrecision(count)).toString();

/** An airflow to a tenth beside its SI value, so that the next line can be worked out from it. */
const fineFlow = (flow: CubicMetresPerSecond, units: UnitSystem): string => {
  const { unit, of } = airflow.scale(units);
  return `${of(flow).toFixed(1)} ${unit} (${figures(flow)} m³/s)`;
};

const finePressure = (pressure: Pascals): string => `${figures(pressure)} Pa`;

/** Air through an opening at a pressure, with its numbers in it. */
export const orificeSum = (
  { area, dischargeCoefficient }: Opening,
  { pressure, density }: { readonly pressure: Pascals; readonly density: KilogramsPerCubicMetre },
): string =>
  `${dischargeCoefficient} × ${figures(area)} m² × √(2 × ${figures(pressure)} Pa ÷ ${figures(density)} kg/m³)`;

/** The opening, the airflow and the pressure they make. */
export function doorSteps({ air, wayIn, shut, pressure }: DoorResult, units: UnitSystem): Step[] {
  const { bath, hall } = air.openings(air.typical);
  const { width, gap } = wayIn.door;
  const slot = squareMetres(width.typical * gap.typical);
  const steps: Step[] = [
    {
      what: 'Open area under the door',
      how: `${doorWidth.showShort(width.typical, units)} × ${smallLength.showShort(gap.typical, units)}`,
      value: `${openingArea.showShort(slot, units)} (${figures(slot)} m²)`,
    },
  ];
  if (wayIn.grille) {
    const { face, freeShare } = wayIn.grille;
    const open = squareMetres(face * freeShare.typical);
    steps.push(
      {
        what: 'Open area of the grille',
        how: `${openingArea.showShort(face, units)} × ${percentage.showShort(freeShare.typical, units)}`,
        value: `${openingArea.showShort(open, units)} (${figures(open)} m²)`,
      },
      { what: 'Both side by side', value: `${openingArea.showShort(bath.area, units)} (${figures(bath.area)} m²)` },
    );
  }
  steps.push({
    what: air.ready ? 'Airflow at which fan, duct and door agree' : 'Airflow with the door shut',
    value: fineFlow(shut, units),
    ...(air.ready ? { source: airflowMethods['operating-point'].citation } : {}),
  });
  if (Number.isFinite(pressure.typical)) {
    steps.push({
      what: 'Pressure across the door',
      how: `${figures(air.density)} kg/m³ ÷ 2 × (${figures(shut)} m³/s ÷ (${bath.dischargeCoefficient} × ${figures(bath.area)} m²))²`,
      value: finePressure(pressure.typical),
      source: orifice,
    });
  }
  if (hall && Number.isFinite(pressure.typical)) {
    const atHall = (air.density / 2) * (shut / (hall.dischargeCoefficient * hall.area)) ** 2;
    steps.push({
      what: 'Pressure across the second door on the way',
      how: `${figures(air.density)} kg/m³ ÷ 2 × (${figures(shut)} m³/s ÷ (${hall.dischargeCoefficient} × ${figures(hall.area)} m²))²`,
      value: finePressure(pascals(atHall)),
      source: orifice,
    });
  }
  return steps;
}

/** Why that airflow is the one: what the duct takes, and the fan's curve at the sum. */
export function pathSteps({ air, shut, open, pressure, drop }: DoorResult, units: UnitSystem): Step[] {
  const { ready, typical } = air;
  if (!ready || !Number.isFinite(pressure.typical)) return [];
  const duct = ready.staticDemand(typical)(shut);
  const more = air.restTakes(typical, shut);
  const total = pascals(duct + pressure.typical + more);
  return [
    {
      what: 'Pressure the duct takes at that airflow, less what the rating has paid',
      value: finePressure(duct),
      source: ductMethods['fan-static'].citation,
    },
    ...(more > 0 ? [{ what: 'Pressure the rest of the way in takes', value: finePressure(more) }] : []),
    {
      what: 'Pressure the fan works against',
      how: [duct, pressure.typical, ...(more > 0 ? [more] : [])].map((each) => figures(each)).join(' + '),
      value: finePressure(total),
    },
    {
      what: 'The fan’s curve at that pressure',
      value: fineFlow(airflowAt(ready.curve(typical), total), units),
      source: airflowMethods['fan-curve'].citation,
    },
    {
      what: 'The same without the door',
      value: fineFlow(open, units),
      source: airflowMethods['operating-point'].citation,
    },
    {
      what: 'What shutting the door costs',
      how: `1 − ${figures(shut)} ÷ ${figures(open)}`,
      value: `${(100 * (drop ?? 0)).toFixed(1)} %`,
    },
  ];
}

/** From a pressure back to the gap that takes it. */
export function gapSteps({ air, open, pair, byDrop, byPressure }: DoorResult, units: UnitSystem): Step[] {
  const { ready, typical } = air;
  const steps: Step[] = [];
  const {
    bath: { dischargeCoefficient },
    grille,
    doorWidth: width,
  } = air.openings(typical);
  const gapStep = ({ gap, airflow: flow, pressure }: GapThatDoes): Step => ({
    what: `Gap that takes ${figures(pressure, 3)} Pa at ${airflow.showShort(flow, units)}`,
    how: `(${figures(flow)} m³/s ÷ √(2 × ${figures(pressure)} Pa ÷ ${figures(air.density)} kg/m³)${grille > 0 ? ` − ${figures(grille / dischargeCoefficient)} m² of grille × ${dischargeCoefficient}` : ''}) ÷ (${dischargeCoefficient} × ${figures(width)} m)`,
    value: `${figures(1000 * gap, 3)} mm (${figures(gap / 0.0254, 3)} in)`,
    source: orifice,
  });
  if (byDrop && Number.isFinite(byDrop.gap)) {
    const { value: share, citation } = doorPressureLimits['door-drop'];
    const whole = pair?.open ?? open;
    steps.push({
      what: `Airflow when shutting the door costs ${percentage.showShort(share, units)}`,
      how: `${fineFlow(cubicMetresPerSecond(whole), units)} × ${figures(1 - share)}`,
      value: fineFlow(byDrop.airflow, units),
      source: citation,
    });
    if (pair) {
      steps.push({
        what: 'Pressure then left for the door, on a straight line between the two readings',
        how: `${figures(air.doorPressure(typical))} Pa × (${figures(pair.open)} − ${figures(byDrop.airflow)}) ÷ (${figures(pair.open)} − ${figures(pair.shut)})`,
        value: finePressure(byDrop.pressure),
      });
    } else if (ready) {
      const duct = ready.staticDemand(typical)(byDrop.airflow);
      const rest = air.restTakes(typical, byDrop.airflow);
      const makes = pascals(byDrop.pressure + duct + rest);
      steps.push(
        { what: 'Pressure the fan makes there, off its curve', value: finePressure(makes) },
        { what: 'Of which the duct takes', value: finePressure(duct) },
        ...(rest > 0 ? [{ what: 'And the rest of the way in', value: finePressure(rest) }] : []),
        {
          what: 'Left for the door',
          how: [makes, duct, ...(rest > 0 ? [rest] : [])].map((each) => figures(each)).join(' − '),
          value: finePressure(byDrop.pressure),
        },
      );
    }
    steps.push(gapStep(byDrop));
  }
  return [...steps, gapStep(byPressure.choked), gapStep(byPressure.fine)];
}
