/** Words that no Spanish sentence holds and hardly an English one goes without. */
const english =
  /\b(?:the|and|is|are|was|were|what|which|who|why|how|when|where|with|without|from|this|that|these|those|there|your|you|they|their|does|did|not|only|press|type|answer|fan|duct|hood|grille|wheel|breaker|needed|measured|caution|advice|taken|known|understood|yet|name)\b/gi;

/**
 * The English words left in what was said in Spanish. What somebody typed, names of commands and options, file names and the
 * titles of publications stay as they are.
 */
export function englishLeft(said: string): readonly string[] {
  const ours = said
    .split('\n')
    .filter((line) => !/^\s*(?:you: |#|\[\d+\]|charts\/)/.test(line))
    .join('\n')
    .replace(/“[^”]*”/g, '')
    .replace(/\/[a-z]+(?: [a-z]+)?/g, '');
  return ours.match(english) ?? [];
}
