import type { Drawing, Fill, PathStep, Shade, Shape, Stroke, TextShape } from '../../layout/shapes.ts';

const SHADES: Readonly<Record<Shade, string>> = { ink: '#000', mid: '#666', light: '#ddd', none: 'none' };
const MM_PER_PT = 25.4 / 72;

/** Returns a stand-alone SVG document of a drawing; one user unit is one millimetre. */
export function paintSvg(drawing: Drawing): string {
  const { widthMm, heightMm } = drawing;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(widthMm)}mm" height="${num(heightMm)}mm" viewBox="0 0 ${num(widthMm)} ${num(heightMm)}" role="img" aria-labelledby="t d" font-family="'DejaVu Sans Condensed','DejaVu Sans','Liberation Sans',Arial,sans-serif">`,
    `<title id="t">${escapeXml(drawing.title)}</title>`,
    `<desc id="d">${escapeXml(drawing.description)}</desc>`,
    ...hatchPatterns(drawing.shapes),
    `<rect width="${num(widthMm)}" height="${num(heightMm)}" fill="#fff"/>`,
    ...drawing.shapes.map(paint),
    '</svg>\n',
  ].join('\n');
}

const HATCHES: Readonly<Record<NonNullable<Fill['hatch']>, string>> = {
  rising: '<path d="M0 2L2 0" stroke="#000" stroke-width=".2"/>',
  falling: '<path d="M0 0L2 2" stroke="#000" stroke-width=".2"/>',
  dots: '<circle cx="1" cy="1" r=".25"/>',
};

function hatchPatterns(shapes: readonly Shape[]): readonly string[] {
  const used = new Set<NonNullable<Fill['hatch']>>();
  const visit = (shape: Shape): void => {
    if (shape.kind === 'group') shape.shapes.forEach(visit);
    else if ('fill' in shape && shape.fill?.hatch) used.add(shape.fill.hatch);
  };
  shapes.forEach(visit);
  if (used.size === 0) return [];
  const patterns = [...used]
    .sort()
    .map(
      (hatch) =>
        `<pattern id="hatch-${hatch}" width="2" height="2" patternUnits="userSpaceOnUse">${HATCHES[hatch]}</pattern>`,
    );
  return [`<defs>${patterns.join('')}</defs>`];
}

function paint(shape: Shape): string {
  switch (shape.kind) {
    case 'line':
      return `<line x1="${num(shape.x1)}" y1="${num(shape.y1)}" x2="${num(shape.x2)}" y2="${num(shape.y2)}"${stroke(shape.stroke)}/>`;
    case 'rect':
      return `<rect x="${num(shape.x)}" y="${num(shape.y)}" width="${num(shape.width)}" height="${num(shape.height)}"${fill(shape.fill)}${stroke(shape.stroke)}/>`;
    case 'circle':
      return `<circle cx="${num(shape.x)}" cy="${num(shape.y)}" r="${num(shape.radius)}"${fill(shape.fill)}${stroke(shape.stroke)}/>`;
    case 'path':
      return `<path d="${shape.steps.map(pathStep).join('')}"${fill(shape.fill)}${stroke(shape.stroke)}/>`;
    case 'text':
      return paintText(shape);
    case 'group':
      return `<g${label(shape.label)}${marks(shape.mark)}>${shape.shapes.map(paint).join('')}</g>`;
  }
}

function paintText(text: TextShape): string {
  const turn = text.turnDegrees ? ` transform="rotate(${num(text.turnDegrees)} ${num(text.x)} ${num(text.y)})"` : '';
  const anchor = text.anchor === 'start' ? '' : ` text-anchor="${text.anchor}"`;
  const weight = text.weight === 'bold' ? ' font-weight="bold"' : '';
  const shade = text.shade && text.shade !== 'ink' ? ` fill="${SHADES[text.shade]}"` : '';
  return `<text x="${num(text.x)}" y="${num(text.y)}" font-size="${num(text.sizePt * MM_PER_PT)}"${weight}${anchor}${shade}${turn}>${escapeXml(text.text)}</text>`;
}

function pathStep(step: PathStep): string {
  switch (step.to) {
    case 'move':
      return `M${num(step.x)} ${num(step.y)}`;
    case 'line':
      return `L${num(step.x)} ${num(step.y)}`;
    case 'arc':
      return `A${num(step.radius)} ${num(step.radius)} 0 ${step.large ? 1 : 0} ${step.clockwise ? 1 : 0} ${num(step.x)} ${num(step.y)}`;
    case 'close':
      return 'Z';
  }
}

function stroke(value: Stroke | undefined): string {
  if (!value || value.shade === 'none') return '';
  const dash = value.dashMm ? ` stroke-dasharray="${value.dashMm.map(num).join(' ')}"` : '';
  return ` stroke="${SHADES[value.shade]}" stroke-width="${num(value.widthMm)}"${dash}`;
}

function fill(value: Fill | undefined): string {
  if (!value) return ' fill="none"';
  return value.hatch ? ` fill="url(#hatch-${value.hatch})"` : ` fill="${SHADES[value.shade]}"`;
}

function label(text: string | undefined): string {
  return text === undefined ? '' : ` aria-label="${escapeXml(text)}"`;
}

function marks(mark: Readonly<Record<string, string | number>> | undefined): string {
  return Object.entries(mark ?? {})
    .map(([key, value]) => ` data-${key}="${escapeXml(String(value))}"`)
    .join('');
}

/** At most three decimals, no negative zero: the same bytes everywhere. */
function num(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded);
}

function escapeXml(text: string): string {
  return text.replace(/[&<>"]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c] ?? c);
}
