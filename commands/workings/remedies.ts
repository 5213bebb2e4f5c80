import type { FittingId } from '#knowledge/ducts.ts';
import { fittings, flexLays } from '#knowledge/ducts.ts';
import { type RemedyId, remedies } from '#knowledge/remedies.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Metres, metres, ratio } from '#quantity/units.ts';
import { diameterAt } from '../questions/duct-run-reading.ts';
import type { DuctRun, RunPart } from '../questions/run-parts.ts';
import { type AirPath, airflowAtCorners } from './delivery.ts';
import type { FanSetting } from './fan-model.ts';
import { startOf } from './run-pieces.ts';

/** A change tried on the path, with what it would bring. */
export interface TriedRemedy {
  readonly id: RemedyId;
  readonly path: AirPath;
  readonly airflow: CubicMetresPerSecond;
  readonly gain: CubicMetresPerSecond;
  /** Gain for each step of effort; the list is ranked by it. */
  readonly worth: number;
  /** True where the next in the list could come before it, were the unknowns otherwise. */
  readonly tie: boolean;
}

const inch = 0.0254;
const sizes = [3, 4, 5, 6, 7, 8, 10].map((size) => metres(size * inch));
const nextSize = (diameter: Metres): Metres | undefined => sizes.find((size) => size > diameter * 1.05);

/** Less than this is lost in the uncertainty and not worth a trip: a cubic foot a minute. */
const leastGain = cubicMetresPerSecond(0.000471947443);

const changedParts = (path: AirPath, change: (part: RunPart, index: number) => RunPart | null): AirPath => ({
  ...path,
  run: { parts: path.run.parts.flatMap((part, index) => change(part, index) ?? []) },
});

const isSlack = (part: RunPart): boolean =>
  part.part === 'duct' && part.kind === 'flex' && (part.compression?.typical ?? 1) > flexLays.stretched.amount.high;

const isElbow90 = (part: RunPart): boolean => part.part === 'fitting' && part.fitting.startsWith('elbow-90');

const endId = (part: RunPart): FittingId | undefined =>
  part.part === 'fitting' && part.fitting !== 'custom' && fittings[part.fitting].includesExit
    ? part.fitting
    : undefined;

/** Every diameter up one size, transitions inside the run left out: they change nothing any more. */
function upSized(run: DuctRun): DuctRun | undefined {
  const parts: RunPart[] = [];
  for (const [index, part] of run.parts.entries()) {
    if (part.part === 'transition') continue;
    const diameter = nextSize(diameterAt(run.parts, index) as Metres);
    if (diameter === undefined) return undefined;
    parts.push({ ...part, diameter });
  }
  return { parts };
}

/** The whole run at the collar's size, the end as it was. */
function fullSize(run: DuctRun, collar: Metres): DuctRun {
  return {
    parts: run.parts.flatMap((part, index): RunPart[] => {
      if (part.part === 'transition') return [];
      if (endId(part)) return [{ ...part, diameter: diameterAt(run.parts, index) }];
      return [{ ...part, diameter: metres(Math.max(collar, diameterAt(run.parts, index) as Metres)) }];
    }),
  };
}

/** The realistic changes to a path, each as the path it would make. */
function candidates(path: AirPath, settings: readonly FanSetting[]): readonly (readonly [RemedyId, AirPath])[] {
  const { run, collar, door } = path;
  const parts = run.parts;
  const list: (readonly [RemedyId, AirPath])[] = [];
  const tight = flexLays.stretched.amount;
  if (parts.some(isSlack)) {
    list.push([
      'stretch-flex',
      changedParts(path, (part) => (isSlack(part) && part.part === 'duct' ? { ...part, compression: tight } : part)),
    ]);
  }
  if (parts.some((part) => part.part === 'duct' && part.kind.includes('flex'))) {
    list.push([
      'smooth-duct',
      changedParts(path, (part) =>
        part.part === 'duct' && part.kind.includes('flex')
          ? { ...part, kind: 'smooth', compression: null, roughness: null }
          : part,
      ),
    ]);
  }
  const larger = upSized(run);
  if (larger) list.push(['next-size', { ...path, run: larger }]);
  if (
    parts.some(
      (part) =>
        isElbow90(part) && part.part === 'fitting' && part.coefficient === null && part.fitting !== 'elbow-90-stamped',
    )
  ) {
    list.push([
      'long-radius-elbows',
      changedParts(path, (part) =>
        isElbow90(part) && part.part === 'fitting' && part.coefficient === null
          ? { ...part, fitting: 'elbow-90-stamped' }
          : part,
      ),
    ]);
  }
  const elbows = parts.findIndex(isElbow90);
  if (elbows >= 0) {
    list.push([
      'one-elbow-less',
      changedParts(path, (part, index) =>
        index !== elbows || part.part !== 'fitting' ? part : part.count > 1 ? { ...part, count: part.count - 1 } : null,
      ),
    ]);
  }
  const end = parts.findIndex((part) => endId(part) !== undefined && endId(part) !== 'exit-bare');
  if (end >= 0) {
    const id = endId(parts[end] as RunPart) as FittingId;
    const best = fittings[id].losses[0]?.loss.low ?? ratio(1);
    list.push([
      'freer-cap',
      changedParts(path, (part, index) =>
        index === end && part.part === 'fitting' && (part.coefficient ?? Number.POSITIVE_INFINITY) > best
          ? { ...part, coefficient: best }
          : part,
      ),
    ]);
  }
  if (collar !== null && startOf(run) < collar * 0.99)
    list.push(['move-reducer', { ...path, run: fullSize(run, collar) }]);
  if (parts.some((part) => part.part === 'fitting' && part.fitting === 'backdraft-damper')) {
    list.push([
      'drop-damper',
      changedParts(path, (part) => (part.part === 'fitting' && part.fitting === 'backdraft-damper' ? null : part)),
    ]);
  }
  const above = settings[settings.indexOf(path.setting) + 1];
  if (above && settings.includes(path.setting)) list.push(['higher-setting', { ...path, setting: above }]);
  const wide = metres(1.25 * inch);
  if (door && door.height < wide) list.push(['door-gap', { ...path, door: { ...door, height: wide } }]);
  return list;
}

/**
 * The changes that would bring more air, best first by airflow gained for the trouble. A place in the list is called a tie
 * where it does not hold with every unknown at its worst and at its best.
 */
export function triedRemedies(path: AirPath, settings: readonly FanSetting[]): readonly TriedRemedy[] {
  const now = airflowAtCorners(path);
  const tried = candidates(path, settings)
    .map(([id, changed]) => {
      const { typical, worst, best } = airflowAtCorners(changed);
      const { effort } = remedies[id];
      const gain = cubicMetresPerSecond(typical - now.typical);
      const worthAtEnds = [(worst - now.worst) / effort, (best - now.best) / effort];
      return { id, path: changed, airflow: typical, gain, worth: gain / effort, worthAtEnds };
    })
    .filter(({ gain }) => gain >= leastGain)
    .sort((one, other) => other.worth - one.worth);
  return tried.map(({ worthAtEnds, ...remedy }, index) => {
    const next = tried[index + 1];
    const tie = next?.worthAtEnds.some((worth, end) => worth > (worthAtEnds[end] ?? 0)) ?? false;
    return { ...remedy, tie };
  });
}
