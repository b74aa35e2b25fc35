/** Origin of a sheet's figures; sets the default spreads. */
export type FiguresFrom = 'listing' | 'data-sheet' | 'measured';

/** Cell chemistries the tool has discharge tables for. */
export type ChemistryId = 'lipo' | 'nmc-pouch' | 'li-ion' | 'li-ion-power' | 'lifepo4' | 'nimh';

/**
 * What a chemistry brings to the cell model.
 * Resistances follow from a product of resistance and capacity of one string of cells.
 */
export interface Chemistry {
  id: ChemistryId;
  /** (R0 + R1) × capacity of one string: ohm × coulomb. */
  resistanceChargeOhmC: number;
  /** Share of R0 in R0 + R1. */
  immediateFraction: number;
  relaxationTimeS: number;
  activationEnergyJPerMol: number;
  /** Capacity lost per kelvin below 25 °C. */
  coldLossPerK: number;
  fullVoltageV: number;
  nominalVoltageV: number;
  cutOffVoltageV: number;
  floorVoltageV: number;
}

/** A battery pack. Voltages per cell. */
export interface Pack {
  id: string;
  label: string;
  chemistry: Chemistry;
  /** Cells in series. */
  seriesCount: number;
  parallelCount: number;
  /** Label capacity of the whole pack at 25 °C. */
  capacityC: number;
  /** Sustained resistance of one cell at 25 °C; null: from the chemistry (and, for lipo, the C label). */
  cellResistanceOhm: number | null;
  /** Label discharge rating, 1/h (a "C" figure); null when not known. */
  dischargeRatingPerH: number | null;
  reserveFraction: number;
  cutOffVoltageV: number;
  warningVoltageV: number;
  massKg: number | null;
  /** Remaining share of the label capacity. */
  agedToFraction: number;
  priceMoney: number | null;
  chargeRatePerH: number;
  figuresFrom: FiguresFrom;
  note: string;
}

/** Wire, switch and connectors between pack and loads, fuse and protection board. */
export interface Wiring {
  /** One way. */
  lengthM: number;
  /** Copper cross-section. */
  areaM2: number;
  switchResistanceOhm: number;
  connectorResistanceOhm: number;
  fuseRatingA: number | null;
  protectionTripA: number | null;
  protectionDelayS: number | null;
  controllerMinimumV: number | null;
}

/** When a load draws its power. */
export type DrawnWhen = 'always' | 'lights' | 'moving';

/** A load beside the drives: lights, controller, sound. Per study, all features together. */
export interface Load {
  id: string;
  label: string;
  powerW: number;
  voltageV: number | null;
  /** null: no converter, constant current from the pack. */
  converterEfficiency: number | null;
  idlePowerW: number;
  drawnWhen: DrawnWhen;
  note: string;
}
