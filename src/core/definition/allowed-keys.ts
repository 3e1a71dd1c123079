// Which keys a schema allows at a place in a document, so that a mistyped key can be answered with the right
// one. Read from the JSON Schema that zod generates, never from zod's insides.
import { z } from 'zod';
import type { JsonPath } from '../problems.js';

interface JsonSchema {
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly propertyNames?: { readonly enum?: readonly string[] };
  readonly additionalProperties?: JsonSchema | boolean;
  readonly items?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
}

const generated = new WeakMap<z.ZodType, JsonSchema>();

const jsonSchemaOf = (schema: z.ZodType): JsonSchema => {
  const known = generated.get(schema);
  if (known !== undefined) return known;
  const made = z.toJSONSchema(schema, { unrepresentable: 'any', io: 'input' }) as JsonSchema;
  generated.set(schema, made);
  return made;
};

/** Keys allowed in the object at `path`, over every alternative; empty where any name is allowed. */
export const keysAllowedAt = (schema: z.ZodType, path: JsonPath): readonly string[] => {
  let places = alternatives(jsonSchemaOf(schema));
  for (const step of path) places = places.flatMap((place) => stepInto(place, step));
  return [...new Set(places.flatMap(keysOf))];
};

const alternatives = (place: JsonSchema): JsonSchema[] => {
  const choices = [...(place.anyOf ?? []), ...(place.oneOf ?? [])];
  return choices.length === 0 ? [place] : choices.flatMap(alternatives);
};

const stepInto = (place: JsonSchema, step: string | number): JsonSchema[] => {
  if (typeof step === 'number') return place.items === undefined ? [] : alternatives(place.items);
  const { properties, additionalProperties } = place;
  const named = properties && Object.hasOwn(properties, step) ? properties[step] : undefined;
  if (named !== undefined) return alternatives(named);
  return typeof additionalProperties === 'object' ? alternatives(additionalProperties) : [];
};

const keysOf = (place: JsonSchema): readonly string[] =>
  place.properties === undefined
    ? (place.propertyNames?.enum ?? [])
    : Object.keys(place.properties);
