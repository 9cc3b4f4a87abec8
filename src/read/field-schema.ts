/** The JSON Schema of a field, through the core of `zod`. */
import * as zod from 'zod/v4/core';
import { type AnyField, type Field, type PartOf, shownOf, wordsOfKeys } from './field.ts';
import { type JsonSchema, SchemaParts } from './schema-parts.ts';

/** Returns the JSON Schema (draft 7) of what a field takes. */
export function jsonSchemaOf(field: Field<unknown>): JsonSchema {
  const parts = new SchemaParts();
  const part: PartOf = (each) => parts.refer(each, () => converted(each, part));
  return { $schema: 'http://json-schema.org/draft-07/schema#', ...parts.assemble(converted(field, part)) };
}

function converted(field: AnyField, part: PartOf): JsonSchema {
  const { $schema: _, ...schema } = zod.toJSONSchema(field, {
    target: 'draft-07',
    io: 'input',
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      const shown = shownOf.get(zodSchema);
      const examples = shown?.example ? { examples: [yamlValue(shown.example)] } : {};
      if (shown) Object.assign(jsonSchema, shown.schema(part), examples);
      if (zodSchema instanceof zod.$ZodObject) describe(zodSchema, jsonSchema);
    },
  });
  return schema;
}

/** Adds what the keys mean, and which of them must stand. */
function describe(record: zod.$ZodObject, schema: zod.JSONSchema.BaseSchema): void {
  const words = wordsOfKeys.get(record) ?? {};
  for (const [key, property] of Object.entries(schema.properties ?? {})) {
    const description = words[key];
    if (description === undefined || typeof property === 'boolean') continue;
    schema.properties = { ...schema.properties, [key]: { ...property, description } };
  }
  const fields = Object.entries(record._zod.def.shape);
  const required = fields.filter(([, field]) => !(field instanceof zod.$ZodExactOptional)).map(([key]) => key);
  if (required.length > 0) schema.required = required;
}

function yamlValue(example: string): unknown {
  return /^-?\d+(\.\d+)?$/u.test(example) ? Number(example) : example.replace(/^"(.*)"$/u, '$1');
}
