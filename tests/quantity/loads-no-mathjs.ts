/** Run as a process of its own, where nothing else has loaded mathjs: prints what was read and whether mathjs is there. */
import { createRequire } from 'node:module';
import { ceilingHeight, roomPressure } from '#quantity/kinds.ts';
import { metres, pascals } from '#quantity/units.ts';

const said = [
  ceilingHeight.showShort(metres(2.4), 'metric'),
  roomPressure.show(pascals(5), 'inch-pound'),
  JSON.stringify(roomPressure.read('5 Pa', 'inch-pound')),
];
const loaded = Object.keys(createRequire(import.meta.url).cache).some((path) => /[\\/]mathjs[\\/]/.test(path));
process.stdout.write([...said, loaded ? 'loaded' : 'not loaded'].join('\n'));
