/** A target's value in words with its unit. */
import { spanWords } from '../../basics/span-words.ts';

/** Returns `22 to 28 °C (72 to 82 °F)`, `70 to 95 %`, `1 h before lights off`, `2 to 4`. */
export function targetWords(value: unknown, unit: string, isShare: boolean): string {
  if (Array.isArray(value))
    return value.length === 2 && value.every((item) => typeof item === 'number')
      ? bandWords(value, unit, isShare)
      : listWords(value, unit, isShare);
  if (typeof value === 'number') return numberWords(value, unit, isShare);
  if (typeof value === 'object' && value !== null) return edgeWords(value);
  return String(value);
}

function bandWords([low, high]: readonly number[], unit: string, isShare: boolean): string {
  const [from, to] = [low ?? 0, high ?? 0];
  if (from === to) return numberWords(from, unit, isShare);
  if (unit === '°C') return `${from} to ${to} °C (${fahrenheit(from)} to ${fahrenheit(to)} °F)`;
  if (isShare) return `${percent(from)} to ${percent(to)} %`;
  if (unit === '1') return `${from} to ${to}`;
  if (unit === 'min') return `${spanWords(from)} to ${spanWords(to)}`;
  return `${from} to ${to} ${unit}`;
}

function listWords(values: readonly unknown[], unit: string, isShare: boolean): string {
  if (values.length === 0) return 'none';
  return values.map((value) => targetWords(value, unit, isShare)).join(', ');
}

function numberWords(value: number, unit: string, isShare: boolean): string {
  if (unit === '°C') return `${value} °C (${fahrenheit(value)} °F)`;
  if (unit === '°') return `${Math.abs(value)}° ${value < 0 ? 'south' : 'north'}`;
  if (isShare) return `${percent(value)} %`;
  if (unit === 'min') return spanWords(value);
  if (unit === 'd') return `${value} day${value === 1 ? '' : 's'}`;
  return unit === '1' ? `${value}` : `${value} ${unit}`;
}

const EDGES: Readonly<Record<string, string>> = {
  before_lights_on: 'before lights on',
  after_lights_on: 'after lights on',
  before_lights_off: 'before lights off',
  after_lights_off: 'after lights off',
};

function edgeWords(value: object): string {
  return Object.entries(value)
    .map(([edge, minutes]) =>
      minutes === 0
        ? `at ${(EDGES[edge] ?? edge).replace(/^(before|after) /, '')}`
        : `${spanWords(Number(minutes))} ${EDGES[edge] ?? edge}`,
    )
    .join(', ');
}

function fahrenheit(celsius: number): number {
  return Math.round(celsius * 1.8 + 32);
}

function percent(share: number): number {
  return Number((share * 100).toFixed(1));
}
