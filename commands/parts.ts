import type { AnswerCommand, Telling } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { Reply } from '#findings/reply.ts';
import { ask, type Interview, offer, take, together } from '#interview/interview.ts';
import { commonPractice } from '#knowledge/sources.ts';
import type { SquareMetreKelvinsPerWatt } from '#quantity/units.ts';
import { ductInsulation } from './questions/attic.ts';
import { box } from './questions/box.ts';
import { ductRun } from './questions/duct.ts';
import { collar } from './questions/fan.ts';
import { breaker } from './questions/loads.ts';
import {
  aboveCeiling,
  cableLength,
  grilleSize,
  housingSize,
  insulationWanted,
  joistKind,
  joistSpacing,
  oldOpening,
} from './questions/parts.ts';
import { controlWanted, unitKind, wiringQuestion } from './questions/wiring.ts';

import { ductTape, insulationFinding, pitchFinding, takeOffFinding } from './workings/parts-findings.ts';
import { housingDepth, joistBay, openingFinding } from './workings/parts-fit.ts';
import type { PartsInputs } from './workings/parts-inputs.ts';
import { type PartsStory, partRows, partsStory } from './workings/parts-list.ts';
import { csvText } from './workings/shelf-csv.ts';

const cableWork = wiringQuestion('cable-work');

/** What the duct is to be wrapped to: what was said to be on it, or else what is wanted. */
function* insulationAsked(): Interview<SquareMetreKelvinsPerWatt | null> {
  const there = yield* take(ductInsulation);
  const said = there.known && there.value.typical > 0;
  const wanted = said ? yield* take(insulationWanted) : yield* offer(insulationWanted);
  return wanted.value ?? (said ? there.value.typical : null);
}

function* partsInterview(): Interview<PartsInputs> {
  const run = yield* ask(ductRun);
  const wide = yield* offer(collar);
  const insulation = yield* insulationAsked();
  const unit = yield* offer(unitKind);
  const control = yield* offer(controlWanted);
  const housing = yield* offer(housingSize);
  const sized = housing.value !== null;
  const [opening, grille] = yield* together('take', oldOpening, grilleSize);
  const spacing = sized ? yield* offer(joistSpacing) : yield* take(joistSpacing);
  const joists = sized && spacing.value !== null ? yield* offer(joistKind) : yield* take(joistKind);
  const above = sized && housing.value.length === 3 ? yield* offer(aboveCeiling) : yield* take(aboveCeiling);
  const work = yield* take(cableWork);
  const newCable = work.known && work.value !== 'none';
  const cable = newCable ? yield* offer(cableLength) : yield* take(cableLength);
  const [rated, which] = yield* together('take', breaker, box);
  return {
    run: run.value,
    collar: wide.value,
    insulation,
    housing: housing.value,
    oldOpening: opening.value,
    grille: grille.value,
    joistSpacing: spacing.value,
    joists: joists.known ? joists.value : null,
    above: above.known ? above.value : null,
    unit: unit.known ? unit.value : null,
    control: control.known ? control.value : null,
    cable: cable.value,
    breaker: rated.value,
    box: which.value,
  };
}

/** What a list cannot see. */
const beforeOrdering: Finding = {
  id: 'before-ordering',
  weight: 'advice',
  says: 'Check sizes against the fan’s leaflet and the hole in the wall before anything is ordered. Wiring parts are for whoever may do the wiring here.',
  working: [],
  sources: [commonPractice],
};

const endRemark = (id: string, says: string): Finding => ({
  id,
  weight: 'caution',
  says,
  working: [],
  sources: [commonPractice],
});

function endRemarks({ run }: PartsStory): readonly Finding[] {
  if (!run.end) {
    return [
      endRemark(
        'no-end',
        'Say how the duct ends outdoors: no cap is on the list, and a duct never ends in an attic or a soffit.',
      ),
    ];
  }
  return run.endsInSoffit
    ? [
        endRemark(
          'soffit-end',
          'Ask the inspector before ordering a soffit fitting: damp air let out under the eaves is drawn back into the attic.',
        ),
      ]
    : [];
}

function answer(inputs: PartsInputs, { units }: Telling): Reply {
  const story = partsStory(inputs, units);
  const fits = [openingFinding(story), joistBay(story), housingDepth(story)].filter((finding) => finding !== undefined);
  const rows = partRows(story);
  return {
    headline: `${rows.length} lines to load for this job.`,
    findings: [
      takeOffFinding(story),
      ...endRemarks(story),
      ...fits,
      ductTape(story),
      insulationFinding(story),
      pitchFinding(story),
      beforeOrdering,
    ].filter((finding) => finding !== undefined),
    suggestions: [
      { label: 'What does it deliver?', command: 'duct' },
      { label: 'Does it fit in the box?', command: 'boxfill' },
    ],
    files: [
      {
        name: 'parts.csv',
        type: 'text/csv',
        text: csvText([
          ['group', 'item', 'size', 'quantity', 'note'],
          ...rows.map(({ group, item, size, quantity, note }) => [group, item, size, quantity, note]),
        ]),
      },
    ],
  };
}

const parts: AnswerCommand<PartsInputs> = {
  kind: 'answer',
  name: 'parts',
  summary: 'The list for the van: duct, fittings, tape by length, hangers, wrap, wiring, the opening to cut.',
  example:
    'duct-run="14 ft 4 in smooth; 2 x elbow 90; wall cap" duct-insulation=R-8 housing-size="10-1/4 x 10-1/2 x 7-5/8 in" joist-spacing="16 in"',
  takes: [
    ductRun,
    collar,
    ductInsulation,
    insulationWanted,
    unitKind,
    controlWanted,
    housingSize,
    joistSpacing,
    joistKind,
    aboveCeiling,
    oldOpening,
    grilleSize,
    cableWork,
    cableLength,
    breaker,
    box,
  ],
  interview: partsInterview,
  answer,
};

export default parts;
