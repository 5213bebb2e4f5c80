import { dimensions } from './dimensions.ts';
import * as faces from './faces.ts';
import { type Bare, type Faces, type Kind, kindOf, type Limits } from './kind.ts';
import * as u from './units.ts';

type UnitOf<Name extends keyof typeof dimensions> = Exclude<keyof (typeof dimensions)[Name]['units'] & string, 'own'>;

/** Limits, and what a bare number means to each crew. */
type Asked<Q extends number, Name extends keyof typeof dimensions> = Limits<Q> & { readonly bare: Bare<UnitOf<Name>> };

const lengthFaces: Readonly<Record<UnitOf<'length'>, Faces>> = {
  in: faces.smallLengthFaces,
  ft: faces.longLengthFaces,
  yd: faces.longLengthFaces,
  m: faces.longLengthFaces,
  cm: faces.smallLengthFaces,
  mm: faces.smallLengthFaces,
  um: faces.roughnessFaces,
};

/** A length. Printed in feet and inches where a bare number is feet, else in inches; `shown` says otherwise. */
export const lengthOf = (asked: Asked<u.Metres, 'length'> & { readonly shown?: Faces }) =>
  kindOf({
    ...asked,
    dimension: dimensions.length,
    faces: asked.shown ?? lengthFaces[asked.bare['inch-pound']],
    brand: u.metres,
  });

export const areaOf = (asked: Asked<u.SquareMetres, 'area'>) =>
  kindOf({
    ...asked,
    dimension: dimensions.area,
    faces: asked.bare['inch-pound'] === 'in^2' ? faces.openingFaces : faces.areaFaces,
    brand: u.squareMetres,
  });

export const volumeOf = (asked: Asked<u.CubicMetres, 'volume'>) =>
  kindOf({
    ...asked,
    dimension: dimensions.volume,
    faces: asked.bare['inch-pound'] === 'gallon' ? faces.containerFaces : faces.volumeFaces,
    brand: u.cubicMetres,
  });

/** A box volume in cubic inches, which is what the box is marked with and what the count is made in. */
export const boxVolumeOf = (asked: Limits<u.CubicInches>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'in^3', metric: 'in^3' },
    dimension: dimensions.boxVolume,
    faces: faces.boxVolumeFaces,
    brand: u.cubicInches,
  });

export const airflowOf = (asked: Limits<u.CubicMetresPerSecond>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'cfm', metric: 'L/s' },
    dimension: dimensions.airflow,
    faces: faces.airflowFaces,
    brand: u.cubicMetresPerSecond,
  });

/** What a blower door draws from a house held at 50 Pa. */
export const leakageOf = (asked: Limits<u.CubicMetresPerSecond>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'cfm', metric: 'L/s' },
    dimension: dimensions.leakage,
    faces: faces.leakageFaces,
    brand: u.cubicMetresPerSecond,
  });

/** A pressure. Where a bare number is pascals to every crew, it is printed in pascals alone. */
export const pressureOf = (asked: Asked<u.Pascals, 'pressure'>) =>
  kindOf({
    ...asked,
    dimension: dimensions.pressure,
    faces: asked.bare['inch-pound'] === 'Pa' ? faces.roomPressureFaces : faces.pressureFaces,
    brand: u.pascals,
  });

export const velocityOf = (asked: Limits<u.MetresPerSecond>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'fpm', metric: 'm/s' },
    dimension: dimensions.velocity,
    faces: faces.velocityFaces,
    brand: u.metresPerSecond,
  });

export const temperatureOf = (asked: Limits<u.Celsius>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'degF', metric: 'degC' },
    dimension: dimensions.temperature,
    faces: faces.temperatureFaces,
    brand: u.celsius,
  });

/** A share, 0 to 1, written as a percentage: a bare 55 is 55 %. */
export const percentageOf = (asked: Limits<u.Ratio>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': '0.01', metric: '0.01' },
    dimension: dimensions.share,
    faces: faces.shareFaces,
    brand: u.ratio,
  });

/** Thermal resistance. R is always the inch-pound value and RSI the metric one, whichever units the crew works in. */
export const insulationOf = (asked: Limits<u.SquareMetreKelvinsPerWatt>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'Rvalue', metric: 'RSI' },
    dimension: dimensions.insulation,
    faces: faces.insulationFaces,
    brand: u.squareMetreKelvinsPerWatt,
  });

export const timeOf = ({ bare, ...limits }: Limits<u.Seconds> & { readonly bare: UnitOf<'duration'> }) =>
  kindOf({
    ...limits,
    bare: { 'inch-pound': bare, metric: bare },
    dimension: dimensions.duration,
    faces: faces.timeFaces,
    brand: u.seconds,
  });

/** Electrical power, in watts for everybody. */
export const powerOf = (asked: Limits<u.Watts>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'W', metric: 'W' },
    dimension: dimensions.power,
    faces: faces.wattFaces,
    brand: u.watts,
  });

/** The output of a heater or the heat carried off by air: Btu/h or watts. */
export const heatOf = (asked: Limits<u.Watts>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'BTU/hour', metric: 'W' },
    dimension: dimensions.power,
    faces: faces.heatFaces,
    brand: u.watts,
  });

const asIs = (value: number): number => value;

/** Energy in joules, read and printed as kilowatt-hours. */
export const energyOf = (asked: Limits<number>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'kW hour', metric: 'kW hour' },
    dimension: dimensions.energy,
    faces: faces.energyFaces,
    brand: asIs,
  });

export const currentOf = (asked: Limits<u.Amperes>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'A', metric: 'A' },
    dimension: dimensions.current,
    faces: faces.ampereFaces,
    brand: u.amperes,
  });

export const voltageOf = (asked: Limits<u.Volts>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'V', metric: 'V' },
    dimension: dimensions.voltage,
    faces: faces.voltFaces,
    brand: u.volts,
  });

const plain = { 'inch-pound': '1', metric: '1' } as const;

export const loudnessOf = (asked: Limits<u.Sones>) =>
  kindOf({ ...asked, bare: plain, dimension: dimensions.loudness, faces: faces.soneFaces, brand: u.sones });

export const soundLevelOf = (asked: Limits<number>) =>
  kindOf({ ...asked, bare: plain, dimension: dimensions.soundLevel, faces: faces.decibelFaces, brand: asIs });

/** Heating degree days in kelvin-days, whatever their base; a bare number is in the crew's own degrees. */
export const degreeDaysOf = (asked: Limits<number>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'degR day', metric: 'K day' },
    dimension: dimensions.degreeDays,
    faces: faces.degreeDayFaces,
    brand: asIs,
  });

export const densityOf = (asked: Limits<u.KilogramsPerCubicMetre>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'lbm/ft^3', metric: 'kg/m^3' },
    dimension: dimensions.density,
    faces: faces.densityFaces,
    brand: u.kilogramsPerCubicMetre,
  });

/** Airflow per watt, in cubic metres per second per watt. */
export const efficacyOf = (asked: Limits<number>) =>
  kindOf({
    ...asked,
    bare: { 'inch-pound': 'cfm/W', metric: 'L/s/W' },
    dimension: dimensions.efficacy,
    faces: faces.efficacyFaces,
    brand: asIs,
  });

/** Air changes, per hour and not per second: nobody counts them otherwise. */
export const airChangesOf = (asked: Limits<number>) =>
  kindOf({ ...asked, bare: plain, dimension: dimensions.airChanges, faces: faces.airChangeFaces, brand: asIs });

/** An amount in the crew's own currency, as a plain number. */
export const moneyOf = (asked: Limits<number>) =>
  kindOf({ ...asked, bare: plain, dimension: dimensions.money, faces: faces.moneyFaces, brand: asIs });

/** Money per kilowatt-hour, as a plain number. */
export const electricityPriceOf = (asked: Limits<number>) =>
  kindOf({
    ...asked,
    bare: plain,
    dimension: dimensions.electricityPrice,
    faces: faces.perKilowattHourFaces,
    brand: asIs,
  });

/** Money per therm of fuel, as a plain number. */
export const fuelPriceOf = (asked: Limits<number>) =>
  kindOf({ ...asked, bare: plain, dimension: dimensions.fuelPrice, faces: faces.perThermFaces, brand: asIs });

/** A whole number of things. `things` are the words that may follow it: "elbow|elbows". */
export const countOf = ({ things, ...limits }: Limits<number> & { readonly things?: string }) =>
  kindOf({
    ...limits,
    bare: plain,
    dimension: dimensions.count,
    faces: faces.numberFaces(1),
    brand: asIs,
    whole: true,
    ...(things === undefined ? {} : { after: things }),
  });

/** A number without a unit, such as a loss coefficient, printed to `step`. */
export const numberOf = ({ step, ...limits }: Limits<number> & { readonly step: number }): Kind<number, '1'> =>
  kindOf({ ...limits, bare: plain, dimension: dimensions.number, faces: faces.numberFaces(step), brand: asIs });
