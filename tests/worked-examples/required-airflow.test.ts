import { expect } from 'vitest';
import { airflowNeeded } from '#engine/airflow/airflow-needed.ts';
import {
  dwellingVentilation,
  dwellingVentilationByTable,
  intermittentFactor,
} from '#engine/airflow/dwelling-ventilation.ts';
import { airChangeAirflow, type Fixtures, fixtureAirflow, floorAreaAirflow } from '#engine/airflow/room-airflow.ts';
import {
  balancedShare,
  bathroomGuideline,
  bathroomGuidelineFigures,
  type DwellingFormulaId,
  dwellingFormulas,
  dwellingTable,
  type LocalExhaustCodeId,
  localExhaust,
  partTimeFactors,
  windowInstead,
} from '#knowledge/required-airflow.ts';
import { soundLimits } from '#knowledge/sound.ts';
import { fromSi, toSi } from '#quantity/unit-factors.ts';
import { cubicMetres, ratio, squareMetres } from '#quantity/units.ts';
import { agrees, type Check, cfm, feet, squareFeet, workedExamples } from './airflow-checks.ts';
import figures from './figures/required-airflow.json' with { type: 'json' };

interface RateGiven {
  readonly code: LocalExhaustCodeId;
  readonly room: 'bathroom' | 'toiletRoom' | 'kitchen';
  readonly running: 'intermittent' | 'continuous';
}

interface RoomGiven {
  readonly length: number;
  readonly width: number;
  readonly ceiling: number;
  readonly fixtures: Partial<Fixtures>;
  readonly compartment?: boolean;
}

interface DwellingGiven {
  readonly formula: DwellingFormulaId;
  readonly floorArea: readonly [number, string];
  readonly bedrooms: number;
}

const inCfm = (airflow: number): number => fromSi(airflow, 'cfm', 'm^3/s');

function rateOf({ code, room, running }: RateGiven) {
  const rates = localExhaust[code][room] as Partial<
    Record<RateGiven['running'], { inchPound: number; metric: number }>
  >;
  const rate = rates[running];
  if (rate === undefined) throw new TypeError(`${code} has no ${running} rate for a ${room}`);
  return rate;
}

function needOf({ length, width, ceiling, fixtures, compartment = false }: RoomGiven) {
  const code = localExhaust['irc-2021'].bathroom;
  return airflowNeeded({
    room: {
      area: squareMetres(feet(length) * feet(width)),
      ceilingHeight: feet(ceiling),
      fixtures: { toilet: 0, shower: 0, tub: 0, jettedTub: 0, ...fixtures },
      toiletCompartment: compartment,
      running: 'on demand',
    },
    code: { intermittent: code.intermittent.inchPound, continuous: code.continuous.inchPound },
    guideline: bathroomGuidelineFigures,
  });
}

const dwellingOf = ({ floorArea: [value, unit], bedrooms }: DwellingGiven) => ({
  floorArea: squareMetres(toSi(value, unit, 'm^2')),
  bedrooms,
});

function dwellingRate(given: DwellingGiven): number {
  const formula = dwellingFormulas[given.formula];
  const figuresOf = given.floorArea[1] === 'm^2' ? formula.metric : formula.inchPound;
  return dwellingVentilation({ dwelling: dwellingOf(given), ...figuresOf });
}

workedExamples('the airflow codes and guidelines ask for', figures, {
  'code rate': (check: Check<RateGiven>) => {
    const { inchPound, metric } = rateOf(check.given);
    agrees(fromSi(check.unit === 'cfm' ? inchPound : metric, check.unit, 'm^3/s'), check);
  },
  'listed pressure': (check: Check<{ code: LocalExhaustCodeId }>) =>
    agrees(fromSi(localExhaust[check.given.code].listedAt?.value ?? Number.NaN, check.unit, 'Pa'), check),
  'test standard': (check: Check<{ code: LocalExhaustCodeId }>) =>
    expect(localExhaust[check.given.code].testStandard?.name).toBe(check.expected),
  window: (check: Check<{ figure: 'glazing' | 'openableShare' }>) => {
    const { glazing, openableShare } = windowInstead['irc-2021'];
    agrees(check.given.figure === 'glazing' ? fromSi(glazing, 'ft^2', 'm^2') : openableShare, check);
  },
  'sound limit': (check: Check<{ figure: 'continuous' | 'demand' | 'exemptFrom' | 'remoteDuct' }>) => {
    const value = soundLimits[check.given.figure];
    agrees(check.unit === 'cfm' ? inCfm(value) : check.unit === 'ft' ? fromSi(value, 'ft', 'm') : value, check);
  },
  'dwelling formula': (check: Check<DwellingGiven>) =>
    agrees(fromSi(dwellingRate(check.given), check.unit, 'm^3/s'), check),
  'dwelling cell': (check: Check<DwellingGiven>) =>
    agrees(Math.round(Number(inCfm(dwellingRate(check.given)).toFixed(6))), check),
  'dwelling table': (check: Check<DwellingGiven>) =>
    agrees(
      inCfm(dwellingVentilationByTable({ dwelling: dwellingOf(check.given), table: dwellingTable }) ?? Number.NaN),
      check,
    ),
  'part-time factor': (check: Check<{ runPercent: number }>) => {
    const outcome = intermittentFactor({ runShare: ratio(check.given.runPercent / 100), table: partTimeFactors.table });
    agrees(outcome.found ? outcome.factor : Number.NaN, check);
  },
  'balanced share': (check) => agrees(balancedShare.value, check),
  'floor area alone': (check: Check<RoomGiven>) => {
    const { length, width } = check.given;
    const area = squareMetres(feet(length) * feet(width));
    agrees(inCfm(floorAreaAirflow({ area, perArea: bathroomGuidelineFigures.perArea })), check);
  },
  'airflow needed': (check: Check<RoomGiven>) => agrees(inCfm(needOf(check.given).needed), check),
  compartment: (check: Check<RoomGiven>) => {
    const { compartment } = needOf(check.given);
    agrees(inCfm(compartment?.own ?? Number.NaN), check);
    expect(inCfm(compartment?.mainRoom ?? Number.NaN)).toBeCloseTo(100, 6);
  },
  'one fixture': (check: Check<{ fixture: keyof Fixtures }>) => {
    const fixtures = { toilet: 0, shower: 0, tub: 0, jettedTub: 0, [check.given.fixture]: 1 };
    agrees(inCfm(fixtureAirflow({ fixtures, rates: bathroomGuidelineFigures.fixtures })), check);
  },
  'minutes after bathing': (check) => agrees(bathroomGuideline.runAfterBathing.value / 60, check),
  'door clearance': (check) => agrees(fromSi(bathroomGuideline.doorClearance.value, 'in', 'm'), check),
  'air changes': (check: Check<RoomGiven>) => {
    const { length, width, ceiling } = check.given;
    const volume = cubicMetres(squareFeet(length * width) * feet(ceiling));
    agrees(inCfm(airChangeAirflow({ volume, airChangesPerHour: bathroomGuidelineFigures.airChangesPerHour })), check);
  },
  overrun: (check: Check<{ code: LocalExhaustCodeId }>) =>
    agrees((localExhaust[check.given.code].overrun?.value ?? Number.NaN) / 60, check),
  'one cfm': (check) => agrees(fromSi(cfm(1), check.unit, 'm^3/s'), check),
});
