/** Latitudes and longitudes as maps, atlases and encyclopedias print them: `-3.7`, `3.7 W`, `40°24′59″N`. */

export type Axis = 'latitude' | 'longitude';

/** Degrees, north and east positive. */
export interface Coordinates {
  readonly latitude: number;
  readonly longitude: number;
}

const MOST: Readonly<Record<Axis, number>> = { latitude: 90, longitude: 180 };
const HANDS: Readonly<Record<Axis, Readonly<Record<string, number>>>> = {
  latitude: { N: 1, S: -1 },
  longitude: { E: 1, W: -1 },
};
const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const ANGLE = new RegExp(
  String.raw`^([NSEW]?)\s*([-+−]?)\s*(${NUMBER})\s*(?:°|º|deg)?\s*(?:(${NUMBER})\s*['′’])?\s*(?:(${NUMBER})\s*(?:["″”]|''|′′))?\s*([NSEW]?)$`,
  'iu',
);

/** Returns degrees to four places (about ten metres), north and east positive; null where the text is no angle on that axis. */
export function readDegrees(text: string, axis: Axis): number | null {
  const [, before = '', sign = '', degrees = '', minutes = '0', seconds = '0', behind = ''] =
    ANGLE.exec(text.trim()) ?? [];
  const hand = (before || behind).toUpperCase();
  if (degrees === '' || (before !== '' && behind !== '') || (hand !== '' && /[-−]/u.test(sign))) return null;
  const turn = hand === '' ? (/[-−]/u.test(sign) ? -1 : 1) : HANDS[axis][hand];
  const [whole, sixtieth, last] = [degrees, minutes, seconds].map((part) => Number(part.replace(',', '.')));
  if (turn === undefined || whole === undefined || sixtieth === undefined || last === undefined) return null;
  if (sixtieth >= 60 || last >= 60) return null;
  const value = whole + sixtieth / 60 + last / 3600;
  return value > MOST[axis] ? null : (turn * Math.round(value * 10_000)) / 10_000;
}

/** Returns a latitude and a longitude written behind each other, in that order, with a comma, a semicolon or a space between; else null. */
export function readCoordinates(text: string): Coordinates | null {
  for (const [first, second] of halves(text.trim())) {
    const latitude = readDegrees(first, 'latitude');
    const longitude = readDegrees(second, 'longitude');
    if (latitude !== null && longitude !== null) return { latitude, longitude };
  }
  return null;
}

/** Every way to part a text in two: at a mark between spaces first, so that `40,4, -3,7` is no four numbers. */
function* halves(text: string): Generator<readonly [string, string]> {
  for (const between of [/;\s*/gu, /,\s+/gu, /\s+/gu, /,/gu, /(?<=[NSEW])(?=\S)/giu])
    for (const { index, 0: mark } of text.matchAll(between))
      yield [text.slice(0, index), text.slice(index + mark.length)];
}
