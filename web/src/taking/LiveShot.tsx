import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { CameraFrame } from '../camera/CameraFrame.tsx';
import { type LayOver, layOverOfView } from '../camera/lay-over.ts';
import { useLayOver } from '../camera/use-lay-over.ts';
import { Viewfinder } from '../camera/Viewfinder.tsx';
import { usePattern } from './pattern.ts';

/** The live picture for one shot of a turned sitting, with the last outline at this turn over it where there is one. */
export default function LiveShot({
  page,
  sitting,
  turnDeg,
  title,
  onShot,
  onClose,
}: {
  page: PlantPage;
  sitting: Sitting | null;
  turnDeg: number;
  title: string;
  onShot: (file: File) => void;
  onClose: () => void;
}) {
  const { layOver, settled } = useLayOver(page);
  const pattern = usePattern(page, sitting, turnDeg);
  const shown = pattern
    ? layOverOfView(pattern.view, pattern.sitting.day as LayOver['outlineDay'])
    : // An outline of another turn would mislead; rim and marks stay where they are.
      layOver && { ...layOver, outlinePx: [] };
  return (
    <CameraFrame title={title} onClose={onClose}>
      {settled && (
        <Viewfinder
          layOver={shown}
          onShot={(file) => {
            onShot(file);
            onClose();
          }}
        />
      )}
    </CameraFrame>
  );
}
