/** A card for the box: what has come, what to do in the first days, what to beware of, and the address of the guide for this form and place. */

import type { CareTask } from '../core/care/calendar.ts';
import { PaperWriter } from './paper.ts';
import { type Paper, papers } from './sheets.ts';

export interface BoxCard {
  yard: string;
  contact: string;
  /** `A fig, bare-root, for Boston, Massachusetts`. */
  title: string;
  /** What has come: `Wrenfoot (26-layer-02)`. */
  trees: readonly string[];
  tasks: readonly Pick<CareTask, 'title' | 'trigger'>[];
  cautions: readonly { title: string; text: string }[];
  /** Whole address of the guide. */
  address: string;
}

const EDGE_MM = 14;
const QR_MM = 34;

/** Where the next line goes on a card that may run on to its back. */
class Column {
  private readonly paper: PaperWriter;
  private readonly width: number;
  private readonly bottom: number;
  y: number;

  constructor(paper: PaperWriter, name: Paper, y: number) {
    this.paper = paper;
    this.width = papers[name].width - 2 * EDGE_MM;
    this.bottom = papers[name].height - 20;
    this.y = y;
  }

  /** Keeps so many mm together: what does not fit goes to the back. */
  private room(mm: number): void {
    if (this.y + mm <= this.bottom) return;
    this.paper.page();
    this.y = 20;
  }

  heading(text: string, size: number, below: number): void {
    this.room(below + 12);
    this.paper.text(text, { x: EDGE_MM, y: this.y, width: this.width, size, weight: 600 });
    this.y += below;
  }

  text(text: string, size: number, indent: number, below: number): void {
    const step = size * 0.45;
    for (const line of this.paper.lines(text, this.width - indent, size)) {
      this.room(step);
      this.paper.text(line, { x: EDGE_MM + indent, y: this.y, width: this.width - indent, size });
      this.y += step;
    }
    this.y += below;
  }
}

function drawCard(paper: PaperWriter, card: BoxCard, name: Paper): void {
  const { width: pageWidth, height } = papers[name];
  const width = pageWidth - 2 * EDGE_MM;
  const beside = width - QR_MM - 4;
  paper.page();
  paper.text(card.yard, { x: EDGE_MM, y: 20, width: beside, size: 11 });
  paper.text(card.title, { x: EDGE_MM, y: 29, width: beside, size: 18, weight: 600 });
  paper.qr(card.address, pageWidth - EDGE_MM - QR_MM, 10, QR_MM);
  const address = card.address.replace(/^https?:\/\//, '');
  paper.text(address, { x: EDGE_MM, y: 49, width, size: 9, align: 'right' });
  paper.text(`Anything wrong? ${card.contact}`, { x: EDGE_MM, y: height - 11, width, size: 10 });
  const trees = paper.lines(card.trees.join(', '), beside, 11);
  for (const [index, line] of trees.entries())
    paper.text(line, { x: EDGE_MM, y: 37 + index * 5, width: beside, size: 11 });
  const column = new Column(paper, name, Math.max(44 + trees.length * 5, 58));
  column.heading('First', 13, 7);
  for (const [index, { title, trigger }] of card.tasks.entries()) {
    column.heading(`${index + 1}. ${title}`, 11.5, 5.2);
    column.text(trigger, 10.5, 5, 2);
  }
  column.y += 3;
  column.heading('Beware', 13, 6.5);
  for (const { title, text } of card.cautions) column.text(`${title}: ${text}`, 9.5, 0, 1.5);
}

/** Cards as a PDF; a long one runs on to a second page, the back of the card. Throws NoGlyph. */
export async function boxCards(cards: readonly BoxCard[], paperName: Paper, day: string): Promise<Buffer> {
  const paper = new PaperWriter(paperName, { title: 'Cards for boxes', day });
  for (const card of cards) drawCard(paper, card, paperName);
  return paper.finish();
}
