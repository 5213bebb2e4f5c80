import type { Finding, Step, Table } from '#findings/finding.ts';
import type { Block, Paper } from '#findings/paper.ts';
import type { Reply } from '#findings/reply.ts';
import { withMetric } from '#quantity/beside.ts';
import type { UnitSystem } from '#quantity/units.ts';

/**
 * A reply as a crew reads it. Where both systems are wanted, numbers that stand in a sentence, such as those of a rule as it is
 * printed, get their metric beside them too; values have it already. Files for machines stay as they are.
 */
export const inUnits = (reply: Reply, units: UnitSystem): Reply => (units === 'both' ? inBoth(reply) : reply);

function inBoth({ notes, assumed, assumedBecause, tables, chart, papers, ...reply }: Reply): Reply {
  return {
    ...reply,
    headline: withMetric(reply.headline),
    findings: reply.findings.map(findingInBoth),
    ...(notes === undefined ? {} : { notes: notes.map(withMetric) }),
    ...(tables === undefined ? {} : { tables: tables.map(tableInBoth) }),
    ...(chart === undefined ? {} : { chart: { ...chart, alt: withMetric(chart.alt) } }),
    ...(assumed === undefined ? {} : { assumed: assumed.map(withMetric) }),
    ...(assumedBecause === undefined ? {} : { assumedBecause: assumedBecause.map(withMetric) }),
    ...(papers === undefined ? {} : { papers: papers.map(({ name, paper }) => ({ name, paper: paperInBoth(paper) })) }),
  };
}

const findingInBoth = ({ table, ...finding }: Finding): Finding => ({
  ...finding,
  says: withMetric(finding.says),
  working: finding.working.map(stepInBoth),
  ...(table === undefined ? {} : { table: tableInBoth(table) }),
});

const stepInBoth = ({ how, ...step }: Step): Step => ({
  ...step,
  what: withMetric(step.what),
  value: withMetric(step.value),
  ...(how === undefined ? {} : { how: withMetric(how) }),
});

const tableInBoth = (table: Table): Table =>
  table.asTyped
    ? table
    : {
        ...table,
        columns: table.columns.map(withMetric),
        rows: table.rows.map((row) => row.map(withMetric)),
      };

const paperInBoth = (paper: Paper): Paper => ({ ...paper, blocks: paper.blocks.map(blockInBoth) });

function blockInBoth(block: Block): Block {
  switch (block.kind) {
    case 'heading':
    case 'text':
      return { ...block, text: withMetric(block.text) };
    case 'warning':
      return { ...block, lines: block.lines.map(withMetric) };
    case 'list':
      return { ...block, items: block.items.map(withMetric) };
    case 'figures':
      return {
        ...block,
        figures: block.figures.map(({ number, says }) => ({ number: withMetric(number), says: withMetric(says) })),
      };
    case 'table':
      return { ...block, rows: block.rows.map((row) => row.map(withMetric)) };
    case 'blanks':
      return { ...block, labels: block.labels.map(withMetric) };
    case 'picture':
      return { ...block, alt: withMetric(block.alt) };
  }
}
