import type { Chart } from '#findings/reply.ts';
import { barsSvg } from './bars-svg.ts';
import { chartSvg } from './chart-svg.ts';
import { pictureSize } from './frame.ts';
import { progressSvg } from './progress-svg.ts';
import { faceFamily, faceFiles } from './type-face.ts';

/** What is drawn of a chart: how far a list is, bars, or curves. */
const pictureOf = (chart: Chart): string =>
  chart.progress ? progressSvg({ ...chart, progress: chart.progress }) : chart.bars ? barsSvg(chart) : chartSvg(chart);

/**
 * The chart as a PNG file, 1200 by 800 pixels unless another width is asked for; with bars as high as they need. The renderer
 * is loaded with the first picture and draws away from the main thread, so that other people's answers do not wait for it.
 */
export async function chartPng(
  chart: Chart,
  { width = pictureSize.width }: { readonly width?: number } = {},
): Promise<Uint8Array> {
  const { renderAsync } = await import('@resvg/resvg-js');
  const image = await renderAsync(pictureOf(chart), {
    font: { loadSystemFonts: false, fontFiles: Object.values(faceFiles()), defaultFontFamily: faceFamily },
    fitTo: { mode: 'width', value: width },
    background: '#ffffff',
  });
  return image.asPng();
}
