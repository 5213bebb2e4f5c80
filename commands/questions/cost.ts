import { estimated } from '#interview/quantities.ts';
import type { Question, Reading, UnitSystem } from '#interview/question.ts';
import { energyDefaults } from '#knowledge/energy.ts';
import { type Estimate, mapEstimate } from '#quantity/estimate.ts';
import { percentageOf } from '#quantity/kind-makers.ts';
import {
  degreeDays as degreeDaysKind,
  electricityPrice as electricityPriceKind,
  fanPower,
  hoursPerDay as hoursPerDayKind,
  money,
} from '#quantity/kinds.ts';
import { toSi } from '#quantity/unit-factors.ts';
import { ratio } from '#quantity/units.ts';
import { loadQuestions } from '../words/load-questions.ts';

export const fanWatts = estimated({
  id: 'fan-watts',
  words: { spanish: loadQuestions['fan-watts'] },
  prompt: 'How many watts does the fan draw? The label says; leave the light out.',
  why: 'Watts and hours make the electricity; watts and airflow tell whether the fan is thrifty enough for the code.',
  brief: 'Watts the fan draws, without its light',
  kind: fanPower,
  whenUnknown: {
    value: { low: fanPower.from(5, 'W'), typical: fanPower.from(30, 'W'), high: fanPower.from(100, 'W') },
    because: 'Bath fans draw from 5 W for the thriftiest to 100 W for old ones; from memory.',
  },
});

export const hoursPerDay = estimated({
  id: 'hours-per-day',
  words: { spanish: loadQuestions['hours-per-day'] },
  prompt: 'How long does the fan run on an ordinary day?',
  why: 'Cost goes with the hours. /runtime tells how long each shower needs.',
  brief: 'Hours the fan runs a day',
  kind: hoursPerDayKind,
  whenUnknown: {
    value: energyDefaults['hours-per-day'].estimate,
    because: 'Half an hour for one quick shower, four for a family; own working.',
  },
});

export const degreeDays = estimated({
  id: 'degree-days',
  words: { spanish: loadQuestions['degree-days'] },
  prompt: 'How cold is the place? Its heating degree-days a year, base 65 °F or 18 °C.',
  why: 'Air thrown out has to be heated again; degree-days say how long and how cold the heating season is.',
  brief: 'Heating degree-days a year',
  kind: degreeDaysKind,
  whenUnknown: {
    value: energyDefaults['degree-days'].estimate,
    because: 'From the warm south to the cold north of the country; from memory.',
  },
});

export const electricityPrice = estimated({
  id: 'electricity-price',
  words: { spanish: loadQuestions['electricity-price'] },
  prompt: 'What does electricity cost? Off the bill.',
  why: 'It turns kilowatt-hours into money.',
  brief: 'Price of electricity for a kilowatt-hour',
  kind: electricityPriceKind,
  whenUnknown: {
    value: energyDefaults['electricity-price'].estimate,
    because: 'A guess from memory; read it off the bill.',
  },
});

/** What heat is bought by, and what one holds, in joules. */
const soldBy = {
  therm: { words: /(?:\/|\bper\b|\ba\b)?\s*th(?:er)?ms?\b/i, joules: toSi(1, 'therm', 'J') },
  kWh: { words: /(?:\/|\bper\b|\ba\b)?\s*(?:kwh|kilowatt[- ]?hours?)\b/i, joules: toSi(1, 'kW hour', 'J') },
  GJ: { words: /(?:\/|\bper\b|\ba\b)?\s*(?:gj|gigajoules?)\b/i, joules: toSi(1, 'GJ', 'J') },
} as const;
type HeatUnit = keyof typeof soldBy;

/** A price of heat as it was given, in money for one unit. */
export interface HeatPrice {
  readonly price: Estimate;
  readonly per: HeatUnit;
}

/** Money for each joule of fuel bought. */
export const perJoule = ({ price, per }: HeatPrice): Estimate =>
  mapEstimate(price, (each) => each / soldBy[per].joules);

const units = Object.keys(soldBy) as readonly HeatUnit[];
const accepts = 'a price for a therm, a kWh or a GJ, such as $1.40 per therm or $0.16 per kWh';

function readHeatPrice(text: string, system: UnitSystem): Reading<HeatPrice> {
  const said = text.normalize('NFKC').trim();
  if (said.length > 80) return { rejected: `That is too long. Give ${accepts}.` };
  const per = units.find((unit) => soldBy[unit].words.test(said));
  const amount = per ? said.replace(new RegExp(soldBy[per].words, 'gi'), ' ').replace(/\s+/g, ' ').trim() : said;
  const price = money.readEstimate(amount, system);
  if ('rejected' in price) return { rejected: `I need ${accepts}.` };
  return { value: { price: price.value, per: per ?? 'therm' } };
}

export const heatingPrice: Question<HeatPrice> = {
  id: 'heating-price',
  words: { spanish: loadQuestions['heating-price'] },
  prompt: 'What does the heating fuel cost? Off the bill, for a therm; for electric heat or a heat pump, for a kWh.',
  why: 'The air thrown out has to be heated again, with this.',
  accepts,
  brief: 'Price of heating fuel, for a therm, kWh or GJ',
  widget: { kind: 'text', placeholder: '$1.40 per therm' },
  whenUnknown: {
    value: { price: energyDefaults['heat-price'].estimate, per: 'therm' },
    because: 'A guess from memory; read it off the bill.',
  },
  read: readHeatPrice,
  show: ({ price, per }, system) => `${money.showEstimate(price, system)} per ${per}`,
};

const efficiencyKind = percentageOf({
  least: ratio(0.1),
  most: ratio(6),
  example: '80 %',
  noun: 'an efficiency',
});

const efficiency = estimated({
  id: 'heating-efficiency',
  words: { spanish: loadQuestions['heating-efficiency'] },
  prompt:
    'How much of the fuel’s energy reaches the rooms? The furnace’s efficiency; a heat pump gives more than it takes.',
  why: 'A poor furnace burns more for the same heat.',
  brief: 'Efficiency of the heating',
  kind: efficiencyKind,
  whenUnknown: {
    value: energyDefaults['heating-efficiency'].estimate,
    because: 'From an old boiler to a condensing furnace; from memory.',
  },
});

/** A bare number this small is a share, or how many times a heat pump gives back what it takes; nobody heats at 3 %. */
const mostTimes = 6;

export const heatingEfficiency: typeof efficiency = {
  ...efficiency,
  read(text, system) {
    const numbers = text.match(/\d*\.?\d+/g)?.map(Number) ?? [];
    const times = !text.includes('%') && numbers.length > 0 && numbers.every((each) => each <= mostTimes);
    const said = times ? text.replace(/\d*\.?\d+/g, (each) => `${Number((Number(each) * 100).toFixed(6))} %`) : text;
    return efficiency.read(said, system);
  },
};
