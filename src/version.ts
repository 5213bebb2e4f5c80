import packaged from '../package.json' with { type: 'json' };

/** The version of the program. */
export const { version } = packaged;
