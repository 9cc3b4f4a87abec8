/** Outlets, pumps, drippers, and the pins of a dial. */

import { clockTimeOf, DAY_MINUTES, parseClockTime } from '../basics/minute-of-day.ts';
import { nearestSpelling } from '../basics/nearest-spelling.ts';
import { idsOf } from './id-checks.ts';
import type { Findings, RawPart } from './raw-file.ts';
import { DEVICE_KINDS, MIST_WORDS } from './schema/hardware-schema.ts';

const TIMERS = ['pin-dial', 'programmable-timer', 'repeat-cycle-timer'];
const PUMPS = ['mist-pump', 'fogger'];

/** Finds outlets, pumps and drippers that are no such device, circles of outlets, and dials and tanks that do not hold together. */
export function checkDevices(root: RawPart, findings: Findings): void {
  if (root.at('hardware').stands && !Array.isArray(root.at('hardware').data)) return;
  const devices = root.at('hardware').items;
  for (const device of devices) {
    mustBe(device.at('outlet'), devices, TIMERS, 'timer', ['always'], findings);
    checkLiveOutlet(device, findings);
    checkDial(device, findings);
    checkWater(device, findings);
  }
  checkCircles(devices, findings);
  for (const enclosure of root.at('enclosures').items) {
    for (const lamp of enclosure.at('lamps').items) {
      mustBe(lamp.at('outlet'), devices, TIMERS, 'timer', ['always', 'auto'], findings);
    }
    mustBe(enclosure.at('mist'), devices, PUMPS, 'mist-pump or fogger', MIST_WORDS, findings);
    mustBe(enclosure.at('dripper'), devices, ['dripper'], 'dripper', [], findings);
  }
}

/** Reports a name that is no device of the file, or one of another kind. */
function mustBe(
  name: RawPart,
  devices: readonly RawPart[],
  kinds: readonly string[],
  wanted: string,
  words: readonly string[],
  findings: Findings,
): void {
  const id = name.text;
  if (id === null || words.includes(id)) return;
  const fitting = idsOf(devices.filter((each) => kinds.includes(kindOf(each) ?? '')));
  const device = devices.find((each) => each.at('id').text === id);
  if (!device) {
    const nearest = nearestSpelling(id, [...fitting, ...words]);
    findings.say('unknown-id', { id, wanted, known: fitting, words, nearest }, name.path);
  } else if (!fitting.includes(id) && kindOf(device) !== null) {
    const values = { id, kind: kindOf(device) ?? '', line: findings.lineOf(device.path), wanted };
    findings.say('wrong-device', { ...values, known: [...fitting, ...words] }, name.path);
  }
}

/** null where the kind is missing or misspelt, which is said elsewhere. */
function kindOf(device: RawPart): string | null {
  return DEVICE_KINDS.find((kind) => kind === device.at('kind').text) ?? null;
}

function checkLiveOutlet(device: RawPart, findings: Findings): void {
  const kind = device.at('kind').text ?? '';
  const outlet = device.at('outlet');
  if (PUMPS.includes(kind) && outlet.text === 'always') {
    findings.say('pump-always-on', { id: device.at('id').text ?? kind, kind }, outlet.path);
  }
}

/** Each circle is said once, at its first device in the file. */
function checkCircles(devices: readonly RawPart[], findings: Findings): void {
  const outletOf = new Map(devices.map((device) => [device.at('id').text, device.at('outlet').text] as const));
  const said = new Set<string>();
  for (const device of devices) {
    const start = device.at('id').text;
    const chain = start === null || said.has(start) ? null : circleFrom(start, outletOf);
    if (!chain) continue;
    for (const id of chain) said.add(id);
    findings.say('outlet-circle', { chain: [...chain, chain[0] ?? ''] }, device.at('outlet').path);
  }
}

function circleFrom(start: string, next: ReadonlyMap<string | null, string | null>): readonly string[] | null {
  const chain = [start];
  for (let id = next.get(start); id; id = next.get(id)) {
    if (id === start) return chain;
    if (chain.includes(id)) return null;
    chain.push(id);
  }
  return null;
}

function checkDial(device: RawPart, findings: Findings): void {
  const step = device.at('step');
  const minutes = (step.quantity('time') ?? 0) / 60;
  if (device.at('kind').text !== 'pin-dial' || minutes <= 0) return;
  const week = /^(7\s*days?|1\s*weeks?)$/u.test(device.at('turns_in').text?.trim() ?? '');
  const turn = DAY_MINUTES * (week ? 7 : 1);
  if (!Number.isInteger(minutes) || turn % minutes !== 0 || minutes > DAY_MINUTES / 2) {
    findings.say('step-form', { step: step.text ?? '', turn: week ? '7 days' : '24 h' }, step.path);
    return;
  }
  for (const key of ['on', 'off']) checkPin(device.at('now').at(key), minutes, step.text ?? '', findings);
}

function checkPin(time: RawPart, stepMinutes: number, step: string, findings: Findings): void {
  const minute = time.text === null ? null : parseClockTime(time.text.trim());
  if (minute === null || minute % stepMinutes === 0) return;
  const nearest = Math.min(DAY_MINUTES, Math.round(minute / stepMinutes) * stepMinutes);
  findings.say('not-on-a-pin', { time: time.text ?? '', step, nearest: clockTimeOf(nearest) }, time.path);
}

function checkWater(device: RawPart, findings: Findings): void {
  const shares = (device.at('lands').quantity('share') ?? 0) + (device.at('airborne').quantity('share') ?? 0);
  if (shares > 1 + 1e-9) {
    const at = device.at('airborne').stands ? 'airborne' : 'lands';
    findings.say('water-shares', { percent: String(Math.round(shares * 1000) / 10) }, device.at(at).path);
  }
  const tank = device.at('tank');
  const [holds, reserve] = [tank.at('holds'), tank.at('reserve')];
  if ((reserve.quantity('volume') ?? 0) >= (holds.quantity('volume') ?? Number.POSITIVE_INFINITY)) {
    findings.say('reserve-above-tank', { reserve: reserve.text ?? '', holds: holds.text ?? '' }, reserve.path);
  }
  for (const span of [device.at('on'), device.at('off')]) checkSpan(span, findings);
}

function checkSpan(span: RawPart, findings: Findings): void {
  const [from, to] = [span.at('from'), span.at('to')];
  const [low, high] = [from.quantity('time'), to.quantity('time')];
  if (low === null || high === null || low <= high) return;
  const values = { low: from.text ?? '', high: to.text ?? '', lowKey: 'from', highKey: 'to' };
  findings.say('lengths-out-of-order', values, from.path);
}
