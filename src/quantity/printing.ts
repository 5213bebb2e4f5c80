import { fromSi, fromSiToRound, stepInSi, toSi } from './unit-factors.ts';

/** A number ready to print: what stands before it, its figures, and its unit. Two alike but for the figures share the unit. */
interface Written {
  readonly before?: string;
  readonly figures: string;
  readonly after: string;
}

/** How one unit system prints a quantity. Values are in SI. */
export interface Face {
  /** The unit a bare number, an axis or a table column is in. */
  readonly unit: string;
  write(value: number, inRange: boolean): Written;
  /** What is printed for this value, in SI again. */
  shown(value: number): number;
  /** The last digit shown for this value, in SI. */
  step(value: number): number;
  /** The plain number in this face's unit, not rounded. */
  number(value: number): number;
}

/** Steps by size: from which magnitude on (in the face's unit) the value is rounded to which step. */
type Steps = readonly (readonly [from: number, step: number])[];

const stepFor = (steps: Steps, value: number): number => {
  const size = Math.abs(value);
  let found = steps[0]?.[1] ?? 1;
  for (const [from, step] of steps) if (size >= from) found = step;
  return found;
};

const decimalsOf = (step: number): number => (step >= 1 ? 0 : Math.ceil(-Math.log10(step) - 1e-9));

/** A half is rounded away from zero, and noise in the fifteenth digit does not decide which way a half goes. */
function rounded(value: number, step: number): number {
  const count = Math.abs(value) / step;
  const whole = Math.floor(count + 0.5 + 1e-9);
  return whole === 0 ? 0 : Math.sign(value) * whole * step;
}

/** "34.5", "1200", "12,500". Zeros after the point are dropped, but not below the decimals that money keeps. */
function figuresOf(value: number, step: number, leastDecimals: number): string {
  const fixed = rounded(value, step).toFixed(decimalsOf(step));
  const point = fixed.indexOf('.');
  const [whole, all] = point < 0 ? [fixed, ''] : [fixed.slice(0, point), fixed.slice(point + 1)];
  const decimals = all.replace(/0+$/, '').padEnd(Math.min(leastDecimals, all.length), '0');
  const grouped = whole.replace('-', '').length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole;
  return decimals === '' ? grouped : `${grouped}.${decimals}`;
}

interface PlainFace {
  /** A mathjs expression. */
  readonly unit: string;
  readonly si: string;
  readonly steps: Steps;
  /** What is printed after the number, with its space. */
  readonly after?: string;
  readonly before?: string;
  /** What is printed instead when the number is one. */
  readonly afterOne?: string;
  /** Coarser steps where two values make a range. */
  readonly rangeSteps?: Steps;
  /** Decimals that are printed even when they are zeros. */
  readonly leastDecimals?: number;
  /** The unit as a column heading; `after` when not given. */
  readonly heading?: string;
}

/** A face that prints one number and one unit. */
export function plainFace(definition: PlainFace): Face {
  const { unit, si, steps, after = '', before, afterOne = after, rangeSteps = steps, leastDecimals = 0 } = definition;
  return {
    unit: definition.heading ?? after.trim(),
    write(value, inRange) {
      const number = fromSiToRound(value, unit, si);
      const figures = figuresOf(number, stepFor(inRange ? rangeSteps : steps, number), leastDecimals);
      return {
        ...(before === undefined ? {} : { before }),
        figures,
        after: figures === '1' && !inRange ? afterOne : after,
      };
    },
    shown(value) {
      const number = fromSi(value, unit, si);
      return toSi(rounded(number, stepFor(steps, number)), unit, si);
    },
    step: (value) => stepInSi(stepFor(rangeSteps, fromSi(value, unit, si)), unit, si),
    number: (value) => fromSi(value, unit, si),
  };
}

/** One of several faces by the size of the value: millimetres below a metre, metres above. */
export const faceBySize = (small: Face, from: number, large: Face): Face => {
  const faceFor = (value: number) => (Math.abs(value) >= from ? large : small);
  return {
    unit: large.unit,
    write: (value, inRange) => faceFor(value).write(value, inRange),
    shown: (value) => faceFor(value).shown(value),
    step: (value) => faceFor(value).step(value),
    number: large.number,
  };
};

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

/** "4 1/2", "3/8", "6": inches to the nearest eighth, as on a tape. */
function eighthsOf(inches: number): string {
  const eighths = rounded(Math.abs(inches), 1 / 8) * 8;
  const [whole, rest] = [Math.floor(eighths / 8), eighths % 8];
  const sign = inches < 0 && eighths > 0 ? '-' : '';
  if (rest === 0) return `${sign}${whole}`;
  const shared = divisor(rest, 8);
  const fraction = `${rest / shared}/${8 / shared}`;
  return whole === 0 ? `${sign}${fraction}` : `${sign}${whole} ${fraction}`;
}

export const inchFace: Face = {
  unit: 'in',
  write: (value) => ({ figures: eighthsOf(fromSi(value, 'in', 'm')), after: ' in' }),
  shown: (value) => toSi(rounded(fromSi(value, 'in', 'm'), 1 / 8), 'in', 'm'),
  step: () => stepInSi(1 / 8, 'in', 'm'),
  number: (value) => fromSi(value, 'in', 'm'),
};

/** Two feet and more, to the nearest inch: "8 ft 6 in". */
const feetAndInchFace: Face = {
  unit: 'ft',
  write(value) {
    const inches = rounded(Math.abs(fromSi(value, 'in', 'm')), 1);
    const [feet, rest] = [Math.floor(inches / 12), inches % 12];
    const sign = value < 0 ? '-' : '';
    return rest === 0
      ? { figures: `${sign}${feet}`, after: ' ft' }
      : { figures: `${sign}${feet} ft ${rest} in`, after: '' };
  },
  shown: (value) => toSi(rounded(fromSi(value, 'in', 'm'), 1), 'in', 'm'),
  step: () => stepInSi(1, 'in', 'm'),
  number: (value) => fromSi(value, 'ft', 'm'),
};

/** 23 15/16 in, and a hair less: what rounds to 24 in is printed as 2 ft. */
const almostTwoFeet = 0.608012;

/** Lengths of rooms and runs: eighths of an inch below two feet, feet and inches above. */
export const feetFace: Face = faceBySize(inchFace, almostTwoFeet, feetAndInchFace);

/** Times: "7.4 s", "90 s", "25 min", "2 h 30 min". */
const secondsFace = plainFace({
  unit: 's',
  si: 's',
  after: ' s',
  steps: [
    [0, 0.1],
    [20, 1],
  ],
});
const minutesFace = plainFace({ unit: 'minute', si: 's', after: ' min', steps: [[0, 1]] });
const hoursFace: Face = {
  unit: 'h',
  write(value) {
    const minutes = rounded(value / 60, 1);
    const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
    return rest === 0 ? { figures: `${hours}`, after: ' h' } : { figures: `${hours} h ${rest} min`, after: '' };
  },
  shown: (value) => rounded(value, 60),
  step: () => 60,
  number: (value) => value / 3600,
};
/** What rounds to 120 s is printed as 2 min, and what rounds to 120 min as 2 h. */
const [almostTwoMinutes, almostTwoHours] = [119.499, 7169.99];

export const timeFace: Face = {
  ...faceBySize(secondsFace, almostTwoMinutes, faceBySize(minutesFace, almostTwoHours, hoursFace)),
  unit: 'min',
  number: (value) => value / 60,
};

const joined = ({ before = '', figures, after }: Written): string => `${before}${figures}${after}`;

export const writtenAlone = (face: Face, value: number): string => joined(face.write(value, false));

/** Two values: "47 to 74 cfm". One value when both print alike. */
export function writtenRange(face: Face, low: number, high: number): string {
  const [from, to] = [face.write(low, true), face.write(high, true)];
  if (joined(from) === joined(to)) return joined(from);
  if (from.after === to.after && from.before === to.before) {
    return `${from.before ?? ''}${from.figures} to ${to.before ?? ''}${to.figures}${to.after}`;
  }
  return `${joined(from)} to ${joined(to)}`;
}
