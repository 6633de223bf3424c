import { useQuery } from '@tanstack/react-query';
import { lazy, Suspense, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { Refusal } from '../api/fetch-json.ts';
import { plantPath, plantQuery, standsQuery } from '../api/queries.ts';
import { LogSection } from '../log/LogSection.tsx';
import AsOf from '../parts/AsOf.tsx';
import { Fault } from '../parts/Fault.tsx';
import { layersSpokenOf, switchLayer } from '../photo/layers.ts';
import UnsentStrip from '../photos/UnsentStrip.tsx';
import { StandLine } from '../stand/StandLine.tsx';
import { AdviceList } from './AdviceList.tsx';
import { daysHeldAgainst } from './days-asked.ts';
import { FilmStrip } from './FilmStrip.tsx';
import { FirstPhoto } from './FirstPhoto.tsx';
import { chosenLeaf, leavesOf, measuredBefore } from './leafing.ts';
import { PhotoPanel } from './PhotoPanel.tsx';
import { PlantAnswers } from './PlantAnswers.tsx';
import { PlantHead } from './PlantHead.tsx';
import styles from './PlantScreen.module.css';
import { PlantSheets, type SheetName } from './PlantSheets.tsx';
import { ThumbBar } from './ThumbBar.tsx';
import { useIsDesk } from './use-is-desk.ts';
import { useLeafing } from './use-leafing.ts';
import { usePageWith } from './use-page-with.ts';

const SeasonSection = lazy(() => import('../season/SeasonSection.tsx'));

/** The day of the newest sitting that is known in a line. */
function dayBeforeWhole(page: PlantPage | undefined): string {
  return page?.earlier[0]?.day ?? '';
}

export default function PlantScreen({ plantId }: { plantId: string }) {
  const { data, error, refetch, isPending } = useQuery(plantQuery(plantId));
  const [olderFrom, showFrom] = useState<string | null>(null);
  const newer = usePageWith(data, olderFrom === null ? [] : [{ from: olderFrom, to: dayBeforeWhole(data) }]);
  // The line of the stand must be known before what is under it is drawn; when it cannot be had at once, it may come late.
  const stands = useQuery(standsQuery);
  const isStandOpen = stands.isPending && stands.failureCount === 0;
  const [viewId, chooseView] = useState<string | null>(null);
  const [sheet, openSheet] = useState<SheetName | null>(() =>
    new URLSearchParams(window.location.search).has('add-photos') ? { name: 'photos' } : null,
  );
  const photos = useRef<HTMLDivElement>(null);
  const isDesk = useIsDesk();
  const leaves = leavesOf(newer.page?.sittings ?? []);
  const leaf = chosenLeaf(leaves, viewId);
  const { page, fault } = usePageWith(
    newer.page,
    newer.page && leaf ? daysHeldAgainst(newer.page, leaf) : [],
  );
  const step = useLeafing(leaves, leaf, chooseView, sheet === null);

  if (isPending || isStandOpen) return <p className={styles.waiting}>Fetching the plant…</p>;
  if (!page) {
    return (
      <div className={styles.waiting}>
        <Fault
          fault={error}
          {...(error instanceof Refusal && error.status === 404 ? {} : { onAgain: () => refetch() })}
        />
        <p>
          <Link href="/">Back to the bench</Link>
        </p>
      </div>
    );
  }

  const before = leaf && measuredBefore(page.sittings, leaf);
  const strip = leaf && (
    <FilmStrip
      leaves={leaves}
      earlier={newer.page?.earlier ?? []}
      isFetching={newer.isPending}
      chosen={leaf}
      onChoose={chooseView}
      onEarlier={showFrom}
      onOpen={openSheet}
    />
  );
  return (
    <>
      {error && <Fault fault={error} onAgain={() => refetch()} />}
      {!error && (newer.fault ?? fault) && <Fault fault={newer.fault ?? fault} onAgain={() => refetch()} />}
      <AsOf path={plantPath(plantId)} />
      <PlantHead plant={page.plant} onOpen={openSheet} />
      <StandLine plant={page.plant} onOpen={openSheet} />
      <UnsentStrip plantId={plantId} />
      {leaf ? (
        <div className={styles.desk}>
          <div ref={photos} className={styles.photos}>
            <PhotoPanel
              plant={page.plant}
              leaf={leaf}
              newest={leaf === leaves[0]}
              spokenOf={leaf.sitting === page.sittings[0] ? layersSpokenOf(page.advice) : []}
              onStep={step}
              onOpen={openSheet}
            />
            {isDesk && strip}
          </div>
          <PlantAnswers
            page={page}
            leaf={leaf}
            before={before}
            strip={isDesk ? null : strip}
            onOpen={openSheet}
            onShow={chooseView}
            onShowLayer={(shownId, layer) => {
              chooseView(shownId);
              switchLayer(layer, true);
              photos.current?.scrollIntoView({ block: 'start' });
            }}
          />
        </div>
      ) : (
        <div className={styles.desk}>
          <FirstPhoto onOpen={openSheet} />
          <div className={styles.answers}>
            <AdviceList advice={page.advice} plantId={plantId} />
            <Suspense fallback={<p>One moment…</p>}>
              <SeasonSection page={page} onOpen={openSheet} />
            </Suspense>
            <LogSection page={page} onOpen={openSheet} />
          </div>
        </div>
      )}
      <ThumbBar plant={page.plant} onTaken={() => openSheet({ name: 'photos' })} />
      <PlantSheets
        page={page}
        sheet={sheet}
        onOpen={openSheet}
        onClose={() => openSheet(null)}
        onShow={chooseView}
      />
    </>
  );
}
