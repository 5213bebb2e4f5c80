import type { Desk } from '#chat/command.ts';
import type { Reply } from '#findings/reply.ts';
import type { ChecklistId } from '#knowledge/checklists.ts';
import { kitFor } from '#walkthrough/walk-list.ts';
import { partsToLoad } from './swap-beside-duct.ts';
import { openFacts } from './swap-facts.ts';
import { nextPage } from './swap-page.ts';
import { begin, unknownFindings } from './swap-start.ts';
import { tokenOf, toldOf, type Walker } from './swap-walk.ts';

/** Begins a list and shows how long it is, what nobody knows yet, and what to take along. */
export function startedReply(desk: Desk, walker: Walker, id: ChecklistId): Reply {
  const { walk, findings } = begin(desk, walker, id);
  const { checklist } = walk;
  const told = toldOf(walk);
  const { tools, gear } = kitFor(walk.state.list);
  const load = partsToLoad(desk, walk);
  const page = nextPage(desk, { walk, walker });
  return {
    headline: told.started(checklist.name, walk.sheet, {
      steps: walk.state.progress.of,
      holds: walk.state.holds.length,
    }),
    findings: [...findings, ...unknownFindings(walk), ...load.findings],
    tables: [
      {
        title: told.takeAlong,
        columns: ['', ''],
        rows: [
          [told.tools, tools.map((tool) => checklist.words.tools[tool]).join('; ')],
          [told.gear, gear.map((each) => checklist.words.gear[each]).join('; ')],
          [told.parts, load.rows.join('; ')],
        ].filter(([, says]) => says !== ''),
      },
    ],
    presses: [
      {
        label: told.firstStep,
        command: 'swap',
        action: 'next',
        given: { job: tokenOf(walk), ...(walker.as ? { as: walker.as } : {}) },
      },
      ...(openFacts(walk).length === 0
        ? []
        : [
            {
              label: told.sayKnown,
              command: 'swap',
              action: 'known',
              given: { job: tokenOf(walk), ...(walker.as ? { as: walker.as } : {}) },
            },
          ]),
      ...(page.presses ?? []).slice(-1),
    ],
    suggestions: [{ label: told.workOutParts, command: 'parts' }],
  };
}
