import type { Reply } from '#findings/reply.ts';
import { commonPractice } from '#knowledge/sources.ts';
import type { Language } from '#words/language.ts';
import { askWords } from '../words/ask.ts';

/** What to do now where somebody is hurt or something is live that should be dead: one order, and nothing asked before it. */
export function emergencyReply(emergency: 'hurt' | 'live', language: Language): Reply {
  const { headline, says } = askWords[language].emergencies[emergency];
  return {
    language,
    headline,
    findings: [{ id: 'danger', weight: 'stop', says, working: [], sources: [commonPractice] }],
  };
}
