/** What a day of an enclosure's air and water is asked with: the enclosure, its spray, the air around it, the runs of its pump. */

/** What an enclosure is to its air and water. */
export interface WetEnclosure {
  readonly volumeM3: number;
  readonly airChangesPerHour: number;
  readonly filmCapacityG: number;
  readonly wettableAreaM2: number;
  readonly transferMPerHour: number;
  /** Evaporation from plants, soil and dish into dry air, g/h. */
  readonly baseEvaporationGPerHour: number;
  readonly warmUpMinutes: number;
}

/** What the pump sends through the nozzles of one enclosure. */
export interface Spray {
  readonly flowGPerHour: number;
  readonly landsShare: number;
  readonly airborneShare: number;
  /** At the start of a run, nothing sprayed. */
  readonly lagSeconds: number;
  /** After a run: tank water and run-off. */
  readonly afterDripG: number;
}

/** The air around an enclosure and its heating, on any one clock; minutes 0 to 1440. */
export interface AirDay {
  readonly roomVapourGPerM3: number;
  /** Forcing of the air temperature, each from its minute on around the day; at least one. */
  readonly temperatureSteps: readonly { readonly fromMinute: number; readonly celsius: number }[];
  /** The daylight window: from `onMinute` (0 to 1439) for so many minutes (0: never, 1440: always). */
  readonly lit: { readonly onMinute: number; readonly minutes: number };
}

/** One run of a pump; `startMinute` in [0, 1440), it may pass midnight. */
export interface Run {
  readonly startMinute: number;
  readonly seconds: number;
}
