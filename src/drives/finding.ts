/** Something odd, impossible or worth knowing about a candidate's figures. */
export interface Finding {
  code: string;
  severity: 'impossible' | 'odd' | 'note';
  /** Field it concerns, as in the CSV; null when it concerns the whole drive. */
  field: string | null;
  message: string;
}

/** A value the tool had to take because the file left it blank. */
export interface AssumedValue {
  field: string;
  /** SI value, or the choice taken. */
  value: number | string | boolean | null;
  /** SI unit symbol, empty for pure numbers and choices. */
  unit: string;
  /** As a person reads it: `10 mA (4–30)`. */
  shown: string;
  basis: string;
}
