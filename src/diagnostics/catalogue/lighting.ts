/** What there is to say about lamps, dials and the cable. */
import { spanWords } from '../../basics/span-words.ts';
import { wording } from '../diagnostic.ts';
import { stateWords } from './amounts.ts';

const useWords = (use: string): string => (use === 'uvb' ? 'UV' : use);

export const lighting = {
  'timer-overloaded': wording<{ timer: string; peakW: number; ratingW: number; load: string }>(
    'not safe',
    'refusal',
    ({ timer, peakW, ratingW, load }) =>
      `${timer} may switch ${ratingW} W and would carry ${peakW} W (${load}); no setting is written for it`,
    () => 'move lamps to another timer or a live outlet until the sum is under the rating',
  ),
  'timer-near-rating': wording<{ timer: string; continuousW: number; ratingW: number; load: string }>(
    'not safe',
    'warning',
    ({ timer, continuousW, ratingW, load }) =>
      `${timer} carries ${continuousW} W for 3 h or more (${load}); 80 % of its ${ratingW} W is ${Math.floor(ratingW * 0.8)} W, the most for a continuous load by the North American wiring rule and our caution elsewhere`,
    () => 'move a lamp to another timer, or ask an electrician which timer the load needs',
  ),
  'rating-unknown': wording<{ timer: string; peakW: number }>(
    'note',
    'note',
    ({ timer, peakW }) => `${timer} has no rating in the file, so its ${peakW} W cannot be checked against it`,
    () => 'write the watts from its label as rating',
  ),
  'outlets-too-few': wording<{ timer: string; outlets: number; plugged: number; left: string }>(
    'cannot be done',
    'refusal',
    ({ timer, outlets, plugged, left }) =>
      `${timer} has ${outlets} timed outlet${outlets === 1 ? '' : 's'} and the file plugs ${plugged} things into it; not planned: ${left}`,
    ({ timer }) =>
      `name another timer for what is left over; no power strip behind ${timer} unless an electrician agrees`,
  ),
  'entries-too-few': wording<{ timer: string; entries: number; needed: number }>(
    'cannot be done',
    'refusal',
    ({ timer, entries, needed }) =>
      `${timer} has ${entries} ${entries === 1 ? 'entry' : 'entries'} and its lamps need ${needed}`,
    () => 'put the lamps on a dial, or give the timer to the lamps alone',
  ),
  'heat-without-thermostat': wording<{ lamp: string }>(
    'not safe',
    'refusal',
    ({ lamp }) => `${lamp} heats and has no thermostat; a timer switches, it does not regulate`,
    () => 'put a thermostat between; the timer goes before it, never after',
  ),
  'heat-left-to-auto': wording<{ lamp: string }>(
    'cannot be done',
    'refusal',
    ({ lamp }) => `${lamp} heats, and auto never places a heater on a timer`,
    () => 'name its outlet: always, behind its thermostat',
  ),
  'needs-without-lamp': wording<{
    enclosure: string;
    isBasking: boolean;
    baskingC: readonly [number, number] | null;
    isUv: boolean;
    zone: number | null;
  }>(
    'falls short',
    'note',
    ({ enclosure, isBasking, baskingC, isUv, zone }) => {
      const basking = `a basking place${baskingC === null ? '' : ` of ${baskingC[0]} to ${baskingC[1]} °C`}`;
      const uv = `UV${zone === null ? '' : ` of Ferguson zone ${zone}`}`;
      const lacking = [...(isBasking ? [basking] : []), ...(isUv ? [uv] : [])].join(' and ');
      return `the profile of ${enclosure} asks for ${lacking}, and no lamp in the file gives ${isBasking && isUv ? 'them' : 'it'}`;
    },
    ({ isBasking, isUv }) => {
      const uses = [...(isBasking ? ['basking'] : []), ...(isUv ? ['uvb'] : [])];
      return `add the lamp${uses.length > 1 ? 's' : ''} with for: [${uses.join('] and for: [')}]; left out on purpose, it may stay so`;
    },
  ),
  'heat-on-timer': wording<{ lamp: string; timer: string }>(
    'not safe',
    'warning',
    ({ lamp, timer }) => `${lamp} heats and hangs on ${timer}: nothing heats while the timer is off`,
    () => 'give it a live outlet, behind its thermostat, unless cold nights are meant',
  ),
  'basking-unregulated': wording<{ lamp: string }>(
    'not safe',
    'warning',
    ({ lamp }) => `${lamp} is for basking and has no thermostat`,
    () => 'check the surface below it with a probe daily for a week, and after every change of lamp or season',
  ),
  'lamp-behind-regulator': wording<{ lamp: string; kind: string; thermostat: string }>(
    'not safe',
    'refusal',
    ({ lamp, kind, thermostat }) =>
      `${lamp} is a ${kind} lamp behind a ${thermostat} thermostat, which such a lamp does not stand`,
    () => 'use an on-off thermostat, or a lamp that may be dimmed',
  ),
  'restrike-too-soon': wording<{ lamp: string; kind: string; timer: string; minutes: number }>(
    'not safe',
    'warning',
    ({ lamp, kind, timer, minutes }) =>
      `${lamp} is a ${kind} lamp and ${timer} lets it go on again after ${minutes} min; it must cool for about 20 min before it strikes`,
    () => 'use another kind of lamp there, or one window a day',
  ),
  'no-light-from-heater': wording<{ lamp: string; kind: string; use: string }>(
    'cannot be done',
    'refusal',
    ({ lamp, kind, use }) => `${lamp} is a ${kind} heater and gives no light; the file names it for ${use}`,
    () => 'name it for heat or basking, and a lamp that shines for the light',
  ),
  'lamp-never-off': wording<{ lamp: string; use: string }>(
    'falls short',
    'warning',
    ({ lamp, use }) => `${lamp} is for ${use} on a live outlet, so it never goes off and no night falls`,
    () => 'name a timer as its outlet, or auto',
  ),
  'target-day-extreme': wording<{ enclosure: string; date: string; target: string; days: number }>(
    'not safe',
    'warning',
    ({ enclosure, date, target, days }) =>
      `the target for ${enclosure} on ${date} is ${target} of light, outside 6 h to 18 h (${days} day${days === 1 ? '' : 's'} of the plan)`,
    () => 'set at_least and at_most under photoperiod, or check the latitude',
  ),
  'clocks-differ': wording<{ enclosure: string; one: string; oneClock: string; other: string; otherClock: string }>(
    'note',
    'warning',
    ({ enclosure, one, oneClock, other, otherClock }) =>
      `${enclosure} hangs on ${one} (${oneClock} time) and ${other} (${otherClock} time): they part by an hour when the clocks change`,
    () => 'keep all timers of an enclosure on one clock',
  ),
  'day-placement-differs': wording<{ timer: string; one: string; oneDay: string; other: string; otherDay: string }>(
    'cannot be done',
    'refusal',
    ({ timer, one, oneDay, other, otherDay }) =>
      `${timer} has one window for both, but ${one} wants ${oneDay} and ${other} wants ${otherDay}`,
    () => 'give both the same midday, lights_on or lights_off, or a dial each',
  ),
  'spans-do-not-share': wording<{ timer: string; one: string; other: string }>(
    'cannot be done',
    'refusal',
    ({ timer, one, other }) => `${timer} has one set of windows, but ${one} and ${other} need different ones`,
    () => 'give one of them a dial of its own, or the same spans',
  ),
  'inset-follows-day': wording<{ lamp: string; timer: string; wants: string; errorMinutes: number }>(
    'note',
    'note',
    ({ lamp, timer, wants, errorMinutes }) =>
      `${lamp} follows the daylight on ${timer}; its own ${wants} is missed by up to ${spanWords(errorMinutes)}`,
    () => 'put it on a dial of its own, which keeps its hours inside the day',
  ),
  'inset-in-combined-lamp': wording<{ lamp: string; use: string; errorMinutes: number }>(
    'note',
    'note',
    ({ lamp, use, errorMinutes }) =>
      `${lamp} gives the daylight too, so its ${useWords(use)} hours last as long as the day, up to ${spanWords(errorMinutes)} more than the target`,
    ({ use }) => `use a lamp for ${useWords(use)} alone, on a dial of its own, which keeps them`,
  ),
  'inset-longer-than-day': wording<{ lamp: string; inset: string; date: string; day: string; days: number }>(
    'falls short',
    'warning',
    ({ lamp, inset, date, day, days }) =>
      `${lamp} wants ${inset} inside the day, which lasts ${day} on ${date} (${days} day${days === 1 ? '' : 's'} of the plan)`,
    () => 'shorten the hours or edges of the inset, or lengthen the day',
  ),
  'dial-behind-timer': wording<{ dial: string; timer: string }>(
    'cannot be done',
    'refusal',
    ({ dial, timer }) => `${dial} is plugged into ${timer} and loses the time while that is off`,
    ({ dial }) => `give ${dial} a live outlet`,
  ),
  'lamp-on-repeat-timer': wording<{ lamp: string; timer: string }>(
    'cannot be done',
    'refusal',
    ({ lamp, timer }) => `${lamp} hangs on ${timer}, which repeats on and off and knows no time of day`,
    () => 'name a dial or a programmable timer as its outlet, or auto',
  ),
  'no-dial-for-lamp': wording<{ lamps: string; why: string; nearest: string }>(
    'cannot be done',
    'refusal',
    ({ lamps, why }) => `auto finds no timer for ${lamps}: ${why}`,
    ({ nearest }) => nearest,
  ),
  'assignment-not-proven': wording<{
    lamps: number;
    timers: number;
    worst: { value: number; atLeast: number };
    day: { value: number; atLeast: number };
  }>(
    'note',
    'note',
    ({ lamps, timers, worst, day }) =>
      worst.value > worst.atLeast
        ? `auto places ${lamps} lamps on ${timers} timers with a worst error of ${worst.value} min; a better arrangement may be left, by ${Math.round((worst.value - worst.atLeast) * 10) / 10} min at most: none is under ${worst.atLeast} min`
        : `auto places ${lamps} lamps on ${timers} timers with the least worst error there is, ${worst.value} min; their errors add up to ${Math.round(day.value)} min a day, and an arrangement with less may be left, but none is under ${Math.floor(day.atLeast)} min`,
    () => 'name the outlet of a few lamps to make the search small',
  ),
  'timer-behind-timer': wording<{ timer: string; supply: string; lamps: string }>(
    'falls short',
    'warning',
    ({ timer, supply, lamps }) =>
      `${timer} is plugged into ${supply}, so ${lamps} ${lamps.includes(',') ? 'have' : 'has'} power only while both are on`,
    ({ timer }) => `give ${timer} a live outlet`,
  ),
  'season-held': wording<{ enclosure: string; state: string; from: string; to: string; target: string }>(
    'note',
    'note',
    ({ enclosure, state, from, to, target }) =>
      `${enclosure} is ${stateWords(state)} from ${from} to ${to}: its target stays at ${target} of light, no season changes`,
    () => '',
  ),
  'heat-without-hours': wording<{ lamp: string; timer: string }>(
    'cannot be done',
    'refusal',
    ({ lamp, timer }) => `${lamp} only heats and ${timer} drives no lamp whose hours it could follow`,
    () => 'give it a live outlet, behind its thermostat, or a place on the dial of the daylight',
  ),
  'tolerance-out-of-reach': wording<{
    timer: string;
    toleranceMinutes: number;
    worstMinutes: number;
    settings: number;
    leastMinutes: number;
    settingsToReach: number | null;
  }>(
    'falls short',
    'warning',
    ({ timer, toleranceMinutes, worstMinutes, settings }) =>
      `${timer} cannot keep within ${toleranceMinutes} min of the target; the best with ${settings} setting${settings === 1 ? '' : 's'} is ${worstMinutes} min`,
    ({ leastMinutes, settingsToReach }) =>
      settingsToReach === null
        ? `use a finer timer, or allow a tolerance of ${leastMinutes} min, the least that any number of settings reaches`
        : `allow ${settingsToReach} settings, the fewest that keep it`,
  ),
  'jump-not-kept': wording<{ timer: string; limitMinutes: number; leastMinutes: number }>(
    'falls short',
    'warning',
    ({ timer, limitMinutes, leastMinutes }) =>
      `what stands on ${timer} is too far off: no plan keeps every change within ${limitMinutes} min; the largest is ${leastMinutes} min`,
    ({ leastMinutes }) =>
      `allow ${leastMinutes} min once, or move the day by hand towards the first setting before the plan begins`,
  ),
  'jump-costs-light': wording<{
    timer: string;
    limitMinutes: number;
    worstMinutes: number;
    withoutMinutes: number;
    settingsToUndo: number | null;
  }>(
    'falls short',
    'warning',
    ({ timer, limitMinutes, worstMinutes, withoutMinutes }) =>
      `changes of at most ${limitMinutes} min leave ${timer} ${worstMinutes} min from the target at worst, instead of ${withoutMinutes} min`,
    ({ settingsToUndo, withoutMinutes }) =>
      settingsToUndo === null
        ? 'allow larger changes'
        : `allow larger changes, or ${settingsToUndo} settings, the fewest that come within ${withoutMinutes} min all the same`,
  ),
  'jump-large': wording<{
    timer: string;
    date: string;
    jumpMinutes: number;
    stepMinutes: number;
    bridge: string | null;
  }>(
    'not safe',
    'warning',
    ({ timer, date, jumpMinutes }) => `the day on ${timer} changes by ${jumpMinutes} min at once on ${date}`,
    ({ bridge, stepMinutes }) =>
      bridge === null
        ? `use a timer with pins finer than ${stepMinutes} min: it can change in smaller steps`
        : `bridge it in steps: ${bridge}`,
  ),
  'first-change-held-back': wording<{ timer: string; until: string; daysBetween: number }>(
    'note',
    'note',
    ({ timer, until, daysBetween }) =>
      `${timer} was changed less than ${daysBetween} days before the plan begins, so it is left alone until ${until}`,
    () => 'shorten at_least_between to change it sooner',
  ),
  'settings-above-most': wording<{ timer: string; atMost: number; settings: number }>(
    'falls short',
    'warning',
    ({ timer, atMost, settings }) =>
      `${timer} has used up its ${atMost} setting${atMost === 1 ? '' : 's'} and what stands on it is no longer allowed, so it gets ${settings}`,
    () => 'allow more settings in the plan',
  ),
  'day-longer-than-allowed': wording<{ timer: string; target: string; date: string; room: string; days: number }>(
    'falls short',
    'warning',
    ({ timer, target, date, room, days }) =>
      `${timer} is to give ${target} on ${date}, but the hours in which light is allowed hold ${room} (${days} day${days === 1 ? '' : 's'} of the plan)`,
    () => 'move no_light_before or no_light_after, or set at_most under photoperiod',
  ),
  'temperature-limit': wording<{ enclosure: string; when: string; temperature: string; limit: string; months: string }>(
    'not safe',
    'refusal',
    ({ enclosure, when, temperature, limit, months }) =>
      `${enclosure} would stand at ${temperature} by ${when}, ${limit} (${months})`,
    () => 'change the room, the lamps or the heater, or say why under targets of the enclosure',
  ),
  'temperature-band': wording<{
    enclosure: string;
    when: string;
    side: 'below' | 'above';
    temperature: string;
    band: string;
    months: string;
  }>(
    'falls short',
    'warning',
    ({ enclosure, when, temperature, band, months }) =>
      `${enclosure} would stand at ${temperature} by ${when}, outside ${band} (${months})`,
    ({ when, side }) =>
      side === 'above'
        ? `cool or air the room${when === 'day' ? ', or use a weaker lamp' : ''}`
        : `warm the room, or use ${when === 'day' ? 'a stronger lamp' : 'a heater behind a thermostat'}`,
  ),
};
