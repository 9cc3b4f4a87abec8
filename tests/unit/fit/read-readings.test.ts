import { describe, expect, it } from 'vitest';
import { epochDay } from '../../../src/basics/calendar-day.ts';
import { isoUtcMinuteOf } from '../../../src/basics/utc-offsets.ts';
import { zoneOffsets } from '../../../src/basics/zone.ts';
import { Log } from '../../../src/diagnostics/log.ts';
import { columnsByList } from '../../../src/fit/columns.ts';
import { type LogForm, readReadings } from '../../../src/fit/read-readings.ts';

const OFFSETS = zoneOffsets('Europe/Madrid', epochDay('2027-01-01'), 365);
const PLAIN: LogForm = { dates: null, columns: null, clock: 'wall', shiftMinutes: 0 };

function read(text: string, form: Partial<LogForm> = {}) {
  const log = new Log();
  const found = readReadings('g.csv', text, { ...PLAIN, ...form }, OFFSETS, epochDay('2027-12-31'), log);
  return {
    codes: log.sorted().map(({ code }) => code),
    places: log.sorted().map(({ place }) => place && `${place.line}:${place.column}`),
    rows: found?.readings.map(({ utcMinute, humidity, celsius }) => [
      isoUtcMinuteOf(Math.floor(utcMinute)),
      Number(humidity.toFixed(4)),
      celsius === null ? null : Number(celsius.toFixed(2)),
    ]),
    mists: found?.mists?.map(({ utcMinute, seconds }) => [isoUtcMinuteOf(utcMinute), seconds]) ?? null,
    lost: found?.lost,
  };
}

const TEN = [['2027-01-31T13:05Z', 0.453, 21.5]];

describe('a log is read', () => {
  it.each([
    ['commas, ISO', 'time,humidity,temperature\n2027-01-31 14:05,45.3,21.5\n'],
    ['a T and seconds', 'timestamp,rh,temp\n2027-01-31T14:05:00.000,45.3,21.5\n'],
    ['Zulu', 'time,rh,temp\n2027-01-31T13:05Z,45.3,21.5\n'],
    ['an offset', 'time,rh,temp\n2027-01-31 15:05:00+02:00,45.3,21.5\n'],
    ['seconds since 1970', 'time,rh,temp\n1801400700,45.3,21.5\n'],
    ['semicolons, decimal commas, Spanish', 'Fecha y hora;Humedad (%);Temperatura (°C)\n31/01/2027 14:05;45,3;21,5\n'],
    ['date and time apart', 'Fecha;Hora;HR;Temp.\n31/01/2027;14:05;45,3;21,5\n'],
    ['tabs and a mark', '\ufeffTime\tRelative Humidity\tTemperature\n31.01.2027 14:05\t45.3\t21.5\n'],
    ['quotes', '"Time","Humidity [%]","Temperature [C]"\n"2027-01-31 14:05","45.3","21.5"\n'],
    ['month first, half days', 'Time,Humidity,Temp (°F)\n1/31/2027 2:05 PM,45.3,70.7\n'],
    ['half days in Spanish', 'Hora;Fecha;HR;T\n2:05 p. m.;31/01/2027;45,3;21,5\n'],
    ['named months', 'time,rh,t\n31 ene 2027 14:05,45.3,21.5\n'],
    ['years of two digits', 'time,rh,t\n31/01/27 14:05,45.3,21.5\n'],
    ['units in the cells', 'time,rh,t\n2027-01-31 14:05,45.3 %,70.7 °F\n'],
    ['fractions', 'time,rh,t\n2027-01-31 14:05,0.453,21.5\n'],
    ['lines of Windows', 'time,rh,t\r\n2027-01-31 14:05,45.3,21.5\r\n'],
    ['a preamble', 'Logger 5\nCity: Zaragoza\n\ntime,rh,t\n2027-01-31 14:05,45.3,21.5\n'],
    ['no headings', '2027-01-31 14:05,45.3,21.5\n'],
    ['no headings, date and time apart', '2027-01-31;14:05;45,3;21,5\n'],
    ['other quantities beside', 'time,dew point,humidity,room temp,temperature\n2027-01-31 14:05,9,45.3,18,21.5\n'],
  ])('%s', (_name, text) => {
    expect(read(text)).toMatchObject({ rows: TEN, codes: [] });
  });

  it('by a list of columns', () => {
    const columns = columnsByList('-,humidity,time,temperature');
    expect(read('9,45.3,2027-01-31 14:05,21.5\n', { columns })).toMatchObject({ rows: TEN });
    expect(columnsByList('humidity,temperature')).toBeNull();
    expect(columnsByList('time,humidity,humidity')).toBeNull();
    expect(columnsByList('time,wetness')).toBeNull();
  });

  it('with mists in seconds, minutes or m:ss', () => {
    const text = 'time,rh,mist\n2027-01-31 14:05,45,90\n2027-01-31 14:15,46,1.5 min\n2027-01-31 14:25,,1:30\n';
    expect(read(text).mists).toEqual([
      ['2027-01-31T13:05Z', 90],
      ['2027-01-31T13:15Z', 90],
      ['2027-01-31T13:25Z', 90],
    ]);
  });

  it('with lost readings counted, not complained of', () => {
    const text = 'time,rh\n2027-01-31 14:05,45\n2027-01-31 14:15,--\n2027-01-31 14:25,\n2027-01-31 14:35,n/a\n';
    expect(read(text)).toMatchObject({ lost: 3, codes: [] });
    expect(read(text).rows).toHaveLength(1);
  });

  it('newest first as well, each instant once', () => {
    const text = 'time,rh\n2027-01-31 14:15,46\n2027-01-31 14:05,45\n2027-01-31 14:05,45\n';
    expect(read(text).rows?.map(([at]) => at)).toEqual(['2027-01-31T13:05Z', '2027-01-31T13:15Z']);
  });
});

describe('the order of day and month', () => {
  it.each([
    ['31/01/2027 14:05', 'a day above 12'],
    ['2027-01-31 14:05', 'the year first'],
  ])('%s is told by %s', (time) => {
    expect(read(`time,rh\n${time},45.3\n`).rows?.[0]?.[0]).toBe('2027-01-31T13:05Z');
  });

  it('is told by days that follow one another', () => {
    const days = ['01/02/2027', '02/02/2027', '03/02/2027', '04/02/2027'];
    const rows = read(`time,rh\n${days.map((day) => `${day} 12:00,45\n`).join('')}`).rows;
    expect(rows?.map(([at]) => at)).toEqual(days.map((_, index) => `2027-02-0${index + 1}T11:00Z`));
  });

  it('is asked for where nothing tells it, and taken as it is said', () => {
    const text = 'time,rh\n02/03/2027 12:00,45\n02/03/2027 12:10,46\n';
    expect(read(text)).toMatchObject({ codes: ['dates-ambiguous'], places: ['2:1'] });
    expect(read(text, { dates: 'dmy' }).rows?.[0]?.[0]).toBe('2027-03-02T11:00Z');
    expect(read(text, { dates: 'mdy' }).rows?.[0]?.[0]).toBe('2027-02-03T11:00Z');
  });
});

describe('the changes of the clocks', () => {
  const autumn = ['01:50', '02:20', '02:50', '02:20', '02:50', '03:20'];
  const instants = ['23:50', '00:20', '00:50', '01:20', '01:50', '02:20'].map((time, index) =>
    index === 0 ? `2027-10-30T${time}Z` : `2027-10-31T${time}Z`,
  );

  it.each([
    ['in the order of time', autumn],
    ['newest first', autumn.toReversed()],
  ])('an hour that comes twice is two hours, %s', (_name, times) => {
    const text = `time,rh\n${times.map((time, index) => `2027-10-31 ${time},${40 + index}\n`).join('')}`;
    expect(read(text)).toMatchObject({ codes: [] });
    expect(read(text).rows?.map(([at]) => at)).toEqual(instants);
  });

  it('a skipped hour is said, or read on a clock that never changes', () => {
    const text = 'time,rh\n2027-03-28 01:50,45\n2027-03-28 02:20,46\n2027-03-28 02:50,47\n';
    expect(read(text)).toMatchObject({
      codes: ['readings-time-skipped'],
      places: ['3:1'],
      lost: 2,
    });
    expect(read(text, { clock: 'standard' }).rows?.map(([at]) => at)).toEqual([
      '2027-03-28T00:50Z',
      '2027-03-28T01:20Z',
      '2027-03-28T01:50Z',
    ]);
  });

  it('a shift is added to every time', () => {
    expect(read('time,rh\n2027-07-01 12:00,45\n', { shiftMinutes: -60 }).rows?.[0]?.[0]).toBe('2027-07-01T09:00Z');
    expect(read('time,rh\n2027-07-01 12:00,45\n', { clock: 'utc' }).rows?.[0]?.[0]).toBe('2027-07-01T12:00Z');
  });
});
