// Routes that hang together through the faults they share. Groups are independent of each other.

/** Groups of indices whose scopes are linked, each in rising order. */
export const linkedRoutes = (scopes: readonly (readonly number[])[]): number[][] => {
  const groupOf = scopes.map((_, index) => index);
  const rootOf = (index: number): number => {
    const up = groupOf[index] as number;
    return up === index ? index : rootOf(up);
  };
  const firstWith = new Map<number, number>();
  scopes.forEach((scope, index) => {
    for (const variable of scope) {
      const first = firstWith.get(variable) ?? index;
      firstWith.set(variable, first);
      const [a, b] = [rootOf(first), rootOf(index)];
      groupOf[Math.max(a, b)] = Math.min(a, b);
    }
  });
  const groups = new Map<number, number[]>();
  scopes.forEach((_, index) => {
    const root = rootOf(index);
    groups.set(root, [...(groups.get(root) ?? []), index]);
  });
  return [...groups.values()];
};
