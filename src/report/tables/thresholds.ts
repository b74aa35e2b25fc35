import { severeForceN } from '../../assess/cautions/contact.js';
import { cited } from '../../sources/sources.js';

/** Forces on a person from which the cautions speak, and from which they are severe. */
export const crushThresholdsN = {
  careful: cited(65, 'iso-ts-15066', 'order of the lowest limits by body part; from memory'),
  severe: severeForceN,
};

/** Skin bears a surface this warm for hours, whatever the material. */
export const longContactK = cited(43 + 273.15, 'iso-13732-1', 'burn thresholds, long contact; from memory');
