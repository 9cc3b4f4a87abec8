/** The words of the calendar that every folder shares. */
export type IsoDate = string;
export type ClockTime = string;
export type Weekday = 'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun';
