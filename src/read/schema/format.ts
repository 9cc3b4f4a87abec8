/** The version of the file's form. */
import { type Field, foundWords, leaf } from '../field.ts';

/** The version of the file format: 1. */
export function format(): Field<1> {
  return leaf<1>(
    (value, say) => (value === 1 ? 1 : say('format-unknown', { found: foundWords(value) })),
    '1',
    () => ({ const: 1, description: 'version of the form of this file' }),
  );
}
