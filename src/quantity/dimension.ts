/** What a quantity measures, in words for messages, with its SI unit and the units people most likely mean. */
export interface DimensionFacts {
  /** With its article: `a torque`. */
  phrase: string;
  /** Unit of the SI value inside the program; empty for pure numbers. */
  siUnit: string;
  /** The likeliest units, best first; empty when the value is a bare number. */
  likelyUnits: readonly string[];
}

const facts = (phrase: string, siUnit: string, likelyUnits: readonly string[]): DimensionFacts => ({
  phrase,
  siUnit,
  likelyUnits,
});

/** All dimensions the tool reads. */
export const dimensions = {
  length: facts('a length', 'm', ['mm', 'cm', 'in']),
  area: facts('an area', 'm²', ['mm²', 'cm²', 'm²']),
  'wire-size': facts('a wire size', 'm²', ['AWG', 'mm²']),
  mass: facts('a mass', 'kg', ['g', 'kg', 'oz']),
  time: facts('a time', 's', ['s', 'min', 'h']),
  angle: facts('an angle', 'rad', ['deg', 'rad', 'turn']),
  speed: facts('a speed', 'm/s', ['mm/s', 'in/s', 'm/s']),
  'angular-speed': facts('a turning speed', 'rad/s', ['s/60deg', 'rpm', 'deg/s']),
  force: facts('a force', 'N', ['N', 'kgf', 'lbf']),
  torque: facts('a torque', 'N·m', ['kg·cm', 'N·m', 'oz·in']),
  inertia: facts('a moment of inertia', 'kg·m²', ['kg·m²', 'kg·cm²', 'g·cm²']),
  'linear-stiffness': facts('a spring rate', 'N/m', ['N/mm', 'N/m', 'lbf/in']),
  'rotary-stiffness': facts('a torsion spring rate', 'N·m/rad', ['N·m/rad', 'N·m/deg', 'kg·cm/deg']),
  current: facts('a current', 'A', ['mA', 'A', 'µA']),
  voltage: facts('a voltage', 'V', ['V', 'mV', 'kV']),
  resistance: facts('a resistance', 'Ω', ['mΩ', 'Ω', 'kΩ']),
  charge: facts('a charge', 'C', ['mAh', 'Ah']),
  power: facts('a power', 'W', ['W', 'mW', 'kW']),
  energy: facts('an energy', 'J', ['J', 'Wh', 'mJ']),
  temperature: facts('a temperature', 'K', ['°C', 'K', '°F']),
  'thermal-resistance': facts('a thermal resistance', 'K/W', ['K/W']),
  'heat-capacity': facts('a heat capacity', 'J/K', ['J/K']),
  'molar-energy': facts('an activation energy', 'J/mol', ['kJ/mol', 'J/mol']),
  'resistance-charge': facts('a resistance times a capacity', 'Ω·C', ['mΩ·Ah', 'Ω·Ah']),
  'per-kelvin': facts('a share per kelvin', '1/K', ['%/K']),
  frequency: facts('a frequency', 'Hz', ['Hz', 'kHz', 'MHz']),
  'sound-level': facts('a sound level', 'dB', ['dB']),
  'charge-rate': facts('a rate in C', '1/h', ['C']),
  ratio: facts('a ratio', '', ['%']),
  count: facts('a whole number', '', []),
  money: facts('a sum of money', '', []),
} as const satisfies Record<string, DimensionFacts>;

/** Name of a dimension. */
export type Dimension = keyof typeof dimensions;

/** The dimension in a sentence: `a torque`. */
export function dimensionPhrase(dimension: Dimension): string {
  return dimensions[dimension].phrase;
}
