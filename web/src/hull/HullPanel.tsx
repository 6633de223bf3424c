import { useQuery } from '@tanstack/react-query';
import { lazy, Suspense, useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { hullQuery } from '../api/turned.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { litAzimuth } from '../plan/turned-sittings.ts';
import styles from './HullStage.module.css';
import { solidHeard } from './hull-words.ts';

const HullStage = lazy(() => import('./HullStage.tsx'));

/** The solid, fetched when it is asked for. */
export function HullPanel({ page, sitting }: { page: PlantPage; sitting: Sitting }) {
  const [open, setOpen] = useState(false);
  return (
    <div className={styles.panel}>
      <h3>As a solid</h3>
      {open ? (
        <OpenHull page={page} sitting={sitting} />
      ) : (
        <>
          <p>
            The hull: what is left when everything outside any of the outlines is cut away. The plant fills it
            or less, never more.
          </p>
          <div className={buttons.row}>
            <button type="button" className={buttons.quiet} onClick={() => setOpen(true)}>
              <Icon name="turn" /> Show the solid
            </button>
          </div>
        </>
      )}
    </div>
  );
}

function OpenHull({ page, sitting }: { page: PlantPage; sitting: Sitting }) {
  const report = sitting.turned;
  // Another joining gives other numbers, and with them another solid.
  const version = JSON.stringify(report?.plan.hull ?? null);
  const { data: solid, error, refetch } = useQuery(hullQuery(sitting.id, version));
  if (error) return <Fault fault={error} onAgain={() => refetch()} />;
  if (!solid || !report) return <p role="status">Cutting the solid…</p>;
  const { centreMm, radiusMm } = report.plan.hull ?? { centreMm: null, radiusMm: null };
  return (
    <Suspense fallback={<p>One moment…</p>}>
      <HullStage
        solid={solid}
        ball={centreMm && radiusMm !== null ? { centre: centreMm, radius: radiusMm } : null}
        lightAzimuthDeg={litAzimuth(page.light)?.azimuthDeg ?? null}
        heard={solidHeard(report, solid)}
      />
    </Suspense>
  );
}
