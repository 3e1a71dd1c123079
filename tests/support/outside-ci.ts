// Ink draws nothing until the end where the variable CI is set, be it to nothing.
const { CI: _, ...rest } = process.env;

/** This process's environment, for a child that is to draw its screen. */
export const outsideCi: NodeJS.ProcessEnv = rest;
