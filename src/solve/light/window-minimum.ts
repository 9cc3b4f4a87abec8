/**
 * Writes into `least[at]`, for `at` in from..to, the least of `values` over the part of the window first[at]..last[at] that lies in
 * low..high, or `nothing` where that part is empty. Windows move to the right with `at`.
 */
export function windowMinimum(
  values: Int32Array,
  low: number,
  high: number,
  first: Int32Array,
  last: Int32Array,
  from: number,
  to: number,
  least: Int32Array,
  queue: Int32Array,
  nothing: number,
): void {
  let head = 0;
  let tail = 0;
  let next = low;
  for (let at = from; at <= to; at++) {
    const end = Math.min(last[at] as number, high);
    for (; next <= end; next++) {
      const value = values[next] as number;
      while (tail > head && (values[queue[tail - 1] as number] as number) >= value) tail--;
      queue[tail++] = next;
    }
    while (tail > head && (queue[head] as number) < (first[at] as number)) head++;
    least[at] = tail > head && (queue[head] as number) <= end ? (values[queue[head] as number] as number) : nothing;
  }
}
