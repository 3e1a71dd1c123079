// The program's version, as every session file names it. A test holds it to package.json.
export const programVersion = '0.1.0';
