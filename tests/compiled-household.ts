/** Households compiled with the shipped profiles, as the program does it but without disk or clock. */
import { type Compiled, compile } from '../src/compile.ts';
import type { Plan } from '../src/plan/plan.ts';
import { PROFILE_IDS, profileText } from './shipped-profiles.ts';

export interface Asked {
  /** `home.yaml` where left out. */
  readonly file?: string;
  /** 2027-01-01 where left out. */
  readonly today?: string;
  readonly earlier?: Plan | null;
  /** Profile texts by what the file names them; they come before the shipped ones. */
  readonly own?: Readonly<Record<string, string>>;
  readonly fitted?: { readonly file: string; readonly text: string } | null;
}

const KEPT_AT_MOST = 24;
const kept = new Map<string, Compiled>();

/** Compiles a household text. */
export function compiledHousehold(
  text: string,
  { file = 'home.yaml', today = '2027-01-01', earlier = null, own = {}, fitted = null }: Asked = {},
): Compiled {
  return compile({
    file,
    text,
    profile: (id) => {
      const ownText = own[id];
      if (ownText !== undefined) return { file: id, text: ownText };
      return PROFILE_IDS.includes(id) ? { file: `profiles/${id}.yaml`, text: profileText(id) } : null;
    },
    profileIds: PROFILE_IDS,
    fitted,
    earlier,
    today: { date: today },
    version: '1.0.0',
  });
}

/** Compiles a household text without an earlier plan; what was compiled of late is not compiled again. */
export function compiledOnce(text: string, asked: Pick<Asked, 'file' | 'today'> = {}): Compiled {
  const key = JSON.stringify([asked.file, asked.today, text]);
  const compiled = kept.get(key) ?? compiledHousehold(text, asked);
  kept.delete(key);
  kept.set(key, compiled);
  for (const oldest of kept.keys()) if (kept.size > KEPT_AT_MOST) kept.delete(oldest);
  return compiled;
}

/** Returns the plan of a household that must have one; throws with everything that is said. */
export function planIn({ plan, diagnostics }: Compiled): Plan {
  if (!plan) throw new Error(diagnostics.map(({ code, because }) => `${code}: ${because}`).join('\n'));
  return plan;
}
