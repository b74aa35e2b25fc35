import type { Section } from '../../report/document.js';
import type { Press } from './box.js';

interface Entry {
  addItem(title: string, options: object): Entry;
}

/** Bookmarks: the pages to read first, then the appendix with its parts. */
export class Outline {
  private appendix: Entry | undefined;

  constructor(
    private readonly press: Press,
    private readonly appendixTitle: string,
  ) {}

  /**
   * Adds a section that starts on the present page.
   * @param top height on the page to which its bookmark leads
   */
  addSection(section: Section, top: number): void {
    const root = this.press.document.outline as unknown as Entry;
    const options = (expanded: boolean) => ({
      top,
      // pdfkit counts from the right edge: this is the left one.
      left: this.press.geometry.width,
      fit: false,
      expanded,
    });
    if (section.part === 'appendix') this.appendix ??= root.addItem(this.appendixTitle, options(true));
    (section.part === 'appendix' ? this.appendix! : root).addItem(section.title, options(false));
  }
}
