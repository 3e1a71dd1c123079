// Arabic nouns after numbers.

/** A noun after a number has its own form for one, two, three to ten, eleven to ninety-nine, and the rest. */
export interface Counted {
  readonly one: string;
  readonly two: string;
  readonly few: string;
  readonly many: string;
  readonly other: string;
}

/**
 * @example arabicCount(3, { one: 'طرف واحد', two: 'طرفان', few: 'أطراف', many: 'طرفًا', other: 'طرف' }) // '3 أطراف'
 */
export const arabicCount = (n: number, { one, two, few, many, other }: Counted): string => {
  if (n === 1) return one;
  if (n === 2) return two;
  const rest = n % 100;
  if (rest >= 3 && rest <= 10) return `${n} ${few}`;
  return `${n} ${rest >= 11 ? many : other}`;
};
