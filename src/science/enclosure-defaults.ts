/** What an enclosure's air and water are taken to be from its size, mesh and planting, where nothing was measured. Our own estimates, to be calibrated. */
import type { WetEnclosure } from './enclosure-day.ts';

export interface EnclosureShape {
  readonly widthM: number;
  readonly depthM: number;
  readonly heightM: number;
  /** Bare-mesh share of walls and top, 0 to 1. */
  readonly openShare: number;
  readonly planting: 'none' | 'light' | 'medium' | 'dense';
  readonly floor: 'dry' | 'damp-below';
}

/** Measured or fitted values that stand instead of the estimates. */
export interface MeasuredAir {
  readonly airChangesPerHour: number;
  readonly wettableAreaM2: number;
  readonly filmGPerM2: number;
  readonly transferMPerHour: number;
  readonly baseEvaporationGPerHour: number;
  readonly warmUpMinutes: number;
}

/** A number that was taken and not given, with where it comes from. */
export interface EnclosureAssumption {
  readonly field:
    | 'airChangesPerHour'
    | 'wettableAreaM2'
    | 'filmCapacityG'
    | 'transferMPerHour'
    | 'baselineGPerHour'
    | 'warmUpMinutes';
  readonly value: number;
  readonly source: string;
}

/** Air changes an hour of a closed enclosure. */
export const CLOSED_CHANGES_PER_HOUR = 0.3;
const MESH_CHANGES_PER_HOUR = 26;
const MESH_EXPONENT = 1.1;
const WALL_SHARE = 2 / 3;
const PLANTING_FACTOR = { none: 0.3, light: 0.6, medium: 1, dense: 1.6 } as const;
const FILM_G_PER_M2 = 120;
const TRANSFER_M_PER_HOUR = 5;
const BASE_G_PER_HOUR_M2 = 25;
const DAMP_FLOOR_FACTOR = 4;
const WARM_UP_MINUTES = 20;

/** Returns the air changes an hour of an enclosure with a bare-mesh share of walls and top, 0 to 1. Source: our estimate. */
export function airChangesOfOpenShare(openShare: number): number {
  return CLOSED_CHANGES_PER_HOUR + MESH_CHANGES_PER_HOUR * openShare ** MESH_EXPONENT;
}

/** Returns the bare-mesh share with which an enclosure has so many air changes an hour, 0 where even a closed one has more, above 1 where all mesh has fewer. */
export function openShareOfAirChanges(airChangesPerHour: number): number {
  const ofMesh = Math.max(0, airChangesPerHour - CLOSED_CHANGES_PER_HOUR);
  return (ofMesh / MESH_CHANGES_PER_HOUR) ** (1 / MESH_EXPONENT);
}

/** Returns the enclosure as the air model takes it, and each number that was assumed rather than given. */
export function wetEnclosureOf(
  shape: EnclosureShape,
  measured: Partial<MeasuredAir> = {},
): { readonly enclosure: WetEnclosure; readonly assumptions: readonly EnclosureAssumption[] } {
  const assumptions: EnclosureAssumption[] = [];
  const taken = (field: EnclosureAssumption['field'], given: number | undefined, value: number, source: string) => {
    if (given !== undefined) return given;
    assumptions.push({ field, value, source });
    return value;
  };
  const { widthM, depthM, heightM, planting } = shape;
  const factor = PLANTING_FACTOR[planting];
  const walls = 2 * (widthM + depthM) * heightM;
  const damp = shape.floor === 'damp-below' ? DAMP_FLOOR_FACTOR : 1;
  const area = taken('wettableAreaM2', measured.wettableAreaM2, WALL_SHARE * walls * factor, AREA_SOURCE);
  const given = measured.filmGPerM2 === undefined ? undefined : measured.filmGPerM2 * area;
  const enclosure: WetEnclosure = {
    volumeM3: widthM * depthM * heightM,
    airChangesPerHour: taken(
      'airChangesPerHour',
      measured.airChangesPerHour,
      airChangesOfOpenShare(shape.openShare),
      CHANGES_SOURCE,
    ),
    wettableAreaM2: area,
    filmCapacityG: taken('filmCapacityG', given, FILM_G_PER_M2 * area, FILM_SOURCE),
    transferMPerHour: taken('transferMPerHour', measured.transferMPerHour, TRANSFER_M_PER_HOUR, TRANSFER_SOURCE),
    baseEvaporationGPerHour: taken(
      'baselineGPerHour',
      measured.baseEvaporationGPerHour,
      BASE_G_PER_HOUR_M2 * widthM * depthM * factor * damp,
      BASE_SOURCE,
    ),
    warmUpMinutes: taken('warmUpMinutes', measured.warmUpMinutes, WARM_UP_MINUTES, WARM_UP_SOURCE),
  };
  return { enclosure, assumptions };
}

const CHANGES_SOURCE =
  'our estimate: 0.3 + 26 x open^1.1 air changes an hour, open = bare-mesh share of walls and top; to be calibrated with a gauge log';
const AREA_SOURCE = "our estimate: 2/3 of the four walls' area x planting (none 0.3, light 0.6, medium 1, dense 1.6)";
const FILM_SOURCE = 'our estimate: leaves and mesh hold 120 g of water a square metre';
const TRANSFER_SOURCE =
  'our estimate: a wet surface that cools itself; convection 3 W/m²K (9 m/h by the Lewis relation) and radiation 5.5 W/m²K settle near 57 g/m²h at 25 °C and 50 %';
const BASE_SOURCE =
  'our estimate: 25 g an hour from each square metre of floor x planting, x 4 over a damp floor; plants, soil and dish';
const WARM_UP_SOURCE = 'our estimate: the air follows the lamps with a lag of 20 min';
