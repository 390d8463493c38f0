import styles from '#components/menu/label/vessel-sign.module.css'
import type { Declaration } from '#lib/station/station-document.ts'

const BODY = 'M8 12L11 31Q11.4 34 14.4 34H29.6Q32.6 34 33 31L36 12'
const DOTS = [
  [17, 20],
  [23, 18],
  [28, 22],
  [20, 27],
  [26, 28],
] as const

/** A pan in the state that a word says: full, some in it, empty, a list without it, and not known. */
export function VesselSign({ word }: { readonly word: Declaration }) {
  return (
    <svg className={styles.sign} data-word={word} viewBox="0 0 44 38" aria-hidden="true">
      <path d={`${BODY}Z`} />
      <path d="M4 12H40" />
      {word === 'may-contain' && DOTS.map(([x, y]) => <circle key={x} cx={x} cy={y} r="1.9" />)}
      {word === 'not-listed' && <path d="M15 19H29M15.6 24H28.4M16.4 29H27.6" />}
      {word === 'unknown' && (
        <text x="22" y="30" textAnchor="middle">
          ?
        </text>
      )}
    </svg>
  )
}
