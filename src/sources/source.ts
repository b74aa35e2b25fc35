/** One publication. Nothing here is a quotation; where a value sits is said by the locator of `cited`. */
export interface Source {
  id: string;
  authors: string;
  title: string;
  /** Edition, journal volume and pages, or document number; empty when there is none. */
  edition: string;
  /** Year of publication; null for guidance that is reissued every year. */
  year: number | null;
  publisher?: string;
}
