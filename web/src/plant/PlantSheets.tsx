import { lazy, Suspense } from 'react';
import type { Turn } from '../../../server/schemas/light.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Note, Sitting, Stop, View } from '../../../server/schemas/sitting.ts';
import type { Leaf } from './leafing.ts';

const MendTool = lazy(() => import('../mend/MendTool.tsx'));
const RimTool = lazy(() => import('../mend/rim/RimTool.tsx'));
const AddPhotosSheet = lazy(() => import('../photos/AddPhotosSheet.tsx'));
const LiveCamera = lazy(() => import('../camera/LiveCamera.tsx'));
const CompareSheet = lazy(() => import('../compare/CompareSheet.tsx'));
const CorrectPhotoSheet = lazy(() => import('./CorrectPhotoSheet.tsx'));
const LogSheet = lazy(() => import('../log/LogSheet.tsx'));
const TurnSheet = lazy(() => import('../light/TurnSheet.tsx'));
const LeaveOutSheet = lazy(() => import('./LeaveOutSheet.tsx'));
const PlantSheet = lazy(() => import('./PlantSheet.tsx'));

/** Which dialog is open on the plant page, and on what. */
export type SheetName =
  | { name: 'photos' }
  | { name: 'camera' }
  | { name: 'plant' }
  | { name: 'photo'; leaf: Leaf }
  | { name: 'mend'; view: View }
  | { name: 'rim'; view: View }
  | { name: 'compare'; leaf: Leaf; earlier?: Leaf }
  | { name: 'leave-out'; sitting: Sitting }
  | { name: 'turn'; turn: Turn | null }
  | { name: 'entry'; kind: 'stops'; entry: Stop | null }
  | { name: 'entry'; kind: 'notes'; entry: Note | null };

/** The dialogs of the plant page, each fetched when it is first opened. */
export function PlantSheets({
  page,
  sheet,
  onOpen,
  onClose,
  onShow,
}: {
  page: PlantPage;
  sheet: SheetName | null;
  onOpen: (sheet: SheetName) => void;
  onClose: () => void;
  onShow: (viewId: string | null) => void;
}) {
  return (
    <Suspense fallback={null}>
      {sheet && <OpenSheet {...{ page, sheet, onOpen, onClose, onShow }} />}
    </Suspense>
  );
}

function OpenSheet({
  page,
  sheet,
  onOpen,
  onClose,
  onShow,
}: {
  page: PlantPage;
  sheet: SheetName;
  onOpen: (sheet: SheetName) => void;
  onClose: () => void;
  onShow: (viewId: string | null) => void;
}) {
  switch (sheet.name) {
    case 'photos':
      return (
        <AddPhotosSheet
          page={page}
          onClose={onClose}
          onShow={onShow}
          onLive={() => onOpen({ name: 'camera' })}
        />
      );
    case 'camera':
      return <LiveCamera page={page} onClose={onClose} />;
    case 'plant':
      return <PlantSheet plant={page.plant} onClose={onClose} />;
    case 'photo':
      return <CorrectPhotoSheet plantId={page.plant.id} leaf={sheet.leaf} onClose={onClose} />;
    case 'mend':
      return <MendTool plantId={page.plant.id} view={sheet.view} onClose={onClose} />;
    case 'rim':
      return <RimTool plantId={page.plant.id} view={sheet.view} onClose={onClose} />;
    case 'compare':
      return <CompareSheet page={page} leaf={sheet.leaf} earlier={sheet.earlier ?? null} onClose={onClose} />;
    case 'leave-out':
      return <LeaveOutSheet sitting={sheet.sitting} onClose={onClose} />;
    case 'turn':
      return <TurnSheet page={page} turn={sheet.turn} onClose={onClose} />;
    case 'entry':
      return <LogSheet plantId={page.plant.id} kind={sheet.kind} entry={sheet.entry} onClose={onClose} />;
  }
}
