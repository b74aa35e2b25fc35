/** Colours of the report on paper and on a light screen; told apart by shape or words too. */
export const palette = {
  ink: '#17252f',
  muted: '#5b6b74',
  accent: '#0b5d6b',
  good: '#0b5d6b',
  bad: '#8c2a1c',
  hairline: '#ccd5d9',
  rule: '#8d9aa3',
  band: '#eef3f4',
  stripe: '#f6f8f9',
} as const;

/** Bars and bands of the caution boxes; the severity also stands there in words. */
export const cautionColours = {
  severe: { bar: '#8c2a1c', band: '#f9eeeb', word: '#8c2a1c' },
  caution: { bar: '#c08a2c', band: '#fbf5e8', word: '#7d5410' },
  note: { bar: '#9fb0b8', band: '#f3f6f7', word: '#4d5c64' },
} as const;
