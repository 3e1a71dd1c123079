// Pictures of square dots, two to a character cell: the large digits and letters are made of these.

/** Rows of dots; true is ink. All rows are equally wide. */
export type Picture = readonly (readonly boolean[])[];

/** Reads rows drawn with '#' and '.'. */
export const drawn = (...rows: readonly string[]): Picture => {
  const width = Math.max(0, ...rows.map((row) => row.length));
  return rows.map((row) => Array.from({ length: width }, (_, x) => row[x] === '#'));
};

export const widthOfPicture = (picture: Picture): number => picture[0]?.length ?? 0;

/** Side by side, bottoms aligned, with `gap` empty columns between. */
export const beside = (pictures: readonly Picture[], gap: number): Picture => {
  const height = Math.max(0, ...pictures.map((picture) => picture.length));
  return Array.from({ length: height }, (_, y) =>
    pictures.flatMap((picture, index) => {
      const row = picture[y - (height - picture.length)];
      const dots = row ?? new Array<boolean>(widthOfPicture(picture)).fill(false);
      return index === 0 ? dots : [...new Array<boolean>(gap).fill(false), ...dots];
    }),
  );
};

/**
 * Twice as large, with stairs turned into slopes: a dot's corner takes its neighbours' colour where the two
 * neighbours at that corner agree and the others do not. Source: the Scale2x rule, from memory.
 */
export const doubled = (picture: Picture): Picture => {
  const dot = (x: number, y: number): boolean => picture[y]?.[x] ?? false;
  return picture.flatMap((row, y) => {
    const upper: boolean[] = [];
    const lower: boolean[] = [];
    row.forEach((ink, x) => {
      const [up, down, left, right] = [dot(x, y - 1), dot(x, y + 1), dot(x - 1, y), dot(x + 1, y)];
      const slope = up !== down && left !== right;
      upper.push(slope && left === up ? left : ink, slope && up === right ? right : ink);
      lower.push(slope && left === down ? left : ink, slope && down === right ? right : ink);
    });
    return [upper, lower];
  });
};

/** Ink on paper becomes paper on ink, with a margin of ink around and the corners taken off. */
export const stamped = (
  picture: Picture,
  margin: { readonly x: number; readonly y: number },
  radius: number,
): Picture => {
  const width = widthOfPicture(picture) + 2 * margin.x;
  const height = picture.length + 2 * margin.y;
  const corner = (x: number, y: number): boolean =>
    Math.min(x, width - 1 - x) + Math.min(y, height - 1 - y) < radius;
  return Array.from({ length: height }, (_, y) =>
    Array.from(
      { length: width },
      (_, x) => !corner(x, y) && !(picture[y - margin.y]?.[x - margin.x] ?? false),
    ),
  );
};

/** One line of text for two rows of dots. */
export const printPicture = (picture: Picture, unicode: boolean): readonly string[] => {
  const marks = unicode ? [' ', '▀', '▄', '█'] : [' ', '"', ',', '#'];
  const lines: string[] = [];
  for (let y = 0; y < picture.length; y += 2) {
    const upper = picture[y] ?? [];
    const lower = picture[y + 1] ?? [];
    lines.push(upper.map((ink, x) => marks[(ink ? 1 : 0) + (lower[x] ? 2 : 0)]).join(''));
  }
  return lines;
};
