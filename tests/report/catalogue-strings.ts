// What a report says in its own words: names and figures stand apart from them.

/** Every string that came from the catalogue: phrases hold data apart. */
export const catalogueStrings = (value: unknown): string[] => {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(catalogueStrings);
  if (typeof value !== 'object' || value === null || 'as' in value) return [];
  return Object.entries(value).flatMap(([key, of]) =>
    [
      'id',
      'kind',
      'language',
      'direction',
      'tone',
      'verdict',
      'pin',
      'line',
      'as',
      'beyond',
    ].includes(key) && typeof of === 'string'
      ? []
      : catalogueStrings(of),
  );
};
