import { z } from 'zod';
import studiesFile from '../../knowledge/airflow/field-studies.json' with { type: 'json' };
import methodsFile from '../../knowledge/airflow/methods.json' with { type: 'json' };
import { checked } from './checked.ts';
import { method, sentence } from './figure.ts';

/** Methods the airflow, fan, sound and measuring parts of the engine work by. */
export type AirflowMethodId = keyof typeof methodsFile;

const methods = checked('knowledge/airflow/methods.json', z.record(z.string(), method), methodsFile);

/** Which publication a calculation follows, to stand beside its result. */
export const airflowMethods = methods as Readonly<Record<AirflowMethodId, z.output<typeof method>>>;

/** Findings of others about bath fans in real houses. */
export type FieldStudyId = keyof typeof studiesFile;

const studies = checked('knowledge/airflow/field-studies.json', z.record(z.string(), sentence), studiesFile);

/** What others found in real houses, for looking up and for the reason why airflow is measured. */
export const fieldStudies = studies as Readonly<Record<FieldStudyId, z.output<typeof sentence>>>;
