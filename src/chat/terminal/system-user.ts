import { userInfo } from 'node:os';

/** Who sits at the terminal, as the system knows them; "you" where it does not. */
export function systemUser(): string {
  try {
    return userInfo().username || 'you';
  } catch {
    return 'you';
  }
}
