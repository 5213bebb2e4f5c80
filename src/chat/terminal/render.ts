import type { Finding, Weight } from '#findings/finding.ts';
import { type Chart, type Reply, stopsFirst } from '#findings/reply.ts';
import { barsText } from '#pictures/bars-text.ts';
import { chartText } from '#pictures/chart-text.ts';
import { progressText } from '#pictures/progress-text.ts';
import type { Language } from '#words/language.ts';
import { standing } from '#words/standing.ts';
import { weightWord } from '../saying.ts';
import type { Asking, Screen } from '../screen.ts';
import { type Paper, painted, paragraph } from './paper.ts';
import { tableText } from './table-text.ts';

const bold = '\x1b[1m';

const colours: Readonly<Record<Weight, string>> = {
  stop: '\x1b[1;31m',
  caution: bold,
  advice: '\x1b[36m',
  good: '',
};

/** A whole screen as text: what was just understood, then the answer or the question. */
export function screenText(screen: Screen, paper: Paper): string {
  const heard = [
    ...(screen.noted ?? []).map(({ brief, shown }) => paragraph(`${brief}: ${shown}.`, paper)),
    ...screen.notes.map((note) => paragraph(note, paper)),
  ];
  const said = [
    ...(screen.reply ? [replyText(screen.reply, paper)] : []),
    ...(screen.asking ? [askingText(screen.asking, paper, screen.language)] : []),
  ];
  return [...heard, ...(screen.reply && heard.length > 0 ? [''] : []), ...said].join('\n');
}

function askingText(asking: Asking, paper: Paper, language: Language = 'english'): string {
  const choices = asking.choices.map(({ label, hint }, index) =>
    paragraph(`${label}${hint ? ` (${hint})` : ''}`, paper, `${String(index + 1).padStart(3)}  `),
  );
  const now = asking.now === undefined ? [] : [paragraph(`${standing[language].now(asking.now)}.`, paper)];
  return [...now, painted(paragraph(asking.prompt, paper), bold, paper), ...choices].join('\n');
}

/** An answer as text: blocks with a blank line between, the headline first. */
export function replyText(reply: Reply, paper: Paper): string {
  const findings = stopsFirst(reply.findings);
  const tables = [...findings.flatMap(({ table }) => (table ? [table] : [])), ...(reply.tables ?? [])];
  const assumed = reply.assumed ?? [];
  const { language = 'english' } = reply;
  const blocks = [
    painted(paragraph(reply.headline, paper), bold, paper),
    findings.map((finding) => findingText(finding, paper, language)).join('\n'),
    ...tables.map((table) => tableText(table, paper)),
    reply.chart ? sketch(reply.chart, Math.min(72, paper.width)) : '',
    assumed.length === 0
      ? ''
      : [`${standing[language].takenForGranted}:`, ...assumed.map((line) => paragraph(line, paper, '  - '))].join('\n'),
    reply.words ? paragraph(standing[language].words(reply.words), paper) : '',
  ];
  return blocks.filter((block) => block !== '').join('\n\n');
}

const sketch = (chart: Chart, width: number): string =>
  chart.progress
    ? progressText(chart.progress)
    : chart.bars
      ? barsText(chart, { width })
      : chartText(chart, { width, height: 16 });

const widestWord = (language: Language): number =>
  Math.max(...Object.values(standing[language].weights).map(({ length }) => length)) + 2;

function findingText({ weight, says }: Finding, paper: Paper, language: Language): string {
  const word = `${weightWord(weight, language)}:`.padEnd(widestWord(language));
  const text = paragraph(says, paper, word);
  return painted(word, colours[weight], paper) + text.slice(word.length);
}
