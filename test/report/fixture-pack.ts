import type { Pack } from '../../src/study/supply.js';

/** Two lithium-polymer cells in series, known by their label. */
export function createPack(): Pack {
  return {
    id: 'P-2S-13',
    label: '2S small pack',
    chemistry: {
      id: 'lipo',
      resistanceChargeOhmC: 432,
      immediateFraction: 0.6,
      relaxationTimeS: 60,
      activationEnergyJPerMol: 12000,
      coldLossPerK: 0.0035,
      fullVoltageV: 4.2,
      nominalVoltageV: 3.7,
      cutOffVoltageV: 3.3,
      floorVoltageV: 3,
    },
    seriesCount: 2,
    parallelCount: 1,
    capacityC: 4680,
    cellResistanceOhm: null,
    dischargeRatingPerH: 25,
    reserveFraction: 0.2,
    cutOffVoltageV: 3.3,
    warningVoltageV: 3.5,
    massKg: 0.078,
    agedToFraction: 0.95,
    priceMoney: 14,
    chargeRatePerH: 1,
    figuresFrom: 'listing',
    note: '',
  };
}
