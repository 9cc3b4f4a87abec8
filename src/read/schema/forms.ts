/** Rules across the keys of one map. */
import { checked, type Field } from '../field.ts';

/** Lets exactly one of several sets of keys stand in a map; `orNone`: or none of them. */
export function oneForm<T>(
  of: string,
  forms: readonly (readonly string[])[],
  field: Field<T>,
  orNone = false,
): Field<T> {
  return checked(field, (raw, say) => {
    const found = keysOf(forms).filter((key) => Object.hasOwn(raw, key));
    if (found.length === 0 && orNone) return;
    if (forms.some((form) => sameKeys(form, found))) return;
    say('one-of', { of, found, forms: forms.map((form) => form.join(' with ')) });
  });
}

const keysOf = (forms: readonly (readonly string[])[]): readonly string[] => [...new Set(forms.flat())];
const sameKeys = (form: readonly string[], found: readonly string[]): boolean =>
  form.length === found.length && form.every((key) => found.includes(key));
