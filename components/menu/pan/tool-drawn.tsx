import styles from '#components/menu/pan/portion.module.css'
import { useMenuWords } from '#components/menu/words.tsx'
import { type Row, textIn } from '#lib/editor/draft.ts'
import { scoopHandle } from '#lib/measure/scoops.ts'

/** The tool as it lies in the hand, with what is stamped on it. */
export function ToolDrawn({ portion }: { readonly portion: Row }) {
  const words = useMenuWords()
  const tool = textIn(portion, 'tool')
  const number = typeof portion.number === 'number' ? portion.number : null
  const handle = number === null ? null : scoopHandle(number)
  const stamp = number === null ? words.toolSize(tool, portion).short : `#${number}`
  const isSpoon = tool === 'scoop' || tool === 'ladle' || tool === 'spoodle'
  return (
    <svg className={styles.drawn} viewBox="0 0 130 84" aria-hidden="true">
      <rect
        x="56"
        y={isSpoon ? 8 : 30}
        width="72"
        height="18"
        rx="9"
        transform={isSpoon ? 'rotate(-24 92 17)' : undefined}
        style={{ fill: handle ? `var(${handle.token})` : 'var(--pan-idle-edge)' }}
      />
      <path d={isSpoon ? 'M8 36 H80 A36 40 0 0 1 8 36 Z' : 'M10 26 H78 L72 78 H16 Z'} />
      <path className={styles.rim} d={isSpoon ? 'M2 36 H86' : 'M4 26 H84'} />
      <text x="44" y="60">
        {stamp}
      </text>
    </svg>
  )
}
