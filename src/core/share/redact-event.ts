// An event without what is the customer's. Numbers, choices from a list and hashes stay, and texts that are known
// to be no customer's; every other text goes: left out where its event can do without it, else replaced by a mark.
import { z } from 'zod';
import { type EventType, eventBodies, type WalkEvent } from '../events.js';
import { isPlainText, leftOut } from './plain-texts.js';

/** Stands where a text was that its event cannot do without. */
const redactedMark = 'redacted';

/** The event without the customer's, or null where nothing of it may stay. Redacting twice changes nothing. */
export const redactEvent = (event: WalkEvent): WalkEvent | null => {
  if (event.type === 'reading-taken') return event;
  if (leftOut.has(event.type)) return null;
  const { type, t, ...body } = event;
  const redacted = withoutTexts(body, schemaOf(type), { type, path: [] });
  const { link } = event as { readonly link?: string };
  return {
    type,
    t,
    ...(redacted as object),
    ...(link === undefined ? {} : { link: linkKind(link) }),
  } as WalkEvent;
};

/** A link may lead through folders and hosts that have names; its kind says enough. The virtual bench has none. */
const linkKind = (link: string): string =>
  link.startsWith('virtual:') ? link : (/^[a-z]{1,12}:/u.exec(link)?.[0] ?? redactedMark);

interface Schema {
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly pattern?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly propertyNames?: Schema;
  readonly additionalProperties?: Schema | boolean;
  readonly anyOf?: readonly Schema[];
  /** Of a union told apart by one field. */
  readonly oneOf?: readonly Schema[];
}

interface Place {
  readonly type: string;
  readonly path: readonly string[];
}

const schemas = new Map<EventType, Schema>();

/** Read from the JSON Schema that zod generates, never from zod's insides. */
const schemaOf = (type: Exclude<EventType, 'reading-taken'>): Schema => {
  const known = schemas.get(type);
  if (known !== undefined) return known;
  const made = z.toJSONSchema(eventBodies[type], { unrepresentable: 'any' }) as Schema;
  schemas.set(type, made);
  return made;
};

const withoutTexts = (value: unknown, schema: Schema, place: Place): unknown => {
  if (typeof value === 'string') return isSafe(value, schema, place) ? value : redactedMark;
  if (typeof value !== 'object' || value === null) return value;
  const shapes = alternatives(schema);
  if (Array.isArray(value)) {
    const items = shapes.find((shape) => shape.items !== undefined)?.items ?? {};
    return value.map((item) => withoutTexts(item, items, place));
  }
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, inner]) => {
      const field = fieldOf(shapes, key, place);
      if (field === undefined) return [];
      const at = { ...place, path: [...place.path, key] };
      const left = withoutTexts(inner, field.schema, at);
      return left === redactedMark && field.optional ? [] : [[key, left]];
    }),
  );
};

const alternatives = (schema: Schema): readonly Schema[] =>
  (schema.anyOf ?? schema.oneOf)?.flatMap(alternatives) ?? [schema];

/** What the schemas say of a key; undefined for one they do not know, and for a name in free words. */
const fieldOf = (
  shapes: readonly Schema[],
  key: string,
  { type, path }: Place,
): { readonly schema: Schema; readonly optional: boolean } | undefined => {
  for (const { properties, required, propertyNames, additionalProperties } of shapes) {
    const known =
      properties !== undefined && Object.hasOwn(properties, key) ? properties[key] : undefined;
    if (known !== undefined) return { schema: known, optional: !required?.includes(key) };
    if (typeof additionalProperties !== 'object') continue;
    const isListed = propertyNames?.enum?.includes(key) ?? false;
    if (isListed || isPlainText(type, path))
      return { schema: additionalProperties, optional: false };
  }
  return undefined;
};

/** A choice from a list, hex digits, or a text that is no customer's. */
const isSafe = (text: string, schema: Schema, { type, path }: Place): boolean =>
  alternatives(schema).some((shape) => shape.enum?.includes(text) || shape.const === text) ||
  isPlainText(type, path);
