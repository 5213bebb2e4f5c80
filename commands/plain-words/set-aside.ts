/** Numbers that are no answer to any question: which apartment it is, and how leaky the house. They are named, never taken. */

export interface Aside {
  readonly line: string;
  readonly numbers: readonly string[];
}

const notMeasured = String.raw`(?![\d./]| ?(?:x|by|cfm|l/s|m3/h|sqft|m2|ft|in|mm|cm|m|watt|%|sone|amp|volt|fan|deg|degf|degc|min|hr)\b| ?%)`;

const places: readonly RegExp[] = [
  new RegExp(
    String.raw`\b(?:apt|apartment|suite|ste|flat|condo|lot|bldg|building|house number|job|job number|work order|invoice|ticket)\.? ?(?:#|no\.? ?|number )?(?<n>\d+)[a-z]?\b${notMeasured}`,
    'g',
  ),
  new RegExp(
    String.raw`(?<!\b(?:off|from|above|to|over|and|under|tile|at)(?: the)? )\bfloor (?:#|number )?(?<n>[1-9]\d?)\b${notMeasured}`,
    'g',
  ),
  // A unit is a dwelling where somebody lives in it, and where no fan moves so little.
  new RegExp(
    String.raw`\b(?:in|at|from|for|of|tenant|tenants|customer|owner|upstairs|downstairs) unit (?:#|number )?(?<n>\d{1,4})[a-z]?\b${notMeasured}`,
    'g',
  ),
  /^(?:the )?unit (?:#|number )?(?<n>[4-9]\d\d|\d{4})[a-z]?(?= ?,)/g,
  // At the head of a note that goes on to another sentence, or that tells elsewhere what is moved.
  /^(?:the )?unit (?:#|number )?(?<n>\d{1,4})[a-z]?(?= ?(?:[.:;]|- )(?!\d)| ?,(?=.*\b(?:delivered|delivers|delivering|moves|measured|does)\b))/g,
  new RegExp(String.raw`\bunit (?:#|number )?(?<n>[12]?\d|\d{1,4}[a-z])\b${notMeasured}`, 'g'),
  new RegExp(String.raw`\b(?:hotel |guest )?rooms? (?:#|number )?(?<n>\d{3})\b${notMeasured}`, 'g'),
];

const leaking = String.raw`\b(?:(?:house|home|building|place|envelope) (?:\w+ ){0,2}leak(?:s|ing|age)?|leakage|leaks|blower[ -]door)\b[^.;~\d]{0,24}(?<n>\d{2,5}(?:\.\d+)?)`;
/** At no pressure anybody named it says nothing that can be worked with. */
const leakUnnamed = new RegExp(String.raw`${leaking} (?:cfm|l/s|m3/h)\b(?! ?(?:at|@) ?50)`, 'g');
const leakAtFifty = new RegExp(String.raw`${leaking}(?: (?:cfm|l/s|m3/h))?(?: ?(?:at|@) ?(?<p>50)(?: pa)?\b)?`, 'g');

/** The line without such numbers, and the numbers. */
export function setAside(line: string, asksLeakage: boolean): Aside {
  const numbers: string[] = [];
  let text = line;
  const patterns = [...places, ...(asksLeakage ? [leakUnnamed] : [leakAtFifty])];
  for (const pattern of patterns)
    text = text.replace(pattern, (said, ...found) => {
      const { n = '' } = found.at(-1) as Record<string, string | undefined>;
      numbers.push(n);
      const named = said.slice(0, said.lastIndexOf(n));
      return pattern === leakAtFifty || pattern === leakUnnamed ? `${named}nth` : said.replace(n, 'nth');
    });
  return { line: text, numbers };
}
