import { writeSync } from 'node:fs';
import { openStore } from '#store/store.ts';
import { StoreTrouble } from '#store/trouble.ts';

/**
 * A second process, for what only a second process can show. `open` says what came of opening the file and then holds it;
 * `answers` goes on writing facts, naming each one once it is kept. Both until they are killed.
 */
const [, , what, path] = process.argv as [string, string, 'open' | 'answers', string];
const say = (line: string) => writeSync(1, `${line}\n`);

try {
  const store = openStore(path);
  say('opened');
  if (what === 'open') setInterval(() => store.note('still here'), 1000);
  if (what === 'answers') {
    const crew = store.scoped('crew');
    const sheet = crew.currentSheet({ channel: 'thread', who: 'apprentice' });
    for (let count = 1; ; count += 1) {
      crew.addFact(sheet.number, {
        fact: `reading-${count}`,
        typed: `${count}`,
        units: 'metric',
        value: count,
        how: 'measured',
        who: 'apprentice',
      });
      say(String(count));
    }
  }
} catch (error) {
  say(error instanceof StoreTrouble ? error.code : String(error));
}
