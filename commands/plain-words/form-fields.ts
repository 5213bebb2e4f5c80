/** The fields of a form apart, however they were parted: strokes, bars, tabs, numbers before each. */

/** What stands behind a stroke as part of a unit: "$0.15 / kWh". */
const perUnit =
  '(?!(?:s|secs?|seconds?|h|hrs?|hours?|min|mins|minutes?|kwh|kw|days?|d|therms?|gj|months?|yr|years?|night)\\b(?! ?(?:per|a|on|/|:|=)))';
const parted = new RegExp(String.raw` +/ +(?=[a-z])${perUnit}`, 'gi');
/** A name and its value behind a stroke: then the strokes of this line part fields. */
const fieldBehind = new RegExp(String.raw` +/ +${perUnit}[a-z][a-z'.() #/-]{0,40}?(?::|=| -?\$?\.?\d)`, 'i');

const numbered = /^\s*1[.)] /;

export function fieldsApart(line: string): string {
  const even = line
    .replace(/(?<=[a-z)])[ ]*\t+ *(?=[-$.\d])/gi, ': ')
    .replace(/ *\t+ */g, '; ')
    .replace(/ *\|+ */g, '; ')
    // "Airflow (measured): 72".
    .replace(/([a-z]) \(([a-z][a-z ]*)\)(?= ?(?:[:=]|\d))/gi, '$1 $2');
  const listed = numbered.test(even) ? even.replace(/(^|;|\s)\s*\d{1,2}[.)] +(?=[a-z])/gi, '$1; ') : even;
  return fieldBehind.test(listed) ? listed.replace(parted, '; ') : listed;
}
