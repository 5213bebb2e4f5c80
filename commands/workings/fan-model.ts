import { type FanCurve, fanCurve, reshapeFanCurve, shutOffPressure } from '#engine/fan/fan-curve.ts';
import { fanChanged, settingSpeed } from '#engine/fan/fan-laws.ts';
import type { FanDescription } from '#engine/fan/fan-points.ts';
import { typicalShape } from '#engine/fan/fan-shape.ts';
import type { UnitSystem } from '#interview/question.ts';
import { fanKinds, ratingPressures } from '#knowledge/fans.ts';
import { airflow } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, type Pascals, type Ratio, ratio } from '#quantity/units.ts';
import type { FanAnswer, SettingAnswer } from '../questions/fan.ts';
import type { Parameters } from './parameters.ts';

/** One speed of a fan: its own rated points, or the fan's curve slowed to an airflow on its selector. */
export interface FanSetting {
  /** "80 cfm", "low", or empty for a fan of one speed. */
  name(units: UnitSystem): string;
  readonly description: FanDescription;
  /** The airflow the selector is set to, at the pressure of the carton number; absent for the description's own speed. */
  readonly slowedTo?: CubicMetresPerSecond;
}

/** A fan ready for sampling: its curve for one set of values of what the label leaves open. */
export interface FanModel {
  curve(values: Float64Array): FanCurve;
  /** The pressures between which the fan may stop moving air, for all its label says. */
  shutOffRange(): { readonly low: Pascals; readonly high: Pascals };
  /** How much slower than its description the fan turns. */
  readonly speedRatio: Ratio;
}

const describe = (
  fan: FanAnswer,
): readonly { readonly name: string | null; readonly description: FanDescription }[] => {
  if (fan.kind === 'constant') {
    return [{ name: null, description: { kind: 'constant flow', airflow: fan.airflow, heldTo: fan.heldTo } }];
  }
  if (fan.kind === 'carton') {
    const points = [{ airflow: fan.airflow, staticPressure: ratingPressures.low }];
    return [{ name: null, description: { kind: 'points', points } }];
  }
  return fan.settings.map(({ name, points }) => ({ name, description: { kind: 'points', points } as const }));
};

/** Every speed the fan can run at, slowest first: those with points of their own, else the airflows on its selector. */
export function fanSettingsOf(fan: FanAnswer, selector: readonly CubicMetresPerSecond[]): readonly FanSetting[] {
  const own = describe(fan);
  const [only] = own;
  if (own.length === 1 && only && selector.length > 0 && fan.kind !== 'constant') {
    return selector.map((flow) => ({
      name: (units) => airflow.showShort(flow, units),
      description: only.description,
      slowedTo: flow,
    }));
  }
  if (fan.kind === 'constant' && selector.length > 0) {
    return selector.map((flow) => ({
      name: (units) => airflow.showShort(flow, units),
      description: { kind: 'constant flow', airflow: flow, heldTo: fan.heldTo },
    }));
  }
  return own
    .map(({ name, description }) => ({ name: () => name ?? '', description }))
    .sort((one, other) => greatest(one.description) - greatest(other.description));
}

const greatest = (description: FanDescription): number =>
  description.kind === 'points' ? Math.max(...description.points.map((point) => point.airflow)) : description.airflow;

/** The setting in use: the one named, the one nearest an airflow given, or the fastest. */
export function settingInUse(settings: readonly FanSetting[], chosen: SettingAnswer, fan: FanAnswer): FanSetting {
  const fastest = settings.at(-1) as FanSetting;
  if (chosen === null) return fastest;
  if ('name' in chosen)
    return settings.find((each) => each.name('inch-pound').toLowerCase() === chosen.name) ?? fastest;
  const near = settings.find((each) => each.slowedTo !== undefined && Math.abs(each.slowedTo - chosen.airflow) < 1e-6);
  if (near) return near;
  const name = (units: UnitSystem) => airflow.showShort(chosen.airflow, units);
  if (fan.kind === 'constant')
    return { name, description: { kind: 'constant flow', airflow: chosen.airflow, heldTo: fan.heldTo } };
  return { name, description: fastest.description, slowedTo: chosen.airflow };
}

/**
 * The curve of one setting in air of some density, with what the label leaves open entered among `parameters`.
 *
 * @throws Error when the points cannot be a fan; the question has refused such points already.
 */
export function fanModel(setting: FanSetting, densityRatio: Ratio, parameters: Parameters): FanModel {
  const { description } = setting;
  const { shape: range } = fanKinds[description.kind === 'points' ? 'unknown' : 'constant-flow'];
  const shape = typicalShape(range);
  const made = fanCurve(description, shape);
  if (!made.valid) throw new Error(`a fan that was accepted cannot be drawn: ${made.why}`);
  const rated = description.kind === 'points' && description.points.length === 1;
  const open = description.kind === 'constant flow' || description.points.every((point) => point.airflow > 0);
  const strength = rated
    ? parameters.enter({
        estimate: range.strength,
        direction: 'hump',
        measure: () => 'a second rated point of the fan, off its label',
      })
    : null;
  const reach = open
    ? parameters.enter({
        estimate: range.reach,
        direction: 'hump',
        measure: () => 'a rated point of the fan nearer its stall',
      })
    : null;
  const droop =
    description.kind === 'constant flow'
      ? parameters.enter({
          estimate: range.droop,
          direction: 'hump',
          measure: () => 'how well the fan holds its airflow',
        })
      : null;
  const speedRatio = speedOf(made.curve, setting);
  return {
    speedRatio,
    shutOffRange() {
      const settled = shape.reach;
      const at = (guess: Ratio) => {
        if (reach) shape.reach = guess;
        reshapeFanCurve(made.curve, shape);
        return shutOffPressure(fanChanged(made.curve, { speedRatio, densityRatio }));
      };
      const between = { low: at(range.reach.low), high: at(range.reach.high) };
      at(ratio(settled));
      return between;
    },
    curve(values) {
      if (strength) shape.strength = ratio(strength(values));
      if (reach) shape.reach = ratio(reach(values));
      if (droop) shape.droop = ratio(droop(values));
      if (strength || reach || droop) reshapeFanCurve(made.curve, shape);
      return fanChanged(made.curve, { speedRatio, densityRatio });
    },
  };
}

function speedOf(curve: FanCurve, { slowedTo }: FanSetting): Ratio {
  if (slowedTo === undefined) return ratio(1);
  const found = settingSpeed({ curve, setting: { airflow: slowedTo, staticPressure: ratingPressures.low } });
  return found.found ? found.speedRatio : ratio(1);
}
