import type { Faces } from './kind.ts';
import { type Face, faceBySize, feetFace, inchFace, plainFace, timeFace } from './printing.ts';

/** How each kind is printed: rounded to what the trade reads, in the crew's units, the other system's beside it. */

const bothWays = (face: Face): Faces => ({ 'inch-pound': face, metric: face });

const millimetres = plainFace({ unit: 'mm', si: 'm', after: ' mm', steps: [[0, 1]] });
const metresToCentimetre = plainFace({ unit: 'm', si: 'm', after: ' m', steps: [[0, 0.01]] });
/** What rounds to 1000 mm is printed as 1 m. */
const almostOneMetre = 0.999499;

/** Duct diameters, gaps, doors: inches to an eighth. */
export const smallLengthFaces: Faces = { 'inch-pound': inchFace, metric: millimetres };

/** Rooms and runs: feet and inches. */
export const longLengthFaces: Faces = {
  'inch-pound': feetFace,
  metric: faceBySize(millimetres, almostOneMetre, metresToCentimetre),
};

export const heightFaces: Faces = {
  'inch-pound': plainFace({ unit: 'ft', si: 'm', after: ' ft', steps: [[0, 1]] }),
  metric: plainFace({ unit: 'm', si: 'm', after: ' m', steps: [[0, 1]] }),
};

export const roughnessFaces: Faces = {
  'inch-pound': plainFace({ unit: 'ft', si: 'm', after: ' ft', steps: [[0, 0.0001]] }),
  metric: plainFace({ unit: 'mm', si: 'm', after: ' mm', steps: [[0, 0.01]] }),
};

export const areaFaces: Faces = {
  'inch-pound': plainFace({
    unit: 'ft^2',
    si: 'm^2',
    after: ' sq ft',
    steps: [
      [0, 0.1],
      [100, 1],
    ],
  }),
  metric: plainFace({
    unit: 'm^2',
    si: 'm^2',
    after: ' m²',
    steps: [
      [0, 0.01],
      [10, 0.1],
    ],
  }),
};

export const openingFaces: Faces = {
  'inch-pound': plainFace({
    unit: 'in^2',
    si: 'm^2',
    after: ' sq in',
    steps: [
      [0, 0.1],
      [10, 1],
    ],
  }),
  metric: plainFace({
    unit: 'cm^2',
    si: 'm^2',
    after: ' cm²',
    steps: [
      [0, 0.1],
      [10, 1],
    ],
  }),
};

export const volumeFaces: Faces = {
  'inch-pound': plainFace({
    unit: 'ft^3',
    si: 'm^3',
    after: ' cu ft',
    steps: [
      [0, 0.1],
      [10, 1],
    ],
  }),
  metric: plainFace({
    unit: 'm^3',
    si: 'm^3',
    after: ' m³',
    steps: [
      [0, 0.01],
      [10, 0.1],
      [100, 1],
    ],
  }),
};

export const containerFaces: Faces = {
  'inch-pound': plainFace({
    unit: 'gallon',
    si: 'm^3',
    after: ' gal',
    steps: [
      [0, 0.1],
      [10, 1],
    ],
  }),
  metric: plainFace({
    unit: 'L',
    si: 'm^3',
    after: ' L',
    steps: [
      [0, 0.1],
      [10, 1],
    ],
  }),
};

export const boxVolumeFaces: Faces = {
  'inch-pound': plainFace({ unit: 'in^3', si: 'in^3', after: ' cu in', steps: [[0, 0.01]] }),
  metric: plainFace({ unit: 'cm^3', si: 'in^3', after: ' cm³', steps: [[0, 0.1]] }),
};

export const airflowFaces: Faces = {
  'inch-pound': plainFace({ unit: 'cfm', si: 'm^3/s', after: ' cfm', steps: [[0, 1]] }),
  metric: plainFace({
    unit: 'L/s',
    si: 'm^3/s',
    after: ' L/s',
    steps: [
      [0, 0.1],
      [100, 1],
    ],
    rangeSteps: [
      [0, 0.1],
      [10, 1],
    ],
  }),
};

export const leakageFaces: Faces = {
  'inch-pound': plainFace({ unit: 'cfm', si: 'm^3/s', after: ' cfm50', steps: [[0, 1]] }),
  metric: plainFace({ unit: 'L/s', si: 'm^3/s', after: ' L/s at 50 Pa', steps: [[0, 1]] }),
};

const inchesOfWater = plainFace({
  unit: 'inH2O',
  si: 'Pa',
  after: ' in. w.g.',
  steps: [
    [0, 0.001],
    [0.01, 0.01],
    [1, 0.1],
  ],
});
const pascals = plainFace({
  unit: 'Pa',
  si: 'Pa',
  after: ' Pa',
  steps: [
    [0, 0.1],
    [10, 1],
  ],
});

export const pressureFaces: Faces = { 'inch-pound': inchesOfWater, metric: pascals };

/** Pressures between rooms are read in pascals by everybody. */
export const roomPressureFaces = bothWays(pascals);

export const velocityFaces: Faces = {
  'inch-pound': plainFace({ unit: 'fpm', si: 'm/s', after: ' fpm', steps: [[0, 10]] }),
  metric: plainFace({ unit: 'm/s', si: 'm/s', after: ' m/s', steps: [[0, 0.1]] }),
};

export const temperatureFaces: Faces = {
  'inch-pound': plainFace({ unit: 'degF', si: 'degC', after: ' °F', steps: [[0, 1]] }),
  metric: plainFace({ unit: 'degC', si: 'degC', after: ' °C', steps: [[0, 0.5]] }),
};

export const shareFaces = bothWays(plainFace({ unit: '0.01', si: '1', after: ' %', steps: [[0, 1]] }));

export const insulationFaces: Faces = {
  'inch-pound': plainFace({ unit: 'Rvalue', si: 'm^2 K/W', before: 'R-', heading: 'R', steps: [[0, 0.1]] }),
  metric: plainFace({ unit: 'RSI', si: 'm^2 K/W', before: 'RSI ', heading: 'RSI', steps: [[0, 0.01]] }),
};

export const timeFaces = bothWays(timeFace);

export const wattFaces = bothWays(
  plainFace({
    unit: 'W',
    si: 'W',
    after: ' W',
    steps: [
      [0, 0.1],
      [10, 1],
    ],
  }),
);

export const heatFaces: Faces = {
  'inch-pound': plainFace({
    unit: 'BTU/hour',
    si: 'W',
    after: ' Btu/h',
    steps: [
      [0, 10],
      [10_000, 100],
    ],
  }),
  metric: faceBySize(
    plainFace({ unit: 'W', si: 'W', after: ' W', steps: [[0, 1]] }),
    9999.499,
    plainFace({ unit: 'kW', si: 'W', after: ' kW', steps: [[0, 0.1]] }),
  ),
};

export const energyFaces = bothWays(
  plainFace({
    unit: 'kW hour',
    si: 'J',
    after: ' kWh',
    steps: [
      [0, 0.1],
      [10, 1],
    ],
  }),
);

export const ampereFaces = bothWays(plainFace({ unit: 'A', si: 'A', after: ' A', steps: [[0, 0.1]] }));

export const voltFaces = bothWays(
  plainFace({
    unit: 'V',
    si: 'V',
    after: ' V',
    steps: [
      [0, 0.1],
      [10, 1],
    ],
  }),
);

export const soneFaces = bothWays(
  plainFace({ unit: '1', si: '1', after: ' sones', afterOne: ' sone', steps: [[0, 0.1]] }),
);

export const decibelFaces = bothWays(plainFace({ unit: '1', si: '1', after: ' dBA', steps: [[0, 1]] }));

export const degreeDayFaces: Faces = {
  'inch-pound': plainFace({ unit: 'degR day', si: 'K day', after: ' °F·d', steps: [[0, 10]] }),
  metric: plainFace({ unit: 'K day', si: 'K day', after: ' K·d', steps: [[0, 10]] }),
};

export const densityFaces: Faces = {
  'inch-pound': plainFace({ unit: 'lbm/ft^3', si: 'kg/m^3', after: ' lb/ft³', steps: [[0, 0.001]] }),
  metric: plainFace({ unit: 'kg/m^3', si: 'kg/m^3', after: ' kg/m³', steps: [[0, 0.01]] }),
};

export const efficacyFaces: Faces = {
  'inch-pound': plainFace({ unit: 'cfm/W', si: 'm^3/s/W', after: ' cfm/W', steps: [[0, 0.1]] }),
  metric: plainFace({ unit: 'L/s/W', si: 'm^3/s/W', after: ' L/s per W', steps: [[0, 0.01]] }),
};

export const airChangeFaces = bothWays(
  plainFace({ unit: '1', si: '1', after: ' air changes per hour', steps: [[0, 0.1]] }),
);

export const moneyFaces = bothWays(
  plainFace({
    unit: '1',
    si: '1',
    before: '$',
    heading: '$',
    leastDecimals: 2,
    steps: [
      [0, 0.01],
      [100, 1],
    ],
  }),
);

export const perKilowattHourFaces = bothWays(
  plainFace({
    unit: '1',
    si: '1',
    before: '$',
    after: ' per kWh',
    heading: '$ per kWh',
    leastDecimals: 2,
    steps: [[0, 0.001]],
  }),
);

export const perThermFaces = bothWays(
  plainFace({
    unit: '1',
    si: '1',
    before: '$',
    after: ' per therm',
    heading: '$ per therm',
    leastDecimals: 2,
    steps: [[0, 0.01]],
  }),
);

/** Plain numbers, to the given step. */
export const numberFaces = (step: number): Faces => bothWays(plainFace({ unit: '1', si: '1', steps: [[0, step]] }));
