import type { Action, Desk, DeskCommand, DeskOption } from '#chat/command.ts';
import type { Finding } from '#findings/finding.ts';
import type { AnyQuestion, Choice, Widget } from '#interview/question.ts';
import { replay } from '#interview/replay.ts';
import { worded } from '#interview/worded.ts';
import { ownWorking } from '#knowledge/sources.ts';
import { leading } from '#quantity/units.ts';
import type { Language } from '#words/language.ts';
import { fanWatts } from './questions/cost.ts';
import { collar, fanCurve, ratedSones } from './questions/fan.ts';
import { labelQuestions } from './questions/shelf.ts';
import { shelfWords } from './words/shelf.ts';
import { languageAt } from './words/swap.ts';
import { notUnderstood, remark, saying } from './workings/plain-replies.ts';
import { fanNamed, fansMeant, labelText, readFanName, readLabel, type ShelfFan, shownName } from './workings/shelf.ts';
import { comparisonChart } from './workings/shelf-chart.ts';
import { bestFan, type Compared, compared, comparisonTable, jobDuct, pastLabels } from './workings/shelf-comparison.ts';
import { demo, exportFans, importFans, shelved } from './workings/shelf-transfer.ts';
import { othersOfTheFan, useFan } from './workings/shelf-use.ts';

const invented = (names: readonly string[], language: Language = 'english'): Finding[] =>
  names.length === 0
    ? []
    : [
        {
          ...remark('invented', 'caution', shelfWords[language].buyNothing(names)),
          sources: [ownWorking],
        },
      ];

const onShelf = (desk: Desk, typed: string): readonly Choice[] =>
  desk.store
    .shelfFans({ search: typed, limit: 25 })
    .map((fan) => ({ id: fan.name, label: shownName(fan, languageAt(desk)) }));

const named: DeskOption = { id: 'name', brief: 'the fan, by its name on the shelf', required: true, suggest: onShelf };

const exampleOf = (widget: Widget): string => (widget.kind === 'text' ? widget.placeholder : '');

const asked = new Map<string, AnyQuestion>(
  [...labelQuestions, ...othersOfTheFan].map((question) => [question.id, question as AnyQuestion]),
);
const briefly = (ids: readonly string[], language: Language): string =>
  ids
    .map((id) => {
      const question = asked.get(id);
      return (question === undefined ? id : worded(question, language).brief).toLowerCase();
    })
    .join('; ');

function labelTable(fan: ShelfFan, desk: Desk) {
  const language = languageAt(desk);
  const texts = shelfWords[language];
  return {
    title: texts.labelOf(shownName(fan, language)),
    columns: texts.labelColumns,
    rows: labelQuestions.map((question) => [
      worded(question as AnyQuestion, language).brief,
      labelText(fan, question as AnyQuestion, desk.telling.units, language) || texts.nothing,
    ]),
  };
}

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
    const language = languageAt(desk);
    const texts = shelfWords[language];
    const name = readFanName(typed, language);
    const { label, problems } = readLabel(given, desk.telling.units, language);
    const wrong = [...('rejected' in name ? [name.rejected] : []), ...problems];
    if (wrong.length === 0 && label[fanCurve.id] === undefined)
      wrong.push(texts.giveCurve(worded(fanCurve as AnyQuestion, language).accepts));
    if (wrong.length > 0 || 'rejected' in name) {
      return saying(texts.nothingPut, { language, findings: notUnderstood(wrong) });
    }
    const before = desk.store.shelfFan(name.value);
    const refused = shelved(desk, [{ name: name.value, label, units: leading(desk.telling.units), demo: false }]);
    if (refused !== undefined) return saying(refused, { language });
    const fan = desk.store.shelfFan(name.value);
    return saying(texts.put(name.value, before !== undefined), {
      language,
      ...(fan ? { tables: [labelTable(fan, desk)] } : {}),
    });
  },
};

const mostListed = 40;

const list: Action = {
  name: 'list',
  summary: 'List the fans on the shelf.',
  options: [{ id: 'search', brief: 'part of the name' }],
  act(desk, { search }) {
    const { store, telling } = desk;
    const language = languageAt(desk);
    const texts = shelfWords[language];
    const found = store.shelfFans({ search });
    if (found.length === 0) return saying(search === undefined ? texts.empty : texts.noneNamedSo, { language });
    const shown = found.slice(0, mostListed);
    const more = found.length - shown.length;
    const on = (fan: ShelfFan, question: (typeof labelQuestions)[number]) =>
      labelText(fan, question as AnyQuestion, telling.units, language) || '—';
    return saying(texts.count(found.length), {
      language,
      findings: more > 0 ? [remark('more', 'advice', texts.more(more))] : [],
      tables: [
        {
          ...texts.shelf,
          rows: shown.map((fan) => [
            shownName(fan, language),
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
    const language = languageAt(desk);
    const texts = shelfWords[language];
    const found = fanNamed(desk, name);
    if ('rejected' in found) return saying(found.rejected, { language });
    const fan = found.value;
    return saying(texts.putOn(shownName(fan, language), fan.at.slice(0, 10)), {
      language,
      findings: invented(fan.demo ? [fan.name] : [], language),
      tables: [labelTable(fan, desk)],
    });
  },
};

const remove: Action = {
  name: 'remove',
  summary: 'Take a fan off the shelf. Jobs it was used on keep what they have.',
  options: [named],
  act(desk, { name = '' }) {
    const { store, speaker } = desk;
    const language = languageAt(desk);
    const texts = shelfWords[language];
    // Only by its whole name: a part of it must not take the wrong fan off.
    const fan = store.shelfFan(name);
    if (!fan) return saying(texts.notJustThat, { language });
    store.removeShelfFan(fan.name, speaker);
    return saying(texts.off(shownName(fan, language)), { language });
  },
};

const use: Action = {
  name: 'use',
  summary: 'Put what a fan’s label says on the job open here, for /duct and the rest.',
  options: [named],
  act(desk, { name = '' }) {
    const language = languageAt(desk);
    const texts = shelfWords[language];
    const found = fanNamed(desk, name);
    if ('rejected' in found) return saying(found.rejected, { language });
    const fan = found.value;
    const { noted, cleared, perhapsStale } = useFan(desk, fan);
    const { number, name: job } = desk.store.currentSheet(desk.speaker);
    return saying(texts.onJob(shownName(fan, language), number, job, noted.length), {
      language,
      findings: [
        ...invented(fan.demo ? [fan.name] : [], language),
        ...(perhapsStale.length === 0 ? [] : [remark('of-another-fan', 'caution', texts.ofAnother(perhapsStale))]),
        ...(cleared.length === 0
          ? []
          : [remark('no-longer-known', 'advice', texts.notKnownNow(briefly(cleared, language)))]),
      ],
      tables: [labelTable(fan, desk)],
      suggestions: [{ label: texts.whatDelivers, command: 'duct' }],
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
