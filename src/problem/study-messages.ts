import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';
import { listed } from './value-messages.js';

/** An item that study.csv does not have. */
export function unknownItem(received: string, nearest: string | null): Trouble {
  return errorOf(
    'unknown-item',
    received,
    nearest ?? 'an item of study.csv',
    `there is no item “${quoted(received)}”`,
    nearest === null ? 'delete the row, or say it in the note of another' : `did you mean ${nearest}?`,
  );
}

/** The same item twice. */
export function duplicateItem(item: string, firstLine: number | null): Trouble {
  return errorOf(
    'duplicate-item',
    item,
    'every item once',
    `${item} was set in line ${firstLine} already`,
    'delete one of the rows',
  );
}

/** A value without the name of its item. */
export function valueWithoutItem(received: string): Trouble {
  return errorOf(
    'value-without-item',
    received,
    'the name of an item',
    `“${quoted(received)}” stands in a row without an item`,
    'write the item in the first column',
  );
}

/** Upper stop at or below the lower one. */
export function stopsReversed(lower: string, upper: string): Trouble {
  return errorOf(
    'stops-reversed',
    upper,
    `more than ${lower}`,
    `the upper stop (${upper}) is not above the lower one (${lower})`,
    'up is positive: swap the two',
  );
}

/** A latch that the feature cannot reach. */
export function latchOutsideStops(received: string, lower: string, upper: string): Trouble {
  return errorOf(
    'latch-outside-stops',
    received,
    `${lower} to ${upper}`,
    `the latch at “${quoted(received)}” is outside the stops`,
    'check the sign: up is positive',
  );
}

/** Distances that cannot both hold. */
export function balanceBeyondTip(balance: string, tip: string): Trouble {
  return warningOf(
    'balance-beyond-tip',
    balance,
    `less than ${tip}`,
    `the feature balances at ${balance}, beyond its tip at ${tip}`,
    'are the two distances swapped?',
  );
}

/** A scale reading that mass and balance distance contradict. */
export function scaleDisagrees(reading: string, implied: string): Trouble {
  return warningOf(
    'scale-disagrees',
    reading,
    implied,
    `the scale under the tip says ${reading}, mass and balance distance say ${implied}; the scale is used`,
    'measure all three again',
  );
}

/** Inertia and shape both given. */
export function shapeNotUsed(shape: string): Trouble {
  return warningOf(
    'shape-not-used',
    shape,
    'inertia or shape',
    'feature.inertia is given, so feature.shape is not used',
    'delete one of them',
  );
}

/** More than one form of assist spring. */
export function springsMixed(items: readonly string[]): Trouble {
  return errorOf(
    'springs-mixed',
    items.join(', '),
    'one form of assist spring',
    `${listed(items).replace(' or ', ' and ')} belong to different forms of spring`,
    'give stiffness and free_angle, or constant, or rate, frame_arm, feature_arm and free_length',
  );
}

/** A spring with a part missing. */
export function springIncomplete(given: string, missing: readonly string[]): Trouble {
  return errorOf(
    'spring-incomplete',
    given,
    missing.join(', '),
    `${given} is given, ${listed(missing).replace(' or ', ' and ')} ${missing.length > 1 ? 'are' : 'is'} missing`,
    'complete the spring, or delete it',
  );
}

/** A delay of a board that is not there, and the like. */
export function partWithoutWhole(part: string, whole: string): Trouble {
  return errorOf(
    'part-without-whole',
    part,
    whole,
    `${part} is given without ${whole}`,
    `give ${whole} too, or leave ${part} blank`,
  );
}

/** An id that no row has. */
export function unknownReference(
  item: string,
  id: string,
  file: string,
  nearest: string | null,
  known: string[],
): Trouble {
  return errorOf(
    'unknown-reference',
    id,
    known.length === 0 ? `an id in ${file}` : listed(known.slice(0, 12)),
    `${item} is “${quoted(id)}”, which is no id in ${file}`,
    nearest === null
      ? `choose ${known.length === 0 ? `an id of ${file}` : listed(known.slice(0, 12))}`
      : `did you mean ${nearest}?`,
  );
}

/** Measurements without a drive to measure. */
export function measuredWithoutBaseline(): Trouble {
  return errorOf(
    'measured-without-baseline',
    '',
    'the item baseline in study.csv',
    'measurements are taken on the baseline, and study.csv names none',
    'set baseline to the id of the drive that exists today',
  );
}

/** A change on the command line that cannot be taken. */
export function badChange(received: string): Trouble {
  return errorOf(
    'bad-change',
    received,
    'item=value',
    `“${quoted(received)}” is not a change`,
    'write feature.mass=420 g, or worm-a.mass=300 g for one candidate, pack or load',
  );
}

/** A change of something that does not exist. */
export function unknownChange(received: string, nearest: string | null): Trouble {
  return errorOf(
    'unknown-change',
    received,
    nearest ?? 'an item of study.csv, or id.column',
    `there is nothing called “${quoted(received)}” to change`,
    nearest === null ? 'write an item of study.csv, or id.column' : `did you mean ${nearest}?`,
  );
}
