import styles from '#components/assembly/assembly.module.css'
import { useAssemblyWords } from '#components/assembly/words.tsx'
import type { NowBuild } from '#lib/rooms/making/views/now-build.ts'

/** In the place of the line: why the build that shows is not made now. */
export function NotMade({ now }: { readonly now: NowBuild }) {
  const words = useAssemblyWords()
  return (
    <section className={styles.notMade} role="alert">
      {now.whyHeld ? (
        <>
          <strong>{words.heldWord}</strong>
          <p className={styles.why}>{words.sayWhyHeld(now.whyHeld)}</p>
          <p>{now.whyHeld.reason === 'off-sale' ? words.heldNotServed : words.heldThen}</p>
        </>
      ) : (
        <p className={styles.why}>{words.notChecked(now.name)}</p>
      )}
    </section>
  )
}
