import type { Plan } from '../../plan/plan.ts';

/** Elements of a long list that are put into text at once. */
const BATCH = 64;
/** Characters gathered before they become bytes. */
const CHUNK = 1_000_000;

/** Returns plan.json: fixed key order, two-space indent, lists of plain numbers on one line. */
export function planJson(plan: Plan): string {
  return [...piecesOf(plan)].join('');
}

/** Returns plan.json as UTF-8: of a plan of hundreds of enclosures never the whole text, which takes several times as much room. */
export function planBytes(plan: Plan): Uint8Array {
  const chunks: Buffer[] = [];
  let text = '';
  for (const piece of piecesOf(plan)) {
    text += piece;
    if (text.length < CHUNK) continue;
    chunks.push(Buffer.from(text));
    text = '';
  }
  return Buffer.concat([...chunks, Buffer.from(text)]);
}

function* piecesOf(plan: Plan): Generator<string> {
  yield* objectPieces(plan, '');
  yield '\n';
}

/** A plan key by key; one kept in it likewise, long lists in batches, all else whole. */
function* objectPieces(plan: object, indent: string): Generator<string> {
  const inner = `${indent}  `;
  let before = '{\n';
  for (const [key, value] of Object.entries(plan)) {
    if (value === undefined) continue;
    yield `${before}${inner}${JSON.stringify(key)}: `;
    before = ',\n';
    if (key === 'previous' && value !== null) yield* objectPieces(value, inner);
    else if (isLongList(value)) yield* listPieces(value, inner);
    else yield indented(JSON.stringify(value, null, 2), inner);
  }
  yield before === '{\n' ? '{}' : `\n${indent}}`;
}

function isLongList(value: unknown): value is readonly object[] {
  return Array.isArray(value) && value.length > BATCH && typeof value[0] === 'object';
}

function* listPieces(list: readonly object[], indent: string): Generator<string> {
  for (let at = 0; at < list.length; at += BATCH) {
    const batch = JSON.stringify(list.slice(at, at + BATCH), null, 2);
    yield `${at === 0 ? '[' : ','}${indented(batch.slice('['.length, -'\n]'.length), indent)}`;
  }
  yield `\n${indent}]`;
}

/** A raw line break never stands inside a JSON string. */
function indented(json: string, indent: string): string {
  return compactNumbers(json).replaceAll('\n', `\n${indent}`);
}

/** Only real lists match, for the same reason. */
function compactNumbers(json: string): string {
  return json.replace(
    /\[\n\s+(-?[\d.]+(?:e[+-]?\d+)?(?:,\n\s+-?[\d.]+(?:e[+-]?\d+)?)*)\n\s+\]/gi,
    (_whole, numbers: string) => {
      return `[${numbers.replace(/\n\s+/g, ' ')}]`;
    },
  );
}
