/** Keeps a JSON Schema small: parts that stand in it more than once are written once, under `definitions`. */

export type JsonSchema = Readonly<Record<string, unknown>>;

/** A part is written in full where it is no longer than this, in characters. */
const SHORT = 160;

interface Part {
  readonly name: string;
  schema: JsonSchema;
}

/** Collects the parts of one schema by the object that they were made from. */
export class SchemaParts {
  readonly #parts = new Map<object, Part>();

  /** Returns a reference to what `make` gives for a key; made once. */
  refer(key: object, make: () => JsonSchema): JsonSchema {
    let part = this.#parts.get(key);
    if (!part) {
      part = { name: `part-${this.#parts.size + 1}`, schema: {} };
      this.#parts.set(key, part);
      part.schema = make();
    }
    return reference(part.name);
  }

  /** Returns the whole schema: short parts and those that stand once in place, the others under `definitions`. */
  assemble(root: JsonSchema): JsonSchema {
    const made = new Map([...this.#parts.values()].map(({ name, schema }) => [name, schema]));
    const final = new Map<string, JsonSchema>();
    const byContent = new Map<string, string>();
    const kept = new Map<string, JsonSchema>();
    const finalOf = (name: string): JsonSchema => {
      const already = final.get(name);
      if (already) return already;
      const whole = replaced(made.get(name), finalOf) as JsonSchema;
      const content = JSON.stringify(whole);
      const twin = byContent.get(content) ?? name;
      byContent.set(content, twin);
      if (twin === name) kept.set(name, whole);
      const shown = content.length <= SHORT ? whole : reference(twin);
      final.set(name, shown);
      return shown;
    };
    return withDefinitions(replaced(root, finalOf) as JsonSchema, kept);
  }
}

function withDefinitions(root: JsonSchema, kept: ReadonlyMap<string, JsonSchema>): JsonSchema {
  const uses = new Map<string, number>();
  const counted = new Set<string>();
  const count = (schema: unknown): void => {
    replaced(schema, (name) => {
      uses.set(name, (uses.get(name) ?? 0) + 1);
      if (!counted.has(name)) {
        counted.add(name);
        count(kept.get(name));
      }
      return undefined;
    });
  };
  count(root);
  const once = (name: string): JsonSchema | undefined =>
    uses.get(name) === 1 ? (replaced(kept.get(name), once) as JsonSchema) : undefined;
  const shared = [...counted].filter((name) => (uses.get(name) ?? 0) > 1).sort(byNumber);
  const definitions = Object.fromEntries(shared.map((name) => [name, replaced(kept.get(name), once)]));
  return { ...(replaced(root, once) as JsonSchema), definitions };
}

const byNumber = (a: string, b: string): number => Number(a.slice(5)) - Number(b.slice(5));

const reference = (name: string): JsonSchema => ({ $ref: `#/definitions/${name}` });

/** Returns a copy with references exchanged for what `by` gives, keeping what stands beside them. */
function replaced(schema: unknown, by: (name: string) => JsonSchema | undefined): unknown {
  if (Array.isArray(schema)) return schema.map((item) => replaced(item, by));
  if (typeof schema !== 'object' || schema === null) return schema;
  const { $ref, ...beside } = schema as { readonly $ref?: string };
  const other = $ref === undefined ? undefined : by($ref.slice('#/definitions/'.length));
  if ($ref !== undefined) return other ? { ...other, ...beside } : { $ref, ...beside };
  return Object.fromEntries(Object.entries(beside).map(([key, value]) => [key, replaced(value, by)]));
}
