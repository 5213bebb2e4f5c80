import packaged from '../package.json' with { type: 'json' };

/** The version of the program, and the versions of Node it runs on. */
export const { version, engines } = packaged;
