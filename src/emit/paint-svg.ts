/**
 * Drawings painted as SVG; one user unit is one millimetre. A file of its own is black on white; inside a page a drawing takes the colour of
 * the text around it, light on dark where the page is.
 */
import type { Drawing, Fill, PathStep, Shade, Shape, Stroke, TextShape } from '../layout/shapes.ts';

const MM_PER_PT = 25.4 / 72;
const FONTS = "'DejaVu Sans Condensed','DejaVu Sans','Liberation Sans',Arial,sans-serif";

/** How shades are told, and what the ids of a drawing begin with, so that several stand in one page. */
interface Look {
  readonly shade: (attribute: 'fill' | 'stroke', shade: Exclude<Shade, 'none'>) => string;
  readonly prefix: string;
}

const COLOURS = { ink: '#000', mid: '#666', light: '#ddd' } as const;
const OPACITIES = { ink: '', mid: '.65', light: '.15' } as const;

const ON_WHITE: Look = { shade: (attribute, shade) => ` ${attribute}="${COLOURS[shade]}"`, prefix: '' };

function withinText(prefix: string): Look {
  return {
    prefix,
    shade: (attribute, shade) =>
      ` ${attribute}="currentColor"${shade === 'ink' ? '' : ` ${attribute}-opacity="${OPACITIES[shade]}"`}`,
  };
}

/** Returns a stand-alone SVG document of a drawing. */
export function paintSvg(drawing: Drawing): string {
  const { widthMm, heightMm } = drawing;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(widthMm)}mm" height="${num(heightMm)}mm" viewBox="0 0 ${num(widthMm)} ${num(heightMm)}" role="img" aria-labelledby="t d" font-family="${FONTS}">`,
    `<title id="t">${escapeXml(drawing.title)}</title>`,
    `<desc id="d">${escapeXml(drawing.description)}</desc>`,
    ...hatchPatterns(drawing.shapes, ON_WHITE),
    `<rect width="${num(widthMm)}" height="${num(heightMm)}" fill="#fff"/>`,
    ...drawing.shapes.map((shape) => paint(shape, ON_WHITE)),
    '</svg>\n',
  ].join('\n');
}

/**
 * Returns a drawing to stand inside a page: as wide as there is room, in the colour of the text.
 *
 * @param prefix letters that the ids in it begin with, other for each drawing of a page
 */
export function paintInline(drawing: Drawing, prefix: string): string {
  const { widthMm, heightMm, title, description, shapes } = drawing;
  const look = withinText(prefix);
  const parts = [...hatchPatterns(shapes, look), ...shapes.map((shape) => paint(shape, look))];
  return (
    `<svg viewBox="0 0 ${num(widthMm)} ${num(heightMm)}" role="img" aria-labelledby="${prefix}t ${prefix}d" fill="currentColor">` +
    `<title id="${prefix}t">${escapeXml(title)}</title><desc id="${prefix}d">${escapeXml(description)}</desc>${parts.join('')}</svg>`
  );
}

const HATCHES: Readonly<Record<NonNullable<Fill['hatch']>, (look: Look) => string>> = {
  rising: (look) => `<path d="M0 2L2 0"${look.shade('stroke', 'ink')} stroke-width=".2"/>`,
  falling: (look) => `<path d="M0 0L2 2"${look.shade('stroke', 'ink')} stroke-width=".2"/>`,
  dots: (look) => `<circle cx="1" cy="1" r=".25"${look.prefix === '' ? '' : look.shade('fill', 'ink')}/>`,
};

function hatchPatterns(shapes: readonly Shape[], look: Look): readonly string[] {
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
        `<pattern id="${look.prefix}hatch-${hatch}" width="2" height="2" patternUnits="userSpaceOnUse">${HATCHES[hatch](look)}</pattern>`,
    );
  return [`<defs>${patterns.join('')}</defs>`];
}

function paint(shape: Shape, look: Look): string {
  switch (shape.kind) {
    case 'line':
      return `<line x1="${num(shape.x1)}" y1="${num(shape.y1)}" x2="${num(shape.x2)}" y2="${num(shape.y2)}"${stroke(shape.stroke, look)}/>`;
    case 'rect':
      return `<rect x="${num(shape.x)}" y="${num(shape.y)}" width="${num(shape.width)}" height="${num(shape.height)}"${fill(shape.fill, look)}${stroke(shape.stroke, look)}/>`;
    case 'circle':
      return `<circle cx="${num(shape.x)}" cy="${num(shape.y)}" r="${num(shape.radius)}"${fill(shape.fill, look)}${stroke(shape.stroke, look)}/>`;
    case 'path':
      return `<path d="${shape.steps.map(pathStep).join('')}"${fill(shape.fill, look)}${stroke(shape.stroke, look)}/>`;
    case 'text':
      return paintText(shape, look);
    case 'group':
      return `<g${label(shape.label, look)}${marks(shape.mark)}>${shape.shapes.map((each) => paint(each, look)).join('')}</g>`;
  }
}

function paintText(text: TextShape, look: Look): string {
  const turn = text.turnDegrees ? ` transform="rotate(${num(text.turnDegrees)} ${num(text.x)} ${num(text.y)})"` : '';
  const anchor = text.anchor === 'start' ? '' : ` text-anchor="${text.anchor}"`;
  const weight = text.weight === 'bold' ? ' font-weight="bold"' : '';
  const shade = text.shade && text.shade !== 'ink' ? shadeOf('fill', text.shade, look) : '';
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

function stroke(value: Stroke | undefined, look: Look): string {
  if (!value || value.shade === 'none') return '';
  const dash = value.dashMm ? ` stroke-dasharray="${value.dashMm.map(num).join(' ')}"` : '';
  return `${look.shade('stroke', value.shade)} stroke-width="${num(value.widthMm)}"${dash}`;
}

function fill(value: Fill | undefined, look: Look): string {
  if (!value) return ' fill="none"';
  return value.hatch ? ` fill="url(#${look.prefix}hatch-${value.hatch})"` : shadeOf('fill', value.shade, look);
}

function shadeOf(attribute: 'fill' | 'stroke', shade: Shade, look: Look): string {
  return shade === 'none' ? ` ${attribute}="none"` : look.shade(attribute, shade);
}

/** Within a page the whole drawing is one picture with a name: its parts have none. */
function label(text: string | undefined, { prefix }: Look): string {
  return text === undefined || prefix !== '' ? '' : ` aria-label="${escapeXml(text)}"`;
}

function marks(mark: Readonly<Record<string, string | number>> | undefined): string {
  return Object.entries(mark ?? {})
    .map(([key, value]) => ` data-${key}="${escapeXml(String(value))}"`)
    .join('');
}

/** At most three decimals, no negative zero: the same bytes everywhere. Whole numbers are written much faster than broken ones. */
function num(value: number): string {
  const thousandths = Math.round(value * 1000);
  const size = Math.abs(thousandths);
  const rest = size % 1000;
  const whole = `${thousandths < 0 ? '-' : ''}${(size - rest) / 1000}`;
  if (rest === 0) return whole;
  const digits = rest % 10 !== 0 ? 3 : rest % 100 !== 0 ? 2 : 1;
  return `${whole}.${String(rest / 10 ** (3 - digits)).padStart(digits, '0')}`;
}

function escapeXml(text: string): string {
  return text.replace(/[&<>"]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c] ?? c);
}
