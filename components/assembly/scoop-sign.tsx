import styles from '#components/assembly/pan.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import { scoopHandle } from '#lib/measure/scoops.ts'

/**
 * A scoop by its number, with the trade's handle colour drawn and named. `plain`: a purplish handle
 * isn't drawn, since purple stands for allergen-only tools beside a keep-apart build.
 */
export function ScoopSign({ number, plain }: { readonly number: number; readonly plain: boolean }) {
  const words = useAssemblyWords()
  const handle = scoopHandle(number)
  const isDrawn = handle !== null && !(plain && handle.purplish)
  return (
    <span className={styles.scoop}>
      {isDrawn && (
        <span
          className={styles.dot}
          aria-hidden="true"
          style={{ background: `var(${handle.token})` }}
        />
      )}
      <span>
        <b>{words.scoop(number)}</b>
        {handle && (
          <span className={styles.under}>{words.quantity.scoopColour(handle.colour)}</span>
        )}
      </span>
    </span>
  )
}
