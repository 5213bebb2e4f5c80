import { heightFaces, roughnessFaces } from './faces.ts';
import {
  airChangesOf,
  airflowOf,
  areaOf,
  boxVolumeOf,
  countOf,
  currentOf,
  degreeDaysOf,
  densityOf,
  efficacyOf,
  electricityPriceOf,
  energyOf,
  fuelPriceOf,
  heatOf,
  insulationOf,
  leakageOf,
  lengthOf,
  loudnessOf,
  moneyOf,
  numberOf,
  percentageOf,
  powerOf,
  pressureOf,
  soundLevelOf,
  temperatureOf,
  timeOf,
  velocityOf,
  voltageOf,
  volumeOf,
} from './kind-makers.ts';
import {
  amperes,
  celsius,
  cubicInches,
  cubicMetres,
  cubicMetresPerSecond,
  kilogramsPerCubicMetre,
  metres,
  metresPerSecond,
  pascals,
  ratio,
  seconds,
  sones,
  squareMetreKelvinsPerWatt,
  squareMetres,
  volts,
  watts,
} from './units.ts';

/**
 * The kinds of quantity the crew's questions and findings share. The limits are there to catch a slipped unit or a slipped
 * key, not to judge the job: they lie well outside what is met on site.
 */

/** Ducts, collars, hoods: 2 to 20 in. */
export const ductDiameter = lengthOf({
  bare: { 'inch-pound': 'in', metric: 'mm' },
  least: metres(0.0508),
  most: metres(0.508),
  example: '4 in or 100 mm',
});

export const ductLength = lengthOf({
  bare: { 'inch-pound': 'ft', metric: 'm' },
  least: metres(0.0254),
  most: metres(60.96),
  example: '14 ft or 4.3 m',
});

export const roomLength = lengthOf({
  bare: { 'inch-pound': 'ft', metric: 'm' },
  least: metres(0.6096),
  most: metres(30.48),
  example: '8 ft 6 in or 2.6 m',
});

export const ceilingHeight = lengthOf({
  bare: { 'inch-pound': 'ft', metric: 'm' },
  least: metres(1.524),
  most: metres(9.144),
  example: '8 ft or 2.4 m',
});

export const doorWidth = lengthOf({
  bare: { 'inch-pound': 'in', metric: 'mm' },
  least: metres(0.3048),
  most: metres(1.8288),
  example: '30 in or 760 mm',
});

/** Gaps, laps, thicknesses: nothing to 12 in. */
export const smallLength = lengthOf({
  bare: { 'inch-pound': 'in', metric: 'mm' },
  least: metres(0),
  most: metres(0.3048),
  example: '3/4 in or 20 mm',
});

/** From one thing to another: a hood to a window, a fan to where the duct begins to sweat. */
export const distance = lengthOf({
  bare: { 'inch-pound': 'ft', metric: 'm' },
  least: metres(0),
  most: metres(152.4),
  example: '10 ft or 3 m',
});

export const altitude = lengthOf({
  bare: { 'inch-pound': 'ft', metric: 'm' },
  least: metres(-457.2),
  most: metres(4572),
  example: '5000 ft or 1500 m',
  noun: 'a height above the sea',
  shown: heightFaces,
});

/** The roughness height of the friction formulas. */
export const roughnessHeight = lengthOf({
  bare: { 'inch-pound': 'ft', metric: 'mm' },
  least: metres(0),
  most: metres(0.01524),
  example: '0.0003 ft or 0.09 mm',
  noun: 'a roughness height',
  shown: roughnessFaces,
});

export const roomArea = areaOf({
  bare: { 'inch-pound': 'ft^2', metric: 'm^2' },
  least: squareMetres(0.371612),
  most: squareMetres(185.80608),
  example: '54 sq ft or 5 m2',
});

export const houseArea = areaOf({
  bare: { 'inch-pound': 'ft^2', metric: 'm^2' },
  least: squareMetres(9.290304),
  most: squareMetres(1858.0608),
  example: '1800 sq ft or 170 m2',
  noun: 'a floor area',
});

/** Free openings: grilles, undercuts, holes. */
export const openingArea = areaOf({
  bare: { 'inch-pound': 'in^2', metric: 'cm^2' },
  least: squareMetres(0),
  most: squareMetres(0.64516),
  example: '30 sq in or 190 cm2',
});

export const roomVolume = volumeOf({
  bare: { 'inch-pound': 'ft^3', metric: 'm^3' },
  least: cubicMetres(0.8495053977600001),
  most: cubicMetres(1415.8423296),
  example: '430 cu ft or 12 m3',
});

/** A bag or a bin that is filled with air to measure the flow. */
export const containerVolume = volumeOf({
  bare: { 'inch-pound': 'gallon', metric: 'L' },
  least: cubicMetres(0.003785411784),
  most: cubicMetres(0.757082356799),
  example: '55 gal or 208 L',
});

export const boxVolume = boxVolumeOf({
  least: cubicInches(1),
  most: cubicInches(500),
  example: '21 cu in or 344 cm3',
});

/** Any airflow, none included: what was measured may be nothing. */
export const airflow = airflowOf({
  least: cubicMetresPerSecond(0),
  most: cubicMetresPerSecond(0.9438948864),
  example: '80 cfm or 38 L/s',
});

/** What a fan is sold as, or a room needs: 5 to 2000 cfm. */
export const ratedAirflow = airflowOf({
  least: cubicMetresPerSecond(0.002359737216),
  most: cubicMetresPerSecond(0.9438948864),
  example: '110 cfm or 52 L/s',
});

export const houseLeakage = leakageOf({
  least: cubicMetresPerSecond(0.02359737216),
  most: cubicMetresPerSecond(9.438948864),
  example: '1200 cfm50 or 566 L/s at 50 Pa',
});

export const staticPressure = pressureOf({
  bare: { 'inch-pound': 'inH2O', metric: 'Pa' },
  least: pascals(0),
  most: pascals(1245.44455),
  example: '0.25 in. w.g. or 62 Pa',
});

/** A room or a house against its neighbour or the outdoors; below it is negative. */
export const roomPressure = pressureOf({
  bare: { 'inch-pound': 'Pa', metric: 'Pa' },
  least: pascals(-500),
  most: pascals(500),
  example: '5 Pa or 0.02 in. w.g.',
});

export const airSpeed = velocityOf({
  least: metresPerSecond(0),
  most: metresPerSecond(30.48),
  example: '800 fpm or 4 m/s',
});

/** Air and surfaces anywhere: attics, outdoors, ducts. */
export const temperature = temperatureOf({
  least: celsius(-50),
  most: celsius(100),
  example: '68 °F or 20 °C',
});

export const houseTemperature = temperatureOf({
  least: celsius(0),
  most: celsius(45),
  example: '70 °F or 21 °C',
});

export const percentage = percentageOf({ least: ratio(0), most: ratio(1), example: '15 %' });

export const relativeHumidity = percentageOf({
  least: ratio(0),
  most: ratio(1),
  example: '55 %',
  noun: 'a relative humidity',
});

export const insulation = insulationOf({
  least: squareMetreKelvinsPerWatt(0),
  most: squareMetreKelvinsPerWatt(17.6110183682306),
  example: 'R-8 or RSI 1.4',
});

/** Showers and run-on: a bare number is minutes. */
export const minutes = timeOf({
  bare: 'minute',
  least: seconds(0),
  most: seconds(86_400),
  example: '20 min',
});

/** Filling a bag: a bare number is seconds. */
export const stopwatchTime = timeOf({
  bare: 's',
  least: seconds(0.1),
  most: seconds(3600),
  example: '7.4 s',
});

/** Out of twenty-four: a bare number is hours. */
export const hoursPerDay = timeOf({
  bare: 'hour',
  least: seconds(0),
  most: seconds(86_400),
  example: '2 h',
  noun: 'a time per day',
});

export const fanPower = powerOf({ least: watts(0.5), most: watts(2000), example: '30 W' });

export const heatOutput = heatOf({
  least: watts(0),
  most: watts(293_071.070172222),
  example: '5100 Btu/h or 1500 W',
  noun: 'a heat output',
});

export const energy = energyOf({ least: 0, most: 3.6e11, example: '120 kWh' });

export const current = currentOf({ least: amperes(0), most: amperes(200), example: '15 A' });

export const voltage = voltageOf({ least: volts(0), most: volts(600), example: '120 V' });

export const loudness = loudnessOf({ least: sones(0.1), most: sones(30), example: '1.5 sones' });

export const soundLevel = soundLevelOf({ least: 0, most: 120, example: '45 dBA' });

export const degreeDays = degreeDaysOf({
  least: 0,
  most: 11_111.11,
  example: '5400 HDD65 or 3000 K·d',
});

export const airDensity = densityOf({
  least: kilogramsPerCubicMetre(0.5),
  most: kilogramsPerCubicMetre(2),
  example: '0.075 lb/ft3 or 1.2 kg/m3',
});

export const efficacy = efficacyOf({ least: 0, most: 0.02359737216, example: '2.8 cfm/W or 1.3 L/s/W' });

export const airChanges = airChangesOf({ least: 0, most: 200, example: '8 air changes per hour' });

export const money = moneyOf({ least: 0, most: 100_000, example: '$45' });

export const electricityPrice = electricityPriceOf({ least: 0, most: 5, example: '$0.16 per kWh' });

export const fuelPrice = fuelPriceOf({ least: 0, most: 100, example: '$1.40 per therm' });

export const count = countOf({ least: 0, most: 1000, example: '3' });

export const lossCoefficient = numberOf({ least: 0, most: 100, step: 0.01, example: '0.35' });
