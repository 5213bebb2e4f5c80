import { evaluate } from 'mathjs';

const units =
  /(?<=[\d.\s(])(?:in\. w\.g\.|ft²\/s|sq ft|m²\/s|m³\/s|kg\/m³|L\/s|m\/s|m²|cfm|fpm|Pa|ft|in|mm|m)(?=$|[\s)²+−×÷])/g;

/**
 * What a person with a calculator gets for the sum in a line of working. Units are left out, and so is what is said before the
 * sum, up to a colon, and behind it, from a comma or semicolon on.
 *
 * @throws Error when a line holds no sum, with the line.
 */
export function reckoned(how: string): number {
  const sum = how
    .replace(/^[^:]*: /, '')
    .replace(/[,;] .*$/, '')
    .replace(/ = .*$/, '')
    .replace(/ as given$/, '')
    .replace(units, '')
    .replaceAll('×', '*')
    .replaceAll('÷', '/')
    .replaceAll('−', '-')
    .replaceAll('²', '^2')
    .replaceAll('√', 'sqrt')
    .replace(/sin (\d+)°/g, 'sin($1 deg)');
  try {
    return Number(evaluate(sum));
  } catch (error) {
    throw new Error(`no sum in "${how}", read as "${sum}"`, { cause: error });
  }
}
