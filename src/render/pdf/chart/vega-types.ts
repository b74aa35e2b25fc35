/** Part of a text mark that decides how wide it is. */
export interface TextItem {
  fontSize?: number;
  fontWeight?: number | string;
  fontStyle?: string;
}

/** Parts of vega that its types leave out. */
export interface VegaExtras {
  textMetrics: { width(item: TextItem, text: unknown): number };
  CanvasRenderer: new (
    loader: null,
  ) => {
    initialize(
      element: null,
      width: number,
      height: number,
      origin: [number, number],
      scale: number,
      options: { externalContext: object },
    ): { render(scene: object): void };
  };
}

/** A view's inside that the synchronous way of drawing needs. */
export interface ViewExtras {
  _origin: [number, number];
  scenegraph(): { root: object };
}
