import { parseIsoDate } from '../basics/calendar-day.ts';
import { todayText } from '../emit/text/today.ts';
import { dayView } from '../plan/day-view.ts';
import { exitCodeOf, runHousehold, sayDiagnostics } from './household-run.ts';
import { type CommonOptions, UsageError } from './program.ts';
import { EXIT, showsUnicode, type World } from './world.ts';

export interface TodayOptions extends CommonOptions {
  readonly out: string;
  readonly on?: string;
  readonly days: string;
  readonly for?: string;
}

export async function run(
  args: readonly string[],
  options: TodayOptions,
  world: World,
  version: string,
): Promise<number> {
  throw new UsageError(
    `${args.join(' ')} ${options.days} ${version} ${world.columns} ${String([parseIsoDate, todayText, dayView, exitCodeOf, runHousehold, sayDiagnostics, EXIT, showsUnicode])}`,
  );
}
