/** What there is to say about feeds, powders and feeders in stock. */
import { wording } from '../diagnostic.ts';
import { counted, isOrAre, stateWords, times as timesOf } from './amounts.ts';

const feeds = (count: number): string => `${count} feed${count === 1 ? '' : 's'}`;
const list = (items: readonly string[], most: number): string =>
  items.length > most ? `${items.slice(0, most).join(', ')} and ${items.length - most} more` : items.join(', ');

export const feeding = {
  'feeders-unnamed': wording<{ enclosure: string; food: string }>(
    'note',
    'note',
    ({ enclosure, food }) => `${enclosure} is fed ${food}, and the file does not say which; the plan just says ${food}`,
    () => 'list what you feed under feeders, with shares, so that it can be varied, counted and ordered',
  ),
  'feeders-unused': wording<{ enclosure: string; feeder: string; food: string; foods: string }>(
    'note',
    'note',
    ({ enclosure, feeder, food, foods }) =>
      `${feeder} (${food}) is not on the diet of ${enclosure}, which is fed ${foods} in this plan`,
    () => 'leave it out, or say its food',
  ),
  'count-above-profile': wording<{ feeder: string; count: number; pieces: number; stage: string }>(
    'falls short',
    'warning',
    ({ feeder, count, pieces, stage }) =>
      `${count} of ${feeder} a feed is more than 1.5 times the ${pieces} of the ${stage} profile`,
    ({ pieces }) => `give up to ${Math.floor(pieces * 1.5)}, or ask your veterinarian`,
  ),
  'dustings-exceed-feeds': wording<{ enclosure: string; stage: string; asked: string; powder: string; times: string }>(
    'falls short',
    'warning',
    ({ enclosure, stage, asked }) =>
      `the dustings of ${enclosure} (${stage}) ask for ${asked} of the feeds that take dust, and one feed takes one`,
    ({ powder, times }) =>
      `leave it so: the plan gives ${powder} ${timesOf(times)} in 4 weeks, the nearest that fits; or ask for less`,
  ),
  'nothing-takes-dust': wording<{ enclosure: string; stage: string; powders: readonly string[] }>(
    'falls short',
    'warning',
    ({ enclosure, stage, powders }) =>
      `${enclosure} (${stage}) is to be dusted with ${powders.join(', ')}, and none of its feeders says dust: true`,
    () => 'say dust: true on the feeders that you dust; the plan dusts nothing until then',
  ),
  'apart-cannot-hold': wording<{
    enclosure: string;
    stage: string;
    powder: string;
    asked: number;
    held: number;
    feeds: number;
    weeks: number | null;
    days: number;
  }>(
    'falls short',
    'warning',
    ({ enclosure, stage, powder, asked, feeds: of, days }) =>
      `${enclosure} (${stage}) asks for ${powder} in ${asked} of ${feeds(of)}, which leaves less than the ${counted(days, 'day')} that must lie between`,
    ({ powder, held, weeks, feeds: of }) =>
      weeks === null
        ? `leave it so: the plan keeps the days and gives ${powder} in ${held} of ${feeds(of)}, the most that fit`
        : `leave it so: the plan keeps the days and gives ${powder} ${timesOf(held)} in ${counted(weeks, 'week')}, the most that fit`,
  ),
  'vitamins-on-complete-diet': wording<{
    enclosure: string;
    stage: string;
    powder: string;
    contents: string;
    said: boolean;
  }>(
    'not safe',
    'refusal',
    ({ enclosure, stage, powder, contents, said }) =>
      `${enclosure} (${stage}) lives on a prepared diet, which is complete, and ${powder} would add ${contents} to it${said ? '' : ', as its name is taken'}; it is not planned`,
    ({ powder, said }) =>
      said
        ? `leave ${powder} out; calcium without vitamins may stay on insects`
        : `leave ${powder} out, or say what it contains from its label`,
  ),
  'feed-outside-hours': wording<{
    enclosure: string;
    times: readonly string[];
    outside: number;
    feeds: number;
    dates: readonly string[];
    setting: string | null;
    between: string | null;
    feedsAt: readonly string[] | null;
  }>(
    'falls short',
    'warning',
    ({ enclosure, times, outside, feeds: of, dates }) =>
      `${times.join(' and ')} ${times.length === 1 ? 'lies' : 'lie'} outside the feeding hours of ${enclosure} for ${outside} of ${feeds(of)}: ${list(dates, 4)}`,
    ({ setting, between, feedsAt }) =>
      [
        setting === null
          ? 'no other midday would make it fit on every date'
          : `set ${setting}, the nearest at which it fits on every date`,
        ...(between === null ? [] : [`or feed ${between}, which fits on every date as the lights are`]),
        ...(feedsAt === null
          ? []
          : [
              `feeds_at can hold several hours, of which each animal has its own: feeds_at: [${feedsAt.map((hour) => `"${hour}"`).join(', ')}]`,
            ]),
      ].join('; '),
  ),
  'feeding-hours-taken': wording<{ enclosure: string; person: string }>(
    'note',
    'note',
    ({ enclosure, person }) =>
      `nobody has feeds_at, so ${person} is asked to feed ${enclosure} when its feeding hours begin`,
    () => 'write when the person who feeds is there, for instance feeds_at: "18:00"',
  ),
  'feeds-at-too-few': wording<{ enclosure: string; person: string; times: number; given: number }>(
    'falls short',
    'warning',
    ({ enclosure, person, times, given }) =>
      `${enclosure} is fed ${timesOf(times)} a day, and feeds_at of ${person} holds ${counted(given, 'time')}`,
    ({ times }) => `give feeds_at ${times} times; until then the plan puts the others 4 h apart after the last`,
  ),
  'nothing-stands-in': wording<{ enclosure: string; feeder: string; from: string; to: string; feeds: number }>(
    'falls short',
    'warning',
    ({ enclosure, feeder, from, to, feeds: lost }) =>
      `${feeder} cannot be had from ${from} to ${to}, ${feeds(lost)} of ${enclosure} need it, and no other feeder is named`,
    () => 'name a feeder that keeps and say stand_in: true on it',
  ),
  'stand-in-undusted': wording<{ enclosure: string; feeder: string; powders: readonly string[]; feeds: number }>(
    'falls short',
    'warning',
    ({ enclosure, feeder, powders, feeds: lost }) =>
      `${feeder} stands in for dusted feeders of ${enclosure} and takes no dust: ${feeds(lost)} go without ${powders.join(', ')}`,
    ({ feeder }) => `say dust: true on ${feeder} if you dust it, or let another feeder stand in`,
  ),
  'dusting-paused': wording<{ enclosure: string; state: string; from: string; to: string }>(
    'note',
    'note',
    ({ enclosure, state, from, to }) =>
      `${enclosure} is ${state === 'ill' ? 'ill' : 'in quarantine'} from ${from} to ${to}: nothing is dusted`,
    () => 'ask the veterinarian; what they order, write as vet',
  ),
  'state-asks-vet': wording<{ enclosure: string; state: string; from: string; to: string; vet: string | null }>(
    'note',
    'note',
    ({ enclosure, state, from, to, vet }) =>
      vet === null
        ? `${enclosure} is ${stateWords(state)} from ${from} to ${to}; feeds and powders stay as they are`
        : `${enclosure} is ${stateWords(state)} from ${from} to ${to}; the veterinarian ordered: ${vet}`,
    ({ vet }) => (vet === null ? 'ask your veterinarian what changes, and write it as vet' : ''),
  ),
  'nobody-feeds': wording<{
    enclosure: string;
    from: string;
    to: string;
    feeds: number;
    days: number;
    allowed: number | null;
    visit: string | null;
  }>(
    'falls short',
    'warning',
    ({ enclosure, from, to, feeds: lost, days, allowed }) =>
      `nobody is there for ${feeds(lost)} of ${enclosure} between ${from} and ${to}: ${counted(days, 'day')} without food${allowed === null ? '' : `, and ${counted(allowed, 'day')} ${isOrAre(allowed)} the most it may go`}`,
    ({ visit, days, allowed }) =>
      visit === null
        ? 'let a sitter come on those days'
        : allowed !== null && days <= allowed
          ? ''
          : `let a sitter come on ${visit} at the latest`,
  ),
  'powder-for-sitter': wording<{ enclosure: string; powder: string; dates: readonly string[] }>(
    'note',
    'note',
    ({ enclosure, powder, dates }) =>
      `${powder} falls to the sitter of ${enclosure} on ${list(dates, 4)} and cannot be moved without coming too near another`,
    () => 'put it up in portions before you leave',
  ),
  'order-not-proven': wording<{ enclosure: string; food: string; by: number }>(
    'note',
    'note',
    ({ enclosure, food, by }) =>
      by === 0
        ? `the order of ${enclosure} (${food}) holds its shares and rates as evenly as can be; that no order spreads the powders better over the feeders is not shown`
        : `the order of ${enclosure} (${food}) is good and not shown to be the most even: at worst it is ${counted(by, 'feed')} farther off than the best could be`,
    () => 'write shares in round numbers: they make a shorter cycle',
  ),
  'order-runs-once': wording<{ enclosure: string; food: string; stage: string }>(
    'note',
    'note',
    ({ enclosure, food, stage }) =>
      `no cycle of up to 8 weeks holds whole numbers of the ${food} of ${enclosure} (${stage}), so its order runs once over the plan`,
    () => 'write shares and rates in round numbers, if an order that repeats is wanted',
  ),
  'no-shopping-day': wording<{ feeders: readonly string[] }>(
    'note',
    'note',
    ({ feeders }) => `shopping names no days, so nothing is ordered (${list(feeders, 4)})`,
    () => 'write the days on which you can shop, for instance shopping: { days: [fri] }',
  ),
  'shelf-life-missing': wording<{ feeder: string; days: number }>(
    'falls short',
    'warning',
    ({ feeder, days }) =>
      `${feeder} has no shelf_life, so how long a purchase keeps is not known; ${counted(days, 'day')} ${isOrAre(days)} taken, from one shopping day to the next`,
    () => 'write how many days it keeps, for instance shelf_life: 10 days',
  ),
  'shelf-life-too-short': wording<{
    feeder: string;
    shelfLife: number;
    gap: number;
    dates: readonly string[];
    nearest: string;
  }>(
    'falls short',
    'warning',
    ({ feeder, shelfLife, gap, dates }) =>
      `${feeder} keeps ${counted(shelfLife, 'day')} and up to ${counted(gap, 'day')} ${gap === 1 ? 'lies' : 'lie'} between purchases; none is good on ${list(dates, 4)}`,
    ({ nearest }) => nearest,
  ),
  'stock-not-counted': wording<{ feeders: readonly string[] }>(
    'note',
    'note',
    ({ feeders }) =>
      `no count in stock for ${list(feeders, 4)}; what is there is taken to last until the first purchase can be fed`,
    () => 'write how many there are, for instance in_stock: 60',
  ),
  'stock-runs-out': wording<{ feeder: string; inStock: number; counted: string; date: string }>(
    'note',
    'note',
    ({ feeder, inStock, counted: on, date }) =>
      `the ${inStock} of ${feeder} in stock, taken as counted on ${on}, ${inStock === 1 ? 'runs' : 'run'} out on ${date}`,
    () => 'count again before you plan anew, and write it as in_stock',
  ),
  'stock-before-shopping': wording<{
    feeder: string;
    missing: number;
    dates: readonly string[];
    shopping: string | null;
  }>(
    'falls short',
    'warning',
    ({ feeder, missing, dates, shopping }) =>
      `${missing} of ${feeder} ${isOrAre(missing)} missing before the first purchase can be fed${shopping === null ? '' : ` (bought ${shopping})`}: ${list(dates, 4)}`,
    ({ missing, feeder }) => `get ${missing} of ${feeder} before that, or feed a stand-in`,
  ),
  'stock-after-shortage': wording<{
    feeder: string;
    to: string;
    shopping: string | null;
    missing: number;
    dates: readonly string[];
  }>(
    'falls short',
    'warning',
    ({ feeder, to, shopping, missing, dates }) =>
      `the shortage of ${feeder} ends on ${to} and ${shopping === null ? 'nobody shops after it' : `the next purchase is on ${shopping}`}: ${missing} ${isOrAre(missing)} missing on ${list(dates, 4)}`,
    ({ shopping }) =>
      shopping === null
        ? 'name a day to shop after it'
        : `let the shortage last to ${shopping}, so that a stand-in steps in until then`,
  ),
  'absence-outlasts-food': wording<{
    feeder: string;
    from: string;
    to: string;
    good: string;
    missing: number;
    dates: readonly string[];
    nearest: string;
  }>(
    'falls short',
    'warning',
    ({ feeder, from, to, good, missing, dates }) =>
      `from ${from} to ${to} nobody shops, and ${feeder} bought before is good until ${good}: ${missing} ${isOrAre(missing)} missing on ${list(dates, 4)}`,
    ({ nearest }) => nearest,
  ),
};
