/** Kinds of structure that the report uses, in the vocabulary of tagged PDF. */
export type TagKind =
  | 'Document'
  | 'Sect'
  | 'Div'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'THead'
  | 'TBody'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'Caption';

/** What pdfkit takes beyond its types. */
interface TagOptions {
  title?: string;
  alt?: string;
  bbox?: [left: number, top: number, right: number, bottom: number];
  placement?: 'Block';
  scope?: 'Column' | 'Row';
}

/** A place in the structure of the document; its parts are added in reading order. */
export type Tag = PDFKit.PDFStructureElement;

/** Marks what stands on a page: as part of the structure, or as decoration that a reader may skip. */
export class Tags {
  private readonly root: Tag;

  constructor(private readonly document: PDFKit.PDFDocument) {
    this.root = document.struct('Document', {});
    document.addStructure(this.root);
  }

  /** Opens an element under a parent; without one under the document. */
  open(parent: Tag | null, kind: TagKind, options: TagOptions = {}): Tag {
    const tag = this.document.struct(kind, options as PDFKit.Mixins.StructureElementOptions);
    (parent ?? this.root).add(tag);
    return tag;
  }

  /** Draws content that belongs to an element. */
  mark(tag: Tag, draw: () => void): void {
    tag.add(draw as unknown as Tag);
  }

  /** Opens an element and draws its content. */
  add(parent: Tag | null, kind: TagKind, draw: () => void, options: TagOptions = {}): Tag {
    const tag = this.open(parent, kind, options);
    this.mark(tag, draw);
    return tag;
  }

  /** Says that a table cell spans several columns. */
  span(tag: Tag, columns: number): void {
    const { data } = (tag as unknown as { dictionary: { data: Record<string, unknown> } }).dictionary;
    data.A = { ...(data.A as object | undefined), O: 'Table', ColSpan: columns };
  }

  /** Draws what only decorates: rules and bands, or the running head and foot. */
  artifact(kind: 'Layout' | 'Pagination', draw: () => void): void {
    this.document.markContent('Artifact', { type: kind });
    draw();
    this.document.endMarkedContent();
  }
}
