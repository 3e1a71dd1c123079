import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { readDefinition } from '../../../src/core/definition/read-definition.js';
import { formatProblem } from '../../../src/core/problems.js';

const kind = {
  word: 'recipe',
  format: 'kitchen-recipe/2',
  schema: z.strictObject({
    format: z.literal('kitchen-recipe/2'),
    title: z.string().min(1).max(20),
    date: z.iso.date().optional(),
    people: z.int().positive().optional(),
    spice: z.enum(['mild', 'medium', 'hot']).optional(),
    steps: z.array(z.string()).min(2).optional(),
    oven: z
      .discriminatedUnion('style', [
        z.strictObject({ style: z.literal('gas'), mark: z.number() }),
        z.strictObject({ style: z.literal('electric'), celsius: z.number().max(300) }),
      ])
      .optional(),
    amounts: z
      .record(
        z.string().regex(/^[a-z]+$/u, 'use small letters only'),
        z.union([
          z.literal('some'),
          z.strictObject({ grams: z.number().positive(), whole: z.boolean().optional() }),
          z.strictObject({ spoons: z.number().positive() }),
        ]),
      )
      .optional(),
  }),
  check: ({ title }: { title: string }) =>
    title === 'Odd'
      ? [{ level: 'warning' as const, path: ['title'], what: 'odd', fix: 'even it' }]
      : [],
};

const read = (fields: object) => {
  const text = JSON.stringify({ format: 'kitchen-recipe/2', title: 'Soup', ...fields }, null, 1);
  return readDefinition(kind, text).problems.map((problem) => formatProblem('F', problem));
};

describe('reading a definition', () => {
  it('should give a sound one as it is', () => {
    expect(readDefinition(kind, '{"format":"kitchen-recipe/2","title":"Soup"}')).toEqual({
      content: { format: 'kitchen-recipe/2', title: 'Soup' },
      problems: [],
    });
  });

  it('should give warnings beside the content, with their line', () => {
    const { content, problems } = readDefinition(
      kind,
      '{"format":"kitchen-recipe/2",\n"title":"Odd"}',
    );
    expect(content?.title).toBe('Odd');
    expect(problems).toEqual([
      { level: 'warning', path: ['title'], what: 'odd', fix: 'even it', line: 2 },
    ]);
  });

  it.each([
    [{ title: undefined }, 'F:1: error: title: "title" is missing; add "title": a text in quotes'],
    [{ title: '' }, 'F:3: error: title: the text is empty; use at least 1 characters'],
    [
      { title: 7 },
      'F:3: error: title: 7 stands where a text in quotes belongs; put a text in quotes here',
    ],
    [
      { titel: 'x' },
      'F:4: error: titel: the key "titel" is not known here; known here: date, people, spice, steps, oven, amounts',
    ],
    [
      { peopel: 2 },
      'F:4: error: peopel: the key "peopel" is not known here; did you mean "people"?',
    ],
    [
      { people: '4' },
      'F:4: error: people: "4" stands where a number belongs; write 4 without quotes',
    ],
    [
      { people: 1.5 },
      'F:4: error: people: 1.5 stands where a whole number belongs; put a whole number here',
    ],
    [{ people: 0 }, 'F:4: error: people: 0 is out of bounds; use a number over 0'],
    [{ people: null }, 'F:4: error: people: null stands where a number belongs; put a number here'],
    [{ spice: 'hto' }, 'F:4: error: spice: "hto" is not known here; did you mean "hot"?'],
    [{ spice: 'zzz' }, 'F:4: error: spice: "zzz" is not known here; known here: mild, medium, hot'],
    [{ steps: ['x'] }, 'F:4: error: steps: the list has the wrong length; give at least 2 entries'],
    [
      { steps: ['x', {}] },
      'F:6: error: steps[1]: an object stands where a text in quotes belongs; put a text in quotes here',
    ],
    [
      { date: '2026-02-30' },
      'F:4: error: date: "2026-02-30" does not have the right form; write a real date as YYYY-MM-DD',
    ],
    [{ oven: {} }, 'F:4: error: oven.style: "style" is missing; add "style": one of gas, electric'],
    [
      { oven: { style: 'gaz' } },
      'F:5: error: oven.style: "gaz" is not known here; did you mean "gas"?',
    ],
    [
      { oven: { style: 'electric', celsius: 400 } },
      'F:6: error: oven.celsius: 400 is out of bounds; use a number of at most 300',
    ],
    [
      { amounts: { 'Salt 1': 'some' } },
      'F:5: error: amounts["Salt 1"]: the name "Salt 1" cannot be used; use small letters only',
    ],
    [
      { amounts: { salt: { grams: -1 } } },
      'F:6: error: amounts.salt.grams: -1 is out of bounds; use a number over 0',
    ],
    [
      { amounts: { salt: 12 } },
      'F:5: error: amounts.salt: 12 fits none of the forms allowed here; give one of "some", an object in { }',
    ],
    [
      { amounts: { salt: { cups: 1 } } },
      'F:5: error: amounts.salt: an object fits none of the forms allowed here; give one of grams, whole, spoons',
    ],
  ])('should explain %j', (fields, line) => {
    expect(read(fields)).toEqual([line]);
  });

  it('should give every problem, in the order of the file', () => {
    const lines = read({ titel: 1, spice: 'x', people: 'y' }).map((line) => line.split(':')[1]);
    expect(lines).toEqual(['4', '5', '6']);
  });

  it.each([
    [
      '{"format":"kitchen-recipe/3","shiny":1}',
      /in format "kitchen-recipe\/3".*use a newer pinwalk/,
    ],
    ['{"format":"kitchen-recipe/1"}', /is not the format of a recipe.*"kitchen-recipe\/2"/],
    ['{"format":"garden-plan/2"}', /is not the format of a recipe/],
    ['[1]', /a recipe is one object/],
    ['{"format":"kitchen-recipe\\u001b[2J/3"}', /^F:1: error: format: "[^\p{Cc}]*$/u],
    ['{\n"format":', /^F:2: error: column 10: the file ends/],
  ])('should answer %s with one line', (text, says) => {
    const { content, problems } = readDefinition(kind, text);
    expect(content).toBeUndefined();
    expect(problems.map((problem) => formatProblem('F', problem))).toEqual([
      expect.stringMatching(says),
    ]);
  });

  it('should ask for the format when there is none', () => {
    const { problems } = readDefinition(kind, '{"title":"Soup"}');
    expect(problems).toMatchObject([{ path: ['format'], fix: 'add "format": "kitchen-recipe/2"' }]);
  });
});
