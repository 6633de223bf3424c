import qrcode from 'qrcode-generator';
import styles from './PhonesScreen.module.css';

/** ISO/IEC 18004 asks for four modules of white all round. */
const QUIET_ZONE = 4;

/** A text as a QR code, dark on white in every shade of the screen: phones read it best so. */
export default function QrCode({ text, label }: { text: string; label: string }) {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  const cells = Array.from({ length: count * count }, (_, k) => [Math.floor(k / count), k % count] as const);
  const path = cells
    .filter(([row, column]) => code.isDark(row, column))
    .map(([row, column]) => `M${column} ${row}h1v1h-1z`)
    .join('');
  const side = count + 2 * QUIET_ZONE;
  return (
    <svg
      className={styles.qr}
      viewBox={`${-QUIET_ZONE} ${-QUIET_ZONE} ${side} ${side}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect x={-QUIET_ZONE} y={-QUIET_ZONE} width={side} height={side} className={styles.qrPaper} />
      <path d={path} className={styles.qrInk} />
    </svg>
  );
}
