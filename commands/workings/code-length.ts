import { allowedDuctLength } from '#engine/duct/allowed-length.ts';
import { airflowAt } from '#engine/fan/fan-curve.ts';
import type { Finding } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { ductLengthTables } from '#knowledge/duct-length-table.ts';
import { ducts } from '#knowledge/ducts.ts';
import { airflow, ductDiameter, ductLength } from '#quantity/kinds.ts';
import { within } from '#quantity/meets.ts';
import { type CubicMetresPerSecond, type Metres, metres } from '#quantity/units.ts';
import { diameterAt } from '../questions/duct-run-reading.ts';
import type { DuctPart, DuctRun } from '../questions/run-parts.ts';
import { citations } from './citations.ts';
import type { ReadyPath } from './delivery.ts';

const table = ductLengthTables.irc;

/** The line of the working that is about the length of one run. */
export const codeLengthOfRun = 'Length of duct in the run';

const counted = (elbows: number): string => `${elbows === 0 ? 'no' : elbows} ${elbows === 1 ? 'elbow' : 'elbows'}`;

const isElbow = (id: string): boolean => id.startsWith('elbow-');

/** An eighth of a turn counts as half an elbow: own reading, the table speaks of elbows only. */
const elbowsIn = ({ parts }: DuctRun): number =>
  Math.ceil(
    parts.reduce((sum, part) => {
      if (part.part !== 'fitting' || !isElbow(part.fitting)) return sum;
      return sum + part.count * (part.fitting.startsWith('elbow-45') ? 0.5 : 1);
    }, 0),
  );

/** The code's own table, beside what the physics says. Its verdict is for the narrowest, roughest duct in the run. */
export function codeLengthFinding(ready: ReadyPath, units: UnitSystem): Finding {
  const { run } = ready.path;
  const fanAtTable = airflowAt(ready.curve(ready.typical), table.ratingPressure);
  const lengths = run.parts.flatMap((part, index) =>
    part.part === 'duct' ? [{ part, diameter: diameterAt(run.parts, index) as Metres }] : [],
  );
  const total = metres(lengths.reduce((sum, { part }) => sum + part.length.typical, 0));
  const elbows = elbowsIn(run);
  const fan = airflow.showShort(fanAtTable as CubicMetresPerSecond, units);
  const base = { id: 'code-duct-length', sources: citations(table.citation) } as const;
  if (lengths.length === 0) {
    return {
      ...base,
      weight: 'advice',
      says: 'The code’s length table needs a length of duct; this run has none.',
      working: [],
    };
  }
  const limits = lengths.map(({ part, diameter }) => ({
    part,
    diameter,
    limit: limitFor(part, diameter, fanAtTable, elbows),
  }));
  const strictest = limits.reduce((least, each) => (strictness(each.limit) < strictness(least.limit) ? each : least));
  const { limit } = strictest;
  const of = `${ductDiameter.showShort(strictest.diameter, units)} ${ducts[strictest.part.kind].tableColumn === 'flex' ? 'flex' : 'smooth'} duct`;
  const exception =
    'The table does not bind where the airflow is measured after the work or the fan maker’s own duct rules are kept.';
  const working = [
    { what: 'The fan at 0.25 in. w.g.', value: airflow.show(fanAtTable as CubicMetresPerSecond, units) },
    { what: codeLengthOfRun, value: ductLength.show(total, units) },
    { what: 'Elbows counted', value: `${elbows}, each takes ${ductLength.showShort(table.lengthPerElbow, units)}` },
    ...(limit.found
      ? [
          {
            what: `Printed for ${of}, ${airflow.showShort(limit.column, units)} column`,
            value: printed(limit.printed, units),
            source: table.citation,
          },
          {
            what: 'Left after elbows',
            ...(typeof limit.printed === 'number' && elbows > 0
              ? {
                  how: `${printed(limit.printed, units)} − ${elbows} × ${ductLength.showShort(table.lengthPerElbow, units)}`,
                }
              : {}),
            value: printed(limit.allowed, units),
          },
        ]
      : []),
  ];
  if (!limit.found) {
    return {
      ...base,
      weight: 'advice',
      says: `The code’s length table has no cell for ${of} with a fan of ${fan}: ${limit.why}. ${exception}`,
      working,
    };
  }
  const value = (allowed: Metres | null, shown: string) => ({ number: allowed, unit: ductLength.siUnit, shown });
  if (limit.allowed === 'any') {
    return {
      ...base,
      weight: 'good',
      says: `The code’s table sets no limit for ${of} with this fan.`,
      value: value(null, 'no limit'),
      working,
    };
  }
  if (limit.allowed === 'none') {
    return {
      ...base,
      weight: 'caution',
      says: `The code’s table does not allow ${of} with a fan of ${fan} and ${counted(elbows)}, at any length. ${exception}`,
      value: value(metres(0), 'not allowed'),
      working,
    };
  }
  const fits = within(total, limit.allowed);
  return {
    ...base,
    weight: fits ? 'good' : 'caution',
    says: `The code’s table allows ${ductLength.show(limit.allowed, units)} of ${of} with this fan and ${counted(elbows)}; this run has ${ductLength.showShort(total, units)}${fits ? '' : `, too long. ${exception}`}${fits ? '.' : ''}`,
    value: value(limit.allowed, ductLength.show(limit.allowed, units)),
    working,
  };
}

type Limit = ReturnType<typeof limitFor>;

const limitFor = (part: DuctPart, diameter: Metres, fan: CubicMetresPerSecond, elbows: number) =>
  allowedDuctLength({ table, duct: ducts[part.kind].tableColumn, diameter, airflow: fan, elbows });

const strictness = (limit: Limit): number => {
  if (!limit.found) return -1;
  return limit.allowed === 'none' ? 0 : limit.allowed === 'any' ? Number.POSITIVE_INFINITY : limit.allowed;
};

const printed = (limit: 'any' | 'none' | Metres, units: UnitSystem): string =>
  limit === 'any' ? 'no limit' : limit === 'none' ? 'not allowed' : ductLength.show(limit, units);
