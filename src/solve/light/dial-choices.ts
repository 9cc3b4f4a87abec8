/** What another dial, another evening or another limit would buy: the dial solved again with one thing changed. */
import { type EpochDay, epochDay } from '../../basics/calendar-day.ts';
import { Log } from '../../diagnostics/log.ts';
import type { PinDial } from '../../hardware/devices.ts';
import type { DialChoice, DialChoiceKind } from '../../plan/dial-choices.ts';
import type { DialLamp, DialPlan, DialSetting, Plan } from '../../plan/plan.ts';
import type { Care, CareEnclosure, Lamp } from '../../resolve/care.ts';
import { solveLighting } from '../lighting.ts';

const FINE_STEP_MINUTES = 15;

interface Change {
  readonly kind: DialChoiceKind;
  readonly lamp?: string;
  readonly care: Care;
}

/**
 * Returns the plan of a dial and what it would be with one thing otherwise, each solved from the day on which the plan's own was, with what
 * stood on the dial until then; empty where the dial has no setting. Lamps on `auto` stay where the plan has them.
 */
export function dialChoices(care: Care, plan: Plan, device: string): readonly DialChoice[] {
  const dial = plan.lighting.find((each) => each.device === device);
  const timer = care.devices.find(({ id }) => id === device);
  if (!dial || dial.settings.length === 0 || timer?.kind !== 'pin-dial') return [];
  const placed = withPlacedLamps(care, plan);
  const moment = momentOf(plan, dial, care.plan.from);
  return changesOf(placed, dial, timer).flatMap((change) => {
    const choice = choiceOf(change, dial, moment);
    return choice ? [choice] : [];
  });
}

function changesOf(care: Care, dial: DialPlan, timer: PinDial): readonly Change[] {
  const { plan } = care;
  const within = (kind: DialChoiceKind, changed: Partial<Care['plan']>): Change => ({
    kind,
    care: { ...care, plan: { ...plan, ...changed } },
  });
  const withTimer = (kind: DialChoiceKind, changed: Partial<PinDial>): Change => ({
    kind,
    care: { ...care, devices: care.devices.map((each) => (each === timer ? { ...timer, ...changed } : each)) },
  });
  return [
    within('as-planned', {}),
    within('one-more-setting', { settingsAtMost: dial.settings.length + 1, toleranceMinutes: null }),
    ...(plan.changeOn === null ? [] : [within('any-day', { changeOn: null })]),
    ...(plan.atLeastBetweenDays > 1 ? [within('any-spacing', { atLeastBetweenDays: 1 })] : []),
    ...(plan.jumpAtMostMinutes === null ? [] : [within('any-jump', { jumpAtMostMinutes: null })]),
    ...(hasHourLimits(care, dial) ? [{ kind: 'any-hour' as const, care: withoutHourLimits(care) }] : []),
    ...(timer.stepMinutes > FINE_STEP_MINUTES
      ? [withTimer('finer-pins', { stepMinutes: FINE_STEP_MINUTES, turnsInDays: 1 })]
      : []),
    ...(timer.stepMinutes > 1 ? [withTimer('to-the-minute', { stepMinutes: 1, turnsInDays: 1 })] : []),
    ...ownDials(care, dial, timer),
  ];
}

/** A dial of its own for each lamp that shares this one with lamps of other needs. */
function ownDials(care: Care, dial: DialPlan, timer: PinDial): readonly Change[] {
  const lamps = dial.lamps.filter(({ targetMinutes }) => targetMinutes.length > 0);
  const needs = new Set(lamps.map(({ targetMinutes }) => targetMinutes.join()));
  if (needs.size < 2) return [];
  const own = { ...timer, id: ownId(timer.id), ratingW: null, now: null };
  return lamps.map((lamp) => {
    const id = idOf(lamp);
    return {
      kind: 'own-dial' as const,
      lamp: id,
      care: {
        ...withLamps(care, (enclosure, each) =>
          `${enclosure.id}/${each.id}` === id ? { ...each, outlet: own.id } : each,
        ),
        devices: [...care.devices, own],
      },
    };
  });
}

function ownId(device: string): string {
  return `${device} (its own)`;
}

/** When a dial was solved, and a plan with what stood on the dials until then; a dial of its own is taken to have shown the same. */
interface Moment {
  readonly earlier: Plan | null;
  readonly today: EpochDay;
}

function momentOf(plan: Plan, dial: DialPlan, from: EpochDay): Moment {
  const past = dial.settings.findLast((setting) => setting.past);
  const stood = { ...dial, settings: [...beforePlan(plan, dial.device), ...dial.settings] };
  if (!past && stood.settings.length === dial.settings.length) return { earlier: null, today: from };
  const others = plan.lighting
    .filter((each) => each !== dial)
    .map((each) => ({ ...each, settings: [...beforePlan(plan, each.device), ...each.settings] }));
  const lighting = [...others, stood, { ...stood, device: ownId(dial.device) }].map((each) => ({
    ...each,
    settings: past ? each.settings : each.settings.filter((setting) => setting.from < plan.from),
  }));
  return { earlier: { ...plan, lighting }, today: past ? epochDay(past.to) + 1 : from };
}

/** Settings of a plan that had ended, the last of which stood on the dial when this one began. */
function beforePlan({ previous, from }: Plan, device: string): readonly DialSetting[] {
  const before = previous?.lighting.find((each) => each.device === device)?.settings ?? [];
  return before.filter((setting) => setting.from < from);
}

function choiceOf({ kind, lamp, care }: Change, dial: DialPlan, { earlier, today }: Moment): DialChoice | null {
  const { lighting } = solveLighting(care, earlier && { ...earlier, digests: {} }, today, new Log());
  const wanted = new Set(dial.lamps.filter(({ targetMinutes }) => targetMinutes.length > 0).map(idOf));
  const found = lighting.flatMap((each) =>
    each.lamps.filter((one) => wanted.has(idOf(one))).map((one) => ({ lamp: one, dial: each })),
  );
  const itself = lighting.find(({ device }) => device === dial.device) ?? found[0]?.dial;
  if (found.length < wanted.size || !itself) return null;
  const [days, insets] = [
    found.filter((each) => isDaylight(each.lamp)),
    found.filter((each) => !isDaylight(each.lamp)),
  ];
  const worst = (list: typeof found): number => Math.max(...list.map((each) => each.lamp.worstErrorMinutes));
  return {
    kind,
    lamp: lamp ?? '',
    stepMinutes: itself.stepMinutes,
    settings: itself.settings.length,
    day:
      days.length === 0
        ? null
        : { worstMinutes: worst(days), meanMinutes: Math.max(...days.map((each) => each.dial.meanErrorMinutes)) },
    insetWorstMinutes: insets.length === 0 ? null : worst(insets),
  };
}

function idOf({ enclosure, lamp }: Pick<DialLamp, 'enclosure' | 'lamp'>): string {
  return `${enclosure}/${lamp}`;
}

function isDaylight({ uses }: DialLamp): boolean {
  return uses.includes('daylight') || uses.includes('plants');
}

function withLamps(care: Care, change: (enclosure: CareEnclosure, lamp: Lamp) => Lamp): Care {
  return {
    ...care,
    enclosures: care.enclosures.map((enclosure) => ({
      ...enclosure,
      lamps: enclosure.lamps.map((lamp) => change(enclosure, lamp)),
    })),
  };
}

function withPlacedLamps(care: Care, { lighting }: Plan): Care {
  const outlets = new Map(lighting.flatMap(({ device, lamps }) => lamps.map((lamp) => [idOf(lamp), device] as const)));
  return withLamps(care, (enclosure, lamp) =>
    lamp.outlet === 'auto' ? { ...lamp, outlet: outlets.get(`${enclosure.id}/${lamp.id}`) ?? lamp.outlet } : lamp,
  );
}

function hasHourLimits({ enclosures }: Care, dial: DialPlan): boolean {
  const ids = new Set(dial.lamps.map(({ enclosure }) => enclosure));
  return enclosures.some(
    ({ id, targets: { day } }) => ids.has(id) && (day.noLightBeforeMinute !== null || day.noLightAfterMinute !== null),
  );
}

function withoutHourLimits(care: Care): Care {
  return {
    ...care,
    enclosures: care.enclosures.map((enclosure) => ({
      ...enclosure,
      targets: {
        ...enclosure.targets,
        day: { ...enclosure.targets.day, noLightBeforeMinute: null, noLightAfterMinute: null },
      },
    })),
  };
}
