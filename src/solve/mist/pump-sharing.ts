/** How enclosures are shared out to pumps, as numbers alone: a search that tries what is best alone first, under a bound of that. */

/** What an enclosure would cost with a pump to itself. */
export interface PumpOption {
  readonly pump: number;
  readonly cost: number;
  readonly waterG: number;
}

export interface PumpRules {
  /** Whether a pump may take these enclosures together. */
  readonly fits: (pump: number, members: readonly number[]) => boolean;
  /** What every enclosure of a pump costs when these share it, no less than for any of them alone; infinite where it cannot run. */
  readonly costOf: (pump: number, members: readonly number[]) => number;
  /** Whether two enclosures ask for the same. */
  readonly isAlike: (one: number, other: number) => boolean;
}

/** Fewest without a pump, then least worst cost, then least sum over the enclosures. */
export interface PumpShare {
  readonly without: number;
  readonly worst: number;
  readonly sum: number;
}

export interface BestSharing {
  /** A pump for each enclosure; −1 where none takes it. */
  readonly pumpOf: readonly number[];
  readonly value: PumpShare;
  /** What no sharing is under. */
  readonly atLeast: PumpShare;
  readonly isProven: boolean;
}

/** Sets of enclosures tried on a pump, and partial sharings looked at, before the best found is good enough. */
const MOST_TRIED = 60;
const MOST_NODES = 20_000;
const NO_PUMP = -1;
const ROUNDING = 1e-9;

/** Shares enclosures out to pumps. */
export class PumpSharing {
  readonly #pumpOf: number[] = [];
  readonly #costs = new Map<string, number>();
  readonly #atLeast: PumpShare;
  #nodes = 0;
  #best: { readonly pumpOf: readonly number[]; readonly value: PumpShare } | null = null;

  constructor(
    readonly options: readonly (readonly PumpOption[])[],
    readonly rules: PumpRules,
  ) {
    this.#atLeast = this.#bound();
  }

  /** Returns the best sharing, of equally good ones the first found: pumps that are good alone come first, then who is alike, then water. */
  best(): BestSharing {
    this.#share(0);
    const isWhole = !this.#isSpent() || this.#isMet();
    if (!isWhole) this.#improve();
    const { pumpOf, value } = this.#best ?? {
      pumpOf: this.options.map(() => NO_PUMP),
      value: { without: this.options.length, worst: 0, sum: 0 },
    };
    const isProven = isWhole || this.#isMet();
    return { pumpOf, value, atLeast: isProven ? value : this.#atLeast, isProven };
  }

  #isSpent(): boolean {
    return this.#costs.size >= MOST_TRIED || this.#nodes >= MOST_NODES;
  }

  #isMet(): boolean {
    return this.#best !== null && compareShares(this.#best.value, this.#atLeast) <= 0;
  }

  #share(enclosure: number): void {
    if (this.#isMet() || (this.#best && this.#isSpent())) return;
    if (enclosure === this.options.length) {
      this.#complete([...this.#pumpOf]);
      return;
    }
    for (const pump of this.#inOrder(enclosure)) {
      this.#nodes++;
      this.#pumpOf.push(pump);
      if (!this.#best || compareShares(this.#bound(), this.#best.value) < 0) this.#share(enclosure + 1);
      this.#pumpOf.pop();
    }
  }

  /** The pumps that take an enclosure beside those before it, and none. */
  #inOrder(enclosure: number): readonly number[] {
    const rank = ({ pump, cost, waterG }: PumpOption) => {
      const members = this.#membersOf(pump, this.#pumpOf);
      const likeness = members.length === 0 ? 1 : members.every((each) => this.rules.isAlike(each, enclosure)) ? 0 : 2;
      return { pump, key: [cost, likeness, waterG] as const };
    };
    const fitting = (this.options[enclosure] ?? []).filter(({ pump }) =>
      this.rules.fits(pump, [...this.#membersOf(pump, this.#pumpOf), enclosure]),
    );
    return [
      ...fitting
        .map(rank)
        .sort((a, b) => compareKeys(a.key, b.key) || a.pump - b.pump)
        .map(({ pump }) => pump),
      NO_PUMP,
    ];
  }

  #complete(pumpOf: readonly number[]): void {
    const value = this.#valueOf(pumpOf);
    if (!this.#best || compareShares(value, this.#best.value) < 0) this.#best = { pumpOf, value };
  }

  /** Single enclosures go to another pump, or change places, while that helps. */
  #improve(): void {
    let most = this.#costs.size + MOST_TRIED;
    for (let isBetter = true; isBetter && !this.#isMet() && this.#costs.size < most; ) {
      isBetter = false;
      for (const changed of this.#neighbours(this.#best?.pumpOf ?? [])) {
        if (this.#costs.size >= most) break;
        const before = this.#best?.value;
        this.#complete(changed);
        if (before === this.#best?.value) continue;
        isBetter = true;
        most = Math.max(most, this.#costs.size + 1);
        break;
      }
    }
  }

  *#neighbours(pumpOf: readonly number[]): Generator<readonly number[]> {
    const worstFirst = [...pumpOf.keys()].sort((a, b) => this.#costFor(pumpOf, b) - this.#costFor(pumpOf, a) || a - b);
    for (const one of worstFirst) {
      for (const { pump } of this.options[one] ?? [])
        if (pump !== pumpOf[one] && this.rules.fits(pump, [...this.#membersOf(pump, pumpOf), one]))
          yield pumpOf.with(one, pump);
      for (const other of pumpOf.keys()) {
        const [a, b] = [pumpOf[one] ?? NO_PUMP, pumpOf[other] ?? NO_PUMP];
        if (a === b || this.rules.isAlike(one, other)) continue;
        const changed = pumpOf.with(one, b).with(other, a);
        if (this.#isAllowed(one, b) && this.#isAllowed(other, a) && [a, b].every((pump) => this.#fitsAt(changed, pump)))
          yield changed;
      }
    }
  }

  #isAllowed(enclosure: number, pump: number): boolean {
    return pump === NO_PUMP || (this.options[enclosure] ?? []).some((option) => option.pump === pump);
  }

  #fitsAt(pumpOf: readonly number[], pump: number): boolean {
    return pump === NO_PUMP || this.rules.fits(pump, this.#membersOf(pump, pumpOf));
  }

  #membersOf(pump: number, pumpOf: readonly number[]): readonly number[] {
    return pumpOf.flatMap((at, enclosure) => (at === pump ? [enclosure] : []));
  }

  #costFor(pumpOf: readonly number[], enclosure: number): number {
    const pump = pumpOf[enclosure] ?? NO_PUMP;
    if (pump === NO_PUMP) return 0;
    const members = this.#membersOf(pump, pumpOf);
    const key = `${pump} ${members.join(' ')}`;
    const known = this.#costs.get(key) ?? this.rules.costOf(pump, members);
    this.#costs.set(key, known);
    return known;
  }

  #valueOf(pumpOf: readonly number[]): PumpShare {
    const costs = pumpOf.map((_, enclosure) => this.#costFor(pumpOf, enclosure));
    const served = costs.filter((cost, enclosure) => pumpOf[enclosure] !== NO_PUMP && Number.isFinite(cost));
    return sharesOf(served, pumpOf.length - served.length);
  }

  /** Each enclosure with the pump that it has or, where that is open, the one that is best for it alone. */
  #bound(): PumpShare {
    let without = 0;
    const costs = this.options.map((options, enclosure) => {
      const at = this.#pumpOf[enclosure];
      if (at === NO_PUMP || options.length === 0) {
        without++;
        return 0;
      }
      return Math.min(...options.filter(({ pump }) => at === undefined || pump === at).map(({ cost }) => cost));
    });
    return sharesOf(costs, without);
  }
}

function sharesOf(costs: readonly number[], without: number): PumpShare {
  return { without, worst: Math.max(0, ...costs), sum: costs.reduce((sum, cost) => sum + cost, 0) };
}

function compareShares(a: PumpShare, b: PumpShare): number {
  return compareKeys([a.without, a.worst, a.sum], [b.without, b.worst, b.sum]);
}

function compareKeys(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, index) => Math.abs(value - (b[index] ?? 0)) > ROUNDING);
  return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}
