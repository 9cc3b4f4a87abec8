/** The air model of an enclosure: what the file measured, our estimates for the rest, and what its nozzles spray. */
import type { HandSprayer, MistPump } from '../../hardware/devices.ts';
import type { AirModel } from '../../plan/plan.ts';
import type { CareEnclosure } from '../../resolve/care.ts';
import type { Spray, WetEnclosure } from '../../science/enclosure-day.ts';
import { wetEnclosureOf } from '../../science/enclosure-defaults.ts';

export interface EnclosureAir {
  readonly body: WetEnclosure;
  readonly spray: Spray;
  readonly model: AirModel;
  /** Numbers that were taken and not given, by field of the model. */
  readonly taken: readonly { readonly field: keyof AirModel; readonly value: number; readonly source: string }[];
}

/** Share of a mist that lands on leaves where the file does not say. */
const LANDS_SHARE = 0.6;
/** A pump sprayer held by hand; ours, 60 mL a minute. */
export const HAND_FLOW_G_PER_HOUR = 3600;

const NO_SPRAY: Spray = { flowGPerHour: 0, landsShare: 0, airborneShare: 0, lagSeconds: 0, afterDripG: 0 };

/** Returns the air of an enclosure behind a pump of which `nozzlesInAll` nozzles are in use. */
export function airOfPumped(enclosure: CareEnclosure, pump: MistPump, nozzlesInAll: number): EnclosureAir {
  const share = enclosure.nozzles.count / Math.max(1, nozzlesInAll);
  const spray: Spray = {
    flowGPerHour: pump.flowGPerHour * enclosure.nozzles.count,
    landsShare: pump.landsShare,
    airborneShare: pump.airborneShare,
    lagSeconds: pump.lagSeconds,
    afterDripG: pump.afterDripG * share,
  };
  const isDefault = pump.kind === 'mist-pump' && pump.landsShare === LANDS_SHARE;
  return airOf(enclosure, spray, isDefault ? [landsTaken] : []);
}

/** Returns the air of an enclosure misted by hand; without a sprayer in the file its flow is taken. */
export function airOfHand(enclosure: CareEnclosure, sprayer: HandSprayer | null): EnclosureAir {
  const spray: Spray = {
    ...NO_SPRAY,
    flowGPerHour: sprayer?.flowGPerHour ?? HAND_FLOW_G_PER_HOUR,
    landsShare: LANDS_SHARE,
  };
  const flow = { field: 'flowGPerHour', value: spray.flowGPerHour, source: HAND_FLOW_SOURCE } as const;
  return airOf(enclosure, spray, sprayer ? [landsTaken] : [landsTaken, flow]);
}

/** Returns the air of an enclosure that is not misted. */
export function airUnmisted(enclosure: CareEnclosure): EnclosureAir {
  return airOf(enclosure, NO_SPRAY, []);
}

const HAND_FLOW_SOURCE = 'our estimate: a pump sprayer gives 60 mL a minute; measure yours with a cup';
const landsTaken = {
  field: 'landsShare',
  value: LANDS_SHARE,
  source: 'our estimate: 60 % of a mist lands on leaves and walls; to be calibrated with a gauge log',
} as const;

function airOf(enclosure: CareEnclosure, spray: Spray, more: EnclosureAir['taken']): EnclosureAir {
  const { sizeM, openShare, planting, floor, air } = enclosure;
  const { enclosure: body, assumptions } = wetEnclosureOf(
    { widthM: sizeM.width, depthM: sizeM.depth, heightM: sizeM.height, openShare, planting, floor },
    air,
  );
  const model = modelOf(body, spray);
  return { body, spray, model, taken: [...assumptions, ...fittedTaken(enclosure, model), ...more] };
}

/** What was fitted to a gauge log is named with its log. */
function fittedTaken({ fittedAir }: CareEnclosure, model: AirModel): EnclosureAir['taken'] {
  return MODEL_FIELDS.flatMap(([key, field]) => {
    const source = fittedAir?.sources[key];
    return source === undefined ? [] : [{ field, value: model[field], source }];
  });
}

const MODEL_FIELDS = [
  ['airChangesPerHour', 'airChangesPerHour'],
  ['transferMPerHour', 'transferMPerHour'],
  ['baseEvaporationGPerHour', 'baselineGPerHour'],
] as const;

function modelOf(body: WetEnclosure, spray: Spray): AirModel {
  return {
    volumeM3: rounded(body.volumeM3),
    airChangesPerHour: rounded(body.airChangesPerHour),
    wettableAreaM2: rounded(body.wettableAreaM2),
    filmCapacityG: rounded(body.filmCapacityG),
    airborneShare: spray.airborneShare,
    landsShare: spray.landsShare,
    warmUpMinutes: body.warmUpMinutes,
    transferMPerHour: body.transferMPerHour,
    baselineGPerHour: rounded(body.baseEvaporationGPerHour),
    flowGPerHour: rounded(spray.flowGPerHour),
    ...(spray.lagSeconds > 0 ? { lagSeconds: spray.lagSeconds } : {}),
    ...(spray.afterDripG > 0 ? { afterDripMl: rounded(spray.afterDripG) } : {}),
  };
}

/** To six digits, as the plan writes it. */
function rounded(value: number): number {
  return Number(value.toPrecision(6));
}
