/** What holds of identities through a chain of re-plans of generated households, whatever is changed. */
import { describe, expect, it } from 'vitest';
import { epochDay, isoDateOf } from '../../src/basics/calendar-day.ts';
import { emitIcs } from '../../src/emit/ics/ics.ts';
import type { Plan, PlanEvent } from '../../src/plan/plan.ts';
import { generatedParts, withEvents } from '../generated/calendar-plan.ts';
import { loopOverDays, ownList } from '../generated/own-list.ts';
import { Choices } from '../generated/random.ts';
import { tries } from '../tries.ts';

/** Changes something from a date on, as an edit of the household file would. */
function edited(plan: Plan, today: string, choices: Choices): Plan {
  const hour = String(choices.between(4, 22)).padStart(2, '0');
  const edits: readonly ((parts: Plan) => Plan)[] = [
    (parts) => ({
      ...parts,
      feeding: parts.feeding.map((feed) =>
        feed.date >= today ? { ...feed, time: `${hour}:${feed.time.slice(3)}` } : feed,
      ),
    }),
    (parts) => ({
      ...parts,
      feeding: parts.feeding.map((feed) => (feed.date >= today ? { ...feed, count: 7 } : feed)),
    }),
    (parts) => ({ ...parts, chores: parts.chores.slice(1) }),
    (parts) => ({
      ...parts,
      chores: parts.chores.map((chore, index) =>
        index === 0
          ? {
              ...chore,
              dates: chore.dates.map((date) =>
                date >= today ? isoDateOf(Math.min(epochDay(parts.to), epochDay(date) + 1)) : date,
              ),
            }
          : chore,
      ),
    }),
    (parts) => ({
      ...parts,
      chores: [
        ...parts.chores,
        {
          id: `new-${today}`,
          title: 'A new chore',
          kind: 'chore',
          who: 'keeper',
          minutes: 5,
          enclosure: null,
          dates: [today],
          moved: [],
        },
      ],
    }),
    (parts) => ({ ...parts, stock: [] }),
    (parts) => ({ ...parts, people: parts.people.map((person) => ({ ...person, reminderMinutes: 45 })) }),
    (parts) => parts,
  ];
  const { events: _events, ...parts } = choices.oneOf(edits)(plan);
  return { ...parts, events: [], revision: plan.revision + 1 };
}

function chainOf(seed: number): readonly Plan[] {
  const choices = new Choices(seed + 500);
  const parts = generatedParts(seed);
  const plans = [withEvents(parts, null)];
  let day = epochDay(parts.from);
  for (let step = 0; step < 5; step += 1) {
    day += choices.between(0, 60);
    const before = plans[plans.length - 1] ?? parts;
    plans.push(withEvents(edited(before, isoDateOf(day), choices), before, isoDateOf(day)));
  }
  return plans;
}

function contentOf({ sequence: _sequence, stamp: _stamp, ...content }: PlanEvent): string {
  return JSON.stringify(content);
}

const chains = Array.from({ length: tries(5, 40) }, (_, seed) => ({ seed, plans: chainOf(seed) }));

describe.each(chains)('re-plans of household $seed', ({ plans }) => {
  const steps = plans.slice(1).map((after, index) => ({ before: plans[index] ?? after, after }));

  it('have every identity once, of one task and one person for good', () => {
    const owner = new Map<string, string>();
    for (const { events } of plans) {
      expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
      for (const { uid, task, slot, for: person } of events) {
        const own = JSON.stringify([task, slot, person]);
        expect(owner.get(uid) ?? own).toBe(own);
        owner.set(uid, own);
      }
    }
  });

  it('raise the sequence of what changed by one, and of nothing else', () => {
    for (const { before, after } of steps) {
      const known = new Map(before.events.map((event) => [event.uid, event]));
      for (const event of after.events) {
        const old = known.get(event.uid);
        if (!old) expect(event.sequence).toBe(0);
        else if (contentOf(old) === contentOf(event)) expect(event).toEqual(old);
        else expect(event.sequence).toBe(old.sequence + 1);
        if (old) expect(event.stamp >= old.stamp).toBe(true);
      }
    }
  });

  it('lose no identity but what is cancelled, took place, or was cancelled before', () => {
    for (const { before, after } of steps) {
      const kept = new Set(after.events.map(({ uid }) => uid));
      const lost = before.events.filter(({ uid }) => !kept.has(uid));
      for (const event of lost) {
        const last = loopOverDays(event).at(-1)?.slice(0, 10) ?? '';
        expect(event.status === 'CANCELLED' || last < after.made, `${event.task} until ${last}, ${after.made}`).toBe(
          true,
        );
      }
      const cancelled = after.events.filter(({ status }) => status === 'CANCELLED');
      const subscribed = after.people.map(({ id }) => emitIcs(after, id, 'subscribe')).join('');
      for (const { uid } of cancelled) expect(subscribed).not.toContain(uid);
    }
  });

  it('leave the past as it was', () => {
    for (const { before, after } of steps) {
      const past = (plan: Plan): readonly string[] =>
        ownList(plan.events.filter(({ kind }) => kind === 'feed'))
          .filter(({ start }) => start < after.made)
          .map(({ start, title }) => `${start} ${title}`)
          .sort();
      expect(past(after)).toEqual(past(before));
    }
  });

  it('are the same bytes where nothing changes', () => {
    for (const plan of plans.slice(0, 2)) {
      const again = withEvents({ ...plan, revision: plan.revision + 1 }, plan, plan.made);
      expect(JSON.stringify(again.events)).toBe(JSON.stringify(plan.events));
      for (const { id } of plan.people) expect(emitIcs(again, id, 'import')).toBe(emitIcs(plan, id, 'import'));
    }
  });
});

it('tries chains in which events change, vanish and come', () => {
  const events = chains.flatMap(({ plans }) => plans.slice(1).flatMap((plan) => plan.events));
  expect(events.filter(({ status }) => status === 'CANCELLED').length).toBeGreaterThan(10);
  expect(events.filter(({ sequence, status }) => sequence > 0 && status === 'CONFIRMED').length).toBeGreaterThan(10);
});
