import { describe, expect, it } from 'vitest';
import { choiceMeant, dateMeant, keyMeant, timeMeant } from '../../../src/read/meant.ts';

describe('a time of day in another form', () => {
  it.each([
    ['7:30 pm', '19:30'],
    ['7:30pm', '19:30'],
    ['12 am', '00:00'],
    ['12:15 p.m.', '12:15'],
    ['19.30', '19:30'],
    ['19h30', '19:30'],
    ['7 h', '07:00'],
    ['10', '10:00'],
    ['24:00', '00:00'],
  ])('%s is %s', (text, time) => {
    expect(timeMeant(text)).toBe(time);
  });

  it.each(['', 'noon', '25:00', '24:30', '7:60', '13 pm', '0 am', '7.5', '1930'])('%s is unclear', (text) => {
    expect(timeMeant(text)).toBeNull();
  });
});

describe('a date in another form', () => {
  it.each([
    ['26.11.2026', '2026-11-26'],
    ['11/26/2026', '2026-11-26'],
    ['2026/11/26', '2026-11-26'],
    ['2026.1.2', '2026-01-02'],
    ['5-5-2026', '2026-05-05'],
  ])('%s is %s', (text, date) => {
    expect(dateMeant(text)).toBe(date);
  });

  it.each(['5.4.2026', '31.2.2026', '2026-02-30', '1.1.27', 'May 5 2026', '1.2', ''])('%s is unclear', (text) => {
    expect(dateMeant(text)).toBeNull();
  });
});

describe('a key or a word by another name', () => {
  it('is led to the one that may be written', () => {
    expect(keyMeant('lights', ['lamps', 'size'])).toBe('lamps');
    expect(keyMeant('lights', ['size'])).toBeNull();
    expect(keyMeant('lampz', ['lamps'])).toBe('lamps');
    expect(choiceMeant('Saturday', ['fri', 'sat'])).toBe('sat');
    expect(choiceMeant('weekend', ['fri', 'sat'])).toBeNull();
  });
});
