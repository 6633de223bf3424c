import styles from './Overlay.module.css';
import { type UnsureZone, unsureWords } from './outline-words.ts';
import { outlinePath } from './points.ts';
import { Tappable } from './Tappable.tsx';
import { UnsureHatch, UnsureZoneShape } from './UnsureHatching.tsx';

/** The zones that may be leaf or not, each to be tapped and answered for. */
export function UnsureZones({
  id,
  zones,
  unitPx,
  onAsk,
}: {
  id: string;
  zones: readonly UnsureZone[];
  unitPx: number;
  onAsk: (zone: UnsureZone) => void;
}) {
  return (
    <>
      <defs>
        <UnsureHatch id={`${id}-unsure`} unitPx={unitPx} />
      </defs>
      {zones.map((zone) => (
        <Tappable
          key={zone.outlinePx[0]?.join()}
          words={`Unsure zone. ${unsureWords(zone)}`}
          onTell={() => onAsk(zone)}
        >
          <UnsureZoneShape id={id} zone={zone} />
          <path d={outlinePath(zone.outlinePx)} className={styles.reach} />
        </Tappable>
      ))}
    </>
  );
}
