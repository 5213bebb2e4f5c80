import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import { ask, type Interview, take, together } from '#interview/interview.ts';
import type { LocalExhaustCodeId } from '#knowledge/required-airflow.ts';
import type { Estimate } from '#quantity/estimate.ts';
import { money } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, metres, type Watts } from '#quantity/units.ts';
import { buildingCodeEdition } from './questions/codes.ts';
import {
  degreeDays,
  electricityPrice,
  fanWatts,
  heatingEfficiency,
  heatingPrice,
  hoursPerDay,
} from './questions/cost.ts';
import { doorGap, doorWidth } from './questions/door.ts';
import { altitude } from './questions/duct.ts';
import { fanCurve } from './questions/fan.ts';
import { type CostQuestion, costResult } from './workings/cost.ts';
import { efficacyFinding, labelAirflow } from './workings/cost-efficacy.ts';
import { askNextFinding, fanEnergyFinding, heatLostFinding, runningCostFinding } from './workings/cost-findings.ts';
import { deliveredInterview, deliveredTakes } from './workings/delivered.ts';

interface CostInputs extends CostQuestion {
  readonly delivered: CubicMetresPerSecond;
  readonly label: CubicMetresPerSecond | null;
  /** `null` where nobody knows the watts: then nothing is judged by them. */
  readonly labelWatts: Estimate<Watts> | null;
  readonly code: LocalExhaustCodeId;
}

function* costInterview(): Interview<CostInputs> {
  const delivered = yield* deliveredInterview();
  const power = yield* ask(fanWatts);
  const [hours, days, electric, fuel, efficiency] = yield* together(
    'offer',
    hoursPerDay,
    degreeDays,
    electricityPrice,
    heatingPrice,
    heatingEfficiency,
  );
  const height = yield* take(altitude);
  const fan = yield* take(fanCurve);
  const code = yield* take(buildingCodeEdition);
  return {
    airflow: delivered.airflow.high,
    delivered: delivered.airflow.typical,
    label: fan.known ? labelAirflow(fan.value) : null,
    watts: power.value,
    labelWatts: power.known ? power.value : null,
    hoursPerDay: hours.value,
    degreeDays: days.value,
    electricityPrice: electric.value,
    heatPrice: fuel.value,
    heatingEfficiency: efficiency.value,
    altitude: height.value ?? metres(0),
    code: code.value,
  };
}

function answer(inputs: CostInputs, { units }: Telling): Reply {
  const result = costResult(inputs);
  const { labelWatts, label, delivered, code } = inputs;
  const next = askNextFinding(result, units);
  return {
    headline: `Running this fan costs about ${money.show(result.total.typical, units)} a year, an upper bound for heating only.`,
    findings: [
      runningCostFinding(result, units),
      heatLostFinding(result, units),
      fanEnergyFinding(result, units),
      ...(labelWatts === null || (label ?? delivered) === 0
        ? []
        : [
            efficacyFinding(
              { watts: labelWatts.typical, airflow: label ?? delivered, fromLabel: label !== null, code },
              units,
            ),
          ]),
      ...(next ? [next] : []),
    ],
    suggestions: [{ label: 'How long must it run?', command: 'runtime' }],
  };
}

const cost: AnswerCommand<CostInputs> = {
  kind: 'answer',
  name: 'cost',
  summary: 'What a year of running the fan costs, in electricity and in heat, as an upper bound.',
  example:
    'delivered-airflow="80 cfm" fan-watts=28 hours-per-day=1 degree-days=5000 electricity-price=0.16 heating-price=1.40',
  takes: [
    ...deliveredTakes,
    doorWidth,
    doorGap,
    fanWatts,
    hoursPerDay,
    degreeDays,
    electricityPrice,
    heatingPrice,
    heatingEfficiency,
    altitude,
    buildingCodeEdition,
  ],
  interview: costInterview,
  answer,
};

export default cost;
