import { cellResistanceOhm, leadResistanceOhm } from '../../simulate/pack-model.js';
import type { Study } from '../../study/study.js';
import type { Pack } from '../../study/supply.js';
import { amperes, counted, decimal, minutes } from '../figures.js';
import { assumedBurden } from './burdens.js';
import type { ChangeBurden } from './lesser-change.js';
import { type ChangeKind, proposal } from './proposal.js';

/** Cells of packs that are joined may differ by so much before (common practice). */
const mostApartV = 0.05;

/** A second pack in the pocket, swapped when the first is empty. */
export const packsInTurn: ChangeKind = {
  id: 'packs-in-turn',
  family: 'pack',
  propose(setup) {
    const { study, candidate } = setup;
    const carried = study.packsCarriedCount;
    if (carried > 1) return { reason: `${counted(carried, 'pack')} come along already, to be swapped` };
    const burden = withPack(assumedBurden('packs-in-turn'), study.pack);
    const swapS = candidate.sheet.swapTimeS;
    return proposal({
      parts: ['packs-in-turn'],
      title: 'A second pack, swapped',
      actions: [`Carry a second pack (${study.pack.label}) and swap it in a pause.`],
      settings: [{ field: 'pack.carried', value: carried + 1, unit: '', shown: String(carried + 1) }],
      burden,
      setup,
      packsInTurnCount: carried + 1,
      sideEffects: () => [
        ...priceUnknown(study, burden),
        swapS === null
          ? 'How long a swap takes is not known: try it with cold hands.'
          : `Each swap takes ${minutes(swapS)}, with the feature off.`,
        'One pack lasts no longer than today: the longest stretch without a pause stays as it is.',
      ],
    });
  },
};

/** Two packs of the same kind connected side by side. */
export const packsInParallel: ChangeKind = {
  id: 'packs-in-parallel',
  family: 'pack',
  propose({ study, candidate }) {
    const { pack, packsCarriedCount: carried } = study;
    const lead = assumedBurden('packs-in-parallel');
    const burden = carried > 1 ? lead : withPack(lead, pack);
    const count = Math.max(2, carried);
    const pairs = Math.floor(count / 2);
    const setup = { study: { ...study, pack: doubled(pack), packsCarriedCount: pairs }, candidate };
    const oddKg = (count - 2 * pairs) * (pack.massKg ?? 0);
    return proposal({
      parts: ['packs-in-parallel'],
      title: 'Two packs in parallel',
      actions: [
        `Connect two packs (${pack.label}) side by side: same type, same age, bought together.${carried > 1 ? ' Both are carried already.' : ''}`,
        `Join them only when their voltages are within ${decimal(mostApartV, 2)} V per cell (${decimal(pack.seriesCount * mostApartV, 2)} V for the pack).`,
        `Give each its own fuse${study.wiring.fuseRatingA === null ? '' : ` of ${amperes(study.wiring.fuseRatingA)}`}, close to the pack.`,
      ],
      settings: [
        { field: 'parallel', value: 2 * pack.parallelCount, unit: '', shown: String(2 * pack.parallelCount) },
        {
          field: 'capacity',
          value: 2 * pack.capacityC,
          unit: 'C',
          shown: `${decimal((2 * pack.capacityC) / 3.6, 0)} mAh`,
        },
      ],
      burden,
      setup,
      addedBodyMassKg: lead.massKg + oddKg,
      packsInTurnCount: pairs,
      sideEffects: () => [...priceUnknown(study, burden), ...faults(study), ...swapping(carried)],
    });
  },
};

/** The pack with its twin beside it, as one pack of twice the charge, mass and price. */
export function doubled(pack: Pack): Pack {
  const twice = (figure: number | null) => (figure === null ? null : 2 * figure);
  return {
    ...pack,
    parallelCount: 2 * pack.parallelCount,
    capacityC: 2 * pack.capacityC,
    massKg: twice(pack.massKg),
    priceMoney: twice(pack.priceMoney),
  };
}

/** Resistance of a pack to a sudden fault: what it has at once, before its cells relax. */
function suddenOhm(pack: Pack): number {
  const cellOhm = cellResistanceOhm(pack) * pack.chemistry.immediateFraction;
  return (pack.seriesCount * cellOhm) / pack.parallelCount;
}

/**
 * Prospective currents: a short circuit behind the leads, and what flows between two packs that are joined too
 * far apart. At 25 °C, full packs.
 */
export function prospectiveCurrentsA(study: Study): { oneA: number; bothA: number; joiningA: number } {
  const { pack, wiring } = study;
  const leadOhm = leadResistanceOhm(wiring);
  const fullV = pack.seriesCount * pack.chemistry.fullVoltageV;
  const ohm = suddenOhm(pack);
  return {
    oneA: fullV / (ohm + leadOhm),
    bothA: fullV / (ohm / 2 + leadOhm),
    joiningA: (pack.seriesCount * mostApartV) / (2 * ohm),
  };
}

function faults(study: Study): string[] {
  const { oneA, bothA, joiningA } = prospectiveCurrentsA(study);
  return [
    `A short circuit draws up to ${amperes(bothA)} instead of ${amperes(oneA)}; wire, switch and fuses must be able to break it.`,
    `At ${decimal(mostApartV, 2)} V per cell apart, about ${amperes(joiningA)} flow from one pack into the other when they are joined.`,
    'When one pack drops out the other carries everything, and nobody notices until it is empty.',
  ];
}

function swapping(carried: number): string[] {
  return carried > 1 && carried < 4
    ? ['No pair is left to swap to: the day has to do with what is connected.']
    : [];
}

/** The burden with one more pack of the chosen kind: its mass and price are the study's own. */
function withPack(burden: ChangeBurden, pack: Pack): ChangeBurden {
  return {
    ...burden,
    massKg: burden.massKg + (pack.massKg ?? 0),
    costMoney: pack.priceMoney === null ? null : burden.costMoney! + pack.priceMoney,
    basis: `${burden.basis}; ${pack.priceMoney === null ? 'the mass of the pack is the study’s, its price is not known' : 'mass and price of the pack are the study’s'}`,
  };
}

/** That nobody knows what the pack costs, and what that does to the scores. */
function priceUnknown({ criteria, pack }: Study, { costMoney }: ChangeBurden): string[] {
  if (costMoney !== null) return [];
  const unknown = `Its price is not known: the price of ${pack.label} is blank in packs.csv`;
  const isWeighed = criteria.some(({ id, weightScore }) => id === 'cost' && weightScore > 0);
  return [
    isWeighed
      ? `${unknown}. Until it is filled in, the cost of no small change counts in its score.`
      : `${unknown}.`,
  ];
}
