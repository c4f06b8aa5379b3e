/** The version of the program, as `package.json` has it: every output says which one made it. */
export const ENGINE_VERSION = '0.1.0';

/** What made a file, as the file says it of itself. */
export const MAKER = `Ringwright ${ENGINE_VERSION}`;
