import { encode } from 'uqr'
import styles from '#components/access/qr.module.css'

/** Every dark module as a square of a path. */
const pathOf = (dark: readonly (readonly boolean[])[]): string =>
  dark.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : ''))).join('')

/** What a tablet's camera reads, black on white with its margin, whatever the screen's colours. */
export function QrCode({ holds, label }: { readonly holds: string; readonly label: string }) {
  const { data, size } = encode(holds, { ecc: 'M', border: 3 })
  return (
    <svg
      className={styles.qr}
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={pathOf(data)} fill="#000" />
    </svg>
  )
}
