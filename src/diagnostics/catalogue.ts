/** Every message of the tool, by code. One file an area; a code is written in words and never reused. */
import { agreement } from './catalogue/agreement.ts';
import { chores } from './catalogue/chores.ts';
import { clocks } from './catalogue/clocks.ts';
import { delivery } from './catalogue/delivery.ts';
import { feeding } from './catalogue/feeding.ts';
import { fitting } from './catalogue/fitting.ts';
import { lighting } from './catalogue/lighting.ts';
import { paper } from './catalogue/paper.ts';
import { reading } from './catalogue/reading.ts';
import { resolving } from './catalogue/resolving.ts';
import { water } from './catalogue/water.ts';
import type { Wording } from './diagnostic.ts';

export const catalogue = {
  ...reading,
  ...agreement,
  ...resolving,
  ...lighting,
  ...clocks,
  ...water,
  ...feeding,
  ...chores,
  ...delivery,
  ...fitting,
  ...paper,
};

export type Code = keyof typeof catalogue;
export type ValuesOf<C extends Code> = (typeof catalogue)[C] extends Wording<infer V> ? V : never;
