/** Damages texts in ways that keyboards, disks and programs do, and in ways that only malice does. From a seed alone. */
import { parse, stringify } from 'yaml';
import type { Draw } from '../property/household-generator.ts';
import { changeGently } from './gentle-changes.ts';

/** Values that have broken programs before. */
const SPITEFUL = [
  '',
  '~',
  'null',
  'true',
  '0',
  '-1',
  '1e309',
  '-0',
  '.nan',
  '.inf',
  '9007199254740993',
  '0x10',
  '1_000',
  '00:00',
  '24:00',
  '99:99',
  '"08:00"',
  '15',
  '15 min',
  '0 min',
  '-5 min',
  '1e9 h',
  '1e-9 s',
  '0 %',
  '100 %',
  '1000000 %',
  '-40 °C',
  '451 °F',
  '0 K',
  '1 parsec',
  '15min',
  '100000 months',
  '99999999 days',
  '1 year',
  '15  min',
  '15 constructor',
  '15 toString',
  '15 минут',
  '２０２７-01-01',
  '2027-02-29',
  '2027-02-30',
  '0000-00-00',
  '9999-12-31',
  '-2027-01-01',
  '2027-01-01T00:00:00Z',
  '[]',
  '{}',
  '[[]]',
  '[{}]',
  '{ value: 1 }',
  '[1, 2, 3]',
  '[~, ~]',
  '[50 %, 20 %]',
  '&a [*a]',
  '*a',
  '!!binary aGVsbG8=',
  '!!js/function "function () {}"',
  '!!set { a, b }',
  '<<',
  '? complex',
  '| \n  block',
  "'single''quoted'",
  '"\\u0000"',
  '"\\uD800"',
  '"\\u202Etxt.exe"',
  '../../../etc/passwd',
  '/dev/zero',
  'con.yaml',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  'auto',
  'always',
  'none',
  'all',
  'adult',
  'dial',
  'https://example.org/a.yaml',
  'a'.repeat(5000),
  '\u{1f98e}'.repeat(50),
  'e\u0301\u0301\u0301\u0301',
  '\u200b',
] as const;

const KEYS = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'format',
  'id',
  'from',
  'targets',
  'value',
  '<<',
  '?',
  '',
];

/** Changes a few bytes: flipped, put in, taken out, doubled, cut off. */
export function damagedBytes(bytes: Uint8Array, draw: Draw): Uint8Array {
  let damaged = Buffer.from(bytes);
  for (let left = draw.whole(1, 3); left > 0 && damaged.length > 0; left--) damaged = once(damaged, draw);
  return damaged;
}

function once(bytes: Buffer, draw: Draw): Buffer<ArrayBuffer> {
  const at = draw.whole(0, bytes.length - 1);
  const length = draw.whole(1, 40);
  const [before, after] = [bytes.subarray(0, at), bytes.subarray(at)];
  switch (draw.whole(0, 6)) {
    case 0:
      return Buffer.concat([before, Buffer.from([(bytes[at] ?? 0) ^ (1 << draw.whole(0, 7))]), after.subarray(1)]);
    case 1:
      return Buffer.concat([before, Buffer.from([draw.whole(0, 255)]), after]);
    case 2:
      return Buffer.concat([before, after.subarray(length)]);
    case 3:
      return Buffer.concat([before, after.subarray(0, length), after]);
    case 4:
      return draw.chance(0.3) ? Buffer.from(before) : Buffer.concat([before, after.subarray(1)]);
    case 5:
      return Buffer.concat([
        before,
        Buffer.from(draw.one(['\t', '\r', '\n', '\0', '\ufeff', '"', "'", '{', '[', ': ', '- ', '#', '&', '*'])),
        after,
      ]);
    default: {
      const from = draw.whole(0, bytes.length - 1);
      return Buffer.concat([before, bytes.subarray(from, from + length), after]);
    }
  }
}

/** A little more than half changed as a keeper might, the rest as only malice does. */
export function changedYaml(text: string, other: string, draw: Draw): string {
  return draw.chance(0.55) ? gentlyChangedYaml(text, other, draw) : damagedYaml(text, other, draw);
}

/** Changes a YAML text as a keeper might; it stays YAML. */
export function gentlyChangedYaml(text: string, other: string, draw: Draw): string {
  const tree: unknown = parse(text);
  changeGently(tree, parse(other), draw);
  return stringify(tree, { lineWidth: 0, aliasDuplicateObjects: false });
}

/** Changes the structure of a YAML text: lines out, twice, elsewhere, deeper; values and keys replaced; parts of another text put in. */
export function damagedYaml(text: string, other: string, draw: Draw): string {
  const lines = text.split('\n');
  for (let left = draw.whole(1, 3); left > 0 && lines.length > 0; left--) changeLines(lines, other.split('\n'), draw);
  return lines.join('\n');
}

function changeLines(lines: string[], others: readonly string[], draw: Draw): void {
  const at = draw.whole(0, lines.length - 1);
  const line = lines[at] ?? '';
  const there = draw.whole(0, lines.length - 1);
  switch (draw.whole(0, 11)) {
    case 0:
      lines.splice(at, draw.whole(1, 3));
      return;
    case 10:
    case 11:
      lines[at] = withOtherNumber(line, draw);
      return;
    case 1:
      lines.splice(at, 0, line);
      return;
    case 2:
      lines[at] = lines[there] ?? '';
      lines[there] = line;
      return;
    case 3:
      lines[at] = draw.chance(0.5) ? `  ${line}` : line.replace(/^ {2}/, '');
      return;
    case 4:
      lines.splice(at, 0, ...others.slice(there, there + draw.whole(1, 6)));
      return;
    case 5:
      lines[at] = line.replace(/[\w-]+(?=:)/, draw.one(KEYS));
      return;
    case 6:
      lines.splice(at, 0, `${/^ */.exec(line)?.[0] ?? ''}${draw.one(KEYS)}: ${draw.one(SPITEFUL)}`);
      return;
    default:
      lines[at] = withOtherValue(line, draw);
  }
}

/** Replaces one number of a line by another that may well be meant. */
function withOtherNumber(line: string, draw: Draw): string {
  const numbers = [...line.matchAll(/\d+(?:\.\d+)?/g)];
  if (numbers.length === 0) return line;
  const number = draw.one(numbers);
  const at = number.index ?? 0;
  const other = draw.one([
    0,
    1,
    2,
    7,
    30,
    59,
    90,
    100,
    365,
    1000,
    Number(number[0]) * 2,
    Number(number[0]) / 2,
    Number(number[0]) + 1,
  ]);
  return `${line.slice(0, at)}${other}${line.slice(at + number[0].length)}`;
}

/** Replaces one value of a line, in a block or a map written on one line. */
function withOtherValue(line: string, draw: Draw): string {
  const values = [...line.matchAll(/(?<=: |\[|, )[^,{}[\]#]+/g)];
  if (values.length === 0) return `${line} ${draw.one(SPITEFUL)}`;
  const value = draw.one(values);
  const at = value.index ?? 0;
  return `${line.slice(0, at)}${draw.one(SPITEFUL)}${line.slice(at + value[0].length)}`;
}

const SPITEFUL_JSON: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1e308,
  0.1,
  '',
  'x',
  '2027-02-30',
  '9999-12-31',
  '0001-01-01',
  '99:99',
  '-08:00',
  '__proto__',
  [],
  {},
  [null],
  [[]],
  [{}],
  { from: null },
  'a'.repeat(2000),
];

/** Changes values, keys and lists of a JSON value: half of them within reason, half out of it. */
export function changedJson(text: string, draw: Draw): string {
  if (draw.chance(0.5)) return damagedJson(text, draw);
  const tree: unknown = JSON.parse(text);
  changeGently(tree, tree, draw);
  return JSON.stringify(tree);
}

/** Changes values, keys and lists of a JSON value, for others out of reason. */
export function damagedJson(text: string, draw: Draw): string {
  const root: unknown = JSON.parse(text);
  for (let left = draw.whole(1, 3); left > 0; left--) {
    const holder = holderIn(root, draw);
    if (!holder) return text;
    const key = draw.one(Object.keys(holder));
    const record = holder as Record<string, unknown>;
    const choice = draw.whole(0, 4);
    if (choice === 0 && Array.isArray(holder)) holder.splice(Number(key), draw.whole(1, 3));
    else if (choice === 0) delete record[key];
    else if (choice === 1 && Array.isArray(holder)) holder.push(structuredClone(holder[Number(key)]));
    else if (choice === 2) record[key] = structuredClone(record[draw.one(Object.keys(holder))]);
    else record[key] = structuredClone(draw.one(SPITEFUL_JSON));
  }
  return JSON.stringify(root);
}

/** Walks down to some list or map that is not empty. */
function holderIn(value: unknown, draw: Draw): object | null {
  let found: object | null = null;
  let here = value;
  while (typeof here === 'object' && here !== null && Object.keys(here).length > 0) {
    found = here;
    if (draw.chance(0.25)) break;
    here = (here as Record<string, unknown>)[draw.one(Object.keys(here))];
  }
  return found;
}
