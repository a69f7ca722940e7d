/** Drawing on pages in millimeters from the upper left corner, on top of pdfkit's points. */

import PDFDocument from 'pdfkit';
import { QUIET_MODULES, qrModules, qrSide } from '../outputs/qrImage.ts';
import { fontBytes, fontFiles, type Run, runsOf, type Weight } from './fonts.ts';
import { type Paper, papers } from './sheets.ts';

/** Points in a millimeter: 72 to the inch (PDF 32000-1, 8.3.2.3). */
const POINTS_PER_MM = 72 / 25.4;
const points = (mm: number) => mm * POINTS_PER_MM;

export interface TextBox {
  /** Left edge and baseline. */
  x: number;
  y: number;
  /** Widest it may be; a longer text gets smaller, down to `smallest`, and is then cut with three points. */
  width: number;
  /** Letter size and the smallest it may shrink to, points. */
  size: number;
  smallest?: number;
  weight?: Weight;
  align?: 'left' | 'right';
}

const fontName = (run: Run, weight: Weight) => `${run.font.name}-${weight}`;

/** A font as pdfkit opens it; the part that is used of it here. */
interface OpenFont {
  font: { hasGlyphForCodePoint: (point: number) => boolean };
}

export class PaperWriter {
  readonly paper: Paper;
  private readonly document: PDFKit.PDFDocument;
  private readonly chunks: Buffer[] = [];
  private readonly ended: Promise<void>;
  private readonly open = new Map<string, OpenFont>();

  /** `day` is written into the file as its date, so that the same records give the same bytes. */
  constructor(
    paper: Paper,
    { title, day, landscape = false }: { title: string; day: string; landscape?: boolean },
  ) {
    this.paper = paper;
    const { width, height } = papers[paper];
    const size: [number, number] = landscape
      ? [points(height), points(width)]
      : [points(width), points(height)];
    const CreationDate = new Date(`${day}T00:00:00Z`);
    this.document = new PDFDocument({
      size,
      margin: 0,
      autoFirstPage: false,
      // Seen by readers in the frame of the window.
      info: { Title: title, CreationDate, ModDate: CreationDate },
    });
    for (const weight of [400, 600] as const)
      for (const file of fontFiles)
        this.document.registerFont(`${file.name}-${weight}`, fontBytes(file, weight));
    this.document.on('data', (chunk: Buffer) => this.chunks.push(chunk));
    this.ended = new Promise(settle => this.document.on('end', settle));
  }

  page(): void {
    this.document.addPage();
  }

  /** The finished file. */
  async finish(): Promise<Buffer> {
    this.document.end();
    await this.ended;
    return Buffer.concat(this.chunks);
  }

  private has(name: string, point: number): boolean {
    let font = this.open.get(name);
    if (font === undefined) {
      this.document.font(name);
      font = (this.document as unknown as { _font: OpenFont })._font;
      this.open.set(name, font);
    }
    return font.font.hasGlyphForCodePoint(point);
  }

  private runs(text: string, weight: Weight): Run[] {
    return runsOf(text, (font, point) => this.has(`${font.name}-${weight}`, point));
  }

  private widthOf(runs: readonly Run[], weight: Weight, size: number): number {
    const wide = runs.reduce(
      (sum, run) => sum + this.document.font(fontName(run, weight)).fontSize(size).widthOfString(run.text),
      0,
    );
    return wide / POINTS_PER_MM;
  }

  /** Width of a text in mm at a size in points. Throws NoGlyph. */
  textWidth(text: string, size: number, weight: Weight = 400): number {
    return this.widthOf(this.runs(text, weight), weight, size);
  }

  /** One line of text. Throws NoGlyph for signs that cannot be printed. */
  text(text: string, { x, y, width, size, smallest = 6, weight = 400, align = 'left' }: TextBox): void {
    let shown = text;
    let runs = this.runs(shown, weight);
    let wide = this.widthOf(runs, weight, size);
    const fitted = Math.max(Math.min(size, (size * width) / wide), smallest);
    wide = this.widthOf(runs, weight, fitted);
    while (wide > width + 0.01 && [...shown].length > 2) {
      shown = `${[...shown.replace(/\.\.\.$/, '')].slice(0, -1).join('').trimEnd()}...`;
      runs = this.runs(shown, weight);
      wide = this.widthOf(runs, weight, fitted);
    }
    let at = align === 'right' || runs[0]?.font.rightToLeft ? x + width - wide : x;
    for (const run of runs) {
      this.document.font(fontName(run, weight)).fontSize(fitted).fillColor('black');
      this.document.text(run.text, points(at), points(y), { lineBreak: false, baseline: 'alphabetic' });
      at += this.widthOf([run], weight, fitted);
    }
  }

  /** Lines that a text is broken into at spaces, for a width in mm. */
  lines(text: string, width: number, size: number, weight: Weight = 400): string[] {
    const lines: string[] = [];
    for (const word of text.split(/\s+/)) {
      const last = lines.at(-1);
      const longer = last === undefined ? word : `${last} ${word}`;
      if (last !== undefined && this.textWidth(longer, size, weight) > width) lines.push(word);
      else lines[Math.max(lines.length - 1, 0)] = longer;
    }
    return lines;
  }

  rule(x: number, y: number, toX: number, toY: number, thicknessMm = 0.15): void {
    this.document
      .moveTo(points(x), points(y))
      .lineTo(points(toX), points(toY))
      .lineWidth(points(thicknessMm))
      .strokeColor('black')
      .stroke();
  }

  box(x: number, y: number, width: number, height: number): void {
    this.document.rect(points(x), points(y), points(width), points(height)).lineWidth(points(0.15)).stroke();
  }

  circle(x: number, y: number, radius: number): void {
    this.document.circle(points(x), points(y), points(radius)).lineWidth(points(0.15)).stroke();
  }

  /** A QR code that fills a square of so many mm, its quiet zone included. */
  qr(text: string, x: number, y: number, side: number): void {
    const modules = qrModules(text);
    const { document } = this;
    document
      .save()
      .translate(points(x), points(y))
      .scale(points(side) / qrSide(modules));
    modules.forEach((row, down) => {
      row.forEach((dark, right) => {
        if (!dark || row[right - 1]) return;
        let length = 1;
        while (row[right + length]) length += 1;
        // Whole modules: short numbers, so that hundreds of codes stay small.
        document.rect(right + QUIET_MODULES, down + QUIET_MODULES, length, 1);
      });
    });
    document.fillColor('black').fill().restore();
  }
}
