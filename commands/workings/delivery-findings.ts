import { ductVelocity, velocityPressureCoefficient } from '#engine/duct/velocity.ts';
import type { Finding, Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { ductMethods } from '#knowledge/ducts.ts';
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
import { lossSteps, velocitySteps } from './duct-working.ts';
import { fanSteps } from './fan-working.ts';
import { finePressure } from './fine.ts';
import { startOf } from './run-pieces.ts';

const moved = (delivery: Delivery): CubicMetresPerSecond => cubicMetresPerSecond(delivery.airflow.typical);

const share = (part: number, whole: number): string => `${Math.round((100 * part) / whole)} %`;

const lossTotal = ({ losses, doorLoss }: Delivery): Pascals =>
  pascals(losses.reduce((sum, loss) => sum + loss, 0) + doorLoss);

/** What the fan works against and what it moves there, line by line. */
export function deliveredSteps(delivery: Delivery, units: UnitSystem): Step[] {
  const { ready, losses, doorLoss } = delivery;
  const collar = ready.path.collar ?? startOf(ready.path.run);
  const flow = moved(delivery);
  const credit = pascals(velocityPressureCoefficient(collar, ready.air) * flow * flow);
  const total = lossTotal(delivery);
  const [speed, paid] = velocitySteps(flow, collar, ready.air, units);
  const parts = [...losses, ...(doorLoss > 0 ? [doorLoss] : [])].map((loss) => finePressure(loss, units, 1));
  return [
    {
      what: 'All losses at that airflow',
      ...(parts.length > 1 ? { how: parts.join(' + ') } : {}),
      value: finePressure(total, units, 1),
    },
    ...(speed ? [speed] : []),
    {
      what: 'Less velocity pressure at the collar, which the rating has paid already',
      ...(paid?.how === undefined ? {} : { how: paid.how }),
      value: finePressure(credit, units, 1),
      source: ductMethods['fan-static'].citation,
    },
    {
      what: 'Static pressure the fan works against',
      how: `${finePressure(total, units, 1)} − ${finePressure(credit, units, 1)}`,
      value: finePressure(delivery.staticPressure, units, 1),
    },
    ...fanSteps(delivery, units),
  ];
}

/** How much air really arrives, against what is needed or promised. */
export function deliveredFinding(delivery: Delivery, need: CubicMetresPerSecond | null, units: UnitSystem): Finding {
  const { airflow, outer } = delivery;
  const flow = moved(delivery);
  const shown = airflowKind.show(flow, units);
  const span = { low: cubicMetresPerSecond(airflow.low), high: cubicMetresPerSecond(airflow.high) };
  const usually = `usually ${airflowKind.showRangeShort(span, units)}`;
  const working: Step[] = [
    ...deliveredSteps(delivery, units),
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
    working: velocitySteps(moved(delivery), narrowest, delivery.ready.air, units).slice(0, 1),
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
