import { type Box, gapBetween, type Press, stackHeight } from './box.js';

/** Where a section stands: beneath the one before; on a page of its own; or beneath where that ends in a few lines. */
export type SectionStart = 'beneath' | 'own-page' | 'own-page-or-tail';

/** A section that ends on a page of which it takes less than this share has left a few lines there. */
const tailShare = 0.3;

/** White space between the tail of a section and the title of the next. */
const tailGap = 36;

/** Places boxes on pages: nothing is cut, no heading stands alone at the foot of a page. */
export class Flow {
  private y = 0;
  private last: Box | undefined;
  /** Pages there were when the present section began. */
  private startedPages = 0;
  /** Running head of every page so far. */
  readonly runningHeads: string[] = [];
  private runningHead = '';
  /** Called with the height of the first box of a section. */
  private begun: ((y: number) => void) | undefined;

  constructor(private readonly press: Press) {}

  /**
   * Starts a section; on a page of its own, too, if nothing has been placed yet.
   * @param tellTop is told where the section's first box stands, on its page
   */
  startSection(runningHead: string, start: SectionStart, tellTop?: (y: number) => void): void {
    this.runningHead = runningHead;
    const follows = start === 'own-page-or-tail' && this.last !== undefined && this.endsInTail();
    this.begun = (y) => {
      this.startedPages = this.runningHeads.length;
      if (follows) this.runningHeads[this.startedPages - 1] = runningHead;
      tellTop?.(y);
    };
    if (follows) this.last = { ...this.last!, after: tailGap };
    else if (start !== 'beneath' || this.runningHeads.length === 0) this.newPage();
  }

  private endsInTail(): boolean {
    const { top, bottom } = this.press.geometry;
    const isTail = this.runningHeads.length > this.startedPages;
    return isTail && this.y - top < tailShare * (bottom - top);
  }

  /** Starts a page unless the present one is still empty. */
  breakPage(): void {
    if (this.last) this.newPage();
  }

  /** Places boxes under each other; a short last one does not go over the page alone. */
  place(boxes: Box[]): void {
    const closed = withClosing(boxes);
    for (let from = 0; from < closed.length; ) {
      const chain = keptTogether(closed, from);
      this.placeChain(chain);
      from += chain.length;
    }
  }

  private placeChain(chain: Box[]): void {
    const { geometry } = this.press;
    const wanted = stackHeight(chain) + gapBetween(this.last, chain[0]!);
    const fitsPage = stackHeight(chain) <= geometry.bottom - geometry.top;
    if (this.last && this.y + wanted > geometry.bottom && fitsPage) this.newPage();
    for (const box of chain) this.placeBox(box);
  }

  private placeBox(box: Box): void {
    const { geometry } = this.press;
    const gap = gapBetween(this.last, box);
    if (this.last && this.y + gap + box.height > geometry.bottom + 0.01) this.newPage();
    if (!this.last && box.repeated) {
      box.repeated.draw(geometry.left, this.y);
      this.y += box.repeated.height;
    }
    if (this.last) this.y += gap;
    this.begun?.(this.y);
    this.begun = undefined;
    box.draw(geometry.left, this.y);
    this.y += box.height;
    this.last = box;
  }

  private newPage(): void {
    const { document, geometry } = this.press;
    document.addPage();
    this.runningHeads.push(this.runningHead);
    this.y = geometry.top;
    this.last = undefined;
  }
}

/** A last box of no more than a few lines belongs to what stands before it; in points. */
const closingHeight = 34;

function withClosing(boxes: Box[]): Box[] {
  const [before, last] = boxes.slice(-2);
  if (before === undefined || last === undefined || last.height > closingHeight) return boxes;
  return [...boxes.slice(0, -2), { ...before, keepWithNext: true }, last];
}

function keptTogether(boxes: Box[], from: number): Box[] {
  let to = from;
  while (boxes[to]!.keepWithNext && to + 1 < boxes.length) to++;
  return boxes.slice(from, to + 1);
}
