import { describe, expect, it } from 'vitest';
import { readCoordinates, readDegrees } from '../../../src/basics/coordinates.ts';

describe('degrees', () => {
  it.each([
    ['41.65', 'latitude', 41.65],
    ['-37.8', 'latitude', -37.8],
    ['−37.8', 'latitude', -37.8],
    ['37.8 S', 'latitude', -37.8],
    ['s 37.8', 'latitude', -37.8],
    ['40,4', 'latitude', 40.4],
    ["40°24'N", 'latitude', 40.4],
    ['40° 24′ 36″ N', 'latitude', 40.41],
    ['3°42\'0"W', 'longitude', -3.7],
    ['3.7°W', 'longitude', -3.7],
    ['0', 'longitude', 0],
    ['180', 'longitude', 180],
  ] as const)('%s on the %s', (text, axis, degrees) => {
    expect(readDegrees(text, axis)).toBe(degrees);
  });

  it.each([
    ['90.1', 'latitude'],
    ['3.7 W', 'latitude'],
    ['-3.7 W', 'longitude'],
    ['N 40 N', 'latitude'],
    ["40°60'N", 'latitude'],
    ['', 'latitude'],
    ['north', 'latitude'],
    ['1e1', 'latitude'],
  ] as const)('not of %s on the %s', (text, axis) => {
    expect(readDegrees(text, axis)).toBeNull();
  });
});

describe('coordinates', () => {
  it.each([
    ['41.88, -87.63', 41.88, -87.63],
    ['41.88,-87.63', 41.88, -87.63],
    ['41.88 -87.63', 41.88, -87.63],
    ['40,4 -3,7', 40.4, -3.7],
    ['40,4; -3,7', 40.4, -3.7],
    ['40,4, -3,7', 40.4, -3.7],
    ['37°49′S 144°58′E', -37.8167, 144.9667],
    ['37°49′S144°58′E', -37.8167, 144.9667],
    ['41.88 N, 87.63 W', 41.88, -87.63],
    ['N 41.88 W 87.63', 41.88, -87.63],
  ])('%s', (text, latitude, longitude) => {
    expect(readCoordinates(text)).toEqual({ latitude, longitude });
  });

  it.each(['41.88', '144.96, -37.8', '1 2 3', 'Madrid', '87.63 W, 41.88 N', ''])('not of %s', (text) => {
    expect(readCoordinates(text)).toBeNull();
  });
});
