function keepsItsShape(value: unknown): boolean {
  switch (typeof value) {
    case 'string':
    case 'boolean':
      return true;
    case 'number':
      return Number.isFinite(value);
    case 'object': {
      if (value === null) return true;
      if (Array.isArray(value)) return value.every(keepsItsShape);
      const prototype = Object.getPrototypeOf(value);
      return (
        (prototype === Object.prototype || prototype === null) &&
        Object.values(value).every((inner) => inner === undefined || keepsItsShape(inner))
      );
    }
    default:
      return false;
  }
}

/**
 * The value as JSON text.
 *
 * @throws TypeError for what JSON would quietly turn into something else: NaN, an infinity, a date, a map.
 */
export function jsonText(value: unknown): string {
  if (!keepsItsShape(value)) throw new TypeError('this value would not come back from the records as it went in');
  return JSON.stringify(value);
}
