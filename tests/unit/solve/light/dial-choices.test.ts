import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile } from '../../../../src/compile.ts';
import { why } from '../../../../src/emit/text/why.ts';
import type { DialChoice } from '../../../../src/plan/dial-choices.ts';
import type { Plan } from '../../../../src/plan/plan.ts';
import { dialChoices } from '../../../../src/solve/light/dial-choices.ts';
import { compiled, HOUSEHOLDS, type Household } from '../../../examples/every-household.ts';
import { PROFILE_IDS, profileText } from '../../../shipped-profiles.ts';

function household(name: string): Household {
  const found = HOUSEHOLDS.find((each) => each.name === name);
  if (!found) throw new Error(`no household ${name}`);
  return found;
}

function choicesOf(name: string, device: string): readonly DialChoice[] {
  const { care, plan } = compiled(household(name));
  if (!care || !plan) throw new Error(`${name} has no plan`);
  return dialChoices(care, plan, device);
}

function of(choices: readonly DialChoice[], kind: DialChoice['kind'], lamp = ''): DialChoice {
  const found = choices.find((each) => each.kind === kind && each.lamp === lamp);
  if (!found) throw new Error(`no choice ${kind} ${lamp}`);
  return found;
}

describe('what else a dial could be', () => {
  const choices = choicesOf('reading-room', 'wall-dial');
  const planned = of(choices, 'as-planned');

  it('begins with what is planned', () => {
    const dial = compiled(household('reading-room')).plan?.lighting.find(({ device }) => device === 'wall-dial');
    expect(choices[0]).toBe(planned);
    expect(planned.day).toEqual({ worstMinutes: dial?.worstErrorMinutes, meanMinutes: dial?.meanErrorMinutes });
    expect(planned.settings).toBe(dial?.settings.length);
  });

  it('has one more setting as the trade-off counts it', () => {
    const dial = compiled(household('reading-room')).plan?.lighting.find(({ device }) => device === 'wall-dial');
    const row = dial?.tradeoff.find(({ settings }) => settings === planned.settings + 1);
    expect(of(choices, 'one-more-setting').day).toEqual({
      worstMinutes: row?.worstErrorMinutes,
      meanMinutes: row?.meanErrorMinutes,
    });
  });

  it.each(['one-more-setting', 'any-day', 'any-spacing', 'to-the-minute'] as const)('%s is never worse', (kind) => {
    expect(of(choices, kind).day?.worstMinutes).toBeLessThanOrEqual(planned.day?.worstMinutes ?? 0);
  });

  it('gives the UV lamp its hours on a dial of its own, and leaves the day as it is', () => {
    const own = of(choices, 'own-dial', 'fern/uv');
    expect(planned.insetWorstMinutes).toBeGreaterThan(90);
    expect(own.insetWorstMinutes).toBeLessThan(30);
    expect(own.day).toEqual(planned.day);
  });

  it('asks for finer pins where they are coarser than 15 min, and only there', () => {
    expect(choices.some(({ kind }) => kind === 'finer-pins')).toBe(false);
    const coarse = choicesOf('phoenix', 'dial');
    expect(of(coarse, 'finer-pins').day?.worstMinutes).toBeLessThanOrEqual(
      of(coarse, 'as-planned').day?.worstMinutes ?? 0,
    );
  });

  it('parts lamps of different needs, which none shares worse than both', () => {
    const shared = choicesOf('six-lamps-sydney', 'upper');
    const alone = shared.filter(({ kind }) => kind === 'own-dial');
    expect(alone.map(({ lamp }) => lamp)).toEqual(['dune/bar', 'bough/bar']);
    for (const each of alone)
      expect(each.day?.worstMinutes).toBeLessThan(of(shared, 'as-planned').day?.worstMinutes ?? 0);
  });

  it('lifts a hard jump', () => {
    const choices = choicesOf('kathmandu', 'dial');
    expect(of(choices, 'any-jump').day?.worstMinutes).toBeLessThanOrEqual(
      of(choices, 'as-planned').day?.worstMinutes ?? 0,
    );
  });

  it('has nothing to say of a timer that is no pin dial, or that is not there', () => {
    expect(choicesOf('reading-room', 'mist-timer')).toEqual([]);
    expect(choicesOf('reading-room', 'nowhere')).toEqual([]);
  });
});

describe('why, asked of a dial', () => {
  const { plan, care } = compiled(household('reading-room'));
  const ask = (what: string | null): string => {
    if (!plan || !care) throw new Error('no plan');
    const answer = why(plan, what, (device) => dialChoices(care, plan, device));
    return answer.found ? answer.text : `unknown: ${answer.askable.join(' ')}`;
  };

  it('says what places the window, the lamp that binds each setting, and what another would buy', () => {
    const text = ask('wall-dial');
    expect(text).toContain('placed by fern/day.midday');
    expect(text.match(/at worst .* than fern\/(sun|grow) needs on \d{4}-\d\d-\d\d/g)?.length).toBe(
      plan?.lighting[0]?.settings.length,
    );
    expect(text).toMatch(/^> +8 /m);
    expect(text).toMatch(/a dial of its own for fern\/uv +8 /);
    expect(text).toMatch(/basking and UV hours: .* nearer with a dial of its own for fern\/uv/);
  });

  it('answers for a lamp, on a timer or left out', () => {
    expect(ask('fern/uv')).toContain('hangs on wall-dial');
    if (!plan) throw new Error('no plan');
    const left = { ...plan, notPlanned: [{ lamp: 'fern/spare', device: null, why: 'no outlet is free' }] };
    expect(why(left, 'fern/spare')).toEqual({ found: true, text: 'fern/spare is not planned: no outlet is free\n' });
  });

  it('says of a target who said it, with its line', () => {
    expect(ask('fern/humidity.floor')).toMatch(/said by your file: reading-room\.yaml:\d+/);
    expect(ask('fern/photoperiod')).toContain('from the profile: profiles/panther-chameleon.yaml');
  });

  it('lists what can be asked', () => {
    expect(ask(null)).toMatch(/^ {2}fern\/uv +this lamp$/m);
    expect(ask('fern/nothing')).toMatch(/^unknown: .*wall-dial/);
  });
});

describe('what else a dial could be, after the household was planned anew', () => {
  const text = readFileSync(new URL('../../../golden/replanned.yaml', import.meta.url), 'utf8');
  const planOf = (said: string, date: string, earlier: Plan | null) => {
    const { care, plan } = compile({
      file: 'home.yaml',
      text: said,
      profile: (id) => ({ file: `profiles/${id}.yaml`, text: profileText(id) }),
      profileIds: PROFILE_IDS,
      earlier,
      today: { date },
      version: '1.0.0',
    });
    if (!care || !plan) throw new Error('no plan');
    return { care, plan };
  };
  const first = planOf(text, '2027-01-01', null).plan;
  const noon = text.replace('midday: "13:00"', 'midday: "12:00"');
  const { care, plan } = planOf(noon, '2027-06-20', first);
  const dial = plan.lighting.find(({ device }) => device === 'upper');
  const choices = dialChoices(care, plan, 'upper');

  it('begins with what is planned, what stood until that day in it', () => {
    expect(dial?.settings.some(({ past }) => past)).toBe(true);
    expect(of(choices, 'as-planned')).toMatchObject({
      settings: dial?.settings.length,
      day: { worstMinutes: dial?.worstErrorMinutes, meanMinutes: dial?.meanErrorMinutes },
    });
  });

  it('leaves what stood in every other row: another setting, another dial changes nothing of it', () => {
    const soFar = Math.max(...(dial?.settings ?? []).filter(({ past }) => past).map((each) => each.worstErrorMinutes));
    expect(soFar).toBeGreaterThan(0);
    for (const choice of choices) expect(choice.day?.worstMinutes).toBeGreaterThanOrEqual(soFar);
  });

  it('is the same for a plan of a later day that copies the dial', () => {
    const { plan: later } = planOf(noon.replace('every: 2 weeks', 'every: 1 week'), '2027-08-01', plan);
    expect(later.revision).toBe(plan.revision + 1);
    expect(dialChoices(care, later, 'upper')).toEqual(choices);
  });

  it('knows what stood on the dial when the plan before had ended', () => {
    const next = planOf(text.replaceAll('2027', '2028'), '2028-01-01', first);
    const own = next.plan.lighting.find(({ device }) => device === 'upper');
    expect(of(dialChoices(next.care, next.plan, 'upper'), 'as-planned').day).toEqual({
      worstMinutes: own?.worstErrorMinutes,
      meanMinutes: own?.meanErrorMinutes,
    });
  });
});
