import { expect, it, onTestFinished } from 'vitest';
import { startStandIn } from '../../support/stand-in/stand-in.ts';
import { listenForWarnings } from '../../support/stand-in/warnings.ts';
import { startBot } from './bot.ts';
import { question, quickly } from './stage.ts';

async function scene() {
  const warnings = listenForWarnings();
  const standIn = await startStandIn({ heartbeatInterval: 200 });
  const bot = await startBot(standIn, { draw: quickly });
  onTestFinished(async () => {
    await bot.stop();
    await standIn.close();
    warnings.stop();
    expect(standIn.violations).toEqual([]);
    expect(bot.logged).toEqual([]);
    expect(warnings.said).toEqual([]);
  });
  const ann = standIn.user();
  const asked = await ann.slash('duct', { 'fan-curve': '110', collar: '4 in' });
  return { standIn, ann, asked };
}

it('a press made while the line was cut is answered when it is back, once', async () => {
  const { standIn, ann, asked } = await scene();
  standIn.gateway.dropConnections();
  const now = await ann.press(asked, '10 ft 4 in flex');
  expect(question(now)).toContain('So far: 10 ft 4 in flex.');
  expect(now.content).not.toContain('earlier step');
  expect(standIn.gateway.counts).toMatchObject({ identified: 1, resumed: 1 });
});

it('what was told before and again on resuming is done once', async () => {
  const { standIn, ann, asked } = await scene();
  standIn.gateway.askToReconnect();
  await standIn.until(() => (standIn.gateway.counts.resumed === 1 ? true : undefined));
  const now = await ann.press(asked, '10 ft 4 in flex', { twice: true });
  const next = await ann.press(now, 'Elbow 90°');
  expect(question(next)).toContain('So far: 10 ft 4 in flex; elbow 90.');
  expect(standIn.messages()).toHaveLength(1);
});

it('a session the platform has forgotten is begun anew, and old buttons go on', async () => {
  const { standIn, ann, asked } = await scene();
  standIn.gateway.invalidateSessions();
  await standIn.until(() => (standIn.gateway.counts.identified === 2 ? true : undefined));
  expect(question(await ann.press(asked, '5 ft 4 in smooth'))).toContain('So far: 5 ft 4 in smooth.');
});

it('after the whole platform was away, a press made meanwhile is answered', async () => {
  const { standIn, ann, asked } = await scene();
  await standIn.goDown();
  const pressed = ann.press(asked, '10 ft 4 in flex');
  await standIn.comeBack();
  expect(question(await pressed)).toContain('So far: 10 ft 4 in flex.');
});
