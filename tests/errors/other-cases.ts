/** Codes whose input is too large to keep as a file, or is more than one file. */
import { Log } from '../../src/diagnostics/log.ts';
import { renderText } from '../../src/diagnostics/render.ts';
import { noteNotYetComputed } from '../../src/read/not-yet-computed.ts';
import { LARGEST_FILE_BYTES, SourceText } from '../../src/read/source-text.ts';
import { readYaml } from '../../src/read/yaml-tree.ts';
import { calendarCases } from './calendar-cases.ts';
import { type Said, saidOfText } from './gallery.ts';

export interface OtherCase {
  readonly said: () => Said;
  /** The exact text of the messages of the code. */
  readonly expected: string;
}

const HOME = 'format: 1\nname: One gecko\n';

/** What is said where a key of the file is on a list of parts that are not computed. */
function saidOfUncomputed(text: string, list: readonly string[]): Said {
  const log = new Log();
  const yaml = readYaml(new SourceText('home.yaml', text), log);
  if (yaml) noteNotYetComputed(yaml, log, list);
  const diagnostics = log.sorted();
  const sources = new Map([['home.yaml', { shown: 'home.yaml', text }]]);
  return { diagnostics, text: (wanted) => renderText(diagnostics.filter(wanted), sources) };
}

export const otherCases: Readonly<Record<string, OtherCase>> = {
  ...calendarCases,
  'file-too-large': {
    said: () => saidOfText('home.yaml', HOME + '# a very long comment\n'.repeat(LARGEST_FILE_BYTES / 20)),
    expected: `home.yaml:1:1  cannot be read (file-too-large)
  > format: 1
    ~
  because  the file has 282 KiB; at most 256 KiB are read
  instead  split it into several households
`,
  },
  'too-deep': {
    said: () => saidOfText('home.yaml', `${HOME}site: ${'['.repeat(30)}1${']'.repeat(30)}\n`),
    expected: `home.yaml:3:31  cannot be read (too-deep)
  > site: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]
                                  ~~~~~~~~~~~~~
  because  entries stand more than 24 levels deep
  instead  nothing that is read here lies so deep; take levels out
`,
  },
  'not-computed-yet': {
    said: () =>
      saidOfUncomputed('enclosures:\n  - { id: a }\n  - { id: b, rest: { weeks: 10 } }\n', ['enclosures.*.rest']),
    expected: `home.yaml:3:14  note (not-computed-yet)
  >   - { id: b, rest: { weeks: 10 } }
                 ~~~~
  because  rest is read and checked; nothing is computed from it yet
`,
  },
  'text-too-long': {
    said: () => saidOfText('home.yaml', `format: 1\nname: One gecko\nid: ${'a'.repeat(70)}\n`),
    expected: `home.yaml:3:5  cannot be read (text-too-long)
  > id: ${'a'.repeat(70)}
        ${'~'.repeat(70)}
  because  the text has 70 characters; 64 fit
  instead  write it shorter
`,
  },
};
