import type { Action, Desk, DeskCommand, DeskOption } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { Choice, Widget } from '#interview/question.ts';
import { replay } from '#interview/replay.ts';
import { ownWorking } from '#knowledge/sources.ts';
import { leading } from '#quantity/units.ts';
import { fanWatts } from './questions/cost.ts';
import { collar, fanCurve, ratedSones } from './questions/fan.ts';
import { labelQuestions } from './questions/shelf.ts';
import { notUnderstood, remark, saying } from './workings/plain-replies.ts';
import { fanNamed, fansMeant, labelText, readFanName, readLabel, type ShelfFan, shownName } from './workings/shelf.ts';
import { comparisonChart } from './workings/shelf-chart.ts';
import { bestFan, type Compared, compared, comparisonTable, jobDuct, pastLabels } from './workings/shelf-comparison.ts';
import { demo, exportFans, importFans, shelved } from './workings/shelf-transfer.ts';
import { othersOfTheFan, useFan } from './workings/shelf-use.ts';

const invented = (names: readonly string[]): Finding[] =>
  names.length === 0
    ? []
    : [
        {
          ...remark('invented', 'caution', `Buy nothing by ${names.join(', ')}: made up to try things with.`),
          sources: [ownWorking],
        },
      ];

const onShelf = ({ store }: Desk, typed: string): readonly Choice[] =>
  store.shelfFans({ search: typed, limit: 25 }).map((fan) => ({ id: fan.name, label: shownName(fan) }));

const named: DeskOption = { id: 'name', brief: 'the fan, by its name on the shelf', required: true, suggest: onShelf };

const exampleOf = (widget: Widget): string => (widget.kind === 'text' ? widget.placeholder : '');

const briefs = new Map<string, string>([...labelQuestions, ...othersOfTheFan].map(({ id, brief }) => [id, brief]));
const briefly = (ids: readonly string[]): string => ids.map((id) => (briefs.get(id) ?? id).toLowerCase()).join('; ');

const labelTable = (fan: ShelfFan, { telling }: Desk) => ({
  title: `What the label of ${shownName(fan)} says`,
  columns: ['what', 'on the label'],
  rows: labelQuestions.map((question) => [
    question.brief,
    labelText<unknown>(fan, question, telling.units) || 'nothing',
  ]),
});

const add: Action = {
  name: 'add',
  summary: 'Put a fan on the crew’s shelf by what its label says.',
  options: [
    { id: 'name', brief: 'what the crew calls it, such as Hall bath 80', required: true },
    ...labelQuestions.map(
      ({ id, brief, widget }): DeskOption => ({
        id,
        brief: `${brief}, such as ${exampleOf(widget)}`,
        required: id === fanCurve.id,
        longest: 400,
      }),
    ),
  ],
  act(desk, { name: typed = '', ...given }) {
    const name = readFanName(typed);
    const { label, problems } = readLabel(given, desk.telling.units);
    const wrong = [...('rejected' in name ? [name.rejected] : []), ...problems];
    if (wrong.length === 0 && label[fanCurve.id] === undefined) wrong.push(`fan-curve: give ${fanCurve.accepts}.`);
    if (wrong.length > 0 || 'rejected' in name) {
      return saying('Nothing was put on the shelf.', {
        findings: notUnderstood(wrong),
      });
    }
    const before = desk.store.shelfFan(name.value);
    const refused = shelved(desk, [{ name: name.value, label, units: leading(desk.telling.units), demo: false }]);
    if (refused !== undefined) return saying(refused);
    const fan = desk.store.shelfFan(name.value);
    const done = before ? 'in place of the one of that name' : 'on the shelf';
    return saying(
      `${name.value} is ${done}. /fan use puts it on a job.`,
      fan ? { tables: [labelTable(fan, desk)] } : {},
    );
  },
};

const mostListed = 40;

const list: Action = {
  name: 'list',
  summary: 'List the fans on the shelf.',
  options: [{ id: 'search', brief: 'part of the name' }],
  act({ store, telling }, { search }) {
    const found = store.shelfFans({ search });
    if (found.length === 0) {
      return saying(
        search === undefined
          ? 'The shelf is empty. Put a fan on it with /fan add, or try the invented ones: /fan demo.'
          : 'No fan on the shelf has that in its name. /fan list shows them all.',
      );
    }
    const shown = found.slice(0, mostListed);
    const more = found.length - shown.length;
    const on = (fan: ShelfFan, question: (typeof labelQuestions)[number]) =>
      labelText<unknown>(fan, question, telling.units) || '—';
    return saying(`${found.length} ${found.length === 1 ? 'fan' : 'fans'} on the shelf.`, {
      findings:
        more > 0 ? [remark('more', 'advice', `${more} more are not shown. Give part of a name to find one.`)] : [],
      tables: [
        {
          title: 'The shelf',
          columns: ['fan', 'label', 'collar', 'sones', 'watts'],
          rows: shown.map((fan) => [
            shownName(fan),
            on(fan, fanCurve),
            on(fan, collar),
            on(fan, ratedSones),
            on(fan, fanWatts),
          ]),
        },
      ],
    });
  },
};

const show: Action = {
  name: 'show',
  summary: 'Show everything the label of a fan says.',
  options: [named],
  act(desk, { name = '' }) {
    const found = fanNamed(desk, name);
    if ('rejected' in found) return saying(found.rejected);
    const fan = found.value;
    return saying(`${shownName(fan)}, put on the shelf on ${fan.at.slice(0, 10)}.`, {
      findings: invented(fan.demo ? [fan.name] : []),
      tables: [labelTable(fan, desk)],
    });
  },
};

const remove: Action = {
  name: 'remove',
  summary: 'Take a fan off the shelf. Jobs it was used on keep what they have.',
  options: [named],
  act({ store, speaker }, { name = '' }) {
    // Only by its whole name: a part of it must not take the wrong fan off.
    const fan = store.shelfFan(name);
    if (!fan) return saying('No fan on the shelf is called just that. See the names with /fan list.');
    store.removeShelfFan(fan.name, speaker);
    return saying(`${shownName(fan)} is off the shelf. Jobs it was used on keep what they have.`);
  },
};

const use: Action = {
  name: 'use',
  summary: 'Put what a fan’s label says on the job open here, for /duct and the rest.',
  options: [named],
  act(desk, { name = '' }) {
    const found = fanNamed(desk, name);
    if ('rejected' in found) return saying(found.rejected);
    const fan = found.value;
    const { noted, cleared, perhapsStale } = useFan(desk, fan);
    const { number, name: job } = desk.store.currentSheet(desk.speaker);
    const answers = `${noted.length} ${noted.length === 1 ? 'answer' : 'answers'} off its label`;
    const stale = perhapsStale.join(' and ');
    return saying(`${shownName(fan)} is on job ${number}${job === null ? '' : `, ${job}`}, with ${answers}.`, {
      findings: [
        ...invented(fan.demo ? [fan.name] : []),
        ...(stale === ''
          ? []
          : [remark('of-another-fan', 'caution', `Check ${stale}: the sheet has it already, perhaps of another fan.`)]),
        ...(cleared.length === 0
          ? []
          : [remark('no-longer-known', 'advice', `Not on this label, so not known now: ${briefly(cleared)}.`)]),
      ],
      tables: [labelTable(fan, desk)],
      suggestions: [{ label: 'What will it deliver?', command: 'duct' }],
    });
  },
};

const places = ['first', 'second', 'third', 'fourth'] as const;

const compare: Action = {
  name: 'compare',
  summary: 'Compare up to four fans in the duct of the job open here: one chart, one table.',
  options: places.map((id, index) => ({
    id,
    brief: index === 0 ? 'a fan of the shelf, or several with commas between' : 'another fan of the shelf',
    suggest: onShelf,
  })),
  act(desk, given) {
    const named = places.flatMap((place) => given[place] ?? []);
    const meant = fansMeant(desk, { named, most: places.length });
    if ('rejected' in meant) return saying(meant.rejected);
    const outcome = replay(jobDuct(), desk.recall, 'one-shot');
    if (!outcome.complete) throw new Error('the duct of a job can always be told or assumed');
    const duct = outcome.inputs;
    const { units } = desk.telling;
    const [first, ...rest] = meant.value.flatMap((fan) => compared(fan, duct) ?? []);
    if (!first) return saying('Their labels can no longer be read. Put them on the shelf anew with /fan add.');
    const flow = ({ result }: Compared) => result.airflow.typical;
    const all = [first, ...rest].sort((one, other) => flow(other) - flow(one)) as [Compared, ...Compared[]];
    const best = bestFan(all, duct.needed, units);
    const past = pastLabels(all, units);
    return {
      headline: `${all.length} ${all.length === 1 ? 'fan' : 'fans'} in this job’s duct, each at its fastest.`,
      findings: [
        best,
        ...(past ? [past] : []),
        ...invented(all.flatMap(({ demo: made, name }) => (made ? [name] : []))),
      ],
      tables: [comparisonTable(all, duct.needed, units)],
      chart: comparisonChart(all, duct.needed, leading(units)),
      assumed: outcome.assumed.map(
        ({ question, because }) => `${question.brief}: ${question.show(question.whenUnknown.value, units)}. ${because}`,
      ),
      suggestions: duct.needed === null ? [{ label: 'What does the room need?', command: 'size' }] : [],
    };
  },
};

const fan: DeskCommand = {
  kind: 'desk',
  name: 'fan',
  summary: 'The crew’s shelf of fans: add, list, show, use, compare, remove, import, export, demo.',
  example: 'add Hall bath 80 fan-curve="84@0.1 66@0.25" collar="4 in" rated-sones=1.5',
  actions: [add, list, show, use, compare, remove, importFans, exportFans, demo],
};

export default fan;
