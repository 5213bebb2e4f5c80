import { optional } from '#interview/quantities.ts';
import type { Question, Reading, UnitSystem } from '#interview/question.ts';
import { airflow, ductDiameter, loudness, staticPressure } from '#quantity/kinds.ts';
import { echoed } from '#quantity/reading-text.ts';
import type { CubicMetresPerSecond, Pascals } from '#quantity/units.ts';
import { fanQuestions } from '../words/fan-questions.ts';

export interface RatedPoint {
  readonly airflow: CubicMetresPerSecond;
  readonly staticPressure: Pascals;
}

/** What is known of the fan: rated points, by setting where there are several; the carton's one number; or a held flow. */
export type FanAnswer =
  | {
      readonly kind: 'points';
      readonly settings: readonly { readonly name: string | null; readonly points: readonly RatedPoint[] }[];
    }
  | { readonly kind: 'carton'; readonly airflow: CubicMetresPerSecond }
  | { readonly kind: 'constant'; readonly airflow: CubicMetresPerSecond; readonly heldTo: Pascals };

const accepts =
  'points off the label, airflow at static pressure (84@0.1 66@0.25); or the one number on the carton (110); or constant 110 to 0.3';

const number = String.raw`\d[\d.,]*`;
const flowUnit = String.raw`(?:cfm|l\/s|m3\/h|m³\/h)`;
const pressureUnit = String.raw`(?:in\.?\s*w\.?\s*[gc]\.?|"\s*w[gc]|"|pa)`;
const point = new RegExp(
  String.raw`(${number})\s*(${flowUnit})?\s*(?:@|\bat\b)\s*(${number}|[.,]\d+)\s*(${pressureUnit})?`,
  'gi',
);
const constant = new RegExp(
  String.raw`^(?:constant|holds?)(?:\s*flow)?\s*(${number}\s*${flowUnit}?)\s*(?:up\s*)?(?:to|until)\s*((?:${number}|[.,]\d+)\s*${pressureUnit}?)\s*$`,
  'i',
);
/** What may be said with the one number: "110 on the carton", "rated 110", "a 110 fan". */
const cartonWords = /\b(?:(?:on|off|from|by)\s+(?:the|its)\s+)?(?:carton|rated|box|fan|label)\b/gi;

const labelled = /(?:^|[;\n])\s*([A-Za-z][\w -]{0,20}|\d{2,4}\s*(?:cfm|l\/s)?)\s*:/gi;

function readPoints(text: string, units: UnitSystem): Reading<readonly RatedPoint[]> {
  const points: RatedPoint[] = [];
  for (const [, flow, unitOfFlow, pressure, unitOfPressure] of text.matchAll(point)) {
    const moved = airflow.read(`${flow} ${unitOfFlow ?? (units === 'metric' ? 'L/s' : 'cfm')}`, units);
    const zero = /^[0.,]+$/.test(flow ?? '') ? { value: 0 as CubicMetresPerSecond } : moved;
    const against = /^[0.,]+$/.test(pressure ?? '')
      ? { value: 0 as Pascals }
      : staticPressure.read(`${pressure} ${unitOfPressure ?? (units === 'metric' ? 'Pa' : 'in wg')}`, units);
    if ('rejected' in zero) return zero;
    if ('rejected' in against) return against;
    points.push({ airflow: zero.value, staticPressure: against.value });
  }
  const rest = text.replace(point, ' ').replace(/[\s,;|/&]+|\band\b/gi, '');
  if (points.length === 0 || rest !== '') {
    return {
      rejected: `“${echoed(rest || text)}” is not a rated point. Write airflow@pressure, such as 84@0.1 66@0.25.`,
    };
  }
  return { value: points.toSorted((one, other) => one.staticPressure - other.staticPressure) };
}

/** Why points cannot be one fan, or nothing. A fan moves less air the harder it is held back. */
function pointTrouble(points: readonly RatedPoint[]): string | undefined {
  for (const [index, later] of points.entries()) {
    const earlier = points[index - 1];
    if (!earlier) continue;
    if (later.staticPressure === earlier.staticPressure)
      return 'Two points stand at the same pressure. Give one airflow for each pressure.';
    if (later.airflow > earlier.airflow) {
      return 'The airflow rises with pressure, which no fan does. Check which number is the airflow: airflow@pressure, such as 84@0.1.';
    }
    if (earlier.airflow === 0) return 'The fan cannot stop twice: give one point with no airflow.';
  }
  if (points[0]?.airflow === 0)
    return 'A fan that moves no air at its lowest pressure is no fan. Give a point such as 84@0.1.';
  return undefined;
}

function readFan(text: string, units: UnitSystem): Reading<FanAnswer> {
  const said = text.normalize('NFKC').trim();
  if (said.length > 400) return { rejected: `That is too long. Give ${accepts}.` };
  if (said === '') return { rejected: `Nothing was given. Give ${accepts}.` };
  const held = constant.exec(said);
  if (held) {
    const flow = airflow.read(held[1] as string, units);
    const pressure = staticPressure.read(held[2] as string, units);
    if ('rejected' in flow) return flow;
    if ('rejected' in pressure) return pressure;
    if (flow.value === 0) return { rejected: `A fan that moves nothing is no fan. Give ${accepts}.` };
    if (pressure.value === 0)
      return { rejected: 'Say up to which pressure the flow is held, such as constant 110 to 0.3.' };
    return { value: { kind: 'constant', airflow: flow.value, heldTo: pressure.value } };
  }
  if (!/@|\bat\b/i.test(said)) {
    const flow = airflow.read(said.replace(cartonWords, '').trim(), units);
    if ('rejected' in flow) return { rejected: `${flow.rejected} Or give ${accepts}.` };
    if (flow.value === 0) return { rejected: `A fan that moves nothing is no fan. Give ${accepts}.` };
    return { value: { kind: 'carton', airflow: flow.value } };
  }
  const labels = [...said.matchAll(labelled)];
  const pieces =
    labels.length === 0
      ? [{ name: null, text: said }]
      : labels.map((label, index) => ({
          name: (label[1] as string).trim(),
          text: said.slice((label.index ?? 0) + label[0].length, labels[index + 1]?.index ?? said.length),
        }));
  const settings: { name: string | null; points: readonly RatedPoint[] }[] = [];
  for (const { name, text: piece } of pieces) {
    const points = readPoints(piece, units);
    if ('rejected' in points) return points;
    const trouble = pointTrouble(points.value);
    if (trouble) return { rejected: name === null ? trouble : `${name}: ${trouble}` };
    settings.push({ name, points: points.value });
  }
  return { value: { kind: 'points', settings } };
}

const pointText = ({ airflow: flow, staticPressure: pressure }: RatedPoint, units: UnitSystem): string => {
  const round = (value: number, digits: number) => Number(value.toFixed(digits));
  return `${round(airflow.scale(units).of(flow), 1)}@${round(staticPressure.scale(units).of(pressure), 3)}`;
};

function showFan(fan: FanAnswer, units: UnitSystem): string {
  if (fan.kind === 'carton') return `${airflow.show(fan.airflow, units)} on the carton`;
  if (fan.kind === 'constant') {
    return `constant ${airflow.showShort(fan.airflow, units)} to ${staticPressure.showShort(fan.heldTo, units)}`;
  }
  return fan.settings
    .map(
      ({ name, points }) =>
        `${name === null ? '' : `${name}: `}${points.map((each) => pointText(each, units)).join(' ')}`,
    )
    .join('; ');
}

export const fanCurve: Question<FanAnswer> = {
  id: 'fan-curve',
  words: { spanish: fanQuestions['fan-curve'] },
  prompt:
    'What does the fan’s label say? Give its rated points, airflow at static pressure, such as 84@0.1 66@0.25. If only the carton’s number is known, that will do.',
  why: 'The number on the carton is what the fan moves against almost nothing. Two rated points tell how it bears a real duct.',
  accepts,
  brief: 'Rated points of the fan, or the carton’s number',
  widget: { kind: 'text', placeholder: '84@0.1 66@0.25' },
  whenUnknown: {
    value: { kind: 'carton', airflow: airflow.from(80, 'cfm') },
    because: 'An 80 cfm fan of unknown make stands in; read the label before relying on this.',
  },
  read: readFan,
  show: showFan,
};

export type SettingAnswer = { readonly airflow: CubicMetresPerSecond } | { readonly name: string } | null;

export const fanSetting: Question<SettingAnswer> = {
  id: 'fan-setting',
  words: { spanish: fanQuestions['fan-setting'] },
  prompt: 'Which setting is the fan on?',
  why: 'A fan with a selector moves what its setting allows, not what its largest number says.',
  accepts: 'the setting’s airflow, such as 80 cfm, or its name as given with the points, such as low',
  brief: 'Fan setting in use',
  widget: { kind: 'text', placeholder: '80 cfm' },
  whenUnknown: { value: null, because: 'The fan is taken to run as its points or carton number say.' },
  read(text, units) {
    const said = text.trim();
    if (said === '' || said.length > 60)
      return { rejected: 'Give the setting’s airflow, such as 80 cfm, or its name, such as low.' };
    if (!/\d/.test(said)) return { value: { name: said.toLowerCase() } };
    const flow = airflow.read(said, units);
    return 'rejected' in flow ? flow : { value: { airflow: flow.value } };
  },
  show: (value, units) =>
    value === null ? 'as rated' : 'name' in value ? value.name : airflow.show(value.airflow, units),
};

export const fanSettings: Question<readonly CubicMetresPerSecond[]> = {
  id: 'fan-settings',
  words: { spanish: fanQuestions['fan-settings'] },
  prompt: 'Does the fan have a selector? Name its airflows, or none.',
  why: 'With a selector the quietest setting that still moves enough is the right one, and it can be told before the ceiling is cut.',
  accepts: 'airflows with commas between, such as 50, 80, 110, or none',
  brief: 'Airflow settings on the selector',
  widget: { kind: 'text', placeholder: '50, 80, 110' },
  whenUnknown: { value: [], because: 'Taken as a fan of one speed.' },
  read(text, units) {
    const said = text.normalize('NFKC').trim();
    if (/^(?:none|no|one|single)$/i.test(said)) return { value: [] };
    if (said === '' || said.length > 120) return { rejected: 'Name the airflows, such as 50, 80, 110, or none.' };
    const flows: CubicMetresPerSecond[] = [];
    const unit = /(cfm|l\/s|m3\/h|m³\/h)\s*$/i.exec(said)?.[1];
    for (const part of said
      .split(/[,;]|(?<=\d)\s*\/\s*(?=\d)|\s(?:and|or)\s|\s+(?=\d)/i)
      .map((each) => each.trim())
      .filter(Boolean)) {
      const flow = airflow.read(/^[\d.]+$/.test(part) && unit ? `${part} ${unit}` : part, units);
      if ('rejected' in flow) return flow;
      flows.push(flow.value);
    }
    return flows.length > 8
      ? { rejected: 'At most eight settings, such as 50, 80, 110.' }
      : { value: [...new Set(flows)].sort((one, other) => one - other) };
  },
  show: (value, units) =>
    value.length === 0 ? 'none' : value.map((flow) => airflow.showShort(flow, units)).join(', '),
};

export const collar = optional({
  id: 'collar',
  words: { spanish: fanQuestions.collar },
  prompt: 'What is the diameter of the fan’s outlet collar?',
  why: 'A collar larger than the duct is narrowed at once, and the label’s points were measured at the collar’s own size.',
  brief: 'Diameter of the fan’s outlet collar',
  kind: ductDiameter,
  because: 'Taken as wide as the duct that starts there; measure it, since a wider one is narrowed.',
});

export const ratedSones = optional({
  id: 'rated-sones',
  words: { spanish: fanQuestions['rated-sones'] },
  prompt: 'How many sones does the label say?',
  why: 'The sound rating is measured against almost no duct; from it the noise in this duct can be told as a band.',
  brief: 'Sones on the label',
  kind: loudness,
  because: 'Without a sound rating no noise can be told.',
});

export const airflowNeeded = optional({
  id: 'airflow-needed',
  words: { spanish: fanQuestions['airflow-needed'] },
  prompt: 'How much air must it move? Use /size to work it out from the room.',
  why: 'What the fan delivers is judged against it, and the setting and remedies are chosen for it.',
  brief: 'Airflow the room needs',
  kind: airflow,
  because: 'Nothing is judged against a need; /size works one out.',
});
