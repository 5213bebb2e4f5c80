import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { deskFor } from '#chat/desk.ts';
import demo from '#commands/demo.ts';
import { commands } from '#commands/index.ts';
import { answered } from '#commands/workings/demo-house.ts';
import type { Paper } from '#findings/paper.ts';
import type { Chart, Reply } from '#findings/reply.ts';
import { demoHouse } from '#knowledge/demo-house.ts';
import { chartSvg } from '#pictures/chart-svg.ts';
import { progressSvg } from '#pictures/progress-svg.ts';
import { openStore } from '#store/store.ts';
import { walkedPartly } from './swap-under-way.ts';

/** Where the pictures of the README lie. */
export const pictureFolder = join(import.meta.dirname, '../../knowledge/demo/pictures');

/** What each picture was made from and is, as checksums; written beside the pictures. */
export const madeFrom = 'made-from.json';

/** Something to draw: a chart, or a page to print. */
export type Drawn = { readonly chart: Chart } | { readonly paper: Paper };

/** The moment at which the demo house is looked at, so that a page bears the same date whenever it is made. */
const moment = new Date('2026-03-02T08:00:00.000Z');

/** The pictures of the demo house, each under the name of its file: what the commands themselves answer there. */
export function drawnHouse(): Readonly<Record<string, Drawn>> {
  const store = openStore(':memory:', { now: () => moment });
  try {
    const crew = store.scoped('terminal');
    const desk = deskFor({
      store: () => crew,
      speaker: { channel: 'terminal', who: 'demo crew' },
      commands,
      mayManage: true,
    });
    const shown = (named: string, action: string, given: Readonly<Record<string, string>>): Reply => {
      const command = commands.find(({ name }) => name === named);
      const found = command?.kind === 'desk' ? command.actions.find(({ name }) => name === action) : undefined;
      const reply = found?.act(desk, given);
      if (!reply || 'start' in reply) throw new Error(`/${named} ${action} shows nothing`);
      return reply;
    };
    const stop = (command: string): Reply => {
      const place = demoHouse.stops.findIndex(({ shows }) => shows.command === command) + 1;
      return shown(demo.name, '', { stop: String(place) });
    };
    const house = () => crew.findSheet(demoHouse.name)?.number ?? 0;
    const duct = stop('duct');
    const runTime = stop('runtime');
    const sweat = answered(desk, house(), { command: 'sweat', told: {} });
    const papers = stop('handoff').papers ?? [];
    walkedPartly(crew, demoHouse.name);
    const status = shown('swap', 'status', { job: String(house()) });
    return {
      'duct.png': { chart: chartOf(duct) },
      'run-time.png': { chart: chartOf(runTime) },
      'sweat.png': { chart: chartOf(sweat) },
      'status.png': { chart: chartOf(status) },
      'occupant-page.png': { paper: paperOf(papers[0]) },
    };
  } finally {
    store.close();
  }
}

const mark = ' (invented house)';

function chartOf({ chart }: Reply): Chart {
  if (!chart) throw new Error('the demo house lacks what a chart is drawn from');
  return chart.title.endsWith(mark) ? chart : { ...chart, title: `${chart.title}${mark}` };
}

function paperOf(found: { readonly paper: Paper } | undefined): Paper {
  if (!found) throw new Error('the demo house has no page for the occupant');
  return found.paper;
}

/** The checksum of what a picture is made from: its drawing as text, where lengths are rounded, or the words of the page. */
export function sourceSum(drawn: Drawn): string {
  if ('paper' in drawn) return sum(JSON.stringify(drawn.paper));
  const { chart } = drawn;
  return sum(chart.progress ? progressSvg({ ...chart, progress: chart.progress }) : chartSvg(chart));
}

/** SHA-256 in hexadecimal. */
export const sum = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
