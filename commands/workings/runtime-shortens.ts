import type { RecoveryTime } from '#engine/moisture/recovery-level.ts';
import { type Alternative, type Shortening, shortening, squeegeed } from '#engine/moisture/shortening.ts';
import type { Finding } from '#findings/finding.ts';
import type { UnitSystem } from '#interview/question.ts';
import { bathroomDefaults, moistureMethods, recoveryLimits, squeegeeLeft } from '#knowledge/moisture.ts';
import { bathroomGuideline } from '#knowledge/required-airflow.ts';
import { airflow, minutes, relativeHumidity, smallLength } from '#quantity/kinds.ts';
import { type CubicMetresPerSecond, cubicMetresPerSecond, type Seconds, seconds } from '#quantity/units.ts';
import { citations } from './citations.ts';
import { airflowAtCorners } from './delivery.ts';
import { withAirflow } from './runtime-room.ts';
import type { FollowedRoom } from './runtime-working.ts';

/** How much more air the table tries where nobody says how it would come. */
const moreAir = 1.5;

/** The airflow with a gap of the recommended height under the door, where the gap that is there is known and smaller. */
function withWiderGap({ inputs }: FollowedRoom): { readonly airflow: CubicMetresPerSecond } | undefined {
  const { path, delivered } = inputs;
  const height = bathroomGuideline.doorClearance.value;
  if (!path?.door || path.door.height >= height) return undefined;
  const [now, then] = [
    airflowAtCorners(path).typical,
    airflowAtCorners({ ...path, door: { ...path.door, height } }).typical,
  ];
  return now > 0 ? { airflow: cubicMetresPerSecond((delivered.airflow.low * then) / now) } : undefined;
}

const halfAgain = ({ room }: FollowedRoom): CubicMetresPerSecond =>
  cubicMetresPerSecond(room.cautious.deliveredAirflow * moreAir);

const moreAirNamed = (more: CubicMetresPerSecond, units: UnitSystem): string =>
  `Half as much air again: ${airflow.showShort(more, units)}`;

/** What could be done about it, each as the bathroom it would leave. */
function alternatives(followed: FollowedRoom, units: UnitSystem): readonly Alternative<string>[] {
  const { inputs, room } = followed;
  const { cautious: now } = room;
  const list: Alternative<string>[] = [];
  if (inputs.wipeDown.value === 'no') {
    list.push({
      name: 'Squeegee the wet walls and curtain',
      bathroom: squeegeed(now, squeegeeLeft.estimate.typical),
    });
  }
  if (inputs.fanDuringShower.value === 'no') {
    list.push({ name: 'Start the fan with the shower', bathroom: { ...now, fanDuringShower: true } });
  }
  const gap = withWiderGap(followed);
  if (gap) {
    const height = smallLength.showShort(bathroomGuideline.doorClearance.value, units);
    list.push({
      name: `Open the gap under the door to ${height}: ${airflow.showShort(gap.airflow, units)}`,
      bathroom: withAirflow(now, gap.airflow),
    });
  }
  const more = halfAgain(followed);
  if (more > 0) list.push({ name: moreAirNamed(more, units), bathroom: withAirflow(now, more) });
  const drier = bathroomDefaults.houseRelativeHumidity.estimate.high;
  if (now.houseRelativeHumidity > drier) {
    list.push({
      name: `Dry the house air to ${relativeHumidity.showShort(drier, units)}`,
      bathroom: { ...now, houseRelativeHumidity: drier },
    });
  }
  if (!inputs.fanDuringShower.known) {
    list.push({ name: 'With the fan off during the shower', bathroom: { ...now, fanDuringShower: false } });
  }
  return list;
}

/** Past half as much again as the room asks for, /size advises against more; then it stands in the table and is not advised here. */
function isTooMuch(more: CubicMetresPerSecond, { inputs }: FollowedRoom): boolean {
  const { perArea, least } = bathroomGuideline;
  return more > Math.max(least.value, inputs.area.typical * perArea.value) * moreAir * (1 + 1e-6);
}

/** To whole minutes, so that the table adds up as printed. */
const wholeMinutes = (time: Seconds): Seconds => seconds(Math.round(time / 60) * 60);

/** Two minutes are the least that is printed in minutes and not in seconds. */
const told = (time: RecoveryTime, units: UnitSystem): string => {
  if (time.found) return minutes.showShort(seconds(Math.max(120, wholeMinutes(time.after))), units);
  return time.why === 'longer than followed' ? 'hours' : 'never';
};

/** How much sooner, between the times as printed; nothing where there is no time to compare. */
const soonerThan = (now: RecoveryTime, then: RecoveryTime): Seconds | null =>
  now.found && then.found ? seconds(wholeMinutes(now.after) - wholeMinutes(then.after)) : null;

function soonerText(sooner: Seconds | null, units: UnitSystem): string {
  if (sooner === null) return '';
  if (sooner === 0) return 'about the same';
  const by = Math.abs(sooner) === 60 ? '1 min' : minutes.showShort(seconds(Math.abs(sooner)), units);
  return sooner > 0 ? `${by} sooner` : `${by} later`;
}

/** What would let the fan stop sooner, computed and ranked. */
export function shortensFinding(followed: FollowedRoom, units: UnitSystem): Finding {
  const now = followed.result.fanMayStop;
  const ranked = shortening(now, recoveryLimits, alternatives(followed, units)).map(({ name, fanMayStop }) => ({
    name,
    fanMayStop,
    sooner: soonerThan(now, fanMayStop),
  }));
  const more = halfAgain(followed);
  const byAir = moreAirNamed(more, units);
  const best = ranked.find(({ name }) => name !== byAir || !isTooMuch(more, followed));
  const wayIn = best?.name === byAir ? ' Check with /makeup first that the door lets that much in.' : '';
  return {
    id: 'shortens',
    weight: 'advice',
    says: `${shortensSays(best, now, units)}${wayIn}`,
    ...(best?.sooner && best.sooner > 0
      ? {
          value: {
            number: best.sooner,
            unit: minutes.siUnit,
            shown: `${best.name}: ${soonerText(best.sooner, units)}`,
          },
        }
      : {}),
    working: [
      {
        what: 'As things are the fan may stop after',
        value: told(now, units),
        source: moistureMethods['run-time'].citation,
      },
      ...ranked.map(({ name, fanMayStop, sooner }) => ({
        what: name,
        how: `the same run with that changed: ${told(fanMayStop, units)}`,
        value: soonerText(sooner, units) || told(fanMayStop, units),
      })),
    ],
    sources: citations(
      moistureMethods['run-time'].citation,
      squeegeeLeft.citation,
      bathroomGuideline.doorClearance.citation,
    ),
    table: {
      title: 'What would change the run time, shortest first',
      columns: ['change', 'fan may stop after', 'that is'],
      rows: [
        ...ranked.map(({ name, fanMayStop, sooner }) => [name, told(fanMayStop, units), soonerText(sooner, units)]),
        ['As things are', told(now, units), ''],
      ],
    },
  };
}

function shortensSays(best: Shortening<string> | undefined, now: RecoveryTime, units: UnitSystem): string {
  if (best?.sooner && best.sooner > 0)
    return `${best.name}: that shortens it most, by about ${soonerText(best.sooner, units).replace(' sooner', '')}.`;
  if (best?.fanMayStop.found && !now.found)
    return `${best.name}: with that it would take about ${told(best.fanMayStop, units)}.`;
  return 'Nothing simple shortens it.';
}
