/**
 * A checker of the tagged structure of a PDF, as far as it can be read off its objects. It checks a part of what PDF/UA asks and says
 * nothing about conformance.
 */

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
type Dict = { readonly [key: string]: Json };

export class PdfObjects {
  readonly #objects: Dict;

  /** @param text what `qpdf --json=2 --json-stream-data=none` prints */
  constructor(text: string) {
    const parsed = JSON.parse(text) as { readonly qpdf: readonly [Dict, Dict] };
    this.#objects = parsed.qpdf[1];
  }

  get trailer(): Dict {
    return dictOf((this.#objects.trailer as Dict).value);
  }

  /** Follows a reference; returns the dictionary of a stream. */
  resolve(value: Json | undefined): Json {
    if (typeof value !== 'string' || !/^\d+ \d+ R$/.test(value)) return value ?? null;
    const found = this.#objects[`obj:${value}`] as Dict | undefined;
    if (!found) return null;
    if ('stream' in found) return dictOf(dictOf(found.stream).dict);
    return found.value ?? null;
  }

  dict(value: Json | undefined): Dict {
    return dictOf(this.resolve(value));
  }

  all(): readonly Dict[] {
    return Object.values(this.#objects).map((each) => {
      const entry = dictOf(each);
      return 'stream' in entry ? dictOf(dictOf(entry.stream).dict) : dictOf(entry.value);
    });
  }
}

function dictOf(value: Json | undefined): Dict {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Dict) : {};
}

function listOf(value: Json): readonly Json[] {
  return Array.isArray(value) ? value : value === null ? [] : [value];
}

const KNOWN = new Set([
  'Document',
  'Sect',
  'H1',
  'H2',
  'H3',
  'P',
  'L',
  'LI',
  'Lbl',
  'LBody',
  'Table',
  'TR',
  'TH',
  'TD',
  'Figure',
]);
const PARENTS: Readonly<Record<string, readonly string[]>> = {
  LI: ['L'],
  Lbl: ['LI'],
  LBody: ['LI'],
  TR: ['Table'],
  TH: ['TR'],
  TD: ['TR'],
};

/** Returns a sentence for each fault. */
export function structureFaults(pdf: PdfObjects, language: string): readonly string[] {
  const root = pdf.dict(pdf.trailer['/Root']);
  const faults: string[] = [];
  if (pdf.dict(root['/MarkInfo'])['/Marked'] !== true) faults.push('not marked as tagged');
  if (root['/Lang'] !== `u:${language}`) faults.push(`its language is ${String(root['/Lang'])}`);
  if (pdf.dict(root['/ViewerPreferences'])['/DisplayDocTitle'] !== true) faults.push('its title is not shown');
  if (
    !String(pdf.dict(pdf.trailer['/Info'])['/Title'] ?? pdf.resolve(pdf.dict(pdf.trailer['/Info'])['/Title']) ?? '')
      .length
  )
    faults.push('it has no title');
  const tree = pdf.dict(root['/StructTreeRoot']);
  const children = listOf(pdf.resolve(tree['/K']));
  if (children.length === 0) faults.push('it has no structure');
  for (const child of children) walk(pdf, pdf.dict(child), '', faults);
  return [...faults, ...fontFaults(pdf)];
}

function walk(pdf: PdfObjects, element: Dict, parent: string, faults: string[]): void {
  const tag = String(element['/S'] ?? '').replace('/', '');
  if (!KNOWN.has(tag)) faults.push(`an element is tagged "${tag}"`);
  const wanted = PARENTS[tag];
  if (wanted && !wanted.includes(parent)) faults.push(`a ${tag} stands in a ${parent}`);
  const kids = listOf(pdf.resolve(element['/K']));
  const inner = kids
    .filter((kid) => typeof kid === 'string')
    .map((kid) => pdf.dict(kid))
    .filter((kid) => '/S' in kid);
  if (tag === 'Figure') {
    if (!element['/Alt']) faults.push('a figure has no text for those who cannot see it');
    if (!pdf.dict(element['/A'])['/BBox']) faults.push('a figure has no box');
  }
  if (tag === 'TH' && !pdf.dict(element['/A'])['/Scope']) faults.push('a heading of a table has no scope');
  if (tag === 'Table') {
    const widths = new Set(inner.map((row) => listOf(pdf.resolve(row['/K'])).length));
    if (widths.size > 1) faults.push('a table has rows of different lengths');
  }
  for (const kid of inner) walk(pdf, kid, tag, faults);
}

function fontFaults(pdf: PdfObjects): readonly string[] {
  return pdf.all().flatMap((each) => {
    if (each['/Type'] === '/FontDescriptor' && !each['/FontFile2'] && !each['/FontFile3'] && !each['/FontFile'])
      return ['a font is not embedded'];
    if (each['/Type'] === '/Font' && each['/Subtype'] === '/Type0' && !each['/ToUnicode'])
      return ['a font says nothing of its characters'];
    return [];
  });
}

/** Returns what is painted outside of any mark: every painting operator has to stand in a tag or an artifact. */
export function unmarkedPainting(content: string): readonly string[] {
  let depth = 0;
  const found: string[] = [];
  for (const line of content.split('\n')) {
    if (/\b(BDC|BMC)\s*$/.test(line)) depth += 1;
    else if (/\bEMC\s*$/.test(line)) depth -= 1;
    else if (depth === 0 && /(^|\s)(S|s|f|F|f\*|B|b|Tj|TJ|Do)\s*$/.test(line)) found.push(line.trim());
  }
  return found;
}
