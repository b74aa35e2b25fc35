import { type Box, gapBetween, type Press, stackHeight } from './box.js';

/** Places boxes on pages: nothing is cut, no heading stands alone at the foot of a page. */
export class Flow {
  private y = 0;
  private last: Box | undefined;
  /** Running head of every page so far. */
  readonly runningHeads: string[] = [];
  private runningHead = '';
  private tellTop: ((y: number) => void) | undefined;

  constructor(private readonly press: Press) {}

  /**
   * Starts a section; on a page of its own if it wants one or nothing has been placed yet.
   * @param tellTop is told where the section's first box stands, on its page
   */
  startSection(runningHead: string, startsPage: boolean, tellTop?: (y: number) => void): void {
    this.runningHead = runningHead;
    this.tellTop = tellTop;
    if (startsPage || this.runningHeads.length === 0) this.newPage();
  }

  /** Starts a page unless the present one is still empty. */
  breakPage(): void {
    if (this.last) this.newPage();
  }

  place(boxes: Box[]): void {
    for (let from = 0; from < boxes.length; ) {
      const chain = keptTogether(boxes, from);
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
    this.tellTop?.(this.y);
    this.tellTop = undefined;
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

function keptTogether(boxes: Box[], from: number): Box[] {
  let to = from;
  while (boxes[to]!.keepWithNext && to + 1 < boxes.length) to++;
  return boxes.slice(from, to + 1);
}
