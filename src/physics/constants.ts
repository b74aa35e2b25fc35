import * as exact from '../quantity/exact.js';
import { cited } from '../sources/sources.js';

/** Standard acceleration of free fall; exact by definition. */
export const standardGravityMPerS2 = cited(exact.standardGravityMPerS2, 'si-brochure', '3rd CGPM (1901)');

/** Molar gas constant; exact since the SI of 2019, here to ten digits. */
export const gasConstantJPerMolK = cited(8.314462618, 'codata-2018', 'table of recommended values');

/** Zero of the Celsius scale; exact by definition. */
export const zeroCelsiusK = cited(exact.zeroCelsiusK, 'si-brochure', 'section 2.3.1');

/** Temperature coefficient of the resistance of annealed copper at 20 °C, 1/K. */
export const copperTemperatureCoefficient = cited(0.00393, 'iec-60028', 'standard values, from memory');

/** Temperature that the copper figures refer to: 20 °C. */
export const copperReferenceK = zeroCelsiusK + 20;

/** Resistivity of annealed copper at 20 °C. */
export const copperResistivityOhmM = cited(1.7241e-8, 'iec-60028', 'standard values, from memory');

/** Temperature that the resistance and capacity of a cell refer to: 25 °C. */
export const cellReferenceK = zeroCelsiusK + 25;

/** Density of air near 20 °C at sea level, rounded; common practice. */
export const airDensityKgPerM3 = 1.2;

/** Drag of a flat plate square to the flow, rounded up from 1.17. */
export const flatPlateDragCoefficient = cited(1.2, 'hoerner-drag', 'chapter 3, from memory');
