import { type Fact, fact } from './line.ts';

/** What people do with the fan and the walls: words, not numbers. */

const done = String.raw`(?:until|till|'til|til|once|after|before)\b[^.;]*\b(?:showers?|baths?|done|finish\w*|out|over|end)`;
const bathing = String.raw`(?:showers?|bath(?:s|ing|es)?|it|that|washing)`;

const turning = '(?:flip|turn|switch|hit|put|kick|click|fire|crank|power|run|start|use|get)(?:s|es|ing|ned|ped|ched)?';
const over = String.raw`(?:done|finish\w*|out|over|through|end\w*|dr(?:y|ies|ying)|towel\w*|dressed|leav\w*|left|gone|showered|showers?|baths?|afterwards?)`;

/** "On when she gets in": whatever is said of it afterwards. */
const fromTheStart =
  /(?<!\b(?:not|never|nobody|no one|n't|dont|doesnt|only)\b[^.;,]{0,24})\bon (?:when|as soon as|before) (?:she|he|they|you) (?:gets?|steps?|hops?|walks?|climbs?) in(?:to)?\b/;

/** The fan stands still while somebody showers. */
const off: readonly RegExp[] = [
  // "They only flip it on once they're done", "nobody turns it on till they get out"; off is another matter.
  new RegExp(
    String.raw`\b(?:only|just|not|never|nobody|no one|don'?t|doesn'?t|won'?t|forgets?)\b(?![^.;,]*\b(?:off|down)\b)[^.;,]{0,16}\b${turning}\b[^.;,]{0,16}\b(?:until|till|'til|til|once|after|when)\b[^.;,]*\b${over}\b`,
  ),
  new RegExp(
    String.raw`\b(?:never|nobody|no one|not|don'?t|doesn'?t|won'?t)\b(?![^.;,]*\boff\b)[^.;,]{0,12}\b${turning}\b[^.;,]{0,12}\b(?:on )?(?:during|while|in the shower)\b`,
  ),
  new RegExp(
    String.raw`\b(?:it|fan)(?:'s| is| gets| goes| comes)?(?: (?:only|just|not|never))+ (?:on|turned on|flipped on|switched on|run|running|used)\b[^.;,]{0,8}\b(?:until|till|'til|til|once|after|when)\b[^.;,]*\b${over}\b`,
  ),
  /\b(?:turns?|flips?|switch(?:es)?|puts?|hits?) (?:it|the fan|that|the switch) (?:on )?(?:after|once|when)\b[^.;,]*\b(?:done|finish\w*|gets? out|got out|is out|are out|'s out)\b/,
  new RegExp(
    String.raw`\b(?:not?|never|nobody|no one|don't|dont|doesn't|doesnt|only)\b(?![^.;,]*\boff\b)[^.;]*\b${done}\b(?<=\bfan\b.*)`,
  ),
  /\bno fan (?:during|while|in|on)\b/,
  /(?<!\b(?:turn|switch|shut|flip)(?:s|es|ing)? (?:the |her |his |their )?)\bfan (?:is |stays |was |kept |left )?(?:off|not on|not running)\b(?= ?(?:during|while|in|till|until|for|[,;.]|$))/,
  /\b(?:with|has|have|keeps?|leaves?|kept|left) (?:the |her |his |their )?fan off\b/,
  /\bwith it off\b|\bwithout (?:the |a )?fan(?: on| running)?\b|\bwithout it (?:on|running)\b/,
  /\b(?:dont|don't|doesn't|doesnt|never|not|won't|wont) (?:run|use|turn on|have|put|switch on|turn|running|using) (?:the |it |a |her |his )?(?:fan )?(?:on )?(?:during|while|in|for)\b/,
  /\b(?:only|just) (?:on |run |runs |comes on |turned on |goes on |starts? )?after(?:wards?)?\b/,
  /\bfan (?:only |just )?(?:goes|comes|gets turned|is turned|starts|turned) on after(?:wards?)?\b/,
  /\bturns? (?:it|the fan) on (?:only )?after(?:wards?)?\b/,
];

/** It runs all through. */
const on: readonly RegExp[] = [
  // "They run it the entire shower", "it's going the whole time".
  /(?<!\b(?:not|never|n't|doesn'?t|don'?t|isn'?t|nobody|no one) )\b(?:runs?|run it|running|leaves?|left|leave it|has|have|keeps?|kept|going|on|it's|its)(?: (?:it|the|fan|on|going|running|for|all))* (?:whole|entire|full) (?:time|shower|while|bath|thing|length)\b/,
  fromTheStart,
  // "Flips the fan on first thing": before the water runs.
  new RegExp(
    String.raw`(?<!\b(?:not|never|nobody|no one|n't|dont|doesnt|only)\b[^.;,]{0,16})\b${turning} (?:(?:it|the fan|that|her fan|the switch) on|on (?:it|the fan)) (?:as (?:the |their |her |his )?)?(?:first thing|first(?! thing)|right away|straight away|at the start|before (?:she|he|they|you|getting|stepping|hopping|the (?:water|shower))|(?:when|as soon as) (?:she|he|they|you) (?:gets?|steps?|hops?|walks?|goes|starts?)(?: in| the (?:water|shower))?)\b(?![^.;,]{0,24}\b(?:after|afterwards?|once|when|out|over|done)\b)`,
  ),
  /\b(?:fan|it)(?:'s| is)? (?:already )?(?:on|running|going) (?:from|before) (?:the )?(?:start|beginning|before|they (?:get|step) in)\b/,
  new RegExp(
    String.raw`\bfan (?:runs|is on|on|running|stays on|going|is running|is going|was on|already on|left on|kept on) (?:all )?(?:during|while|through(?:out)?|in (?:the |a |her |his |every )?shower|for (?:all of )?(?:the |her |his )?${bathing}|the (?:whole|entire|full) (?:time|shower)|all the way|the whole way)`,
  ),
  /\bwith (?:the |her |his |a )?(?:fan|it) (?:already )?(?:running|going|on|turned on|switched on)\b/,
  /\bfan (?:on|running|going|is on|is running|runs) (?:the )?(?:whole|entire|full|all the) (?:time|shower|while)\b/,
  /\bruns? (?:it|the fan) (?:all )?(?:during|while|through)\b/,
];

const outsideWall =
  /\bmirror\b[^.;]{0,24}\b(?:outside|exterior|outer|cold) wall\b|\b(?:outside|exterior|outer)[ -]wall mirror\b/;
const insideWall = /\bmirror\b[^.;]{0,24}\b(?:inside|interior|inner) wall\b|\b(?:inside|interior)[ -]wall mirror\b/;
const wiped =
  /\bsqueegee|\bwip(?:es?|ed|ing) (?:it |them )?(?:down|the (?:walls?|tiles?|glass))|\bwip(?:es?|ed|ing) (?:everything|it all)/;
const notWiped =
  /\b(?:no|never|doesn'?t|don'?t|without a?|nobody|not) (?:\w+ )?(?:squeegee\w*|wip(?:e|es|ing)(?: down)?)\b/;

const any = (patterns: readonly RegExp[], line: string): boolean => patterns.some((pattern) => pattern.test(line));

/** Whether the fan runs during the shower, whether the walls are wiped, and where the mirror hangs. */
export function showerHabits(line: string): readonly Fact[] {
  const still = !fromTheStart.test(line) && any(off, line);
  return [
    ...(still ? fact('fan-during-shower', 'no') : any(on, line) ? fact('fan-during-shower', 'yes') : []),
    ...(notWiped.test(line) ? fact('wipe-down', 'no') : wiped.test(line) ? fact('wipe-down', 'yes') : []),
    ...(outsideWall.test(line)
      ? fact('mirror-wall', 'outside wall')
      : insideWall.test(line)
        ? fact('mirror-wall', 'inside wall')
        : []),
  ];
}
