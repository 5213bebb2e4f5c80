import { z } from 'zod';
import {
  celsius,
  cubicMetres,
  ratio,
  type SquareMetreKelvinsPerWatt,
  seconds,
  squareMetreKelvinsPerWatt,
  squareMetres,
} from '#quantity/units.ts';
import ductCondensationFile from '../../knowledge/moisture/duct-condensation.json' with { type: 'json' };
import methodsFile from '../../knowledge/moisture/methods.json' with { type: 'json' };
import publishedFile from '../../knowledge/moisture/published-figures.json' with { type: 'json' };
import runTimeFile from '../../knowledge/moisture/run-time.json' with { type: 'json' };
import moldFile from '../../knowledge/safety/mold.json' with { type: 'json' };
import { checked } from './checked.ts';
import { assumed, type Default, figure, method, printedFigures, printedValue, sentence } from './figure.ts';
import { citationFields, cite } from './sources.ts';

const plain = (value: number) => value;

const runTimeSchema = z.strictObject({
  defaults: z.strictObject({
    'room-temperature': assumed('degC', celsius),
    mixing: assumed('1', ratio),
    'shower-minutes': assumed('s', seconds),
    'moisture-release': assumed('kg/s', plain),
    'house-temperature': assumed('degC', celsius),
    'house-humidity': assumed('1', ratio),
    storage: assumed('1', ratio),
    convection: assumed('W/m^2/K', plain),
    'cool-area': assumed('m^2', squareMetres),
    'surface-chill': assumed('K', plain),
    'mirror-area': assumed('m^2', squareMetres),
    'mirror-chill': assumed('K', plain),
    'splash-area': assumed('m^2', squareMetres),
    'splash-film': assumed('kg/m^2', plain),
    'patchy-film': assumed('kg/m^2', plain),
  }),
  limits: z.strictObject({
    air: figure('1', ratio),
    surface: figure('1', ratio),
    'mirror-film': figure('kg/m^2', plain),
    'splash-left': figure('1', ratio),
    longest: figure('s', seconds),
  }),
  steps: z.strictObject({ step: figure('s', seconds), least: figure('s', seconds), most: figure('s', seconds) }),
  'squeegee-left': assumed('1', ratio),
  'drying-formula': z
    .strictObject({
      name: z.string(),
      'air-to-pass': printedValue('m^3', cubicMetres),
      unshortened: printedValue('s', seconds),
      ...citationFields,
    })
    .transform((entry) => ({
      airToPass: entry['air-to-pass'],
      unshortened: entry.unshortened,
      citation: cite(entry),
    })),
  caution: sentence,
  'wet-floor': sentence,
});

const runTime = checked('knowledge/moisture/run-time.json', runTimeSchema, runTimeFile);

const { defaults } = runTime;

/** What the run-time model assumes of a bathroom until somebody knows better, in SI, by the names the model has for them. */
export const bathroomDefaults = {
  roomTemperature: defaults['room-temperature'],
  mixing: defaults.mixing,
  showerDuration: defaults['shower-minutes'],
  moistureRelease: defaults['moisture-release'],
  houseTemperature: defaults['house-temperature'],
  houseRelativeHumidity: defaults['house-humidity'],
  storage: defaults.storage,
  convection: defaults.convection,
  coolArea: defaults['cool-area'],
  surfaceChill: defaults['surface-chill'],
  mirrorArea: defaults['mirror-area'],
  mirrorChill: defaults['mirror-chill'],
  splashArea: defaults['splash-area'],
  splashFilm: defaults['splash-film'],
  patchyFilm: defaults['patchy-film'],
};

/** Levels at which a bathroom counts as recovered, in the form `runTime` takes, with the citation of each. */
export const recoveryLimits = {
  air: runTime.limits.air.value,
  surface: runTime.limits.surface.value,
  mirrorFilm: runTime.limits['mirror-film'].value,
  splashLeft: runTime.limits['splash-left'].value,
  longest: runTime.limits.longest.value,
  citations: { air: runTime.limits.air.citation, surface: runTime.limits.surface.citation },
};

/** How run times are rounded and held, in the form `runTimeAdvice` takes. */
export const runTimeSteps = {
  step: runTime.steps.step.value,
  least: runTime.steps.least.value,
  most: runTime.steps.most.value,
};

/** Share of the splashed film that a squeegee leaves. */
export const squeegeeLeft = runTime['squeegee-left'];

/** The published drying formula, in the form `measuredDryingTime` takes, with its citation. */
export const dryingFormula = runTime['drying-formula'];

/** What must be said beside every run time, and beside a floor left wet. */
export const runTimeSentences = { caution: runTime.caution, wetFloor: runTime['wet-floor'] };

/** Which publication each calculation of this topic follows. */
export const moistureMethods = checked(
  'knowledge/moisture/methods.json',
  z.strictObject({
    psychrometrics: method,
    'run-time': method,
    'measured-drying': method,
    dilution: method,
    'moisture-transfer': method,
    'duct-film': method,
    'duct-cooling': method,
    orifice: method,
    'house-leakage': method,
    'exhaust-heat': method,
  }),
  methodsFile,
);

const asResistance = ({ estimate, ...rest }: Default): Default<SquareMetreKelvinsPerWatt> => ({
  ...rest,
  estimate: {
    low: squareMetreKelvinsPerWatt(1 / estimate.high),
    typical: squareMetreKelvinsPerWatt(1 / estimate.typical),
    high: squareMetreKelvinsPerWatt(1 / estimate.low),
  },
});

const ductCondensation = checked(
  'knowledge/moisture/duct-condensation.json',
  z.strictObject({
    defaults: z.strictObject({
      'outside-film': assumed('W/m^2/K', plain).transform(asResistance),
      'exhaust-temperature': assumed('degC', celsius),
      'exhaust-humidity': assumed('1', ratio),
      'attic-temperature': assumed('degC', celsius),
      'most-insulation': assumed('m^2 K/W', squareMetreKelvinsPerWatt),
    }),
    figures: printedFigures,
    rules: z.strictObject({
      'no-model-code-value': sentence,
      'vertical-run': sentence,
      'first-minutes': sentence,
      'words-not-grams': sentence,
    }),
  }),
  ductCondensationFile,
);

/** What is assumed of a sweating duct until somebody knows better, in SI; the outside film as a resistance. */
export const ductCondensationDefaults = ductCondensation.defaults;

/** What must be said beside a verdict on a sweating duct. */
export const ductCondensationSentences = ductCondensation.rules;

const mold = checked(
  'knowledge/safety/mold.json',
  z.strictObject({ figures: printedFigures, rules: z.strictObject({ 'any-size': sentence }) }),
  moldFile,
);

/** What to say of mold. */
export const moldSentences = mold.rules;

/** Published figures for looking up, by topic and id, as printed. */
export const moistureFigures = {
  moisture: checked('knowledge/moisture/published-figures.json', printedFigures, publishedFile),
  'duct-condensation': ductCondensation.figures,
  mold: mold.figures,
};
