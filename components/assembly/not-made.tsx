import styles from '#components/assembly/assembly.module.css'
import type { NowBuild } from '#lib/views/assembly.ts'
import { assemblyEn as say } from '#lib/words/assembly-en.ts'
import { sayWhyHeld } from '#lib/words/held-en.ts'

/** In the place of the line: why the build that shows is not made now. */
export function NotMade({ now }: { readonly now: NowBuild }) {
  return (
    <section className={styles.notMade} role="alert">
      {now.whyHeld ? (
        <>
          <strong>{say.heldWord}</strong>
          <p className={styles.why}>{sayWhyHeld(now.whyHeld)}</p>
          <p>{now.whyHeld.reason === 'off-sale' ? say.heldOffSale : say.heldThen}</p>
        </>
      ) : (
        <p className={styles.why}>{say.notChecked(now.name)}</p>
      )}
    </section>
  )
}
