/** A fault of YAML form in a keeper's words. */

export interface SyntaxWords {
  readonly what: string;
  readonly fix: string;
}

const words: Readonly<Record<string, SyntaxWords>> = {
  ALIAS_PROPS: { what: 'a reference (*) cannot carry a tag or name', fix: 'write the value itself' },
  BAD_ALIAS: {
    what: 'an asterisk or ampersand at the start of text has a meaning of its own',
    fix: 'put the text in quotes',
  },
  BAD_DIRECTIVE: { what: 'a line that begins with % is an instruction to programs', fix: 'take the line out' },
  BAD_DQ_ESCAPE: {
    what: 'a backslash in double quotes begins a code, and this one is unknown',
    fix: 'write \\\\ for a backslash, or use single quotes',
  },
  BAD_SCALAR_START: { what: 'text cannot begin with this character', fix: 'put the text in quotes' },
  BLOCK_AS_IMPLICIT_KEY: {
    what: 'a second colon stands on the line',
    fix: 'put text that holds a colon in quotes, or begin a new line after the first',
  },
  BLOCK_IN_FLOW: {
    what: 'an indented entry stands inside braces or brackets',
    fix: 'write it on one line, or use indents without braces around them',
  },
  MULTILINE_IMPLICIT_KEY: {
    what: 'a key must stand on one line, with a colon behind it',
    fix: 'write KEY: VALUE on one line',
  },
  MULTIPLE_DOCS: { what: 'a second document begins here', fix: 'keep one household to a file, without --- lines' },
  NON_STRING_KEY: { what: 'a key must be a word', fix: 'write a word before the colon' },
  RESOURCE_EXHAUSTION: { what: 'entries stand in entries far too deep', fix: 'write the entries less deep' },
  TAB_AS_INDENT: { what: 'a tab stands where the indent is', fix: 'indent with spaces' },
  TAG_RESOLVE_FAILED: {
    what: 'an exclamation mark at the start of text has a meaning of its own',
    fix: 'put the text in quotes',
  },
};

const WRONG_INDENT: SyntaxWords = {
  what: 'this does not line up with what stands around it',
  fix: 'give all entries of one list or map the same indent, in spaces',
};

const NO_LIST_ITEM = /Sequence item without/u;

const byMessage: readonly (readonly [RegExp, SyntaxWords])[] = [
  [NO_LIST_ITEM, WRONG_INDENT],
  [/quote/u, { what: 'a quote is opened and not closed', fix: 'close it' }],
  [
    /Implicit map keys|KEY: VALUE/u,
    { what: 'a key stands here without a colon', fix: 'write KEY: VALUE, with a space behind the colon' },
  ],
  [
    /Flow (map|sequence)|expected flow|and end with a|Expected .* to end/iu,
    { what: 'a brace or bracket is opened and not closed', fix: 'close it' },
  ],
  [/Missing , /u, { what: 'a comma is missing between two entries', fix: 'put a comma between them' }],
  [
    /Comments must be/u,
    { what: 'a # begins a comment only behind a space', fix: 'put a space before it, or the text in quotes' },
  ],
];

const UNKNOWN: SyntaxWords = {
  what: 'this cannot stand here',
  fix: 'check quotes, commas and brackets on this line and the one before',
};

/** Returns whether a fault is one of indent, behind which nothing stands where it belongs. */
export function losesIndent(code: string, message: string): boolean {
  return code === 'TAB_AS_INDENT' || code === 'BAD_INDENT' || NO_LIST_ITEM.test(message);
}

/** Returns what is wrong and what would be right for a fault that the parser names by code and message. */
export function syntaxWords(code: string, message: string): SyntaxWords {
  if (code === 'TAB_AS_INDENT') return words[code] ?? UNKNOWN;
  if (code === 'BAD_INDENT') return WRONG_INDENT;
  return byMessage.find(([pattern]) => pattern.test(message))?.[1] ?? words[code] ?? UNKNOWN;
}
