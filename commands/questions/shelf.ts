import { fanWatts } from './cost.ts';
import { collar, fanCurve, fanSettings, ratedSones } from './fan.ts';
import { housingSize } from './parts.ts';

/** What the label of a fan answers, in the order it is read off. */
export const labelQuestions = [fanCurve, fanSettings, collar, ratedSones, fanWatts, housingSize] as const;
