/** The JSON Schemas (draft 7) by which an editor completes and checks the two kinds of file. */
import { jsonSchemaOf } from './field-schema.ts';
import { household } from './schema/household-schema.ts';
import { profile } from './schema/profile-schema.ts';
import type { JsonSchema } from './schema-parts.ts';

/** Returns the schema of a household file. */
export function householdSchema(): JsonSchema {
  return { title: 'Household file', ...jsonSchemaOf(household) };
}

/** Returns the schema of a profile. */
export function profileSchema(): JsonSchema {
  return { title: 'Species profile', ...jsonSchemaOf(profile) };
}
