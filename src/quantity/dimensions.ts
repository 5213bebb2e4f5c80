/**
 * What can be measured here, and the words people use for its units. A unit's name is an expression mathjs understands; the
 * words are an allow-list, written small and without dots. In a word a space may be left out or be a hyphen, and `/` may be
 * "per". The unit `own` is whatever the crew works in: "68 degrees".
 */
export interface Dimension<Unit extends string = string> {
  /** With its article: "a length". */
  readonly noun: string;
  /** The SI unit as mathjs knows it. */
  readonly si: string;
  /** The SI unit as it is written beside a number: "m3/s". */
  readonly symbol: string;
  readonly units: Readonly<Record<Unit, string>>;
  /** Words that stand before the number: "R-8". */
  readonly before?: Readonly<Partial<Record<NoInfer<Unit>, string>>>;
  /** The unit a second number may have, or is in when none is written, and where it must stop: 6 ft 8 (in), below 12. */
  readonly followedBy?: Readonly<Partial<Record<NoInfer<Unit>, Smaller<NoInfer<Unit>>>>>;
  /** Words that may follow and change nothing: "14 ft long". */
  readonly after?: string;
}

interface Smaller<Unit extends string> {
  readonly unit: Unit;
  readonly below: number;
}

const dimension = <const Unit extends string>(definition: Dimension<Unit>): Dimension<Unit> => definition;

const inchesOfWater =
  'in wg|in wc|in h2o|iwg|iwc|inch wg|inches wg|inch wc|inches wc|inch h2o|inches h2o|in water|inch water|inches water|in of water|inch of water|inches of water|inches water gauge|inches water column|" wg|" wc|" h2o|" water';

export const dimensions = {
  length: dimension({
    noun: 'a length',
    si: 'm',
    symbol: 'm',
    units: {
      in: 'in|ins|inch|inches|"',
      ft: "ft|foot|feet|'",
      yd: 'yd|yds|yard|yards',
      m: 'm|meter|meters|metre|metres',
      cm: 'cm|centimeter|centimeters|centimetre|centimetres',
      mm: 'mm|millimeter|millimeters|millimetre|millimetres',
      um: 'um|μm|micron|microns',
    },
    followedBy: { ft: { unit: 'in', below: 12 }, m: { unit: 'cm', below: 100 } },
    after: 'long|high|tall|wide|deep|thick|across|round|dia|diameter',
  }),
  area: dimension({
    noun: 'an area',
    si: 'm^2',
    symbol: 'm2',
    units: {
      'ft^2': 'sq ft|ft2|sf|square foot|square feet',
      'in^2': 'sq in|in2|square inch|square inches',
      'm^2': 'm2|sq m|sqm|square meter|square meters|square metre|square metres',
      'cm^2': 'cm2|sq cm|square centimeters|square centimetres',
      'mm^2': 'mm2|sq mm|square millimeters|square millimetres',
    },
  }),
  volume: dimension({
    noun: 'a volume',
    si: 'm^3',
    symbol: 'm3',
    units: {
      'ft^3': 'cu ft|ft3|cf|cubic foot|cubic feet',
      'in^3': 'cu in|in3|cubic inch|cubic inches',
      gallon: 'gal|gals|gallon|gallons',
      'm^3': 'm3|cu m|cubic meter|cubic meters|cubic metre|cubic metres',
      L: 'l|liter|liters|litre|litres',
      mL: 'ml|milliliter|milliliters|millilitre|millilitres',
      'cm^3': 'cm3|cc|cu cm|cubic centimeters|cubic centimetres',
    },
  }),
  /** Box fill is legal arithmetic on printed cubic inches, so cubic inches are its own unit and nothing is converted. */
  boxVolume: dimension({
    noun: 'a box volume',
    si: 'in^3',
    symbol: 'in3',
    units: {
      'in^3': 'cu in|in3|cubic inch|cubic inches|ci',
      'cm^3': 'cm3|cc|cu cm|cubic centimeters|cubic centimetres',
      mL: 'ml|milliliter|milliliters|millilitre|millilitres',
    },
  }),
  airflow: dimension({
    noun: 'an airflow',
    si: 'm^3/s',
    symbol: 'm3/s',
    units: {
      cfm: 'cfm|cfms|ft3/min|cu ft/min|cubic feet/minute|cubic foot/minute|cubic feet a minute',
      'L/s': 'l/s|l/sec|lps|liters/second|litres/second|liter/second|litre/second|liters a second|litres a second',
      'L/min': 'l/min|lpm|liters/minute|litres/minute',
      'm^3/hour': 'm3/h|m3/hr|m3/hour|cmh|cubic meters/hour|cubic metres/hour',
      'm^3/s': 'm3/s|m3/sec|cubic meters/second|cubic metres/second',
    },
  }),
  leakage: dimension({
    noun: 'an airflow at 50 Pa',
    si: 'm^3/s',
    symbol: 'm3/s',
    units: {
      cfm: 'cfm|cfm 50|cfm 50 pa|cfm at 50|cfm at 50 pa|cfm at 50 pascals|cfm @ 50|cfm @ 50 pa',
      'L/s': 'l/s|l/s 50|l/s at 50|l/s at 50 pa|l/s @ 50 pa',
      'm^3/hour': 'm3/h|m3/hr|m3/h 50|m3/h at 50 pa|m3/h @ 50 pa',
    },
  }),
  pressure: dimension({
    noun: 'a pressure',
    si: 'Pa',
    symbol: 'Pa',
    units: {
      inH2O: `${inchesOfWater}|in|inch|inches|"`,
      Pa: 'pa|pas|pascal|pascals',
      hPa: 'hpa',
      kPa: 'kpa|kilopascal|kilopascals',
      mbar: 'mbar|millibar|millibars',
      mmH2O: 'mm h2o|mm wg|mm wc|mm of water',
      psi: 'psi',
    },
  }),
  velocity: dimension({
    noun: 'an air speed',
    si: 'm/s',
    symbol: 'm/s',
    units: {
      fpm: 'fpm|ft/min|feet/minute|foot/minute|feet a minute',
      'ft/s': 'fps|ft/s|ft/sec|feet/second',
      'm/s': 'm/s|m/sec|meters/second|metres/second',
      'km/hour': 'km/h|kph|kmh',
      'mi/hour': 'mph|miles/hour',
    },
  }),
  temperature: dimension({
    noun: 'a temperature',
    si: 'degC',
    symbol: '°C',
    units: {
      degF: 'f|°f|deg f|degf|degree f|degrees f|fahrenheit|degrees fahrenheit',
      degC: 'c|°c|deg c|degc|degree c|degrees c|celsius|degrees celsius|centigrade|degrees centigrade',
      K: 'k|kelvin',
      own: '°|deg|degs|degree|degrees',
    },
  }),
  share: dimension({
    noun: 'a percentage',
    si: '1',
    symbol: '1',
    units: { '0.01': '%|% rh|percent|per cent|pct|percent rh|% relative humidity|percent relative humidity' },
    after: 'rh|relative humidity',
  }),
  insulation: dimension({
    noun: 'an insulation value',
    si: 'm^2 K/W',
    symbol: 'm2K/W',
    units: {
      Rvalue: 'r|ft2 f h/btu|ft2 °f h/btu|h ft2 f/btu|h ft2 °f/btu|hr ft2 f/btu',
      RSI: 'rsi|m2 k/w|m2 c/w|m2 °c/w|k m2/w',
    },
    before: { Rvalue: 'r|r value', RSI: 'rsi' },
  }),
  duration: dimension({
    noun: 'a time',
    si: 's',
    symbol: 's',
    units: {
      s: 's|sec|secs|second|seconds',
      minute: 'min|mins|minute|minutes|m',
      hour: 'h|hr|hrs|hour|hours',
      day: 'd|day|days',
    },
    followedBy: {
      day: { unit: 'hour', below: 24 },
      hour: { unit: 'minute', below: 60 },
      minute: { unit: 's', below: 60 },
    },
  }),
  power: dimension({
    noun: 'a power',
    si: 'W',
    symbol: 'W',
    units: {
      W: 'w|watt|watts',
      kW: 'kw|kilowatt|kilowatts',
      'BTU/hour': 'btu/h|btu/hr|btu/hour|btuh|btus/hour|btu|btus',
      '1000 BTU/hour': 'kbtu/h|kbtuh|mbh',
      hp: 'hp|horsepower',
    },
  }),
  energy: dimension({
    noun: 'an amount of energy',
    si: 'J',
    symbol: 'J',
    units: {
      'kW hour': 'kwh|kw h|kilowatt hour|kilowatt hours',
      MJ: 'mj|megajoule|megajoules',
      GJ: 'gj|gigajoule|gigajoules',
      J: 'j|joule|joules',
      BTU: 'btu|btus',
      therm: 'therm|therms',
    },
  }),
  current: dimension({
    noun: 'a current',
    si: 'A',
    symbol: 'A',
    units: { A: 'a|amp|amps|ampere|amperes', mA: 'ma|milliamp|milliamps' },
  }),
  voltage: dimension({
    noun: 'a voltage',
    si: 'V',
    symbol: 'V',
    units: { V: 'v|vac|volt|volts', mV: 'mv|millivolt|millivolts' },
  }),
  loudness: dimension({ noun: 'a loudness in sones', si: '1', symbol: 'sone', units: { '1': 'sone|sones' } }),
  soundLevel: dimension({
    noun: 'a sound level in decibels',
    si: '1',
    symbol: 'dB',
    units: { '1': 'db|dba|db a|db(a)|decibel|decibels' },
  }),
  degreeDays: dimension({
    noun: 'a number of heating degree days',
    si: 'K day',
    symbol: 'K·d',
    units: {
      'degR day': 'hdd 65|°f·d|f·d|°f day|°f days|f day|f days|degree f days|fahrenheit degree days',
      'K day': 'hdd 18|°c·d|c·d|k·d|°c day|°c days|c days|k day|k days|celsius degree days',
      own: 'hdd|dd|degree day|degree days|heating degree days',
    },
    before: { 'degR day': 'hdd 65', 'K day': 'hdd 18', own: 'hdd' },
  }),
  density: dimension({
    noun: 'a density',
    si: 'kg/m^3',
    symbol: 'kg/m3',
    units: {
      'lbm/ft^3': 'lb/ft3|lbs/ft3|lbm/ft3|lb/cu ft|pcf|pounds/cubic foot',
      'kg/m^3': 'kg/m3|kilograms/cubic meter|kilograms/cubic metre',
    },
  }),
  efficacy: dimension({
    noun: 'an efficacy',
    si: 'm^3/s/W',
    symbol: 'm3/s/W',
    units: { 'cfm/W': 'cfm/w|cfm/watt', 'L/s/W': 'l/s/w|l/s/watt' },
  }),
  airChanges: dimension({
    noun: 'a number of air changes per hour',
    si: '1',
    symbol: '1/h',
    units: { '1': 'ach|/h|/hr|/hour|air changes|air change/hour|air changes/hour|air changes an hour' },
  }),
  money: dimension({
    noun: 'an amount of money',
    si: '1',
    symbol: '1',
    units: { '1': '$|dollar|dollars|usd|cad|buck|bucks|€|euro|euros|£', '0.01': '¢|c|cent|cents' },
    before: { '1': '$|€|£' },
  }),
  electricityPrice: dimension({
    noun: 'a price per kWh',
    si: '1',
    symbol: '1/kWh',
    units: {
      '1': '/kwh|$/kwh|dollar/kwh|dollars/kwh|€/kwh|£/kwh|$|dollar|dollars',
      '0.01': '¢/kwh|c/kwh|cent/kwh|cents/kwh|¢|c|cent|cents',
    },
    before: { '1': '$|€|£' },
  }),
  fuelPrice: dimension({
    noun: 'a price per therm',
    si: '1',
    symbol: '1/therm',
    units: {
      '1': '/therm|$/therm|dollar/therm|dollars/therm|$|dollar|dollars',
      '0.01': '¢/therm|c/therm|cent/therm|cents/therm|¢|c|cent|cents',
    },
    before: { '1': '$|€|£' },
  }),
  count: dimension({
    noun: 'a whole number',
    si: '1',
    symbol: '1',
    units: { '1': '' },
    after: 'x|each|ea|pcs|piece|pieces',
  }),
  number: dimension({ noun: 'a plain number', si: '1', symbol: '1', units: { '1': '' } }),
};
