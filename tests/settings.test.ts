import { describe, expect, it } from 'vitest';
import { settingsFrom } from '../src/settings.ts';
import { StartTrouble } from '../src/start-trouble.ts';

describe('the settings', () => {
  it('have what most need when nothing is set', () => {
    expect(settingsFrom({})).toEqual({
      FANWRIGHT_BACKUPS_KEPT: 14,
      FANWRIGHT_BACKUP_HOURS: 24,
      FANWRIGHT_DB: 'data/fanwright.sqlite',
      FANWRIGHT_PACE: 20,
      LOG_LEVEL: 'info',
    });
  });

  it('count what is empty as not set, and pass over the rest of the surroundings', () => {
    const empty = { DISCORD_TOKEN: '', DISCORD_GUILD: '', FANWRIGHT_DB: '', LOG_LEVEL: '', PATH: '/usr/bin' };
    expect(settingsFrom(empty)).toEqual(settingsFrom({}));
    expect(settingsFrom({ DISCORD_TOKEN: '  ' }).DISCORD_TOKEN).toBeUndefined();
  });

  it('take off the spaces that come with pasting', () => {
    expect(settingsFrom({ DISCORD_TOKEN: ' abc.def \n', DISCORD_GUILD: ' 123456789012345678 ' })).toMatchObject({
      DISCORD_TOKEN: 'abc.def',
      DISCORD_GUILD: '123456789012345678',
    });
  });

  it.each([
    [{ LOG_LEVEL: 'loud' }, 'LOG_LEVEL must be debug, info, warn, error or silent.'],
    [{ DISCORD_GUILD: 'ours' }, 'DISCORD_GUILD must be the number of a server, such as 123456789012345678.'],
    [{ DISCORD_API_BASE: 'localhost' }, 'DISCORD_API_BASE must be a web address, such as https://example.org/api.'],
    [{ DISCORD_API_BASE: 'file:///etc' }, 'DISCORD_API_BASE must be a web address, such as https://example.org/api.'],
    [{ DISCORD_TOKEN: 'two words' }, 'DISCORD_TOKEN must be one word, as the developer portal shows it.'],
    [{ FANWRIGHT_DB: '   ' }, 'FANWRIGHT_DB must be the path of a file.'],
    [
      { FANWRIGHT_PACE: 'fast' },
      'FANWRIGHT_PACE must be how much one person may do in 10 seconds, from 1 to 1000, or 0 for no limit.',
    ],
  ])('say what is wrong with %j', (environment, says) => {
    expect(() => settingsFrom(environment)).toThrow(new StartTrouble(says));
  });

  it('name everything that is wrong at once, and no secret', () => {
    const trouble = () => settingsFrom({ DISCORD_TOKEN: 'secret secret', LOG_LEVEL: 'loud' });
    expect(trouble).toThrow(/^DISCORD_TOKEN must be .*\. LOG_LEVEL must be .*\.$/);
    expect(trouble).not.toThrow(/secret secret/);
  });
});
