/** HTML as a value of its own: whatever is not markup already is escaped where it is put in, so that no name can break out. */
import { printable } from '../../basics/printable.ts';

export interface Markup {
  readonly html: string;
}

type Piece = string | number | Markup | readonly Markup[];

/** Returns the template with every text in it escaped; fit for content and for attributes in double quotes. */
export function html(parts: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  return { html: parts.map((part, index) => `${part}${rendered(pieces[index])}`).join('') };
}

/** Takes text as markup: only what this program has painted itself. */
export function trusted(text: string): Markup {
  return { html: text };
}

export const NOTHING: Markup = { html: '' };

function rendered(piece: Piece | undefined): string {
  if (piece === undefined) return '';
  if (typeof piece === 'string') return escaped(piece);
  if (typeof piece === 'number') return String(piece);
  return 'html' in piece ? piece.html : piece.map((each) => each.html).join('');
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** A number and its unit stand on one line. */
const UNIT_GAP = /(?<=\d) (?=(?:°C|°F|%|(?:min|ml|fl|gal|[hslW])(?![a-z])))/g;

/** Control characters and those that turn the reading direction around are shown as what they are: unprintable. */
function escaped(text: string): string {
  const kept = printable(text).replace(UNIT_GAP, '\u00a0');
  return kept.replace(/[&<>"']/g, (character) => ENTITIES[character] ?? character);
}

/** Returns a list, or nothing where it would be empty. */
export function list(items: readonly (string | Markup)[]): Markup {
  return items.length === 0 ? NOTHING : html`<ul>${items.map((item) => html`<li>${item}</li>`)}</ul>`;
}
