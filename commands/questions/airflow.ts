import { estimated } from '#interview/quantities.ts';
import { airflow } from '#quantity/kinds.ts';
import { fanQuestions } from '../words/fan-questions.ts';

const unknown = {
  value: { low: airflow.from(20, 'cfm'), typical: airflow.from(45, 'cfm'), high: airflow.from(80, 'cfm') },
  because: 'Bath fans in lived-in houses were mostly found to move 20 to 80 cfm; /duct or a bag test tells.',
};

export const deliveredAirflow = estimated({
  id: 'delivered-airflow',
  words: { spanish: fanQuestions['delivered-airflow'] },
  prompt: 'How much air does the fan really move? The number /duct gives or a measurement, not the carton’s.',
  why: 'Run time, sweating duct, make-up air and cost all go by the air that really moves.',
  brief: 'Airflow really delivered',
  kind: airflow,
  whenUnknown: unknown,
});

export const measuredAirflow = estimated({
  id: 'measured-airflow',
  words: { spanish: fanQuestions['measured-airflow'] },
  prompt: 'What airflow was measured at the grille?',
  why: 'A measurement outranks every prediction.',
  brief: 'Airflow measured at the grille',
  kind: airflow,
  whenUnknown: { ...unknown, because: 'Nothing has been measured.' },
});
