import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { Backup, Keeping } from '../../../server/schemas/keeping.ts';
import { queryClient } from '../api/queries.ts';
import { momentWords } from '../parts/AsOf.tsx';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { BackupPlanPart } from './BackupPlanPart.tsx';
import styles from './KeepingScreen.module.css';
import { beginBackup, beginCheck, beginRestore, keepingQuery } from './keeping-api.ts';
import { OlderMethodPart } from './OlderMethodPart.tsx';

const UNDER_WAY = {
  backup: 'A backup is being made. Go on working, it goes beside.',
  check: 'Everything is being read. Go on working, it goes beside.',
  restore: 'The backup is being laid out. When it is whole, Rondure opens anew with it.',
};

/** At the desk: the backups, how the store fares, and the way back. */
export default function KeepingScreen() {
  const { data: keeping, error, refetch, isPending } = useQuery(keepingQuery);
  const { busy, fault, send } = useSending();
  useForgetting(keeping);

  if (isPending) return <p className={styles.waiting}>Looking for the backups…</p>;
  if (!keeping) return <Fault fault={error} onAgain={() => refetch()} />;
  const { backups, nextAt, underWay, failure, folder, folderFault, check } = keeping;
  const last = backups[0];
  const rests = busy || underWay !== null;
  return (
    <div className={styles.screen}>
      <h1>Keeping</h1>
      <section className={styles.part} aria-labelledby="backups">
        <h2 id="backups">Backups</h2>
        <p>
          {last ? (
            <>The last backup was made {momentWords(Date.parse(last.madeAt))}. </>
          ) : (
            'There is no backup yet. '
          )}
          {nextAt !== null && <NextBackup nextAt={nextAt} />}
        </p>
        {folderFault !== null && <p className={styles.wrong}>{folderFault}</p>}
        {failure !== null && <p className={styles.wrong}>{failure}</p>}
        {fault !== null && <Fault fault={fault} />}
        {underWay !== null && (
          <p role="status" className={styles.strip}>
            <Icon name="wait" /> <span>{UNDER_WAY[underWay.what]}</span>
          </p>
        )}
        <div className={buttons.row}>
          <button
            type="button"
            className={buttons.button}
            disabled={rests}
            onClick={() => void send(beginBackup)}
          >
            <Icon name="save" /> Back up now
          </button>
          <button
            type="button"
            className={buttons.quiet}
            disabled={rests}
            onClick={() => void send(() => beginCheck('store'))}
          >
            <Icon name="look" /> Read everything through
          </button>
        </div>
        {check !== null && <CheckWords check={check} />}
        <p className={styles.hint}>
          They lie in <span translate="no">{folder}</span>. A backup on the same disk helps against slips, not
          against a broken or stolen disk: name a folder on another one, or copy the folder now and then.
        </p>
        {backups.length > 0 && (
          <ul className={styles.list} aria-label="Backups">
            {backups.map((backup) => (
              <BackupRow key={backup.name} backup={backup} rests={rests} />
            ))}
          </ul>
        )}
      </section>
      <OlderMethodPart />
      <FoundPart keeping={keeping} />
      <BackupPlanPart keeping={keeping} />
    </div>
  );
}

/** After a restore everything on the screen may be of the store of before. */
function useForgetting(keeping: Keeping | undefined): void {
  const isRestoring = keeping?.underWay?.what === 'restore';
  const [wasRestoring, setWasRestoring] = useState(false);
  useEffect(() => {
    if (isRestoring) setWasRestoring(true);
    else if (wasRestoring && keeping) {
      setWasRestoring(false);
      void queryClient.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'keeping' });
    }
  }, [isRestoring, wasRestoring, keeping]);
}

function NextBackup({ nextAt }: { nextAt: string }) {
  const atMs = Date.parse(nextAt);
  return atMs <= Date.now() ? (
    <>The next is made within minutes.</>
  ) : (
    <>The next is made {momentWords(atMs)}.</>
  );
}

function CheckWords({
  check: { checkedAt, of, rowCount, photoCount, faults },
}: {
  check: NonNullable<Keeping['check']>;
}) {
  const when = momentWords(Date.parse(checkedAt));
  return (
    <div role="status" className={faults.length > 0 ? styles.wrong : styles.strip}>
      <p>
        {of === 'store' ? (
          <>The store was read {when}</>
        ) : (
          <>
            The backup {of} was read {when}
          </>
        )}
        : records {rowCount}, photos {photoCount}.{' '}
        {faults.length === 0 ? (
          <b>All is as it was written.</b>
        ) : (
          <b>Something is damaged. Restore the last good backup, or the photo from it.</b>
        )}
      </p>
      {faults.length > 0 && (
        <ul>
          {faults.slice(0, 20).map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

function BackupRow({ backup, rests }: { backup: Backup; rests: boolean }) {
  const [asks, setAsks] = useState(false);
  const { fault, send } = useSending();
  const when = momentWords(Date.parse(backup.madeAt));
  return (
    <li className={styles.row}>
      <div>
        <p className={styles.name}>{when}</p>
        <p className={styles.hint}>
          Plants {backup.plantCount}, photos {backup.photoCount}, {(backup.byteCount / 1024 ** 2).toFixed(1)}{' '}
          MB
        </p>
        {backup.leftOut.length > 0 && (
          <p className={styles.wrong}>
            Photos that were gone or damaged and are not in it: {backup.leftOut.length}.
          </p>
        )}
        {fault !== null && <Fault fault={fault} />}
      </div>
      {asks ? (
        <div className={styles.ask}>
          <p>
            Rondure then stands as it did {when}. What was added since goes aside with the store of now, which
            is not deleted.
          </p>
          <div className={buttons.row}>
            <button
              type="button"
              className={buttons.button}
              disabled={rests}
              onClick={() => void send(() => beginRestore(backup.name)).then(() => setAsks(false))}
            >
              Restore it
            </button>
            <button type="button" className={buttons.quiet} onClick={() => setAsks(false)}>
              Leave it
            </button>
          </div>
        </div>
      ) : (
        <div className={buttons.row}>
          <button
            type="button"
            className={buttons.quiet}
            disabled={rests}
            aria-label={`Read the backup of ${when} through`}
            onClick={() => void send(() => beginCheck(backup.name))}
          >
            Read through
          </button>
          <button
            type="button"
            className={buttons.quiet}
            disabled={rests}
            aria-label={`Restore the backup of ${when}`}
            onClick={() => setAsks(true)}
          >
            Restore…
          </button>
        </div>
      )}
    </li>
  );
}

/** What the start found, and what restoring has put aside. */
function FoundPart({ keeping: { home, missing, setAside, replaced } }: { keeping: Keeping }) {
  if (missing.length + setAside.length + replaced.length === 0) return null;
  return (
    <section className={styles.part} aria-labelledby="found">
      <h2 id="found">Found and put aside</h2>
      {missing.length > 0 && (
        <div className={styles.wrong}>
          <p>
            Photos whose files are not there: {missing.length}. Restore the last backup that has them, or add
            the photos again.
          </p>
        </div>
      )}
      {setAside.length > 0 && (
        <p>
          Photos in the folder “set-aside”: {setAside.length}. They came in as Rondure was stopped, before
          they were kept. Whoever sent them still has them and sends them again; else add them from there.
        </p>
      )}
      {replaced.length > 0 && (
        <p>
          Stores that gave way to a restored one: <span translate="no">{replaced.join(', ')}</span>. Delete a
          folder when nothing in it is needed any more.
        </p>
      )}
      <p className={styles.hint}>
        All of it lies in <span translate="no">{home}</span>.
      </p>
    </section>
  );
}
