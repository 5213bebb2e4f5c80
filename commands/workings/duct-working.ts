import type { Air } from '#engine/air/air.ts';
import { publishedFlexFactor } from '#engine/duct/flex-compression.ts';
import { frictionFactor, laminarEnd, turbulentStart } from '#engine/duct/friction-factor.ts';
import type { DuctPiece } from '#engine/duct/run.ts';
import { ductArea, ductVelocity, reynoldsNumber, velocityPressure } from '#engine/duct/velocity.ts';
import { type DoorGap, doorGapOpening } from '#engine/pressure/door-gap.ts';
import type { Step } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { ductMethods } from '#knowledge/ducts.ts';
import { moistureMethods } from '#knowledge/moisture.ts';
import { ownWorking } from '#knowledge/sources.ts';
import { ductDiameter } from '#quantity/kinds.ts';
import {
  type CubicMetresPerSecond,
  cubicMetresPerSecond,
  type Metres,
  type MetresPerSecond,
  type Pascals,
} from '#quantity/units.ts';
import type { Delivery } from './delivery.ts';
import { fineFlow, finePressure } from './fine.ts';
import type { Slackness } from './flex-slack.ts';
import type { RunPiece } from './run-pieces.ts';

const foot = 0.3048;

/** A velocity pressure is multiplied further, so it carries one more digit: what follows then comes out as printed. */
const velocityPressureText = (pressure: Pascals, units: UnitSystem): string => finePressure(pressure, units, 1);

/** How fast the air goes at a diameter, as lines to follow with a calculator. */
export function velocitySteps(
  flow: CubicMetresPerSecond,
  diameter: Metres,
  { density }: Air,
  units: UnitSystem,
): Step[] {
  const area = ductArea(diameter);
  const velocity = ductVelocity({ airflow: flow, diameter });
  const pressure = velocityPressure(velocity, density);
  const metric = units === 'metric';
  return [
    {
      what: `Velocity in ${ductDiameter.showShort(diameter, units)}`,
      how: metric
        ? `${fineFlow(flow, units)} ÷ 1000 ÷ ${area.toFixed(5)} m²`
        : `${fineFlow(flow, units)} ÷ ${(area / foot ** 2).toFixed(4)} sq ft`,
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

/** The friction factor of a duct, from its roughness and how fast the air goes. */
function frictionSteps(
  made: DuctPiece,
  { ready }: Delivery,
  velocity: MetresPerSecond,
  piece: RunPiece,
  units: UnitSystem,
): Step[] {
  const { kinematicViscosity } = ready.air;
  const { diameter, roughness } = made;
  const reynolds = reynoldsNumber({ velocity, diameter, kinematicViscosity });
  const relativeRoughness = roughness / diameter;
  const factor = frictionFactor({ reynolds, relativeRoughness });
  const [re, wall] = [Math.round(reynolds), relativeRoughness.toPrecision(3)];
  const metric = units === 'metric';
  const law =
    reynolds <= laminarEnd
      ? `64 ÷ ${re}, since the air slides below ${laminarEnd}`
      : reynolds < turbulentStart
        ? `on a straight line from 64 ÷ ${laminarEnd} at ${laminarEnd} to Colebrook at ${turbulentStart}, where no law holds`
        : `Colebrook: f at which 1 ÷ √f = −2 log₁₀(${wall} ÷ 3.7 + 2.51 ÷ (${re} × √f))`;
  return [
    {
      what: 'Roughness of its wall over its diameter',
      how: metric
        ? `${(roughness * 1000).toPrecision(3)} mm ÷ ${(diameter * 1000).toFixed(1)} mm`
        : `${(roughness / foot).toPrecision(2)} ft ÷ ${(diameter / foot).toFixed(4)} ft`,
      value: wall,
      ...(piece.roughnessFrom ? { source: piece.roughnessFrom } : {}),
    },
    {
      what: 'Reynolds number',
      how: metric
        ? `${velocity.toFixed(2)} m/s × ${diameter.toFixed(4)} m ÷ ${kinematicViscosity.toPrecision(4)} m²/s`
        : `${(velocity / 0.00508).toFixed(0)} fpm ÷ 60 × ${(diameter / foot).toFixed(4)} ft ÷ ${(kinematicViscosity / foot ** 2).toPrecision(4)} ft²/s`,
      value: `${re}`,
    },
    { what: 'Friction factor f', how: law, value: factor.toFixed(4), source: ductMethods.friction.citation },
  ];
}

/** How many times the loss of the tight duct, where flex lies slack: the published rule, and what is made of it outside its tests. */
function slackSteps(slack: Slackness, diameter: Metres, values: Float64Array, units: UnitSystem): Step[] {
  const compression = slack.compression(values);
  if (compression === 0) return [];
  const share = slack.lean(values);
  const percent = (part: number) => `${Math.round(100 * part)} %`;
  const rule = (at: Metres) => `1 + 58 × ${compression.toFixed(3)} × e^(−4.96 × ${at.toFixed(4)})`;
  const size = (width: Metres) => ductDiameter.showShort(width, units);
  const { told } = slack;
  const amount: Step = {
    what: 'Slack: how much shorter it lies than pulled tight',
    ...(told ? {} : { how: `not told; ${percent(slack.amount.low)} to ${percent(slack.amount.high)} may be` }),
    value: percent(compression),
    ...(told ? {} : { source: slack.citation }),
  };
  const nearest = slack.nearestTested;
  const factor = slack.factor(values).toFixed(2);
  const what = 'Correction for slack';
  const source = ductMethods['flex-correction'].citation;
  if (slack.kind === 'foil-flex') {
    const how = 'no test of squeezed foil flex is published: 1 is taken, and its high end takes the rule for flex';
    return [amount, { what, how, value: factor, source: ownWorking }];
  }
  if (Math.abs(nearest - diameter) < 1e-9) return [amount, { what, how: rule(diameter), value: factor, source }];
  return [
    amount,
    {
      what: `Published rule at ${size(nearest)}, the nearest size tested (diameter in m)`,
      how: rule(nearest),
      value: publishedFlexFactor({ compression, diameter: nearest }).toFixed(2),
      source,
    },
    {
      what: `The same rule carried to ${size(diameter)}, which no test covers`,
      how: rule(diameter),
      value: publishedFlexFactor({ compression, diameter }).toFixed(2),
      source: ownWorking,
    },
    {
      what,
      how: `${percent(share)} of the way from the one to the other: a judgment, since neither is tested`,
      value: factor,
      source: ownWorking,
    },
  ];
}

/** The working of every part of the run: what it loses and how that comes about. */
export function lossSteps(delivery: Delivery, units: UnitSystem): Step[] {
  const { ready, losses } = delivery;
  const flow = cubicMetresPerSecond(delivery.airflow.typical);
  const steps: Step[] = [];
  let lastDiameter = 0;
  ready.pieces.forEach((piece, index) => {
    if (piece.diameter !== lastDiameter) steps.push(...velocitySteps(flow, piece.diameter, ready.air, units));
    lastDiameter = piece.diameter;
    const made = piece.piece(ready.typical);
    const velocity = ductVelocity({ airflow: flow, diameter: piece.diameter });
    const pressure = velocityPressureText(velocityPressure(velocity, ready.air.density), units);
    const value = finePressure(losses[index] as Pascals, units);
    const what = piece.label(units);
    if (made.kind === 'duct') {
      const { diameter, length, pressureFactor } = made;
      const friction = frictionSteps(made, delivery, velocity, piece, units);
      const factor = friction.at(-1)?.value ?? '';
      const slack = piece.slack ? slackSteps(piece.slack, diameter, ready.typical, units) : [];
      const times = slack.length === 0 ? '' : ` × ${pressureFactor.toFixed(2)}`;
      const ofIt =
        units === 'metric'
          ? `${length.toFixed(2)} m ÷ ${diameter.toFixed(4)} m`
          : `${(length / foot).toFixed(2)} ft ÷ ${(diameter / foot).toFixed(4)} ft`;
      steps.push(...[...friction, ...slack], {
        what,
        how: `${factor} × ${ofIt} × ${pressure}${times}`,
        value,
        source: ductMethods.friction.citation,
      });
    } else if (made.kind === 'loss') {
      const coefficient = made.coefficient.toFixed(2);
      const how = piece.coefficientSum?.(units);
      steps.push(
        {
          what: `Loss coefficient of the ${what}`,
          ...(how === undefined ? {} : { how }),
          value: coefficient,
          source: piece.citation,
        },
        { what, how: `${coefficient} × ${pressure}`, value, source: ductMethods['loss-coefficients'].citation },
      );
    }
  });
  if (delivery.doorLoss > 0 && ready.path.door) steps.push(doorStep(delivery, ready.path.door, units));
  return steps;
}

/** What the slot under the door takes, in the units of the formula. */
function doorStep({ ready, airflow, doorLoss }: Delivery, door: DoorGap, units: UnitSystem): Step {
  const { area, dischargeCoefficient } = doorGapOpening(door);
  return {
    what: 'Gap under the door',
    how: `${ready.air.density.toFixed(3)} kg/m³ ÷ 2 × (${airflow.typical.toPrecision(4)} m³/s ÷ (${dischargeCoefficient} × ${area.toPrecision(4)} m²))² = ${doorLoss.toFixed(1)} Pa`,
    value: finePressure(doorLoss, units),
    source: moistureMethods.orifice.citation,
  };
}
