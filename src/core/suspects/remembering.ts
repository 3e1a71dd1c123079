// Keeps what a pure function has worked out. Forgets everything at once when it has grown too large.

/** `work` with its results kept by key; it must give the same for the same key. */
export const remembering = <Value>(most: number): ((key: string, work: () => Value) => Value) => {
  const known = new Map<string, Value>();
  return (key, work) => {
    const before = known.get(key);
    if (before !== undefined) return before;
    if (known.size >= most) known.clear();
    const value = work();
    known.set(key, value);
    return value;
  };
};
