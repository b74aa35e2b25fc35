import { quoted } from './printable.js';
import { errorOf, type Trouble, warningOf } from './trouble.js';
import { listed } from './value-messages.js';

/** Neither the stall figure nor the whole rated point. */
export function noLoadedPoint(stall: string, missing: readonly string[]): Trouble {
  return errorOf(
    'no-loaded-point',
    '',
    `${stall}, or the rated point`,
    `${stall} is blank and the rated point lacks ${listed(missing).replace(' or ', ' and ')}`,
    `give ${stall}, or complete the rated point`,
  );
}

/** A rated point with a part missing beside a stall figure: it is not used. */
export function ratedPointIncomplete(given: string, missing: readonly string[]): Trouble {
  return warningOf(
    'rated-point-incomplete',
    given,
    missing.join(', '),
    `the rated point lacks ${listed(missing).replace(' or ', ' and ')}, so ${given} is not used`,
    'complete it, or leave it blank',
  );
}

/** A coupling that cannot join this drive to this feature. */
export function couplingImpossible(
  coupling: string,
  motion: string,
  feature: string,
  possible: readonly string[],
): Trouble {
  return errorOf(
    'coupling-impossible',
    coupling,
    listed(possible),
    `a ${motion} drive on a ${feature} cannot be coupled “${quoted(coupling)}”`,
    `set coupling to ${listed(possible)}`,
  );
}

/** A value that another choice makes necessary. */
export function neededBy(name: string, because: string, how: string): Trouble {
  return errorOf('blank-required', '', name, `${name} is blank, and ${because}`, `how to find it: ${how}`);
}

/** Less current while it holds a load than while it holds none. */
export function holdBelowIdle(hold: string, idle: string, idleGiven: boolean, how: string): Trouble {
  return errorOf(
    'hold-below-idle',
    hold,
    `at least ${idle}`,
    `hold_current is ${hold}, less than the idle_current of ${idle} that is part of it`,
    idleGiven
      ? 'read both again, with the same meter'
      : `idle_current is assumed: give idle_current (${how})`,
  );
}

/** A figure as it was written, and as it was read. */
export interface ReadFigure {
  name: string;
  written: string;
  shown: string;
}

/** Two figures of one voltage in an order that no motor has: the first has to be below the second. */
export function crossedFigures(figure: ReadFigure, limit: ReadFigure, because: string): Trouble {
  const read = ({ name, written, shown }: ReadFigure) =>
    written === shown ? `${name} is ${shown}` : `${name} is “${quoted(written)}” (${shown})`;
  return errorOf(
    'crossed-figures',
    figure.written,
    `below ${limit.shown}`,
    `${read(figure)} and ${read(limit)} at the same voltage: ${because}`,
    `read both again: ${figure.name} has to be below ${limit.name}; is a unit wrong, or are the two swapped?`,
  );
}

/** A value that another choice makes idle. */
export function notUsed(name: string, received: string, because: string): Trouble {
  return warningOf(
    'not-used',
    received,
    'a blank cell',
    `${name} is not used, because ${because}`,
    `empty the cell, or change that`,
  );
}

/** A repeated row that contradicts the first. */
export function differsFromFirstRow(name: string, received: string, first: string, line: number): Trouble {
  return errorOf(
    'differs-from-first-row',
    received,
    first === '' ? 'a blank cell' : first,
    `${name} is “${quoted(received)}” here and “${quoted(first)}” in line ${line}: a repeated row states other voltages only`,
    'leave it blank here, or give the row its own id',
  );
}
