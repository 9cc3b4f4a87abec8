/** Paints documents laid out in millimetres as tagged PDF; the pen measures and breaks nothing. The one home of pdfkit. */
import PDFDocument from 'pdfkit';
import type { PaperDocument, Part } from '../../layout/page.ts';
import type { PathStep, Shade, Shape, Stroke, TextShape } from '../../layout/shapes.ts';
import { type FontSet, fontRuns } from './fonts.ts';

type Pen = InstanceType<typeof PDFDocument>;

const PT_PER_MM = 72 / 25.4;
const SHADES: Readonly<Record<Exclude<Shade, 'none'>, string>> = { ink: '#000000', mid: '#666666', light: '#dddddd' };

/** Returns the bytes of a document; the same for the same document on every machine and in every zone. */
export async function paintPdf(paper: PaperDocument, fonts: FontSet): Promise<Uint8Array> {
  const made = new Date(`${paper.made}T00:00:00Z`);
  const pen = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    pdfVersion: '1.7',
    tagged: true,
    subset: 'PDF/UA' as 'PDF/A-1',
    lang: paper.language,
    displayTitle: true,
    font: fonts.regular[0] as unknown as string,
    info: {
      Title: paper.title,
      Subject: paper.subject,
      Creator: 'Dewdial',
      Producer: 'Dewdial',
      CreationDate: made,
      ModDate: made,
    },
  });
  escapeMetadata(pen);
  const chunks: Uint8Array[] = [];
  pen.on('data', (chunk: Uint8Array) => chunks.push(chunk));
  const ended = new Promise<void>((resolve, reject) => {
    pen.on('end', resolve);
    pen.on('error', reject);
  });
  paintPages(pen, paper, fonts);
  pen.end();
  await ended;
  return Buffer.concat(chunks);
}

/** The metadata packet is XML, and the pen writes the texts of the Info entry into it as they are. */
function escapeMetadata(pen: Pen): void {
  const inner = pen as unknown as { _addInfo: () => void; readonly info: Record<string, unknown> };
  const addInfo = inner._addInfo;
  inner._addInfo = () => {
    const raw = { ...inner.info };
    for (const [key, value] of Object.entries(raw)) if (typeof value === 'string') inner.info[key] = escapeXml(value);
    addInfo.call(pen);
    Object.assign(inner.info, raw);
  };
}

function escapeXml(text: string): string {
  return text.replace(/[&<>]/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;' })[c] ?? c);
}

function paintPages(pen: Pen, paper: PaperDocument, fonts: FontSet): void {
  const root = pen.struct('Document', { title: paper.title });
  pen.addStructure(root);
  let wanted = 0;
  pen.on('pageAdded', () => {
    if (pen.bufferedPageRange().count > wanted && wanted > 0) throw new Error('the pen added a page of its own');
  });
  for (const { size, parts } of paper.pages) {
    wanted += 1;
    pen.addPage({ size: [size.widthMm * PT_PER_MM, size.heightMm * PT_PER_MM], margin: 0 });
    for (const part of parts) paintPart(pen, root, part, fonts);
  }
  root.end();
}

type Structure = ReturnType<Pen['struct']>;

function paintPart(pen: Pen, parent: Structure, part: Part, fonts: FontSet): void {
  const { tag, shapes, children = [], alt, scope, box } = part;
  if (tag === 'Artifact') {
    pen.markContent('Artifact', { type: 'Layout' });
    for (const shape of shapes) paint(pen, shape, fonts);
    pen.endMarkedContent();
    return;
  }
  const bbox = box && [box.left, box.top, box.left + box.width, box.top + box.height].map((mm) => mm * PT_PER_MM);
  const element = pen.struct(tag, {
    ...(alt === undefined ? {} : { alt }),
    ...(scope === undefined ? {} : { scope }),
    ...(bbox === undefined || tag !== 'Figure' ? {} : { bbox: bbox as [number, number, number, number] }),
  } as Parameters<Pen['struct']>[1]);
  parent.add(element);
  if (shapes.length > 0)
    element.add(() => {
      for (const shape of shapes) paint(pen, shape, fonts);
    });
  for (const child of children) paintPart(pen, element, child, fonts);
  element.end();
}

function paint(pen: Pen, shape: Shape, fonts: FontSet): void {
  switch (shape.kind) {
    case 'line':
      pen.moveTo(pt(shape.x1), pt(shape.y1)).lineTo(pt(shape.x2), pt(shape.y2));
      ink(pen, shape.stroke, undefined);
      return;
    case 'rect':
      pen.rect(pt(shape.x), pt(shape.y), pt(shape.width), pt(shape.height));
      ink(pen, shape.stroke, shape.fill?.shade);
      return;
    case 'circle':
      pen.circle(pt(shape.x), pt(shape.y), pt(shape.radius));
      ink(pen, shape.stroke, shape.fill?.shade);
      return;
    case 'path':
      pen.path(shape.steps.map(pathStep).join(' '));
      ink(pen, shape.stroke, shape.fill?.shade);
      return;
    case 'text':
      paintText(pen, shape, fonts);
      return;
    case 'group':
      for (const each of shape.shapes) paint(pen, each, fonts);
      return;
  }
}

function ink(pen: Pen, stroke: Stroke | undefined, fill: Shade | undefined): void {
  const isStroked = stroke !== undefined && stroke.shade !== 'none';
  const isFilled = fill !== undefined && fill !== 'none';
  if (isStroked) {
    pen.lineWidth(pt(stroke.widthMm));
    const [dash, gap] = stroke.dashMm ?? [];
    if (dash !== undefined) pen.dash(pt(dash), { space: pt(gap ?? dash) });
    else pen.undash();
  }
  if (isStroked && isFilled) pen.fillAndStroke(shadeOf(fill), shadeOf(stroke.shade));
  else if (isStroked) pen.stroke(shadeOf(stroke.shade));
  else if (isFilled) pen.fill(shadeOf(fill));
}

function shadeOf(shade: Shade): string {
  return shade === 'none' ? '#ffffff' : SHADES[shade];
}

/** Text is set on its baseline, in the fonts that have its characters, one behind the other. */
function paintText(pen: Pen, shape: TextShape, fonts: FontSet): void {
  const runs = fontRuns(shape.text, fonts[shape.weight]).map((run) => {
    pen.font(run.font as unknown as string, nameOf(run.font, fonts)).fontSize(shape.sizePt);
    return { ...run, width: pen.widthOfString(run.text) };
  });
  const whole = runs.reduce((sum, { width }) => sum + width, 0);
  let x = pt(shape.x) - (shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? whole / 2 : whole);
  for (const { font, text, width } of runs) {
    pen
      .font(font as unknown as string, nameOf(font, fonts))
      .fontSize(shape.sizePt)
      .fillColor(shadeOf(shape.shade ?? 'ink'));
    const options = { lineBreak: false, baseline: 'alphabetic' } as const;
    if (shape.turnDegrees) {
      pen.save().rotate(shape.turnDegrees, { origin: [x, pt(shape.y)] });
      pen.text(text, x, pt(shape.y), options).restore();
    } else pen.text(text, x, pt(shape.y), options);
    x += width;
  }
}

/** Two files may carry one name; their places in the chain differ. The first is known to the pen by its own name from the start. */
function nameOf(font: FontSet['regular'][number], { regular, bold }: FontSet): string {
  return font === regular[0] ? font.postscriptName : `face-${[...regular, ...bold].indexOf(font)}`;
}

function pathStep(step: PathStep): string {
  switch (step.to) {
    case 'move':
      return `M${pt(step.x)} ${pt(step.y)}`;
    case 'line':
      return `L${pt(step.x)} ${pt(step.y)}`;
    case 'arc':
      return `A${pt(step.radius)} ${pt(step.radius)} 0 ${step.large ? 1 : 0} ${step.clockwise ? 1 : 0} ${pt(step.x)} ${pt(step.y)}`;
    case 'close':
      return 'Z';
  }
}

function pt(mm: number): number {
  return mm * PT_PER_MM;
}
