import type { Command } from '#chat/command.ts';
import ask from './ask.ts';
import boxfill from './boxfill.ts';
import callback from './callback.ts';
import cost from './cost.ts';
import crew from './crew.ts';
import demo from './demo.ts';
import duct from './duct.ts';
import fan from './fan.ts';
import handoff from './handoff.ts';
import help from './help.ts';
import job from './job.ts';
import lookup from './lookup.ts';
import makeup from './makeup.ts';
import measure from './measure.ts';
import parts from './parts.ts';
import plan from './plan.ts';
import power from './power.ts';
import reach from './reach.ts';
import runtime from './runtime.ts';
import size from './size.ts';
import swap from './swap.ts';
import sweat from './sweat.ts';
import { inEveryLanguage } from './words/summaries.ts';
import { toldInShort } from './workings/in-short.ts';

/** Every command, in the order a job happens. A new one is added here by hand. */
const inOrder: readonly Command[] = [
  demo,
  plan,
  ask,
  lookup,
  size,
  duct,
  reach,
  runtime,
  sweat,
  makeup,
  measure,
  boxfill,
  power,
  cost,
  parts,
  swap,
  handoff,
  callback,
  fan,
  job,
  crew,
  help,
];

export const commands: readonly Command[] = inOrder.map((command) => toldInShort(inEveryLanguage(command)));
