import { type DuctInputs, ductFindings } from '#commands/duct.ts';
import { readDuctRun } from '#commands/questions/duct-run-reading.ts';
import { fanCurve } from '#commands/questions/fan.ts';
import type { Reading, UnitSystem } from '#interview/question.ts';
import { altitude, ductDiameter } from '#quantity/kinds.ts';
import { metres } from '#quantity/units.ts';

/** What a reading gave; a test that writes what cannot be read is mistaken. */
export function valueIn<Value>(reading: Reading<Value>): Value {
  if ('rejected' in reading) throw new Error(reading.rejected);
  return reading.value;
}

interface Written {
  readonly fan?: string;
  readonly collar?: string;
  readonly run: string;
  readonly altitude?: string;
}

/** Two certified points, and what an 80 cfm fan might have: an invented fan. */
export const inventedFan = '96@0 84@0.1 66@0.25 0@0.5';

/** What somebody wrote, as the command takes it. */
const inputsFrom = (written: Written, units: UnitSystem = 'inch-pound'): DuctInputs => ({
  fan: valueIn(fanCurve.read(written.fan ?? inventedFan, units)),
  setting: null,
  selector: [],
  collar: written.collar === undefined ? null : valueIn(ductDiameter.read(written.collar, units)),
  run: valueIn(readDuctRun(written.run, units)),
  needed: null,
  altitude: written.altitude === undefined ? metres(0) : valueIn(altitude.read(written.altitude, units)),
  door: undefined,
  sones: null,
  continuous: false,
});

/** Everything the command finds, and the delivery behind it. */
export const found = (written: Written, units: UnitSystem = 'inch-pound') =>
  ductFindings(inputsFrom(written, units), { units });

/** The most likely airflow, in cubic metres per second. */
export const flow = (written: Written, units: UnitSystem = 'inch-pound'): number =>
  found(written, units).result.airflow.typical;
