import { dryAirSpecificHeat } from '#engine/psychrometrics/moist-air.ts';
import type { Finding, Step, Value } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { airflowMethods } from '#knowledge/airflow.ts';
import { energySentences } from '#knowledge/energy.ts';
import { moistureMethods } from '#knowledge/moisture.ts';
import { ownWorking } from '#knowledge/sources.ts';
import type { Estimate } from '#quantity/estimate.ts';
import {
  airflow,
  degreeDays,
  electricityPrice,
  energy,
  fanPower,
  hoursPerDay,
  money,
  percentage,
} from '#quantity/kinds.ts';
import { fromSi, toSi } from '#quantity/unit-factors.ts';
import { heatingPrice } from '../questions/cost.ts';
import { citations } from './citations.ts';
import { type CostResult, joulesPerKilowattHour } from './cost.ts';

const kilowattHours = (joules: number): string => `${(joules / joulesPerKilowattHour).toFixed(1)} kWh`;
/** In a sum that goes on, so that rounding here does not show in its result. */
const fineKilowattHours = (joules: number): string => `${(joules / joulesPerKilowattHour).toFixed(3)} kWh`;
const hours = (time: number): string => `${Number((time / 3600).toFixed(3))} h`;

function energyValue({ low, typical, high }: Estimate, units: UnitSystem): Value {
  const exact = low === high;
  const usually = exact ? '' : `, usually ${energy.showRangeShort({ low, high }, units)}`;
  return {
    number: typical,
    unit: energy.siUnit,
    ...(exact ? {} : { low, high }),
    shown: `${energy.show(typical, units)} a year${usually}`,
  };
}

/** The electricity of a year. */
export function fanEnergyFinding({ question, fanEnergy }: CostResult, units: UnitSystem): Finding {
  const { watts, hoursPerDay: time } = question;
  return {
    id: 'fan-energy',
    weight: 'good',
    says: `The fan itself uses about ${energy.show(fanEnergy.typical, units)} of electricity a year.`,
    value: energyValue(fanEnergy, units),
    working: [
      { what: 'Watts the fan draws', value: fanPower.showEstimate(watts, units) },
      { what: 'Running time a day', value: hoursPerDay.showEstimate(time, units) },
      {
        what: 'Electricity in a year',
        how: `${Number(watts.typical.toFixed(2))} W × ${hours(time.typical)} × 365 days ÷ 1000`,
        value: kilowattHours(fanEnergy.typical),
        source: ownWorking,
      },
    ],
    sources: citations(ownWorking),
  };
}

/** The heat of a year, with the sum in the crew's own units. */
function heatSteps({ question, density, heat }: CostResult, units: UnitSystem): Step[] {
  const { airflow: flow, degreeDays: days, hoursPerDay: time } = question;
  const perFlow = density * dryAirSpecificHeat;
  const { citation } = moistureMethods['exhaust-heat'];
  const given: Step[] = [
    { what: 'Airflow, at the high end of what may really move', value: airflow.show(flow, units) },
    { what: 'Heating degree-days a year', value: degreeDays.showEstimate(days, units) },
    { what: 'Running time a day', value: hoursPerDay.showEstimate(time, units) },
  ];
  if (units === 'metric') {
    return [
      ...given,
      {
        what: 'Heat thrown out in a year',
        how: `${density.toFixed(4)} kg/m³ × ${dryAirSpecificHeat} J/(kg·K) × ${flow.toFixed(5)} m³/s × ${days.typical.toFixed(0)} K·d × ${(time.typical / 3600).toFixed(2)} h × 3600 s`,
        value: `${(heat.typical / 1e6).toFixed(1)} MJ, which is ${kilowattHours(heat.typical)}`,
        source: citation,
      },
    ];
  }
  const coefficient = fromSi(perFlow * toSi(1, 'cfm', 'm^3/s') * (5 / 9), 'BTU/hour', 'W');
  return [
    ...given,
    {
      what: 'Heat one cfm takes away for each °F: 60 minutes × weight × specific heat of air',
      how: `60 × ${fromSi(density, 'lb/ft^3', 'kg/m^3').toFixed(5)} pounds a cubic foot × ${fromSi(dryAirSpecificHeat, 'BTU/(lb degR)', 'J/(kg K)').toFixed(5)} Btu a pound for each °F`,
      value: `${coefficient.toFixed(5)} Btu/h`,
      source: citation,
    },
    {
      what: 'Heat thrown out in a year',
      how: `${coefficient.toFixed(5)} × ${fromSi(flow, 'cfm', 'm^3/s').toFixed(1)} cfm × ${fromSi(days.typical, 'degR day', 'K day').toFixed(0)} °F·d × ${hours(time.typical)}`,
      value: `${fromSi(heat.typical, 'BTU', 'J').toFixed(0)} Btu, which is ${kilowattHours(heat.typical)}`,
      source: citation,
    },
  ];
}

/** The heat that goes out with the air, as an upper bound. */
export function heatLostFinding(result: CostResult, units: UnitSystem): Finding {
  const bound = energySentences['heating-only'];
  const spread = energySentences['spread-evenly'];
  return {
    id: 'heat-lost',
    weight: 'good',
    says: `At most about ${energy.show(result.heat.typical, units)} of heat goes out with the air in a year. ${bound.says}`,
    value: energyValue(result.heat, units),
    working: heatSteps(result, units),
    sources: citations(moistureMethods['exhaust-heat'].citation, bound.citation, spread.citation),
  };
}

/** What a year costs, electricity and heat, as an upper bound for heating only. */
export function runningCostFinding({ question, bill, total, fanEnergy, heat }: CostResult, units: UnitSystem): Finding {
  const exact = total.low === total.high;
  const usually = exact ? '' : `, usually ${money.showRangeShort(total, units)}`;
  const { electricityPrice: electric, heatPrice, heatingEfficiency } = question;
  const price = heatPrice.price.typical;
  const soldPer = { therm: toSi(1, 'therm', 'J'), kWh: joulesPerKilowattHour, GJ: toSi(1, 'GJ', 'J') }[heatPrice.per];
  return {
    id: 'running-cost',
    weight: 'good',
    says: `A year costs ${exact ? 'at most ' : ''}about ${money.show(total.typical, units)}${usually}: ${money.showShort(bill.electricity, units)} of electricity and ${money.showShort(bill.heating, units)} of heat, an upper bound for heating only.`,
    value: {
      number: total.typical,
      unit: money.siUnit,
      ...(exact ? {} : { low: total.low, high: total.high }),
      shown: `${money.show(total.typical, units)} a year${usually}`,
    },
    working: [
      {
        what: 'Electricity',
        how: `${fineKilowattHours(fanEnergy.typical)} × ${electricityPrice.showShort(electric.typical, units)}`,
        value: `$${bill.electricity.toFixed(2)}`,
      },
      {
        what: 'Fuel to make up the heat',
        how: `${fineKilowattHours(heat.typical)} ÷ ${percentage.showShort(heatingEfficiency.typical, units)}`,
        value: `${kilowattHours(bill.fuel)}, which is ${(bill.fuel / soldPer).toFixed(4)} ${heatPrice.per}`,
      },
      {
        what: 'Heating',
        how: `${(bill.fuel / soldPer).toFixed(4)} ${heatPrice.per} × ${money.showShort(price, units)}`,
        value: `$${bill.heating.toFixed(2)}`,
      },
      {
        what: 'Together',
        how: `$${bill.electricity.toFixed(2)} + $${bill.heating.toFixed(2)}`,
        value: `$${bill.total.toFixed(2)}`,
        source: ownWorking,
      },
      {
        what: 'Prices',
        value: `${electricityPrice.showEstimate(electric, units)}; ${heatingPrice.show(heatPrice, units)}`,
      },
    ],
    sources: citations(ownWorking, energySentences['heating-only'].citation),
  };
}

/** The one figure that would narrow the cost most. */
export function askNextFinding({ telling }: CostResult, units: UnitSystem): Finding | undefined {
  if (telling === null) return undefined;
  const width = (amount: number) => money.showShort(amount, units);
  const settles = telling.width < telling.nowWidth / 100;
  return {
    id: 'measure-next',
    weight: 'advice',
    says: `To be surer, find out ${telling.what}: that alone ${settles ? 'settles it' : `narrows the band from ${width(telling.nowWidth)} wide to ${width(telling.width)}`}.`,
    working: [
      { what: 'As things are, the band is', value: `${width(telling.nowWidth)} wide` },
      { what: `With ${telling.what} known, the band is`, value: `${width(telling.width)} wide` },
    ],
    sources: citations(airflowMethods['likely-band'].citation),
  };
}
