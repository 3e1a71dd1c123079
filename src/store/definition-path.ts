// Tells the path of a definition from its id.

/** Ids hold neither slash nor the ending of a file. */
export const isPath = (idOrPath: string): boolean => /[/\\]|\.json$/iu.test(idOrPath);
