import { householdSchema, profileSchema } from '../read/json-schema.ts';
import { type CommonOptions, UsageError } from './usage.ts';
import { EXIT, type World } from './world.ts';

/** Prints the JSON Schema of household files or profiles. Returns the exit code. */
export async function run(args: readonly string[], _options: CommonOptions, world: World): Promise<number> {
  const [which = ''] = args;
  const schemas: Readonly<Record<string, () => unknown>> = { household: householdSchema, profile: profileSchema };
  const schema = schemas[which];
  if (!schema) throw new UsageError(`there is no schema of "${which}": say household or profile`);
  world.out(`${JSON.stringify(schema(), null, 2)}\n`);
  return EXIT.done;
}
