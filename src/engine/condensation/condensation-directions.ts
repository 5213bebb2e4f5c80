import type { ExhaustDuct } from './exhaust-duct.ts';

/**
 * Which way the place where condensation starts moves as one input grows: `up` is farther from the fan, with "stays dry"
 * the farthest of all. The tests sample the inside of each range.
 *
 * Warmer exhaust moves it two ways: nearer with the relative humidity held, farther with the moisture held. The length of
 * the duct does not move it at all; it decides whether the duct is long enough to get wet.
 */
export const condensationDirections = {
  'relative humidity': {
    diameter: 'down',
    insulation: 'up',
    outsideFilm: 'up',
    airflow: 'up',
    exhaustTemperature: 'down',
    dampness: 'down',
    surroundings: 'up',
    length: 'none',
  },
  moisture: {
    diameter: 'down',
    insulation: 'up',
    outsideFilm: 'up',
    airflow: 'up',
    exhaustTemperature: 'up',
    dampness: 'down',
    surroundings: 'up',
    length: 'none',
  },
} as const satisfies Record<ExhaustDuct['exhaustDampness']['held'], Record<string, 'up' | 'down' | 'none'>>;
