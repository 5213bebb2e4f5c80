import { type Fact, fact } from './line.ts';

/** What people do with the fan and the walls: words, not numbers. */

const done = String.raw`(?:until|till|'til|til|once|after|before)\b[^.;]*\b(?:showers?|baths?|done|finish\w*|out|over|end)`;
const bathing = String.raw`(?:showers?|bath(?:s|ing|es)?|it|that|washing)`;

/** The fan stands still while somebody showers. */
const off: readonly RegExp[] = [
  new RegExp(
    String.raw`\b(?:not?|never|nobody|no one|don't|dont|doesn't|doesnt|only)\b[^.;]*\b${done}\b(?<=\bfan\b.*)`,
  ),
  /\bno fan (?:during|while|in|on)\b/,
  /\bfan (?:is |stays |was |kept |left )?(?:off|not on|not running)\b(?= ?(?:during|while|in|till|until|for|[,;.]|$))/,
  /\b(?:with|has|have|keeps?|leaves?|kept|left) (?:the |her |his |their )?fan off\b/,
  /\bwith it off\b|\bwithout (?:the |a )?fan(?: on| running)?\b|\bwithout it (?:on|running)\b/,
  /\b(?:dont|don't|doesn't|doesnt|never|not|won't|wont) (?:run|use|turn on|have|put|switch on|turn|running|using) (?:the |it |a |her |his )?(?:fan )?(?:on )?(?:during|while|in|for)\b/,
  /\b(?:only|just) (?:on |run |runs |comes on |turned on |goes on |starts? )?after(?:wards?)?\b/,
  /\bfan (?:only |just )?(?:goes|comes|gets turned|is turned|starts|turned) on after(?:wards?)?\b/,
  /\bturns? (?:it|the fan) on (?:only )?after(?:wards?)?\b/,
];

/** It runs all through. */
const on: readonly RegExp[] = [
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
  const still = any(off, line);
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
