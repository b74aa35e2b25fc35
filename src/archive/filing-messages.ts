import { quoted } from '../problem/printable.js';
import { errorOf, type Trouble, warningOf } from '../problem/trouble.js';
import type { LockHolder } from './lock.js';

/** Another process files at this moment; or one that cannot be asked whether it does. */
export function archiveBusy(holder: LockHolder, canAsk: boolean, lock: string): Trouble {
  return errorOf(
    'archive-busy',
    whose(holder),
    'nobody else filing',
    canAsk
      ? `process ${quoted(holder.process)} is filing since ${quoted(holder.since)}`
      : `process ${quoted(holder.process)} on ${quoted(holder.host)} is filing since ${quoted(holder.since)}, or broke off there`,
    canAsk ? 'try again when it has ended' : `if nothing runs there any more, remove the folder ${lock}`,
  );
}

/** A lock whose process is gone was taken over. */
export function staleLock(holder: LockHolder): Trouble {
  return warningOf(
    'stale-lock',
    whose(holder),
    'no lock',
    `process ${quoted(holder.process)} broke off while filing (since ${quoted(holder.since)}); its lock was removed`,
  );
}

const whose = ({ process, host, since }: LockHolder): string => quoted(`${process} ${host} ${since}`, 120);

/** Half a record of a process that broke off was removed. */
export function leftoverRemoved(name: string): Trouble {
  return warningOf('leftover-removed', name, '', 'was left behind unfinished and has been removed');
}

/** The ledger did not match and was made anew. */
export function ledgerRebuilt(why: string): Trouble {
  return warningOf('ledger-rebuilt', '', '', `was made anew from the records: ${why}`);
}

/** A record could not be taken into a rebuilt ledger. */
export function leftOut(why: string): Trouble {
  return warningOf('left-out-of-ledger', '', 'a sound record', `is left out of the ledger: ${why}`);
}

/** The system refused a step. */
export function cannotWrite(reason: string): Trouble {
  return errorOf(
    'cannot-write',
    quoted(reason, 200),
    '',
    `cannot be written: ${quoted(reason, 200)}`,
    'nothing was filed',
  );
}

/** Filed, but the ledger could be neither written nor the record taken back. */
export function filedUnlisted(id: string): Trouble {
  return warningOf(
    'filed-unlisted',
    '',
    '',
    `${id} stands complete in the archive, but the ledger does not list it`,
    'records <folder> --rebuild makes the ledger anew from the records',
  );
}

/** Filed, but the system failed when asked whether it is on the disk. */
export function notConfirmed(reason: string): Trouble {
  return warningOf(
    'not-confirmed',
    quoted(reason, 200),
    '',
    `the record is filed, but the disk did not confirm it: ${quoted(reason, 200)}`,
    'records <folder> tells whether all is sound',
  );
}

/** The lock could not be removed. */
export function lockStays(reason: string): Trouble {
  return warningOf('lock-stays', '', '', `the lock could not be removed: ${quoted(reason, 200)}`);
}
