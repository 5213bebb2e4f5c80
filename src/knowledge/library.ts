import airflowDwellingVentilation from '../../knowledge/airflow/dwelling-ventilation.json' with { type: 'json' };
import airflowFanEfficacy from '../../knowledge/airflow/fan-efficacy.json' with { type: 'json' };
import airflowFanShapes from '../../knowledge/airflow/fan-shapes.json' with { type: 'json' };
import airflowFieldMethods from '../../knowledge/airflow/field-methods.json' with { type: 'json' };
import airflowFieldStudies from '../../knowledge/airflow/field-studies.json' with { type: 'json' };
import airflowMethods from '../../knowledge/airflow/methods.json' with { type: 'json' };
import airflowRequiredAirflow from '../../knowledge/airflow/required-airflow.json' with { type: 'json' };
import airflowSound from '../../knowledge/airflow/sound.json' with { type: 'json' };
import causesAirTheWrongWay from '../../knowledge/causes/air-the-wrong-way.json' with { type: 'json' };
import causesContexts from '../../knowledge/causes/contexts.json' with { type: 'json' };
import causesControl from '../../knowledge/causes/control.json' with { type: 'json' };
import causesDangers from '../../knowledge/causes/dangers.json' with { type: 'json' };
import causesFindings from '../../knowledge/causes/findings.json' with { type: 'json' };
import causesNoise from '../../knowledge/causes/noise.json' with { type: 'json' };
import causesPatterns from '../../knowledge/causes/patterns.json' with { type: 'json' };
import causesPower from '../../knowledge/causes/power.json' with { type: 'json' };
import causesTiers from '../../knowledge/causes/tiers.json' with { type: 'json' };
import causesVariables from '../../knowledge/causes/variables.json' with { type: 'json' };
import causesWater from '../../knowledge/causes/water.json' with { type: 'json' };
import causesWeakPull from '../../knowledge/causes/weak-pull.json' with { type: 'json' };
import checklistsFacts from '../../knowledge/checklists/facts.json' with { type: 'json' };
import ductsDuctLengthModel from '../../knowledge/ducts/duct-length-model.json' with { type: 'json' };
import ductsDuctLengthTable from '../../knowledge/ducts/duct-length-table.json' with { type: 'json' };
import ductsDuctRules from '../../knowledge/ducts/duct-rules.json' with { type: 'json' };
import ductsFittings from '../../knowledge/ducts/fittings.json' with { type: 'json' };
import ductsFlex from '../../knowledge/ducts/flex.json' with { type: 'json' };
import ductsMethods from '../../knowledge/ducts/methods.json' with { type: 'json' };
import ductsRemedies from '../../knowledge/ducts/remedies.json' with { type: 'json' };
import ductsRoughness from '../../knowledge/ducts/roughness.json' with { type: 'json' };
import electricalBoxEditions from '../../knowledge/electrical/box-editions.json' with { type: 'json' };
import electricalBoxRules from '../../knowledge/electrical/box-rules.json' with { type: 'json' };
import electricalCanadianBoxRules from '../../knowledge/electrical/canadian-box-rules.json' with { type: 'json' };
import electricalCanadianConductorVolumes from '../../knowledge/electrical/canadian-conductor-volumes.json' with {
  type: 'json',
};
import electricalCircuitLimits from '../../knowledge/electrical/circuit-limits.json' with { type: 'json' };
import electricalCircuitRules from '../../knowledge/electrical/circuit-rules.json' with { type: 'json' };
import electricalConductorVolumes from '../../knowledge/electrical/conductor-volumes.json' with { type: 'json' };
import electricalControlRules from '../../knowledge/electrical/control-rules.json' with { type: 'json' };
import electricalMotorFullLoad from '../../knowledge/electrical/motor-full-load.json' with { type: 'json' };
import electricalObservations from '../../knowledge/electrical/observations.json' with { type: 'json' };
import electricalStandardBoxes from '../../knowledge/electrical/standard-boxes.json' with { type: 'json' };
import glossary from '../../knowledge/glossary.json' with { type: 'json' };
import materialsDuctSealants from '../../knowledge/materials/duct-sealants.json' with { type: 'json' };
import materialsDuctWrap from '../../knowledge/materials/duct-wrap.json' with { type: 'json' };
import materialsFraming from '../../knowledge/materials/framing.json' with { type: 'json' };
import materialsTakeOffAllowances from '../../knowledge/materials/take-off-allowances.json' with { type: 'json' };
import materialsTapeEvidence from '../../knowledge/materials/tape-evidence.json' with { type: 'json' };
import moistureDuctCondensation from '../../knowledge/moisture/duct-condensation.json' with { type: 'json' };
import moistureEnergy from '../../knowledge/moisture/energy.json' with { type: 'json' };
import moistureMethods from '../../knowledge/moisture/methods.json' with { type: 'json' };
import moisturePublishedFigures from '../../knowledge/moisture/published-figures.json' with { type: 'json' };
import moistureRunTime from '../../knowledge/moisture/run-time.json' with { type: 'json' };
import moistureTransferAir from '../../knowledge/moisture/transfer-air.json' with { type: 'json' };
import safetyCombustion from '../../knowledge/safety/combustion.json' with { type: 'json' };
import safetyMold from '../../knowledge/safety/mold.json' with { type: 'json' };
import safetySiteHazards from '../../knowledge/safety/site-hazards.json' with { type: 'json' };

/** What an entry is, said beside its name. */
export type EntryKind =
  | 'term'
  | 'rule'
  | 'figure'
  | 'study'
  | 'method'
  | 'cause'
  | 'check'
  | 'danger'
  | 'pattern'
  | 'question'
  | 'table'
  | 'fitting'
  | 'remedy'
  | 'wiring rule'
  | 'material'
  | 'step'
  | 'source';

/** One file of knowledge as it is printed, and what a reader wants to know of all of it. */
export interface Shelf {
  /** Begins the id of each of its entries. */
  readonly id: string;
  /** What its entries are about, where their own names do not say so. */
  readonly about: string;
  readonly kind: EntryKind;
  /** The commands that use it. */
  readonly commands: readonly string[];
  readonly contents: unknown;
}

/**
 * Every file whose entries can be looked up, as printed: what is loaded for the commands is in SI, without the words around it.
 * The checklists and the publications are read where they are checked.
 */
export const library: readonly Shelf[] = [
  { id: 'term', about: '', kind: 'term', commands: [], contents: glossary },
  { id: 'need', about: 'Airflow a room needs', kind: 'rule', commands: ['size'], contents: airflowRequiredAirflow },
  {
    id: 'dwelling',
    about: 'Whole-house airflow',
    kind: 'rule',
    commands: ['size'],
    contents: airflowDwellingVentilation,
  },
  { id: 'efficacy', about: 'Fan efficacy', kind: 'rule', commands: ['fan', 'cost'], contents: airflowFanEfficacy },
  { id: 'shape', about: 'Shape of a fan’s curve', kind: 'figure', commands: ['duct'], contents: airflowFanShapes },
  { id: 'measuring', about: 'Measuring', kind: 'figure', commands: ['measure'], contents: airflowFieldMethods },
  { id: 'study', about: 'What field studies found', kind: 'study', commands: ['duct'], contents: airflowFieldStudies },
  {
    id: 'air-method',
    about: 'Method',
    kind: 'method',
    commands: ['size', 'duct', 'measure'],
    contents: airflowMethods,
  },
  { id: 'sound', about: 'Fan sound', kind: 'figure', commands: ['duct'], contents: airflowSound },
  { id: 'blame-air', about: '', kind: 'cause', commands: ['callback'], contents: causesAirTheWrongWay },
  { id: 'blame-control', about: '', kind: 'cause', commands: ['callback'], contents: causesControl },
  { id: 'blame-noise', about: '', kind: 'cause', commands: ['callback'], contents: causesNoise },
  { id: 'blame-power', about: '', kind: 'cause', commands: ['callback'], contents: causesPower },
  { id: 'blame-water', about: '', kind: 'cause', commands: ['callback'], contents: causesWater },
  { id: 'blame-pull', about: '', kind: 'cause', commands: ['callback'], contents: causesWeakPull },
  { id: 'context', about: '', kind: 'check', commands: ['callback'], contents: causesContexts },
  { id: 'danger', about: '', kind: 'danger', commands: ['callback'], contents: causesDangers },
  { id: 'finding', about: '', kind: 'check', commands: ['callback'], contents: causesFindings },
  { id: 'variable', about: '', kind: 'check', commands: ['callback'], contents: causesVariables },
  { id: 'pattern', about: 'Pattern of readings', kind: 'pattern', commands: ['callback'], contents: causesPatterns },
  { id: 'weighing', about: 'How causes are weighed', kind: 'figure', commands: ['callback'], contents: causesTiers },
  { id: 'fact', about: '', kind: 'question', commands: ['swap'], contents: checklistsFacts },
  {
    id: 'length-model',
    about: 'Duct length model',
    kind: 'method',
    commands: ['reach'],
    contents: ductsDuctLengthModel,
  },
  { id: 'length', about: 'Duct length allowed', kind: 'table', commands: ['reach'], contents: ductsDuctLengthTable },
  { id: 'duct-rule', about: 'Duct', kind: 'rule', commands: ['swap', 'reach', 'sweat'], contents: ductsDuctRules },
  { id: 'fitting', about: '', kind: 'fitting', commands: ['duct', 'reach'], contents: ductsFittings },
  { id: 'slack', about: 'Slack in flex duct', kind: 'figure', commands: ['duct'], contents: ductsFlex },
  { id: 'duct-method', about: 'Method', kind: 'method', commands: ['duct'], contents: ductsMethods },
  { id: 'remedy', about: '', kind: 'remedy', commands: ['duct', 'callback'], contents: ductsRemedies },
  { id: 'wall', about: 'Duct wall', kind: 'figure', commands: ['duct'], contents: ductsRoughness },
  {
    id: 'box-edition',
    about: 'Box count in the code of',
    kind: 'rule',
    commands: ['boxfill'],
    contents: electricalBoxEditions,
  },
  { id: 'box-rule', about: 'Box count', kind: 'rule', commands: ['boxfill'], contents: electricalBoxRules },
  {
    id: 'box-canada',
    about: 'Box count, Canada',
    kind: 'rule',
    commands: ['boxfill'],
    contents: electricalCanadianBoxRules,
  },
  {
    id: 'wire-canada',
    about: 'Room a wire takes, Canada',
    kind: 'table',
    commands: ['boxfill'],
    contents: electricalCanadianConductorVolumes,
  },
  { id: 'circuit-limit', about: 'Circuit', kind: 'rule', commands: ['power'], contents: electricalCircuitLimits },
  { id: 'circuit', about: '', kind: 'wiring rule', commands: ['power', 'swap'], contents: electricalCircuitRules },
  {
    id: 'wire',
    about: 'Room a wire takes',
    kind: 'table',
    commands: ['boxfill'],
    contents: electricalConductorVolumes,
  },
  { id: 'control', about: '', kind: 'wiring rule', commands: ['power', 'swap'], contents: electricalControlRules },
  {
    id: 'motor',
    about: 'Motor full-load current',
    kind: 'table',
    commands: ['power'],
    contents: electricalMotorFullLoad,
  },
  { id: 'wiring', about: '', kind: 'question', commands: ['power'], contents: electricalObservations },
  { id: 'box', about: '', kind: 'table', commands: ['boxfill'], contents: electricalStandardBoxes },
  { id: 'sealant', about: '', kind: 'material', commands: ['parts'], contents: materialsDuctSealants },
  { id: 'duct-wrap', about: 'Duct wrap', kind: 'material', commands: ['parts', 'sweat'], contents: materialsDuctWrap },
  { id: 'framing', about: 'Framing', kind: 'figure', commands: ['parts'], contents: materialsFraming },
  { id: 'take-off', about: 'Take-off', kind: 'figure', commands: ['parts'], contents: materialsTakeOffAllowances },
  { id: 'tape', about: 'Duct tape tests', kind: 'study', commands: ['parts'], contents: materialsTapeEvidence },
  { id: 'sweating', about: '', kind: 'figure', commands: ['sweat'], contents: moistureDuctCondensation },
  { id: 'running', about: '', kind: 'figure', commands: ['cost'], contents: moistureEnergy },
  { id: 'damp-method', about: 'Method', kind: 'method', commands: ['runtime', 'sweat'], contents: moistureMethods },
  { id: 'moisture', about: '', kind: 'figure', commands: ['runtime'], contents: moisturePublishedFigures },
  { id: 'drying', about: '', kind: 'figure', commands: ['runtime'], contents: moistureRunTime },
  { id: 'make-up', about: '', kind: 'figure', commands: ['makeup'], contents: moistureTransferAir },
  { id: 'combustion', about: '', kind: 'figure', commands: ['makeup', 'swap'], contents: safetyCombustion },
  { id: 'mold', about: 'Mold', kind: 'figure', commands: ['callback', 'swap'], contents: safetyMold },
  { id: 'site', about: '', kind: 'figure', commands: ['swap'], contents: safetySiteHazards },
];
