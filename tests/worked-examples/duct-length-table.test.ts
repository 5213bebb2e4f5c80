import { describe, expect, it } from 'vitest';
import { allowedDuctLength, modelledDuctLength } from '#engine/duct/allowed-length.ts';
import { hydraulicDiameter, rectangularHydraulicDiameter } from '#engine/duct/shape.ts';
import { type DuctColumn, ductLengthModel, ductLengthTables, type LengthLimit } from '#knowledge/duct-length-table.ts';
import {
  type DuctStatementId,
  ductDiameterRules,
  ductDistances,
  ductInsulation,
  ductMetal,
  ductSlopes,
  ductStatements,
  type TerminationEdition,
  terminationClearances,
} from '#knowledge/duct-rules.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Metres, metres, squareMetres } from '#quantity/units.ts';
import { checkRows, near, type Printed, si } from './duct-figures.ts';
import rows from './figures/duct-length-table.json' with { type: 'json' };

type PrintedCell = number | 'X' | 'NL';
interface Cell {
  readonly duct: DuctColumn;
  readonly diameter: Printed;
  readonly airflow: Printed;
}
const foot = si([1, 'ft']);
const length = (printed: Printed): Metres => metres(si(printed));
const place = ({ duct, diameter, airflow }: Cell) => ({
  duct,
  diameter: length(diameter),
  airflow: cubicMetresPerSecond(si(airflow)),
});

const shown = (limit: LengthLimit): PrintedCell => {
  if (limit === 'any') return 'NL';
  return limit === 'none' ? 'X' : Number((limit / foot).toFixed(6));
};

interface Place {
  readonly duct: DuctColumn;
  readonly diameter: Metres;
  readonly airflow: CubicMetresPerSecond;
}

function modelledFeet(where: Place): number {
  const { pressure, allowance, roughness, air } = ductLengthModel;
  return modelledDuctLength({ ...where, pressure, allowance, roughness: roughness[where.duct], air }) / foot;
}

/** The cell that straight duct and a 30 ft allowance would have printed. */
function modelledCell(where: Place): PrintedCell {
  const { shortestPrinted, longestPrinted } = ductLengthModel;
  const feet = modelledFeet(where);
  if (Math.round(feet) < Math.round(shortestPrinted / foot)) return 'X';
  return feet * foot > longestPrinted ? 'NL' : Math.round(feet);
}

describe('the prescriptive duct-length table, looked up and made again from first principles', () => {
  checkRows(rows, {
    cell: (row) => {
      const where = place(row.inputs as Cell);
      const looked = allowedDuctLength({ table: ductLengthTables.irc, ...where, elbows: 0 });
      expect(looked).toMatchObject({ found: true });
      if (looked.found) expect(shown(looked.allowed)).toBe(row.expected);
      expect(modelledCell(where)).toBe(row.expected);
      // An independent sum of the same model, printed to a hundredth of a foot.
      const { modelled } = row as typeof row & { modelled: number };
      near(modelledFeet(where), modelled, { absolute: 0.02 + 1e-4 * Math.abs(modelled) });
    },
    elbow: (row) => {
      const { lengthPerElbow, elbowsIncluded } = ductLengthTables.irc;
      near(lengthPerElbow, si(row.expected as Printed), row.tolerance);
      expect(elbowsIncluded).toBe(0);
    },
    noncircular: (row) => {
      const { width, height } = row.inputs as { width: Printed; height: Printed };
      const [a, b] = [length(width), length(height)];
      const round = hydraulicDiameter({ area: squareMetres(a * b), perimeter: metres(2 * (a + b)) });
      near(round, (4 * a * b) / (2 * (a + b)), row.tolerance);
      near(rectangularHydraulicDiameter({ width: a, height: b }), round, row.tolerance);
    },
    limits: (row) => {
      const { X, NL } = row.expected as { X: LengthLimit; NL: LengthLimit };
      const limitOf = (diameter: Printed) => {
        const looked = allowedDuctLength({
          table: ductLengthTables.irc,
          ...place({ duct: 'flex', diameter, airflow: [50, 'cfm'] }),
          elbows: 9,
        });
        return looked.found ? looked.allowed : looked.why;
      };
      expect(limitOf([3, 'in'])).toBe(X);
      expect(limitOf([8, 'in'])).toBe(NL);
    },
    washington: (row) => {
      const table = ductLengthTables['washington-2021'];
      const { elbowsIncluded, lengthPerElbow } = row.inputs as { elbowsIncluded: number; lengthPerElbow: Printed };
      expect(table.elbowsIncluded).toBe(elbowsIncluded);
      near(table.lengthPerElbow, si(lengthPerElbow), row.tolerance);
      for (const cell of row.expected as (Cell & { expected: PrintedCell })[]) {
        const looked = allowedDuctLength({ table, ...place(cell), elbows: elbowsIncluded });
        expect(looked, JSON.stringify(cell)).toMatchObject({ found: true });
        if (looked.found) expect(shown(looked.allowed), JSON.stringify(cell)).toBe(cell.expected);
      }
    },
    statement: (row) => {
      const { id } = row.inputs as { id: DuctStatementId };
      expect(ductStatements[id].citation.verified).toBe(row.verified);
    },
    statements: (row) => {
      for (const id of (row.inputs as { ids: DuctStatementId[] }).ids) {
        expect(ductStatements[id].citation.verified).toBe(row.verified);
      }
    },
    clearances: (row) => {
      const { operableOnly, factoryCombinationTerminal, ...expected } = row.expected as {
        readonly operableOnly: boolean;
        readonly factoryCombinationTerminal?: boolean;
      } & Partial<
        Record<
          'propertyLine' | 'openings' | 'mechanicalIntake' | 'intakeExceptionAbove' | 'openingExceptionAbove',
          Printed
        >
      >;
      for (const edition of (row.inputs as { editions: TerminationEdition[] }).editions) {
        const clearances = terminationClearances[edition];
        for (const key of ['propertyLine', 'openings', 'mechanicalIntake', 'intakeExceptionAbove'] as const) {
          near(clearances[key], si(expected[key] as Printed), row.tolerance);
        }
        expect(clearances.openingExceptionAbove).toEqual(
          expected.openingExceptionAbove && length(expected.openingExceptionAbove),
        );
        expect(clearances.openingsThatCount.startsWith('operable')).toBe(operableOnly);
        expect(clearances.factoryCombinationTerminal).toBe(factoryCombinationTerminal);
      }
    },
    distances: (row) => {
      for (const [id, printed] of Object.entries(row.expected as Record<keyof typeof ductDistances, Printed>)) {
        near(ductDistances[id as keyof typeof ductDistances].distance, si(printed), row.tolerance);
      }
    },
    washingtonDuct: (row) => {
      near(
        ductInsulation['washington-2021'].resistance,
        si((row.expected as { insulation: Printed }).insulation),
        row.tolerance,
      );
      expect(ductStatements['free-area'].citation.source).toBe('wa-irc-2021');
    },
    workSpecification: (row) => {
      const expected = row.expected as { insulation: Printed; strap: Printed; bendRadius: number; gauge: number };
      near(ductInsulation.programme.resistance, si(expected.insulation), row.tolerance);
      near(ductDistances['strap-width-flex'].distance, si(expected.strap), row.tolerance);
      expect(ductDiameterRules['bend-radius'].diameters).toBe(expected.bendRadius);
      expect(ductMetal['duct-gauge'].gauge).toBe(expected.gauge);
    },
    ductChapter: (row) => {
      const expected = row.expected as { gauge: number; support: Printed };
      expect(ductMetal['duct-gauge-code']).toMatchObject({ gauge: expected.gauge, citation: { verified: false } });
      near(ductDistances['support-rigid'].distance, si(expected.support), row.tolerance);
      near(ductDistances['support-rigid-irc-2015'].distance, si(expected.support), row.tolerance);
    },
    olderFlexStandard: (row) => {
      const expected = row.expected as Record<'support' | 'sag' | 'strap', Printed>;
      near(ductDistances['support-flex-older'].distance, si(expected.support), row.tolerance);
      near(ductDistances['strap-width-flex-older'].distance, si(expected.strap), row.tolerance);
      near(ductSlopes['sag-flex'].slope, si(expected.sag), row.tolerance);
    },
  });

  it('every printed cell is there: two kinds of duct, six sizes, eight airflows', () => {
    expect(Object.values(rows).filter(({ check }) => check === 'cell')).toHaveLength(96);
    expect(ductLengthTables.irc.rows.flatMap(({ cells }) => cells).filter((cell) => cell !== undefined)).toHaveLength(
      96,
    );
    expect(ductLengthTables.irc.airflows).toHaveLength(8);
  });

  // IRC Table M1504.2: handbook roughness at the printed length plus 30 ft gives 0.245 in. w.g. smooth, 0.210 flex (own working).
  it.each([
    ['smooth', 0.0003, 0.245, 0.005],
    ['flex', 0.003, 0.21, 0.008],
  ] as const)('handbook roughness reads the %s column as a steady pressure', (duct, roughness, inches, room) => {
    for (const [id, row] of Object.entries(rows)) {
      if (row.check !== 'cell' || typeof row.expected !== 'number') continue;
      const cell = row.inputs as unknown as Cell;
      if (cell.duct !== duct) continue;
      const { allowance, air, pressure } = ductLengthModel;
      const wholeLength = row.expected * foot + allowance;
      const { airflow, diameter } = place(cell);
      const reach = modelledDuctLength({
        pressure,
        allowance: metres(0),
        diameter,
        roughness: length([roughness, 'ft']),
        airflow,
        air,
      });
      expect(Math.abs((0.25 * wholeLength) / reach - inches), id).toBeLessThanOrEqual(room);
    }
  });
});
