import { epochDay } from '../../src/basics/calendar-day.ts';
import { zoneOffsets } from '../../src/basics/zone.ts';
import { compile } from '../../src/compile.ts';
import { Log } from '../../src/diagnostics/log.ts';
import { renderText } from '../../src/diagnostics/render.ts';
import { fitEnclosure } from '../../src/fit/fit-enclosure.ts';
import { UNTESTED } from '../../src/fit/gauge.ts';
import { readReadings } from '../../src/fit/read-readings.ts';
import type { Draw } from '../property/household-generator.ts';
import type { Target } from './campaign.ts';
import { PROFILES, shipped, textOf } from './compile-target.ts';
import { damagedBytes } from './mutations.ts';

const HOUSEHOLD = shipped('examples/one-gecko.yaml').replace(/days: 365/, 'days: 60');
const ROWS = 160;
const CELLS = [
  '',
  '-',
  'nan',
  'inf',
  '101',
  '-40',
  '1e400',
  '45 %',
  '45,5',
  '78 °F',
  '"',
  '""',
  '2027-02-30',
  '24:00',
  '0x1f',
  '=1+1',
  'é',
  '\u0000',
];

type Compiled = ReturnType<typeof compile>;
let compiled: Compiled | null = null;

function shelf(): Compiled {
  compiled ??= compile({
    file: 'home.yaml',
    text: HOUSEHOLD,
    profile: (id) => ({ file: `profiles/${id}.yaml`, text: PROFILES.get(id) ?? '' }),
    profileIds: [],
    earlier: null,
    today: { date: '2027-01-01' },
    version: 'fuzz',
  });
  return compiled;
}

/** Logs of gauges: columns, delimiters, dates and units as loggers write them, then damaged. */
export const readings: Target = {
  name: 'readings',
  share: 0.2,
  prepare: async () => void shelf(),
  run: async (draw, index) => {
    const written = logText(draw);
    const text = index % 2 === 0 ? textOf(damagedBytes(Buffer.from(written), draw)) : withOtherCells(written, draw);
    if (text === null) return 'no text';
    const { care, plan } = shelf();
    const enclosure = care?.enclosures[0];
    if (!care || !plan || !enclosure) throw new Error('the household of this test cannot be planned');
    const log = new Log();
    const offsets = zoneOffsets(care.site.timezone, care.plan.from, care.plan.days);
    const form = { dates: null, columns: null, clock: 'wall', shiftMinutes: 0 } as const;
    const read = readReadings('log.csv', text, form, offsets, epochDay('2027-03-01'), log);
    const fit =
      read && index % 8 === 1 ? fitEnclosure({ care, plan, enclosure, offsets, gauge: UNTESTED }, read, log) : null;
    const said = log.sorted();
    renderText(said, new Map([['log.csv', { shown: 'log.csv', text }]]), { columns: 80 });
    for (const { because, instead, code } of said)
      if (/undefined|NaN|\[object /.test(`${because} ${instead}`.replace(/"[^"]*"/g, '')))
        throw new Error(`${code} says: ${because} ${instead}`);
    if (!read && !said.some(({ weight }) => weight === 'error')) throw new Error('refused without a reason');
    return fit ? 'fitted' : read ? 'read' : 'refused';
  },
};

function logText(draw: Draw): string {
  const delimiter = draw.one([',', ';', '\t']);
  const decimal = delimiter === ',' ? '.' : draw.one(['.', ',']);
  const order = draw.one(['ymd', 'dmy', 'mdy']);
  const heading = [
    'Time',
    `Humidity${draw.one(['', ' (%)', ' %RH'])}`,
    ...(draw.chance(0.5) ? ['Temperature °C'] : []),
  ];
  const rows = Array.from({ length: ROWS }, (_, row) => {
    const minute = row * 30;
    const [day, clock] = [1 + Math.floor(minute / 1440), minute % 1440];
    const [d, m] = [String(day).padStart(2, '0'), '02'];
    const date = order === 'ymd' ? `2027-${m}-${d}` : order === 'dmy' ? `${d}.${m}.2027` : `${m}/${d}/2027`;
    const time = `${String(Math.floor(clock / 60)).padStart(2, '0')}:${String(clock % 60).padStart(2, '0')}`;
    const humidity = (45 + 20 * Math.sin(row / 9) + 3 * draw.share()).toFixed(1).replace('.', decimal);
    return [`${date} ${time}`, humidity, ...(heading.length > 2 ? ['24'] : [])].join(delimiter);
  });
  const preamble = draw.chance(0.2) ? ['Logger of the shelf', 'Serial 1234'] : [];
  return [...preamble, ...(draw.chance(0.85) ? [heading.join(delimiter)] : []), ...rows, ''].join(
    draw.one(['\n', '\r\n']),
  );
}

function withOtherCells(text: string, draw: Draw): string {
  const lines = text.split('\n');
  for (let left = draw.whole(1, 12); left > 0; left--) {
    const at = draw.whole(0, lines.length - 1);
    const cells = (lines[at] ?? '').split(/([,;\t])/);
    cells[draw.whole(0, cells.length - 1)] = draw.one(CELLS);
    lines[at] = cells.join('');
  }
  return lines.join('\n');
}
