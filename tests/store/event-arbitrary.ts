// Arbitrary events of every type, made from the schemas in the event catalogue, so that a new event type is
// covered the day it is added.
import fc from 'fast-check';
import { z } from 'zod';
import {
  type EventType,
  eventBodies,
  type ReadingTaken,
  type WalkEvent,
} from '../../src/core/events.js';
import { measureFunctions, polarities, readingFlags } from '../../src/core/reading.js';

interface Shape {
  readonly type?: string | readonly string[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly format?: string;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly items?: Shape;
  readonly anyOf?: readonly Shape[];
  readonly oneOf?: readonly Shape[];
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly propertyNames?: Shape;
  readonly additionalProperties?: Shape | boolean;
}

/** -0 is left out: JSON writes it as 0. */
const finite = (shape: Shape): fc.Arbitrary<number> =>
  fc
    .double({
      noNaN: true,
      noDefaultInfinity: true,
      ...(shape.minimum === undefined ? {} : { min: shape.minimum }),
      ...(shape.maximum === undefined ? {} : { max: shape.maximum }),
      ...(shape.exclusiveMinimum === undefined
        ? {}
        : { min: shape.exclusiveMinimum, minExcluded: true }),
    })
    .map((number) => (Object.is(number, -0) ? 0 : number));

const whole = ({ minimum, maximum, exclusiveMinimum }: Shape): fc.Arbitrary<number> =>
  fc.integer({
    min: Math.max(minimum ?? -1e9, (exclusiveMinimum ?? -1e10) + 1),
    max: Math.min(maximum ?? 1e9, 1e9),
  });

const text = (shape: Shape): fc.Arbitrary<string> => {
  if (shape.format === 'date') return fc.constantFrom('2026-01-31', '2024-02-29');
  const { minLength = 0, maxLength = Number.POSITIVE_INFINITY } = shape;
  if (shape.pattern === undefined) {
    return fc.string({ unit: 'binary', minLength, maxLength: Math.min(maxLength, 40) });
  }
  return fc
    .stringMatching(new RegExp(shape.pattern, 'u'), { size: 'small' })
    .filter(({ length }) => length >= minLength && length <= maxLength);
};

const ofShape = (shape: Shape): fc.Arbitrary<unknown> => {
  const choices = shape.anyOf ?? shape.oneOf;
  if (choices !== undefined) return fc.oneof(...choices.map(ofShape));
  if (shape.const !== undefined) return fc.constant(shape.const);
  if (shape.enum !== undefined) return fc.constantFrom(...shape.enum);
  if (Array.isArray(shape.type)) {
    return fc.oneof(...shape.type.map((type) => ofShape({ ...shape, type })));
  }
  switch (shape.type) {
    case 'number':
      return finite(shape);
    case 'integer':
      return whole(shape);
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    case 'string':
      return text(shape);
    case 'array':
      return fc.array(ofShape(shape.items ?? {}), { minLength: shape.minItems ?? 0, maxLength: 4 });
    case 'object':
      return shape.properties === undefined ? record(shape) : object(shape);
    default:
      throw new Error(`no arbitrary for ${JSON.stringify(shape)}`);
  }
};

const object = (shape: Shape): fc.Arbitrary<unknown> => {
  const model = Object.fromEntries(
    Object.entries(shape.properties ?? {}).map(([key, inner]) => [key, ofShape(inner)]),
  );
  return fc.record(model, { requiredKeys: [...(shape.required ?? [])], noNullPrototype: true });
};

const record = (shape: Shape): fc.Arbitrary<unknown> => {
  const inner = typeof shape.additionalProperties === 'object' ? shape.additionalProperties : {};
  const names = (ofShape(shape.propertyNames ?? { type: 'string' }) as fc.Arbitrary<string>).filter(
    (name) => name !== '__proto__',
  );
  const required = shape.required ?? [];
  if (required.length > 0) {
    return fc.record(Object.fromEntries(required.map((name) => [name, ofShape(inner)])), {
      noNullPrototype: true,
    });
  }
  return fc.dictionary(names, ofShape(inner), { maxKeys: 4, noNullPrototype: true });
};

export const bodyTypes = Object.keys(eventBodies) as Exclude<EventType, 'reading-taken'>[];

export const arbitraryBody = (type: (typeof bodyTypes)[number]): fc.Arbitrary<WalkEvent> =>
  fc
    .tuple(finite({}), ofShape(z.toJSONSchema(eventBodies[type]) as Shape))
    .map(([t, body]) => ({ type, t, ...(body as object) }) as WalkEvent);

const positive = finite({ exclusiveMinimum: 0 });
const context = fc.record(
  {
    function: fc.constantFrom(...measureFunctions),
    range: positive,
    resolution: positive,
    polarity: fc.constantFrom(...polarities),
    flags: fc.uniqueArray(fc.constantFrom(...readingFlags)),
  },
  { requiredKeys: ['function'], noNullPrototype: true },
);

export const arbitraryReading: fc.Arbitrary<ReadingTaken> = fc
  .tuple(
    finite({}),
    fc.oneof(
      fc.tuple(context, finite({})).map(([around, value]) => ({ ...around, value })),
      context.map((around) => ({ ...around, overload: true as const })),
      context.map((around) => ({ ...around, blank: true as const })),
      fc.string({ unit: 'binary', maxLength: 80 }).map((fault) => ({ fault })),
    ),
  )
  .map(([t, rest]) => ({ type: 'reading-taken', t, ...rest }));

export const arbitraryEvent: fc.Arbitrary<WalkEvent> = fc.oneof(
  { weight: 3, arbitrary: arbitraryReading },
  ...bodyTypes
    .filter((type) => type !== 'session-opened')
    .map((type) => ({ weight: 1, arbitrary: arbitraryBody(type) })),
);
