import power from '#commands/power.ts';
import { once } from './talked.ts';

/** A job where nothing is open and nothing stops, as far as answers go. */
export const settled: Readonly<Record<string, string>> = {
  'unit-kind': 'fan-only',
  'fan-place': 'elsewhere',
  'insulation-near': 'clear',
  'control-wanted': 'countdown-timer',
  'circuit-serves': 'this-unit-only',
  'switch-controls': 'fan-only',
  'switch-places': 'one',
  'control-needs': 'neutral',
  'control-marking': 'motor-rated',
  'control-output': 'relay-or-mechanical',
  'motor-kind': 'ac',
  'control-place': 'outside',
  'cable-work': 'none',
  'label-wire-temperature': 'none-given',
  'fan-ground': 'proven',
  'switch-box-neutral': 'same-circuit',
  'switch-box-ground': 'yes',
  'wiring-kind': 'copper-cable',
  'wiring-era': '1985-on',
  'trouble-signs': 'none',
  'who-wires': 'licensed-electrician',
};
export const words = (facts: Readonly<Record<string, string>>) => Object.entries(facts).map((pair) => pair.join('='));
export const job = (facts: Readonly<Record<string, string>>, ...more: readonly string[]) =>
  once(power, ...words(facts), ...more);
