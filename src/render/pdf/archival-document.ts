import { createHash, type Hash } from 'node:crypto';
import PDFDocument from 'pdfkit';

/** What pdfkit keeps about one entry of the outline; not in its types. */
interface OutlineNode {
  children: OutlineNode[];
  options: { expanded?: boolean };
  outlineData: Record<string, unknown>;
}

interface Internals {
  info: Record<string, unknown>;
  outline: OutlineNode;
  _id: Uint8Array;
}

/** Bytes of a file identifier. */
const idLength = 16;

/**
 * A pdfkit document that other programs can read for a long time: its metadata are well-formed XML whatever the
 * title says, its outline counts its open entries, and its identifier follows from all that it holds.
 */
export class ArchivalDocument extends PDFDocument {
  /** Over every byte so far; made on the first, which pdfkit writes before fields of a subclass are set. */
  declare private digest: Hash | undefined;

  override push(chunk: Uint8Array | null): boolean {
    this.digest ??= createHash('sha256');
    if (chunk !== null) this.digest.update(chunk);
    return super.push(chunk);
  }

  /** Writes the cross references and the trailer; pdfkit's identifier would know the title and the date only. */
  protected _finalize(): void {
    (this as unknown as Internals)._id = new Uint8Array(this.digest!.copy().digest().subarray(0, idLength));
    Object.getPrototypeOf(ArchivalDocument.prototype)._finalize.call(this);
  }

  /** Writes the XML metadata with every text escaped; the Info dictionary is already written by then. */
  override endMetadata(): void {
    const self = this as unknown as Internals;
    const plain = self.info;
    self.info = Object.fromEntries(
      Object.entries(plain).map(([key, value]) => [
        key,
        typeof value === 'string' ? escapeXml(value) : value,
      ]),
    );
    super.endMetadata();
    self.info = plain;
  }

  /** Gives the outline and its closed entries the count that readers expect. */
  override endOutline(): void {
    const { outline } = this as unknown as Internals;
    const open = countVisible(outline);
    if (open > 0) outline.outlineData.Count = open;
    super.endOutline();
  }
}

/** Entries that show when the outline is opened as stored; a closed entry gets its count as a negative number. */
function countVisible(node: OutlineNode): number {
  let visible = 0;
  for (const child of node.children) {
    const below = countVisible(child);
    if (below > 0 && !child.options.expanded) child.outlineData.Count = -below;
    visible += 1 + (child.options.expanded ? below : 0);
  }
  return visible;
}

function escapeXml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
