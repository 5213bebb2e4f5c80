import { frictionFactor, laminarEnd, turbulentStart } from '#engine/duct/friction-factor.ts';
import {
  ductArea,
  ductVelocity,
  reynoldsNumber,
  velocityPressure,
  velocityPressureCoefficient,
} from '#engine/duct/velocity.ts';
import { airflowAt } from '#engine/fan/fan-curve.ts';
import { type DoorGap, doorGapOpening } from '#engine/pressure/door-gap.ts';
import type { Finding, Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { ductMethods } from '#knowledge/ducts.ts';
import { moistureMethods } from '#knowledge/moisture.ts';
import { airflow as airflowKind, airSpeed, staticPressure as pressureKind } from '#quantity/kinds.ts';
import { meets } from '#quantity/meets.ts';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Metres,
  type Pascals,
  pascals,
} from '#quantity/units.ts';
import { citations } from './citations.ts';
import { type Delivery, tellingMeasurements } from './delivery.ts';
import { startOf } from './run-pieces.ts';

const moved = (delivery: Delivery): CubicMetresPerSecond => cubicMetresPerSecond(delivery.airflow.typical);

const share = (part: number, whole: number): string => `${Math.round((100 * part) / whole)} %`;

/** An airflow to a tenth, as working needs it: rounding to whole cfm would not add up. */
const fineFlow = (flow: CubicMetresPerSecond, units: UnitSystem): string => {
  const { unit, of } = airflowKind.scale(units);
  return `${of(flow).toFixed(1)} ${unit}`;
};
const finePressure = (pressure: Pascals, units: UnitSystem, more = 0): string => {
  const { unit, of } = pressureKind.scale(units);
  return `${of(pressure).toFixed((units === 'metric' ? 1 : 3) + more)} ${unit}`;
};

/** A velocity pressure is multiplied further, so it carries one more digit: what follows then comes out as printed. */
const velocityPressureText = (pressure: Pascals, units: UnitSystem): string => finePressure(pressure, units, 1);

/** How fast the air goes at a diameter, as lines to follow with a calculator. */
function velocitySteps(flow: CubicMetresPerSecond, diameter: Metres, delivery: Delivery, units: UnitSystem): Step[] {
  const { density } = delivery.ready.air;
  const area = ductArea(diameter);
  const velocity = ductVelocity({ airflow: flow, diameter });
  const pressure = velocityPressure(velocity, density);
  const metric = units === 'metric';
  return [
    {
      what: 'Velocity in it',
      how: metric
        ? `${fineFlow(flow, units)} ÷ 1000 ÷ ${area.toFixed(5)} m²`
        : `${fineFlow(flow, units)} ÷ ${(area / 0.09290304).toFixed(4)} sq ft`,
      value: metric ? `${velocity.toFixed(2)} m/s` : `${(velocity / 0.00508).toFixed(0)} fpm`,
    },
    {
      what: 'Velocity pressure there',
      how: metric
        ? `${density.toFixed(3)} kg/m³ × ${velocity.toFixed(2)}² ÷ 2`
        : `(${(velocity / 0.00508).toFixed(0)} ÷ ${(1096.7 / Math.sqrt(density / 16.018463)).toFixed(0)})²`,
      value: velocityPressureText(pressure, units),
      source: ductMethods['loss-coefficients'].citation,
    },
  ];
}

/** Which law gives the friction factor at a Reynolds number. */
const frictionLaw = (reynolds: number): string =>
  reynolds <= laminarEnd ? '64 ÷ Re' : reynolds < turbulentStart ? 'between the two laws' : 'Colebrook';

/** The working of every part of the run: what it loses and how that comes about. */
function lossSteps(delivery: Delivery, units: UnitSystem): Step[] {
  const { ready, losses } = delivery;
  const flow = moved(delivery);
  const steps: Step[] = [];
  let lastDiameter = 0;
  ready.pieces.forEach((piece, index) => {
    if (piece.diameter !== lastDiameter) steps.push(...velocitySteps(flow, piece.diameter, delivery, units));
    lastDiameter = piece.diameter;
    const made = piece.piece(ready.typical);
    const pressure = velocityPressure(ductVelocity({ airflow: flow, diameter: piece.diameter }), ready.air.density);
    if (made.kind === 'duct') {
      const reynolds = reynoldsNumber({
        velocity: ductVelocity({ airflow: flow, diameter: made.diameter }),
        diameter: made.diameter,
        kinematicViscosity: ready.air.kinematicViscosity,
      });
      const factor = frictionFactor({ reynolds, relativeRoughness: made.roughness / made.diameter });
      steps.push({
        what: piece.label(units),
        how: `friction factor ${factor.toFixed(4)} (Re ${Math.round(reynolds)}, roughness ${(made.roughness / made.diameter).toPrecision(2)} of the diameter, ${frictionLaw(reynolds)}) × length ÷ diameter ${(made.length / made.diameter).toFixed(1)} × ${velocityPressureText(pressure, units)}${made.pressureFactor === 1 ? '' : ` × ${made.pressureFactor.toFixed(2)} for slack`}`,
        value: finePressure(losses[index] as Pascals, units),
        source: piece.citation,
      });
    } else if (made.kind === 'loss') {
      steps.push({
        what: piece.label(units),
        how: `coefficient ${made.coefficient.toFixed(2)} × ${velocityPressureText(pressure, units)}`,
        value: finePressure(losses[index] as Pascals, units),
        source: piece.citation,
      });
    }
  });
  if (delivery.doorLoss > 0 && ready.path.door) steps.push(doorStep(delivery, ready.path.door, units));
  return steps;
}

/** What the slot under the door takes, in the units of the formula. */
function doorStep(delivery: Delivery, door: DoorGap, units: UnitSystem): Step {
  const { density } = delivery.ready.air;
  const { area, dischargeCoefficient } = doorGapOpening(door);
  return {
    what: 'Gap under the door',
    how: `${density.toFixed(3)} kg/m³ ÷ 2 × (${moved(delivery).toPrecision(4)} m³/s ÷ (${dischargeCoefficient} × ${area.toPrecision(4)} m²))² = ${delivery.doorLoss.toFixed(1)} Pa`,
    value: finePressure(delivery.doorLoss, units),
    source: moistureMethods.orifice.citation,
  };
}

const lossTotal = ({ losses, doorLoss }: Delivery): Pascals =>
  pascals(losses.reduce((sum, loss) => sum + loss, 0) + doorLoss);

/** The curve a little to either side of where the fan works: between them it is as good as straight. */
function curveAround({ ready, staticPressure }: Delivery, units: UnitSystem): string {
  const curve = ready.curve(ready.typical);
  const step = 0.5;
  const at = (pressure: number) =>
    `${fineFlow(airflowAt(curve, pascals(pressure)), units)} at ${finePressure(pascals(pressure), units)}`;
  return `${at(staticPressure - step)}, ${at(staticPressure + step)}, straight between`;
}

/** How much air really arrives, against what is needed or promised. */
export function deliveredFinding(delivery: Delivery, need: CubicMetresPerSecond | null, units: UnitSystem): Finding {
  const { airflow, ready, outer } = delivery;
  const collar = ready.path.collar ?? startOf(ready.path.run);
  const flow = moved(delivery);
  const credit = pascals(velocityPressureCoefficient(collar, ready.air) * flow * flow);
  const shown = airflowKind.show(flow, units);
  const span = { low: cubicMetresPerSecond(airflow.low), high: cubicMetresPerSecond(airflow.high) };
  const usually = `usually ${airflowKind.showRangeShort(span, units)}`;
  const working: Step[] = [
    { what: 'All losses at that airflow', value: finePressure(lossTotal(delivery), units) },
    {
      what: 'Less velocity pressure at the collar, which the rating has paid already',
      value: finePressure(credit, units),
      source: ductMethods['fan-static'].citation,
    },
    { what: 'Static pressure the fan works against', value: finePressure(delivery.staticPressure, units) },
    {
      what: 'The fan’s curve at that pressure',
      how: curveAround(delivery, units),
      value: fineFlow(airflowAt(ready.curve(ready.typical), delivery.staticPressure), units),
      source: airflowMethods['operating-point'].citation,
    },
    {
      what: 'Likely band: 90 of 100 ways the unknowns can fall',
      value: airflowKind.showRangeShort(span, units),
      source: airflowMethods['likely-band'].citation,
    },
    {
      what: 'It cannot lie outside',
      value: airflowKind.showRangeShort(
        { low: cubicMetresPerSecond(outer.low), high: cubicMetresPerSecond(outer.high) },
        units,
      ),
    },
  ];
  const value = {
    number: flow,
    unit: airflowKind.siUnit,
    low: airflow.low,
    high: airflow.high,
    shown: `${shown}, ${usually}`,
  };
  const sources = citations(
    airflowMethods['operating-point'].citation,
    airflowMethods['fan-curve'].citation,
    ductMethods['fan-static'].citation,
  );
  if (flow <= 0) {
    return {
      id: 'delivered-airflow',
      weight: 'stop',
      says: 'Do not fit this fan to this duct: it cannot push any air through.',
      value,
      working,
      sources,
    };
  }
  const judged = need === null ? '' : ` against ${airflowKind.showShort(need, units)} needed`;
  if (need !== null && meets(airflow.low, need)) {
    return {
      id: 'delivered-airflow',
      weight: 'good',
      says: `Expect ${shown} really delivered, ${usually}: enough${judged}.`,
      value,
      working,
      sources,
    };
  }
  if (need !== null && meets(airflow.high, need)) {
    return {
      id: 'delivered-airflow',
      weight: 'caution',
      says: `Expect ${shown} really delivered, ${usually}: it may fall short${judged}.`,
      value,
      working,
      sources,
    };
  }
  return {
    id: 'delivered-airflow',
    weight: need === null ? 'advice' : 'caution',
    says: `Expect ${shown} really delivered, ${usually}${need === null ? '' : `: too little${judged}`}.`,
    value,
    working,
    sources,
  };
}

export function staticPressureFinding(delivery: Delivery, units: UnitSystem): Finding {
  return {
    id: 'static-pressure',
    weight: 'advice',
    says: `The fan works against ${pressureKind.show(delivery.staticPressure, units)} of static pressure; its carton number is taken at 0.1 in. w.g. (25 Pa).`,
    value: {
      number: delivery.staticPressure,
      unit: pressureKind.siUnit,
      shown: pressureKind.show(delivery.staticPressure, units),
    },
    working: [
      { what: 'Where the fan’s curve and the duct’s curve cross', value: finePressure(delivery.staticPressure, units) },
    ],
    sources: citations(airflowMethods['operating-point'].citation),
  };
}

/** Where the pressure goes, part by part. */
export function sharesFinding(delivery: Delivery, units: UnitSystem): Finding {
  const { ready, losses, doorLoss } = delivery;
  const total = lossTotal(delivery);
  const rows = [
    ...ready.pieces.map((piece, index) => ({ label: piece.label(units), loss: losses[index] ?? pascals(0) })),
    ...(doorLoss > 0 ? [{ label: 'gap under the door', loss: doorLoss }] : []),
  ];
  const worst = rows.reduce((most, row) => (row.loss > most.loss ? row : most), { label: 'nothing', loss: pascals(0) });
  return {
    id: 'pressure-shares',
    weight: 'advice',
    says:
      total > 0
        ? `The ${worst.label} eats most: ${share(worst.loss, total)} of the pressure.`
        : 'No pressure is lost where no air moves.',
    value: { number: total, unit: pressureKind.siUnit, shown: pressureKind.show(total, units) },
    working: lossSteps(delivery, units),
    sources: citations(
      ductMethods.friction.citation,
      ductMethods['loss-coefficients'].citation,
      ...ready.pieces.map(({ citation }) => citation),
    ),
    ...(total > 0
      ? {
          table: {
            title: 'Where the pressure goes',
            columns: ['part', 'loss', 'share'],
            rows: rows.map(({ label, loss }) => [label, finePressure(loss, units), share(loss, total)]),
          },
        }
      : {}),
  };
}

/** Above this the air itself is heard in small pipe; common practice, no source. */
const noisyFrom = 4.572;

export function velocityFinding(delivery: Delivery, units: UnitSystem): Finding {
  const narrowest = delivery.ready.pieces.reduce(
    (least, { diameter }) => Math.min(least, diameter),
    Number.POSITIVE_INFINITY,
  ) as Metres;
  const velocity = ductVelocity({ airflow: moved(delivery), diameter: narrowest });
  const fast = velocity > noisyFrom;
  return {
    id: 'duct-velocity',
    weight: fast ? 'caution' : 'good',
    says: `The air runs at ${airSpeed.show(velocity, units)} where the duct is narrowest${fast ? ': it will be heard' : ''}.`,
    value: { number: velocity, unit: airSpeed.siUnit, shown: airSpeed.show(velocity, units) },
    working: velocitySteps(moved(delivery), narrowest, delivery, units).slice(0, 1),
    sources: citations({ source: 'common-practice', verified: false }),
  };
}

/** The one measurement that would narrow the answer most. */
export function measureNextFinding(delivery: Delivery, units: UnitSystem): Finding | undefined {
  const telling = tellingMeasurements(delivery);
  const { measures } = delivery.ready.parameters;
  const [best] = telling;
  const what = best && measures[best.parameter]?.(units);
  if (!best || what === undefined) return undefined;
  const width = (flow: number) => airflowKind.showShort(cubicMetresPerSecond(flow), units);
  const now = delivery.airflow.high - delivery.airflow.low;
  return {
    id: 'measure-next',
    weight: 'advice',
    says: `To be surer, find out ${what}: that alone narrows the band from ${width(now)} wide to ${width(best.width)}.`,
    working: telling.flatMap(({ parameter, width: left }) => {
      const name = measures[parameter]?.(units);
      return name === undefined ? [] : [{ what: `With ${name} known, the band is`, value: `${width(left)} wide` }];
    }),
    sources: citations(airflowMethods['likely-band'].citation),
  };
}
