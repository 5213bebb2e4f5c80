import { expect } from 'vitest';
import { doorGapNeeded, doorGapOpening, doorGapVelocity, doorPressure } from '#engine/pressure/door-gap.ts';
import { houseDepressurisation, leakageArea, leakageFromAirChanges } from '#engine/pressure/house-leakage.ts';
import { openingAirflow, openingPressure, sharpEdgedDischargeCoefficient } from '#engine/pressure/orifice.ts';
import { doorPressureLimits, leakageAreaDefinitions, makeUpFigures } from '#knowledge/make-up.ts';
import { fromSi } from '#quantity/unit-factors.ts';
import {
  cubicMetres,
  cubicMetresPerSecond,
  kilogramsPerCubicMetre,
  metres,
  pascals,
  ratio,
  squareMetres,
} from '#quantity/units.ts';
import file from './figures/transfer-air.json' with { type: 'json' };
import { expected, given, held, inSi, near, type Row, type RowFile, testEveryRow, tolerance } from './moisture-rows.ts';

/** The rows are worked out for air of 1.2 kg/m³. */
const density = kilogramsPerCubicMetre(1.2);
const airflow = (row: Row, name = 'cfm') => cubicMetresPerSecond(inSi.airflow(given(row, name)));
const width = (row: Row) => metres(inSi.inches(given(row, 'door_width_in')));
const gap = (row: Row) => ({ width: width(row), height: metres(inSi.inches(given(row, 'gap_in'))) });
const inSquareInches = (area: number) => fromSi(area, 'in^2', 'm^2');
const rel = (row: Row) => ({ rel: tolerance(row, 'rel') });

const house = (row: Row, cfm50: number) => ({
  airflowAt50: cubicMetresPerSecond(inSi.airflow(cfm50)),
  exponent: ratio(given(row, 'n')),
});

testEveryRow('make-up air', file as unknown as RowFile, [
  [
    // A fan cannot hold its open-door flow against such pressures: these test the equation and predict nothing.
    /^undercut-\d/,
    'the orifice equation under a door (not a prediction)',
    (row) => {
      const flow = { airflow: airflow(row), density };
      expect(given(row, 'rho')).toBe(density);
      expect(given(row, 'Cd')).toBe(sharpEdgedDischargeCoefficient);
      near(inSquareInches(doorGapOpening(gap(row)).area), expected(row, 'area_in2'), rel(row));
      near(doorPressure(gap(row), flow), expected(row, 'dP_Pa'), rel(row));
      near(fromSi(doorPressure(gap(row), flow), 'inH2O', 'Pa'), expected(row, 'dP_inwg'), rel(row));
      near(fromSi(doorGapVelocity(gap(row), flow.airflow), 'fpm', 'm/s'), expected(row, 'velocity_fpm'), rel(row));
    },
  ],
  [
    /^gap-need/,
    'the gap that keeps the pressure to a limit',
    (row) => {
      const needed = doorGapNeeded({
        airflow: airflow(row),
        limit: pascals(given(row, 'limit_Pa')),
        density,
        doorWidth: width(row),
      });
      near(fromSi(needed, 'in', 'm'), expected(row, 'gap_in'), rel(row));
      near(inSquareInches(needed * width(row)), expected(row, 'area_in2'), rel(row));
    },
  ],
  [
    /^const-2610/,
    'the constant 2610 stands for another discharge coefficient than 0.60',
    (row) => {
      const squareFoot = { area: squareMetres(fromSi(1, 'm^2', 'ft^2')), dischargeCoefficient: ratio(1) };
      const air = { pressure: pascals(fromSi(1, 'Pa', 'inH2O')), density: kilogramsPerCubicMetre(1.2014) };
      const perfect = fromSi(openingAirflow(squareFoot, air), 'cfm', 'm^3/s');
      near(2610 / perfect, expected(row, 'Cd_implied'), rel(row));
      near(sharpEdgedDischargeCoefficient * perfect, expected(row, 'Cd0.60_constant'), rel(row));
    },
  ],
  [
    /^const-0.827/,
    'the constant 0.827 stands for another discharge coefficient than 0.60',
    (row) => {
      const squareMetre = { area: squareMetres(1), dischargeCoefficient: ratio(1) };
      const perfect = openingAirflow(squareMetre, { pressure: pascals(1), density });
      near(0.827 / perfect, expected(row, 'Cd_implied'), rel(row));
      near(sharpEdgedDischargeCoefficient * perfect, expected(row, 'Cd0.60_constant'), rel(row));
    },
  ],
  [
    /^gba-30x1/,
    'air under a door against a trade editor',
    (row) => {
      const flow = openingAirflow(doorGapOpening(gap(row)), { pressure: pascals(given(row, 'dP_Pa')), density });
      near(fromSi(flow, 'cfm', 'm^3/s'), expected(row, 'cfm'), rel(row));
    },
  ],
  [/^(gba-30x1|manual-d|uk-undercut|hvi|face-velocity)/, 'figures held as printed', held(makeUpFigures)],
  [
    /^(fl-2.5Pa|es-3Pa)/,
    'pressure limits held as printed',
    (row) => {
      const limit = doorPressureLimits[row.limit as 'florida-room' | 'programme-room'];
      expect(limit.value).toBe(expected(row, 'Pa'));
      expect(limit.citation.verified).toBe(row.verified);
    },
  ],
  [
    /^uk-15Ls/,
    'the English undercut at its own exhaust rate',
    (row) => {
      const opening = {
        area: squareMetres(given(row, 'area_mm2') / 1e6),
        dischargeCoefficient: ratio(given(row, 'Cd')),
      };
      const flow = { airflow: cubicMetresPerSecond(given(row, 'Q_L_s') / 1000), density };
      near(openingPressure(opening, flow), expected(row), rel(row));
    },
  ],
  [
    /^house-dp/,
    'how far fans pull a house down',
    (row) =>
      near(
        houseDepressurisation(house(row, given(row, 'CFM50')), airflow(row, 'net_exhaust_cfm')),
        expected(row),
        rel(row),
      ),
  ],
  [
    /^house-150-231/,
    'a very tight house from a builders’ forum (inputs only)',
    (row) => {
      const volume = cubicMetres(inSi.cubicFeet(given(row, 'volume_ft3')));
      const airflowAt50 = leakageFromAirChanges(volume, ratio(given(row, 'ACH50')));
      near(fromSi(airflowAt50, 'cfm', 'm^3/s'), expected(row, 'CFM50'), rel(row));
      const leakage = { airflowAt50, exponent: ratio(given(row, 'n')) };
      near(houseDepressurisation(leakage, airflow(row, 'net_exhaust_cfm')), expected(row, 'dP_Pa'), rel(row));
    },
  ],
  [
    /^(ela4|eqla10)/,
    'all the cracks of a house as one hole',
    (row, id) => {
      const definition = leakageAreaDefinitions[id === 'ela4' ? 'ela' : 'eqla'];
      expect(definition.pressure).toBe(given(row, 'dP_ref'));
      expect(definition.dischargeCoefficient).toBe(given(row, 'Cd'));
      near(
        inSquareInches(leakageArea(house(row, given(row, 'CFM50')), { ...definition, density })),
        expected(row),
        rel(row),
      );
    },
  ],
  [
    /^ach50/,
    'leakage from air changes',
    (row) => {
      const volume = cubicMetres(inSi.cubicFeet(given(row, 'volume_ft3')));
      const airflowAt50 = leakageFromAirChanges(volume, ratio(given(row, 'ACH50')));
      near(fromSi(airflowAt50, 'cfm', 'm^3/s'), expected(row, 'CFM50'), rel(row));
    },
  ],
]);
