/** QR codes, drawn by ourselves from their modules. The one home of qrcode. */
import QRCode from 'qrcode';

/** Light modules around the code that a reader needs. Source: ISO/IEC 18004, the quiet zone of four modules (memory). */
const QUIET = 4;

/** Returns a drawing, black on white whatever is around it; one user unit is one module. */
export function qrSvg(text: string): string {
  const { size, isDark } = modules(text);
  const runs = rows(size).flatMap((y) =>
    darkRuns(size, (x) => isDark(x, y)).map(({ x, length }) => `M${x + QUIET} ${y + QUIET}h${length}v1h-${length}z`),
  );
  const side = size + 2 * QUIET;
  return `<svg viewBox="0 0 ${side} ${side}" shape-rendering="crispEdges" aria-hidden="true"><rect width="${side}" height="${side}" fill="#fff"/><path fill="#000" d="${runs.join('')}"/></svg>`;
}

/**
 * Returns a code for a terminal, two modules a character.
 *
 * @param colour whether escape codes may set black on white; else light modules are drawn, for light text on a dark ground
 */
export function qrTerminal(text: string, colour: boolean): string {
  const { size, isDark } = modules(text);
  const isLight = (x: number, y: number): boolean => !isDark(x - QUIET, y - QUIET);
  const side = size + 2 * QUIET;
  const lines = rows(Math.ceil(side / 2)).map((half) =>
    rows(side)
      .map((x) => BLOCKS[(isLight(x, half * 2) ? 2 : 0) + (half * 2 + 1 >= side || isLight(x, half * 2 + 1) ? 1 : 0)])
      .join(''),
  );
  return lines.map((line) => (colour ? `\u001b[97;40m${line}\u001b[0m\n` : `${line}\n`)).join('');
}

const BLOCKS: readonly string[] = [' ', '▄', '▀', '█'];

interface Modules {
  readonly size: number;
  /** False outside the code. */
  readonly isDark: (x: number, y: number) => boolean;
}

function modules(text: string): Modules {
  const { size, data } = QRCode.create(text, { errorCorrectionLevel: 'M' }).modules;
  const isInside = (at: number): boolean => at >= 0 && at < size;
  return { size, isDark: (x, y) => isInside(x) && isInside(y) && Boolean(data[y * size + x]) };
}

function rows(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => index);
}

function darkRuns(
  size: number,
  isDark: (x: number) => boolean,
): readonly { readonly x: number; readonly length: number }[] {
  const runs: { x: number; length: number }[] = [];
  for (let x = 0; x < size; x++) {
    const last = runs.at(-1);
    if (!isDark(x)) continue;
    if (last && last.x + last.length === x) last.length += 1;
    else runs.push({ x, length: 1 });
  }
  return runs;
}
